//! "Done" and "not done", "yes" and "no", to the step in hand.

use super::{ahead, closing};
use crate::act::{Act, WaitingFor};
use crate::bench::desk::Desk;
use crate::bench::{Ack, Asks, Consequence, Part, Question, Refusal, flow, present, settings, timers};
use crate::event::{Event, How};
use crate::rulebase::{ReadBack, Step, UnitCard};

/// The step (or the named part's step) is done; or yes.
pub fn confirm(desk: &mut Desk<'_>, act: &Act) {
    let (Some(card), Some(procedure)) = (desk.card(), desk.procedure()) else { return no_job(desk) };
    let Some(step) = desk.cursor().and_then(|id| procedure.step(&id).cloned()) else { return };
    if let Some(about) = &act.slots.about
        && step.about.as_deref() != Some(about.as_str())
    {
        return ahead::confirm(desk, &card, &procedure, about, act);
    }
    if step.answers_yes_or_no() && says_only(desk, act, "answer") && !answers(desk, &card, &step) {
        desk.needs = Some((step.id.clone(), asked(&card, &step)));
        return;
    }
    if let Some(why) = unlike(desk, act, &step) {
        return desk.say(Part::Refused(Refusal::NotNow { why }));
    }
    if std::mem::replace(&mut desk.closed_one, true) {
        return;
    }
    if super::notes::is_past(desk, &step) {
        return super::job::finish(desk);
    }
    this_step(desk, &card, &step);
}

/// Why what was said closes no step: it says that something was understood, or that the part stands as this step does not
/// leave it.
fn unlike(desk: &Desk<'_>, act: &Act, step: &Step) -> Option<String> {
    if says_only(desk, act, "step") {
        return Some("say done when it is done".to_owned());
    }
    says_only(desk, act, step.deed.as_str())
        .then(|| "that is not what this step leaves: say done when it is done".to_owned())
}

/// Whether a confirmation says no more than what the word lists hold against such a thing: `caution`, `step` or a deed.
pub fn says_only(desk: &Desk<'_>, act: &Act, what: &str) -> bool {
    let Some(said) = act.slots.text.as_deref() else { return false };
    let against = desk.rules.talk.words.unlike.get(what);
    against.is_some_and(|against| said.split(' ').all(|state| against.iter().any(|own| own == state)))
}

fn this_step(desk: &mut Desk<'_>, card: &UnitCard, step: &Step) {
    if let Some(which) = step.reads_back {
        return list_confirmed(desk, card, step, which);
    }
    if let Some(left) = timers::left(desk, step) {
        let why = format!("the wait is not over: {} to go", left.say());
        return desk.say(Part::Refused(Refusal::NotNow { why }));
    }
    match step.read.as_ref() {
        Some(_) if needs_value(step) => {
            desk.needs = Some((step.id.clone(), asked(card, step)));
        }
        _ if step.answers_yes_or_no() => closing::close(desk, card, step, How::Accepted, None),
        _ => closing::close(desk, card, step, How::Confirmed, None),
    }
}

/// The step in hand and its question, where that is one of yes or no.
pub fn open_question(desk: &Desk<'_>) -> Option<(String, String)> {
    let (card, procedure) = (desk.card()?, desk.procedure()?);
    let step = desk.cursor().and_then(|id| procedure.step(&id).cloned())?;
    (step.answers_yes_or_no() && desk.state.progress.pending.is_none())
        .then(|| (step.id.clone(), asked(&card, &step)))
}

/// Whether the line said what the question asks, in the question's own words ("it's sealed" to "is it sealed?"); the name
/// of the part alone is no answer.
fn answers(desk: &Desk<'_>, card: &UnitCard, step: &Step) -> bool {
    let words = |text: &str| -> std::collections::BTreeSet<String> {
        let words = text.split(|c: char| !c.is_alphanumeric()).filter(|word| word.len() > 3);
        // Forms of a word share their first letters ("seal", "sealed").
        words.map(|word| word.to_lowercase().chars().take(5).collect()).collect()
    };
    let name = step.about.as_deref().map(|about| words(card.name_of(about))).unwrap_or_default();
    let asked = words(&asked(card, step));
    let said = words(desk.utterance.heard.as_deref().unwrap_or_default());
    said.intersection(&asked).any(|word| !name.contains(word))
}

/// What the step asks.
fn asked(card: &UnitCard, step: &Step) -> String {
    match present::asks(card, step) {
        Asks::Value(asks) | Asks::Words(asks) | Asks::YesOrNo(asks) => asks,
        Asks::Done => String::new(),
    }
}

/// Whether "done" alone never closes the step: a critical value, a count, a length, words.
pub fn needs_value(step: &Step) -> bool {
    step.read.as_ref().is_some_and(|read| match read.kind {
        WaitingFor::Done | WaitingFor::YesOrNo | WaitingFor::Tool | WaitingFor::Nothing => false,
        WaitingFor::Torque => read.critical,
        _ => true,
    })
}

fn list_confirmed(desk: &mut Desk<'_>, card: &UnitCard, step: &Step, which: ReadBack) {
    if which == ReadBack::Left && !settings::all_left(desk) {
        let why = "an adjuster has not been set".to_owned();
        return desk.say(Part::Refused(Refusal::NotNow { why }));
    }
    desk.emit(Event::ReadBack { which: present::which_name(which).to_owned() });
    closing::close(desk, card, step, How::Accepted, None);
    desk.say(Part::Ack(Ack::ReadBack(which)));
}

/// It is not done, or the answer is no.
pub fn deny(desk: &mut Desk<'_>) {
    let (Some(card), Some(procedure)) = (desk.card(), desk.procedure()) else { return no_job(desk) };
    let Some(step) = desk.cursor().and_then(|id| procedure.step(&id).cloned()) else { return };
    let heard = desk.place().and_then(|place| place.heard_back.clone());
    if let Some(heard) = heard.and_then(|id| procedure.step(&id).cloned())
        && !step.answers_yes_or_no()
    {
        return reopen(desk, &card, &heard);
    }
    if step.reads_back.is_some() {
        desk.say(Part::Question(Question::WhatWasIt { name: "setting that is wrong".to_owned() }));
        return;
    }
    if step.answers_yes_or_no() {
        return answered_no(desk, &card, &step);
    }
    desk.say(Part::Ack(Ack::Stays));
}

/// A reading said back by ear and denied: its step opens again.
fn reopen(desk: &mut Desk<'_>, card: &UnitCard, step: &Step) {
    desk.emit(Event::Reopened { step: step.id.clone() });
    let name = present::name(card, step);
    flow::show(desk, step, false);
    desk.show_step = false;
    desk.say(Part::Question(Question::WhatWasIt { name }));
}

fn answered_no(desk: &mut Desk<'_>, card: &UnitCard, step: &Step) {
    let then = closing::fail(desk, step);
    if then == Consequence::StaysOpen {
        desk.emit(Event::Finding {
            step: Some(step.id.clone()),
            about: step.about.clone(),
            text: format!("{}: no", present::title(card, step)),
        });
    }
    match then {
        Consequence::Stop(text) => {
            desk.show_step = false;
            desk.say(Part::Sentence(text));
        }
        Consequence::StaysOpen => desk.say(Part::Ack(Ack::Stays)),
        _ => {}
    }
}

fn no_job(desk: &mut Desk<'_>) {
    super::job::none_open(desk);
}

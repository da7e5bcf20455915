//! The open question: which act answers it, and what then follows.

use super::desk::Desk;
use super::entries::confirm::says_only;
use super::entries::{job, outside, reading, skip, want};
use super::questions::work;
use super::{Ack, Part, Question, Refusal, Value, decide, doubt, flow, present};
use crate::act::{Act, ActName, Doubt};
use crate::event::{Event, Kept, Pending, Verdict};
use crate::quantity::{Limit, Quantity, Unit, figures};

/// Whether the act answers the open question; if so it has been worked.
pub fn takes(desk: &mut Desk<'_>, act: &Act) -> bool {
    let Some(pending) = desk.state.progress.pending.clone() else { return false };
    match pending.clone() {
        Pending::Acknowledge { cautions } => acknowledge(desk, act, cautions),
        Pending::Value { kept } => value(desk, act, kept),
        Pending::Deviation { step, reason } => reasoned(desk, act, step, reason, true),
        Pending::Skip { step, reason } => reasoned(desk, act, step, reason, false),
        Pending::Switch { place } => job::serial_said(desk, act, &place),
        Pending::Finish => finish(desk, act),
        Pending::Start { procedure, unit, corner } => job::more_said(desk, act, procedure, unit, corner),
        Pending::Between { acts, doubt, then } => between(desk, act, &acts, &doubt, &then),
        Pending::Work { .. } => work::answered(desk, act, &pending),
        Pending::Stand { about, .. } => want::stands_at(desk, act, &about),
        Pending::SpringRate { .. } => false,
    }
}

/// A caution that waits: nothing closes the step before it is acknowledged.
fn acknowledge(desk: &mut Desk<'_>, act: &Act, cautions: Vec<String>) -> bool {
    match act.act {
        ActName::Confirm
            if (act.slots.about.is_none() || is_in_hand(desk, act)) && !says_only(desk, act, "caution") =>
        {
            desk.emit(Event::Settled);
            desk.emit(Event::Acknowledged { cautions });
            desk.acknowledged = true;
            desk.say(Part::Ack(Ack::Understood));
            desk.show_step = true;
        }
        ActName::Deny => desk.say(Part::Ack(Ack::Stays)),
        ActName::Confirm | ActName::Reading | ActName::Skip | ActName::Fitted | ActName::Correct => {
            desk.say(Part::Question(Question::Acknowledge));
        }
        _ => return false,
    }
    true
}

fn is_in_hand(desk: &Desk<'_>, act: &Act) -> bool {
    let about = super::entries::notes::current(desk).and_then(|step| step.about);
    about == act.slots.about
}

/// A value said back: yes keeps it, no asks again, another value takes its place.
fn value(desk: &mut Desk<'_>, act: &Act, kept: Kept) -> bool {
    let step = kept.step.as_deref().and_then(|id| desk.procedure()?.step(id).cloned());
    let (Some(card), Some(step)) = (desk.card(), step) else { return false };
    match act.act {
        ActName::Confirm => {
            desk.emit(Event::Settled);
            reading::keep(desk, &card, &step, kept, None);
        }
        ActName::Deny => {
            desk.emit(Event::Settled);
            desk.say(Part::Question(Question::WhatWasIt { name: present::name(&card, &step) }));
        }
        ActName::Reading if same_value(act, &kept) => {
            desk.emit(Event::Settled);
            reading::keep(desk, &card, &step, kept, None);
        }
        _ => return false,
    }
    true
}

/// The same value said again, in either unit, is a yes.
fn same_value(act: &Act, kept: &Kept) -> bool {
    let near = |a: f64, b: f64| (a - b).abs() <= 0.005 * b.abs().max(1.0);
    let said = act.slots.value;
    said.zip(kept.value).is_some_and(|(said, own)| near(said, own) && act.slots.unit == kept.unit)
        || said.zip(kept.said).is_some_and(|(said, own)| near(said, own) && act.slots.unit == kept.said_unit)
}

/// A reason first, then a second utterance.
fn reasoned(desk: &mut Desk<'_>, act: &Act, step: String, reason: Option<String>, deviation: bool) -> bool {
    let (Some(card), Some(procedure)) = (desk.card(), desk.procedure()) else { return false };
    match (act.act, reason) {
        (ActName::Confirm, Some(reason)) => skip::sure(desk, &card, &procedure, &step, &reason, deviation),
        (ActName::Deny, _) => dropped(desk),
        (ActName::Note | ActName::Skip | ActName::Trouble, None) => {
            let said = act.slots.reason.clone().or_else(|| act.slots.text.clone());
            let Some(step) = procedure.step(&step) else { return false };
            skip::ask(desk, &card, step, said, deviation);
        }
        (ActName::Confirm, None) => say_again_now(desk),
        _ => return false,
    }
    true
}

fn finish(desk: &mut Desk<'_>, act: &Act) -> bool {
    match act.act {
        ActName::Confirm | ActName::Finish => job::close(desk),
        ActName::Deny => {
            dropped(desk);
            // Asked again only when the technician says so.
            desk.show_step = false;
        }
        _ => return false,
    }
    true
}

/// Drops the question and goes on with the step.
pub fn dropped(desk: &mut Desk<'_>) {
    desk.emit(Event::Settled);
    desk.say(Part::Ack(Ack::Dropped));
    desk.show_step = true;
}

/// One of several was meant: yes or a matching act takes it; no drops a single one.
fn between(desk: &mut Desk<'_>, act: &Act, acts: &[Act], doubt: &Doubt, then: &[Act]) -> bool {
    let chosen = match act.act {
        ActName::Confirm if acts.len() == 1 => acts.first().cloned(),
        ActName::Deny if acts.len() <= 1 => {
            dropped(desk);
            return true;
        }
        _ => acts.iter().find(|option| doubt::chooses(act, option)).cloned(),
    };
    let Some(chosen) = chosen else { return false };
    desk.emit(Event::Settled);
    desk.show_step = true;
    if chosen.act == ActName::Want && outside::is_said_back(&chosen) {
        want::want(desk, &chosen, "customer");
    } else if chosen.act == ActName::Want && chosen.slots.text.is_some() {
        worked_out(desk, &chosen);
    } else if chosen.act == ActName::Want {
        want::agreed(desk, &chosen);
    } else {
        decide::perform(desk, &chosen);
    }
    let _ = doubt;
    for act in then {
        decide::perform(desk, act);
    }
    true
}

/// A choice of preload: with its figure it is the wanted setting; without, what it needs is said.
fn worked_out(desk: &mut Desk<'_>, chosen: &Act) {
    if chosen.slots.value.is_some() {
        return want::want(desk, chosen, "worked out");
    }
    let why = "the load on the spring and its turns of preload are not known".to_owned();
    desk.say(Part::Refused(Refusal::NotNow { why }));
}

/// Says the open question again; false when none is open.
pub fn say_again(desk: &mut Desk<'_>) -> bool {
    if desk.state.progress.pending.is_none() {
        return false;
    }
    say_again_now(desk);
    true
}

fn say_again_now(desk: &mut Desk<'_>) {
    let Some(pending) = desk.state.progress.pending.clone() else { return };
    let title = |desk: &Desk<'_>, id: &str| {
        let (card, procedure) = (desk.card()?, desk.procedure()?);
        procedure.step(id).map(|step| present::title(&card, step))
    };
    let question = match pending {
        Pending::Acknowledge { .. } => {
            if let Some(step) = super::entries::notes::current(desk) {
                super::cautions::again(desk, &step);
            }
            Question::Acknowledge
        }
        Pending::Value { kept } => value_asked(said_back(desk, &kept), &kept),
        Pending::Deviation { step, reason } => again_reason(title(desk, &step), reason, true),
        Pending::Skip { step, reason } => again_reason(title(desk, &step), reason, false),
        Pending::Switch { place } => Question::Serial { place: place.replace('-', " ") },
        Pending::Finish => Question::Finish { number: desk.state.progress.number },
        Pending::Start { procedure, unit, .. } => job::missing(desk, procedure, unit),
        Pending::Between { acts, doubt, .. } => doubt::question(desk, &acts, doubt),
        Pending::Work { missing, asks, .. } => Question::Work { ask: asks, missing },
        Pending::Stand { about, .. } => super::entries::relative::stand(desk, &about),
        Pending::SpringRate { .. } => return flow::say_step(desk),
    };
    desk.say(Part::Question(question));
}

fn again_reason(name: Option<String>, reason: Option<String>, deviation: bool) -> Question {
    let name = name.unwrap_or_default();
    match reason {
        None => Question::Reason { name, deviation },
        Some(reason) => Question::Sure { name, reason, deviation },
    }
}

/// The question of a value that waits for its yes; what is out of limits is called so before anybody says yes to it.
pub fn value_asked(value: Value, kept: &Kept) -> Question {
    if kept.verdict != Verdict::Out || (kept.lo.is_none() && kept.hi.is_none()) {
        return Question::Value(value);
    }
    let limit = Limit { lo: kept.lo, hi: kept.hi, unit: value.kept.unit };
    Question::Beyond { value, limit }
}

/// A kept value as it is said back.
pub fn said_back(desk: &Desk<'_>, kept: &Kept) -> Value {
    let unit = |name: &Option<String>| name.as_deref().and_then(Unit::parse);
    let value = kept.value.unwrap_or_default();
    let own = unit(&kept.unit).unwrap_or(Unit::One);
    let name = kept.about.as_deref().map_or_else(
        || kept.role.clone(),
        |about| desk.card().map_or_else(|| about.to_owned(), |card| card.name_of(about).to_owned()),
    );
    let said =
        kept.said.map(|said| (Quantity::new(said, unit(&kept.said_unit).unwrap_or(own)), kept.said_from));
    Value { name, kept: Quantity::new(value, own), from: None, said, digits: figures::needs_digits(value) }
}

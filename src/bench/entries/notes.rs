//! Notes, troubles, new parts, timers by word, and who is working.

use super::{closing, reading, said};
use crate::act::{Act, WaitingFor};
use crate::bench::desk::Desk;
use crate::bench::{Ack, Part, flow, present, timers};
use crate::event::{Event, How};
use crate::quantity::{Quantity, Unit};
use crate::rulebase::Deed;

/// Write this down; where the step wants words, these are they.
pub fn note(desk: &mut Desk<'_>, act: &Act) {
    let text = act.slots.text.clone().unwrap_or_default();
    let wants_words = current(desk)
        .is_some_and(|step| step.read.as_ref().is_some_and(|read| read.kind == WaitingFor::Text));
    if wants_words && !text.is_empty() {
        return reading::words(desk, &text);
    }
    if desk.place().is_none() {
        return super::job::none_open(desk);
    }
    desk.emit(Event::Noted { text });
    desk.show_step = false;
    desk.say(Part::Ack(Ack::Noted));
}

/// Something will not move, is damaged, leaks, or went wrong: kept, and the ladder for it offered.
pub fn trouble(desk: &mut Desk<'_>, act: &Act) {
    if desk.place().is_none() {
        return super::job::none_open(desk);
    }
    let text = act.slots.text.clone().unwrap_or_default();
    let about = act.slots.about.clone().or_else(|| current(desk).and_then(|step| step.about));
    desk.emit(Event::Troubled { text, about: about.clone() });
    desk.show_step = false;
    desk.say(Part::Ack(Ack::Troubled));
    if let Some(about) = about.filter(|about| may_be_stuck(desk, about)) {
        super::super::questions::part::next_rung(desk, &about);
    }
}

/// Whether the step in hand moves that part, and its card has a ladder for when it will not move.
fn may_be_stuck(desk: &Desk<'_>, about: &str) -> bool {
    let moves = current(desk).filter(|step| {
        let moving = matches!(
            step.deed,
            Deed::Loosen | Deed::Remove | Deed::Release | Deed::Strike | Deed::Rock | Deed::Zero | Deed::Set
        );
        moving && step.about.as_deref() == Some(about)
    });
    moves.is_some() && desk.card().is_some_and(|card| !card.stuck(about).is_empty())
}

/// A part was replaced.
pub fn fitted(desk: &mut Desk<'_>, act: &Act) {
    let (Some(card), Some(step)) = (desk.card(), current(desk)) else { return super::job::none_open(desk) };
    let Some(about) = act.slots.about.clone().or_else(|| step.about.clone()) else {
        return desk.say(Part::Ack(Ack::Noted));
    };
    let text = act.slots.text.clone().unwrap_or_default();
    desk.emit(Event::Fitted { about: about.clone(), text });
    desk.say(Part::Ack(Ack::Fitted(card.name_of(&about).to_owned())));
    let its_step = step.about.as_deref() == Some(about.as_str()) && step.deed == Deed::Replace;
    if its_step && step.read.is_none() {
        closing::close(desk, &card, &step, How::Confirmed, None);
    }
}

/// Start a timer, or count a cure.
pub fn wait(desk: &mut Desk<'_>, act: &Act) {
    let Some(said) = &act.slots.duration else {
        return super::super::questions::record::cure(desk);
    };
    let Some(unit) = Unit::parse(&said.unit) else { return };
    if desk.place().is_none() {
        return super::job::none_open(desk);
    }
    let what = act.slots.text.clone().or_else(|| name_in_hand(desk)).unwrap_or_else(|| "the wait".to_owned());
    timers::start(desk, what, Quantity::new(said.value, unit));
    desk.show_step = false;
}

/// Who is working.
pub fn by(desk: &mut Desk<'_>, act: &Act) {
    let Some(who) = act.slots.text.clone() else { return };
    if desk.state.progress.open {
        desk.emit(Event::By { who: who.clone() });
    }
    desk.say(Part::Ack(Ack::By(who)));
    // Cautions are owed in full to a person who has not had them.
    if let Some(step) = current(desk)
        && super::super::cautions::holds(desk, &step)
    {
        flow::say_step(desk);
    }
}

fn name_in_hand(desk: &Desk<'_>) -> Option<String> {
    let step = current(desk)?;
    Some(present::name(&*desk.card()?, &step))
}

/// Whether the line says that the thing asked about has not been looked at: that is no answer to a question of yes or no,
/// and no finding.
pub fn not_looked_yet(desk: &Desk<'_>) -> bool {
    let asks = current(desk).is_some_and(|step| step.answers_yes_or_no());
    let line = said::words(desk.utterance.heard.as_deref().unwrap_or_default());
    let phrases = &desk.rules.talk.words.unready;
    asks && (0..line.len())
        .any(|at| line.get(at..).is_some_and(|rest| said::opening(rest, phrases).is_some()))
}

/// Whether the step in hand is closed, with nothing after it: every step is worked.
pub fn is_past(desk: &Desk<'_>, step: &crate::rulebase::Step) -> bool {
    desk.place().is_some_and(|place| place.closed.contains_key(&step.id) && !place.went_back)
}

/// The step in hand.
pub fn current(desk: &Desk<'_>) -> Option<crate::rulebase::Step> {
    desk.cursor().and_then(|id| desk.procedure()?.step(&id).cloned())
}

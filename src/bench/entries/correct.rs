//! The last value or answer was wrong; this one stands.

use super::reading;
use crate::act::Act;
use crate::bench::desk::Desk;
use crate::bench::judge::{self, Judged};
use crate::bench::state::Entry;
use crate::bench::{Ack, Consequence, Part, Question, Refusal, flow, present};
use crate::event::{Event, How, Pending, Verdict};
use crate::quantity::Unit;
use crate::rulebase::{Step, UnitCard};

/// Corrects the last value (of the part named, where one is).
pub fn correct(desk: &mut Desk<'_>, act: &Act) {
    let Some(card) = desk.card() else { return super::job::none_open(desk) };
    if let Some(Pending::Value { kept }) = desk.state.progress.pending.clone() {
        return pending_value(desk, act, kept.step.as_deref());
    }
    let Some(value) = act.slots.value else { return without_value(desk, &card, act) };
    let unit = act.slots.unit.as_deref().and_then(Unit::parse);
    let Some(entry) = last(desk, act, unit) else { return reading::reading(desk, act) };
    let step = entry.kept.step.as_deref().and_then(|id| desk.procedure()?.step(id).cloned());
    let Some(step) = step else { return reading::reading(desk, act) };
    let unit = unit.or_else(|| entry.kept.said_unit.as_deref().and_then(Unit::parse));
    match judge::value(desk, &card, &step, value, unit, act.slots.from) {
        Judged::Refused(refusal) => desk.say(Part::Refused(refusal)),
        Judged::NeedsTravel(now) => desk.emit(Event::Corrected { now, of: entry.event }),
        Judged::Kept { kept, said_back } => {
            let verdict = kept.verdict;
            desk.emit(Event::Corrected { now: kept.clone(), of: entry.event.clone() });
            desk.say(Part::Ack(Ack::Corrected(said_back)));
            stands(desk, &card, &step, &kept, verdict);
        }
    }
}

/// What a corrected value does to its step: in limits it closes it, out of limits it opens it again.
fn stands(desk: &mut Desk<'_>, card: &UnitCard, step: &Step, kept: &crate::event::Kept, verdict: Verdict) {
    let closed = desk.place().is_some_and(|place| place.closed.contains_key(&step.id));
    if verdict != Verdict::Out {
        return super::closing::close(desk, card, step, How::Value, Some(kept));
    }
    if closed {
        desk.emit(Event::Reopened { step: step.id.clone() });
        flow::show(desk, step, false);
    }
    if let Some((value, limit)) = judge::figures(card, step, kept) {
        let name = present::name(card, step);
        let then = judge::if_too_tight(card, step, kept, Consequence::StaysOpen);
        desk.say(Part::Refused(Refusal::OutOfLimits { name, value, limit, then }));
    }
}

/// The value that is meant: the last one kept here, of the part named or of a kind with the unit.
fn last(desk: &Desk<'_>, act: &Act, unit: Option<Unit>) -> Option<Entry> {
    let here = desk.place_id();
    let about = act.slots.about.as_deref();
    let kind = |entry: &&Entry| {
        let own = entry.kept.unit.as_deref().and_then(Unit::parse);
        unit.is_none_or(|unit| own.is_none_or(|own| own.same_dimension(unit)))
    };
    let mine = |entry: &&Entry| about.is_none() || entry.kept.about.as_deref() == about;
    let mut entries =
        desk.state.record.kept.iter().rev().filter(|entry| entry.place == here && !entry.corrected);
    let current = super::notes::current(desk);
    let waiting = current.filter(|step| about.is_some() && step.about.as_deref() == about);
    let open_here = waiting.is_some_and(|step| {
        !desk.place().is_some_and(|place| place.closed.contains_key(&step.id))
            && desk.state.record.kept.iter().all(|entry| entry.kept.step.as_deref() != Some(step.id.as_str()))
            && step.read.is_some()
            && about.is_some_and(|about| {
                !desk.state.record.kept.iter().any(|entry| entry.kept.about.as_deref() == Some(about))
            })
    });
    if open_here {
        return None;
    }
    entries
        .find(|entry| mine(entry) && kind(entry) && entry.kept.value.or(entry.kept.said).is_some())
        .cloned()
}

fn pending_value(desk: &mut Desk<'_>, act: &Act, step: Option<&str>) {
    desk.emit(Event::Settled);
    let Some(step) = step.and_then(|id| desk.procedure()?.step(id).cloned()) else { return };
    let (Some(card), Some(value)) = (desk.card(), act.slots.value) else { return };
    let unit = act.slots.unit.as_deref().and_then(Unit::parse);
    reading::take(desk, &card, &step, value, unit, act.slots.from);
}

/// Only the part is corrected ("it was the slow bump, not the fast"): the value moves to that part's step.
fn without_value(desk: &mut Desk<'_>, card: &UnitCard, act: &Act) {
    let about = act.slots.about.clone();
    let any = Act::new(act.act);
    let entry = last(desk, &any, None);
    let (Some(about), Some(entry)) = (about, entry) else {
        return desk.say(Part::Question(Question::WhatWasIt { name: "value".to_owned() }));
    };
    let Some(value) = entry.kept.said.or(entry.kept.value) else { return };
    if entry.kept.about.as_deref() == Some(about.as_str()) {
        return desk.say(Part::Question(Question::WhatWasIt { name: card.name_of(&about).to_owned() }));
    }
    if let Some(step) = entry.kept.step.clone() {
        desk.emit(Event::Reopened { step });
    }
    let mut moved = Act::new(act.act).about(about.clone());
    moved.slots.value = Some(value);
    moved.slots.from = entry.kept.said_from;
    let Some(procedure) = desk.procedure() else { return };
    let found = super::ahead::find(desk, &procedure, &about, &|step| step.read.is_some());
    match found {
        super::ahead::Found::Step(step) => reading::take(desk, card, &step, value, None, moved.slots.from),
        _ => desk.say(Part::Refused(Refusal::NotNow {
            why: format!("no step waits for the {}", card.name_of(&about)),
        })),
    }
}

//! The fold: one event into the state. Total, never fails, and consults neither rules, scripts nor a clock.

use super::record::{Entry, Locking, RunningTimer};
use super::{Closing, Place, Position, State, effect};
use crate::act::ActName;
use crate::event::{Change, Envelope, Event, Kept, Moved, Verdict};
use std::sync::Arc;

/// Folds one event into the state.
pub fn apply(state: &mut State, envelope: &Envelope) {
    state.events.push(Arc::new(envelope.clone()));
    match &envelope.event {
        Event::TakenBack { utterance } => take_back(state, utterance),
        _ => fold(state, envelope),
    }
}

/// The fold passes over what was taken back: everything else is folded anew.
fn take_back(state: &mut State, utterance: &str) {
    state.struck.push(utterance.to_owned());
    let events = std::mem::take(&mut state.events);
    let struck = std::mem::take(&mut state.struck);
    let mut fresh = State::default();
    for kept in &events {
        let gone = struck.contains(&kept.utterance.id) && kept.event.changes_job();
        if !gone && !matches!(kept.event, Event::TakenBack { .. }) {
            fold(&mut fresh, kept);
        }
    }
    *state = State { events, struck, ..fresh };
    // A question that the struck utterance opened, or that came after it, has lost its ground.
    state.progress.pending = None;
}

fn fold(state: &mut State, envelope: &Envelope) {
    state.record.last = Some(envelope.at);
    let same = state.record.kept.last().is_some_and(|entry| entry.utterance == envelope.utterance.id);
    if envelope.event.changes_job()
        && !same
        && let Some(place) = current(state)
    {
        // The technician's next entry closes what was said back by ear.
        place.heard_back = None;
    }
    match &envelope.event {
        Event::JobOpened { number } => {
            state.progress.open = true;
            state.progress.number = *number;
            state.record.opened = Some(envelope.at);
        }
        Event::PlaceOpened { place, unit, procedure, corner } => {
            let opened = Place {
                unit: unit.clone(),
                procedure: procedure.clone(),
                corner: *corner,
                ..Place::default()
            };
            state.progress.places.insert(place.clone(), opened);
            state.progress.current = Some(place.clone());
            state.progress.pending = None;
        }
        Event::Switched { place } => {
            state.progress.current = Some(place.clone());
            state.progress.pending = None;
        }
        Event::Shown { step, back } => shown(state, envelope, step, *back),
        Event::Cautioned { caution, full } => {
            if *full {
                let person = state.progress.person.clone();
                state.progress.cautioned.insert((person, caution.clone()));
            }
        }
        Event::Acknowledged { cautions } => {
            for caution in cautions {
                let person = state.progress.person.clone();
                state.progress.acknowledged.insert((person, caution.clone()));
            }
        }
        Event::Opened { pending } => state.progress.pending = Some(pending.clone()),
        Event::Settled => state.progress.pending = None,
        Event::Paused => state.progress.paused = true,
        Event::Resumed | Event::TakenUp => state.progress.paused = false,
        Event::By { who } => state.progress.person.clone_from(who),
        Event::JobClosed { .. } => {
            state.progress.closed = true;
            state.progress.open = false;
            state.progress.pending = None;
        }
        Event::TimerStarted { timer, what, seconds } => {
            let ends = envelope.at + chrono::Duration::milliseconds((seconds * 1000.0) as i64);
            let (place, step) = (envelope.place.clone(), envelope.step.clone());
            let running = RunningTimer { what: what.clone(), place, step, ends, told: false };
            state.record.timers.insert(*timer, running);
            state.progress.timers.insert(*timer, false);
        }
        Event::TimerTold { timer } => {
            if let Some(running) = state.record.timers.get_mut(timer) {
                running.told = true;
            }
            state.progress.timers.insert(*timer, true);
        }
        Event::Answered { act, said } => {
            if act == ActName::AskWork.as_str() {
                state.record.figure = Some(said.clone());
            }
        }
        Event::TakenBack { .. } => {}
        other => fold_here(state, envelope, other),
    }
}

/// Events about the place in hand.
fn fold_here(state: &mut State, envelope: &Envelope, event: &Event) {
    let Some(id) = state.progress.current.clone() else { return };
    match event {
        Event::StepDone { step, moved, .. } => {
            close(state, envelope, &id, step, Closing::Done);
            last_value_stands(state, &id, step);
            apply_moved(state, envelope, &id, moved);
        }
        Event::Deviated { step, reason, value, moved } => {
            close(state, envelope, &id, step, Closing::Deviated);
            apply_moved(state, envelope, &id, moved);
            if let Some(kept) = value {
                value_stands(state, &id, kept);
            }
            state.record.reasons.push((id, step.clone(), reason.clone()));
        }
        Event::Skipped { step, reason, critical } => {
            close(state, envelope, &id, step, Closing::Skipped { critical: *critical });
            state.record.reasons.push((id, step.clone(), reason.clone()));
        }
        Event::StepFailed { step, attempt, branch, reopens } => {
            if let Some(place) = state.progress.places.get_mut(&id) {
                place.failed.insert(step.clone(), *attempt);
                place.closed.remove(step);
                if *branch {
                    place.branching.insert(step.clone());
                }
                for again in reopens {
                    place.closed.remove(again);
                    place.failed.remove(again);
                    place.branching.remove(again);
                }
            }
        }
        Event::Reopened { step } => {
            if let Some(place) = state.progress.places.get_mut(&id) {
                place.closed.remove(step);
            }
        }
        Event::Reading(kept) => keep(state, envelope, &id, kept),
        Event::Corrected { now, of } => {
            for entry in &mut state.record.kept {
                if entry.event == *of {
                    entry.corrected = true;
                }
            }
            keep(state, envelope, &id, now);
        }
        Event::Finding { about, text, .. } => {
            state.record.findings.push((id, about.clone(), text.clone()));
        }
        Event::ReadBack { which } => {
            if let Some(place) = state.progress.places.get_mut(&id) {
                place.said_back.insert(which.clone());
            }
        }
        Event::Wanted { about, value, said_from, text, whose, .. } => {
            if let Some(place) = state.progress.places.get_mut(&id) {
                let adjuster = place.adjusters.entry(about.clone()).or_default();
                adjuster.wanted = *value;
                adjuster.wanted_from = *said_from;
                // A new wish is said back again before anything rests on it.
                place.said_back.remove("wanted");
                place.rate_asked |= whose == "worked out";
            }
            if let Some(text) = text {
                state.record.wanted_words.insert((id, about.clone()), text.clone());
            }
        }
        Event::Fitted { about, text } => {
            if let Some(place) = state.progress.places.get_mut(&id) {
                place.parts.entry(about.clone()).or_default().new = true;
            }
            state.record.fitted.push((id, about.clone(), text.clone()));
        }
        Event::Noted { text } => state.record.notes.push((id, text.clone())),
        Event::Troubled { text, .. } => state.record.notes.push((id, text.clone())),
        Event::Stuck { about, rung } => {
            if let Some(place) = state.progress.places.get_mut(&id) {
                place.stuck.insert(about.clone(), *rung);
            }
        }
        _ => {}
    }
}

fn current(state: &mut State) -> Option<&mut Place> {
    let id = state.progress.current.as_ref()?;
    state.progress.places.get_mut(id)
}

fn shown(state: &mut State, envelope: &Envelope, step: &str, back: bool) {
    let Some(id) = state.progress.current.clone() else { return };
    if let Some(place) = state.progress.places.get_mut(&id) {
        place.cursor = Some(step.to_owned());
        place.went_back = back;
    }
    state.record.shown.entry((id, step.to_owned())).or_insert(envelope.at);
}

fn close(state: &mut State, envelope: &Envelope, id: &str, step: &str, closing: Closing) {
    if let Some(place) = state.progress.places.get_mut(id) {
        place.closed.insert(step.to_owned(), closing);
        place.branching.remove(step);
        place.went_back = false;
        if closing == Closing::Done {
            place.out.remove(step);
        }
    }
    state.record.closed.insert((id.to_owned(), step.to_owned()), envelope.at);
    state.record.last_kept = Some(step.to_owned());
}

fn apply_moved(state: &mut State, envelope: &Envelope, id: &str, moved: &[Moved]) {
    for change in moved {
        if let Change::Locked { grade, open, handle, cure } = &change.change {
            let locking =
                Locking { at: envelope.at, grade: grade.clone(), open: *open, handle: *handle, cure: *cure };
            state.record.locked.insert((id.to_owned(), change.about.clone()), locking);
        }
        if let Some(place) = state.progress.places.get_mut(id) {
            effect::moved(place, change);
        }
    }
}

fn keep(state: &mut State, envelope: &Envelope, id: &str, kept: &Kept) {
    if kept.verdict != Verdict::Out {
        value_stands(state, id, kept);
    }
    if let (Some(text), role) = (&kept.text, &kept.role) {
        state.record.texts.insert((id.to_owned(), role.clone()), text.clone());
    }
    if let Some(place) = state.progress.places.get_mut(id) {
        if envelope.utterance.ear && kept.value.is_some() {
            place.heard_back.clone_from(&kept.step);
        }
        if let Some(step) = &kept.step {
            match kept.verdict {
                Verdict::Out => place.out.insert(step.clone()),
                Verdict::Within | Verdict::Free => place.out.remove(step),
            };
        }
    }
    state.record.kept.push(Entry {
        event: envelope.id.clone(),
        utterance: envelope.utterance.id.clone(),
        place: id.to_owned(),
        at: envelope.at,
        kept: kept.clone(),
        corrected: false,
    });
    state.record.last_kept = Some(kept.step.clone().unwrap_or_else(|| kept.role.clone()));
}

/// A value out of limits stands only once its step is closed with it: counted again, or left as a deviation.
fn last_value_stands(state: &mut State, id: &str, step: &str) {
    let mut entries = state.record.kept.iter().rev();
    let last = entries
        .find(|entry| entry.place == id && !entry.corrected && entry.kept.step.as_deref() == Some(step))
        .map(|entry| entry.kept.clone());
    if let Some(kept) = last {
        value_stands(state, id, &kept);
    }
}

/// The value becomes the one that stands for its part and role.
fn value_stands(state: &mut State, id: &str, kept: &Kept) {
    let Some(place) = state.progress.places.get_mut(id) else { return };
    if kept.text.is_some() {
        place.texts.insert(kept.role.clone());
    }
    let Some(about) = &kept.about else {
        if let Some(value) = kept.value {
            place.readings.insert((String::new(), kept.role.clone()), value);
        }
        return;
    };
    if let Some(value) = kept.value {
        place.readings.insert((about.clone(), kept.role.clone()), value);
    }
    let known = matches!(kept.role.as_str(), "found" | "travel" | "travel-again" | "left");
    if !known {
        return;
    }
    let adjuster = place.adjusters.entry(about.clone()).or_default();
    match kept.role.as_str() {
        "found" => {
            adjuster.found = kept.value;
            adjuster.found_from_out = if kept.value.is_none() { kept.said } else { None };
        }
        "travel" => adjuster.travel = kept.value,
        "travel-again" => adjuster.travel_again = kept.value,
        _ => {
            adjuster.left = kept.value;
            if let Some(value) = kept.value {
                adjuster.position = Position::At(value);
            }
        }
    }
}

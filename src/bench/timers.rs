//! Timers: started by a step, by threadlocker or by word, and told once when they run out.

use super::desk::Desk;
use super::state::{Fitting, RunningTimer};
use super::{Ack, Part};
use crate::event::{Change, Event, Moved};
use crate::quantity::{Quantity, Unit};
use crate::rulebase::{Deed, Step, UnitCard};

/// Tells every timer that has run out and was not told.
pub fn tick(desk: &mut Desk<'_>) {
    let due: Vec<(u32, RunningTimer)> = desk
        .state
        .record
        .timers
        .iter()
        .filter(|(_, timer)| !timer.told && timer.ends <= desk.now)
        .map(|(number, timer)| (*number, timer.clone()))
        .collect();
    for (timer, running) in due {
        desk.emit(Event::TimerTold { timer });
        if tightened_in_time(desk, &running) {
            continue;
        }
        desk.say(Part::TimerEnded { what: running.what });
    }
}

/// Starts the timer of a step, if it has one.
pub fn start_for(desk: &mut Desk<'_>, step: &Step) {
    if let Some(timer) = &step.timer {
        start(desk, timer.what.clone(), timer.lasts);
    }
}

/// What is left of the wait that a step is, in whole minutes or, under one, in seconds; none when it is no wait or over.
pub fn left(desk: &Desk<'_>, step: &Step) -> Option<Quantity> {
    let what = &step.timer.as_ref().filter(|_| step.deed == Deed::Wait)?.what;
    let here = desk.state.progress.current.as_ref();
    let own = |timer: &&RunningTimer| {
        timer.what == *what && timer.place.as_ref() == here && timer.step.as_ref() == Some(&step.id)
    };
    let timer = desk.state.record.timers.values().rev().find(own)?;
    let seconds = (timer.ends - desk.now).num_seconds();
    match seconds {
        ..=0 => None,
        1..60 => Some(Quantity::new(seconds as f64, Unit::Second)),
        _ => Some(Quantity::new((seconds as f64 / 60.0).ceil(), Unit::Minute)),
    }
}

/// Starts the open-time clock of threadlocker just put on.
pub fn for_locker(desk: &mut Desk<'_>, card: &UnitCard, moved: &[Moved]) {
    for change in moved {
        if let Change::Locked { open, .. } = &change.change {
            let what = open_time(card, &change.about);
            start(desk, what, Quantity::new(*open, Unit::Minute));
        }
    }
}

/// What an open-time clock is called.
fn open_time(card: &UnitCard, about: &str) -> String {
    format!("{} threadlocker, open time", card.name_of(about))
}

/// Whether it is the open time of a joint that is tight: then its end is nothing to hurry for.
fn tightened_in_time(desk: &Desk<'_>, timer: &RunningTimer) -> bool {
    let place = timer.place.as_ref().and_then(|place| desk.state.progress.places.get(place));
    place.is_some_and(|place| {
        let Some(card) = desk.rules.units.get(&place.unit) else { return false };
        let mut parts = place.parts.iter();
        parts.any(|(id, part)| {
            let tight = matches!(part.fitting, Fitting::Torqued | Fitting::Nipped);
            part.locked && tight && open_time(card, id) == timer.what
        })
    })
}

/// Starts a timer and says so.
pub fn start(desk: &mut Desk<'_>, what: String, lasts: Quantity) {
    let Ok(seconds) = lasts.in_unit(Unit::Second) else { return };
    let timer = desk.state.record.timers.keys().next_back().map_or(1, |last| last + 1);
    desk.emit(Event::TimerStarted { timer, what: what.clone(), seconds });
    desk.say(Part::Ack(Ack::TimerSet { what, lasts }));
}

//! Questions about the record: how long so far or to go, and what was done, said or recorded.

use crate::act::{Act, Which};
use crate::bench::desk::{Desk, Moment};
use crate::bench::entries::undo;
use crate::bench::{Fact, Part};

/// How many lines of the record are said at once.
const LAST_LINES: usize = 3;

/// How long so far, how long to go?
pub fn time(desk: &mut Desk<'_>, act: &Act) {
    match act.slots.which {
        Some(Which::Cure) => cure(desk),
        Some(Which::Step) => since_shown(desk),
        _ => running(desk),
    }
}

fn minutes(desk: &Desk<'_>, from: Moment) -> f64 {
    (desk.now - from).num_milliseconds() as f64 / 60_000.0
}

/// A timer that runs is what is asked for; else the job's own time.
fn running(desk: &mut Desk<'_>) {
    let timers: Vec<(String, Moment)> = desk
        .state
        .record
        .timers
        .values()
        .filter(|timer| timer.ends > desk.now)
        .map(|timer| (timer.what.clone(), timer.ends))
        .collect();
    for (what, ends) in &timers {
        let minutes = Some(-minutes(desk, *ends));
        desk.say(Part::Fact(Fact::Time { what: what.clone(), minutes, to_go: true }));
    }
    let Some(opened) = desk.state.record.opened else { return crate::bench::entries::job::none_open(desk) };
    let minutes = Some(minutes(desk, opened));
    desk.say(Part::Fact(Fact::Time { what: "the job".to_owned(), minutes, to_go: false }));
}

fn since_shown(desk: &mut Desk<'_>) {
    let key = desk.cursor().map(|step| (desk.place_id(), step));
    let shown = key.and_then(|key| desk.state.record.shown.get(&key)).copied();
    let minutes = shown.map(|shown| minutes(desk, shown));
    desk.say(Part::Fact(Fact::Time { what: "this step".to_owned(), minutes, to_go: false }));
}

/// Until when a threadlocked joint may not be handled or used.
pub fn cure(desk: &mut Desk<'_>) {
    let Some(card) = desk.card() else { return crate::bench::entries::job::none_open(desk) };
    let here = desk.place_id();
    let joints: Vec<(String, Moment, Option<f64>, Option<f64>)> = desk
        .state
        .record
        .locked
        .iter()
        .filter(|((place, _), _)| *place == here)
        .map(|((_, part), locking)| (card.name_of(part).to_owned(), locking.at, locking.handle, locking.cure))
        .collect();
    if joints.is_empty() {
        return desk.say(Part::Unknown { what: "a joint that is curing".to_owned() });
    }
    for (name, at, handle, cure) in joints {
        let gone = minutes(desk, at);
        for (what, until) in [("handling", handle), ("use", cure)] {
            if let Some(until) = until {
                let what = format!("{name} threadlocker, before {what}");
                let left = Some((until - gone).max(0.0));
                desk.say(Part::Fact(Fact::Time { what, minutes: left, to_go: true }));
            }
        }
    }
}

/// What was done, said or recorded (about a part, where one is named)?
pub fn log(desk: &mut Desk<'_>, act: &Act) {
    let Some(card) = desk.card() else { return crate::bench::entries::job::none_open(desk) };
    let here = desk.state.progress.current.clone();
    let standing = desk.state.events.iter().filter(|kept| {
        kept.place == here
            && kept.event.changes_job()
            && !desk.state.struck.contains(&kept.utterance.id)
            && about_fits(act, kept)
    });
    let mut rows: Vec<(String, String)> = standing
        .filter_map(|kept| {
            let what = undo::describe(desk, &card, &kept.event)?;
            Some((kept.at.format("%H:%M").to_string(), what))
        })
        .collect();
    rows.dedup_by(|a, b| a.1 == b.1);
    let first = rows.len().saturating_sub(LAST_LINES);
    let rows = rows.split_off(first);
    if rows.is_empty() {
        return desk.say(Part::Unknown { what: "any record of that".to_owned() });
    }
    desk.say(Part::Fact(Fact::Log { rows }));
}

fn about_fits(act: &Act, kept: &crate::event::Envelope) -> bool {
    use crate::event::Event;
    let Some(about) = act.slots.about.as_deref() else { return true };
    match &kept.event {
        Event::Reading(value) | Event::Corrected { now: value, .. } => value.about.as_deref() == Some(about),
        Event::StepDone { moved, .. } => moved.iter().any(|change| change.about == about),
        Event::Wanted { about: own, .. } | Event::Fitted { about: own, .. } => own == about,
        Event::Troubled { about: own, .. } | Event::Finding { about: own, .. } => {
            own.as_deref() == Some(about)
        }
        _ => false,
    }
}

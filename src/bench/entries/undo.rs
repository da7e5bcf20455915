//! Taking back the last thing recorded: the record goes back, the metal does not.

use crate::bench::desk::Desk;
use crate::bench::{Ack, Part, present};
use crate::event::{Change, Event, Moved};
use crate::rulebase::UnitCard;

/// Take back the last thing recorded at this place; again goes further.
pub fn undo(desk: &mut Desk<'_>) {
    let Some(last) = desk.state.last_standing() else {
        return desk.say(Part::Ack(Ack::NothingToTakeBack));
    };
    let utterance = last.utterance.id.clone();
    let struck: Vec<Event> = desk
        .state
        .events
        .iter()
        .filter(|kept| kept.utterance.id == utterance && kept.event.changes_job())
        .map(|kept| kept.event.clone())
        .collect();
    let Some(card) = desk.card() else { return };
    let what = struck.iter().rev().find_map(|event| describe(desk, &card, event)).unwrap_or_default();
    let metal = struck.iter().flat_map(|event| still(&card, event)).collect();
    desk.emit(Event::TakenBack { utterance });
    desk.show_step = true;
    desk.say(Part::Ack(Ack::TakenBack { what, metal }));
}

/// What an event was, in a few words.
pub fn describe(desk: &Desk<'_>, card: &UnitCard, event: &Event) -> Option<String> {
    let title = |id: &str| desk.procedure()?.step(id).map(|step| present::title(card, step));
    match event {
        Event::StepDone { step, .. }
        | Event::StepFailed { step, .. }
        | Event::Skipped { step, .. }
        | Event::Deviated { step, .. }
        | Event::Reopened { step } => title(step),
        Event::Reading(kept) | Event::Corrected { now: kept, .. } => {
            let name = kept.about.as_deref().map_or(kept.role.as_str(), |about| card.name_of(about));
            let figure = kept.value.map(crate::quantity::figures::words).or_else(|| kept.text.clone());
            Some(format!("{name} {}", figure.unwrap_or_default()).trim().to_owned())
        }
        Event::Wanted { about, .. } => Some(format!("wanted {}", card.name_of(about))),
        Event::Fitted { about, .. } => Some(format!("new {}", card.name_of(about))),
        Event::Noted { .. } => Some("the note".to_owned()),
        Event::Troubled { .. } => Some("the trouble".to_owned()),
        Event::TimerStarted { what, .. } => Some(format!("the timer for {what}")),
        Event::ReadBack { which } => Some(format!("the settings {which}")),
        _ => None,
    }
}

/// What the metal still is, whatever the record says.
fn still(card: &UnitCard, event: &Event) -> Vec<String> {
    let moved = match event {
        Event::StepDone { moved, .. } | Event::Deviated { moved, .. } => moved.as_slice(),
        _ => &[],
    };
    moved.iter().filter_map(|change| stands(card, change)).collect()
}

fn stands(card: &UnitCard, moved: &Moved) -> Option<String> {
    let name = card.name_of(&moved.about);
    let is = match &moved.change {
        Change::Loose => "loose",
        Change::Off => "off",
        Change::On => "on by hand",
        Change::Tight { .. } => "tight",
        Change::Locked { .. } => "wet with threadlocker",
        Change::Vented | Change::Safe => "as you left it, and unsafe until it is proved",
        Change::Live => "under load",
        Change::Filled => "in",
        Change::Drained => "out",
        Change::At { .. } | Change::Lost => "where your hand left it",
        Change::Clean | Change::Marked | Change::MarkSeen | Change::New | Change::Passed => return None,
    };
    Some(format!("the {name} is still {is}"))
}

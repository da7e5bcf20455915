//! What a step does to its part or adjuster, folded.

use super::{AdjusterState, Fitting, PartState, Place, Position};
use crate::event::{Change, Moved};

/// Folds one change into the place.
pub fn moved(place: &mut Place, change: &Moved) {
    match &change.change {
        Change::At { value } => adjuster(place, &change.about).position = Position::At(*value),
        Change::Lost => adjuster(place, &change.about).position = Position::Lost,
        other => part(place.parts.entry(change.about.clone()).or_default(), other),
    }
}

fn adjuster<'a>(place: &'a mut Place, id: &str) -> &'a mut AdjusterState {
    place.adjusters.entry(id.to_owned()).or_default()
}

fn part(part: &mut PartState, change: &Change) {
    match change {
        Change::Loose => undone(part, Fitting::Loose),
        Change::Off => undone(part, Fitting::Off),
        Change::On => fit(part, Fitting::On),
        Change::Tight { torque } => fit(part, if *torque { Fitting::Torqued } else { Fitting::Nipped }),
        Change::Locked { .. } => {
            part.locked = true;
            part.clean = false;
        }
        Change::Clean => {
            part.clean = true;
            part.locked = false;
        }
        Change::Marked => part.marked = true,
        Change::MarkSeen => part.mark_seen = true,
        Change::Vented => (part.vented, part.safe, part.live) = (true, false, false),
        Change::Safe => (part.safe, part.live) = (true, false),
        Change::Live => (part.live, part.safe, part.vented) = (true, false, false),
        Change::New => part.new = true,
        Change::Filled => part.drained = false,
        Change::Drained => part.drained = true,
        Change::Passed => part.passed = true,
        Change::At { .. } | Change::Lost => {}
    }
}

/// Undoing breaks the threadlocker's bond and may move the mark.
fn undone(part: &mut PartState, fitting: Fitting) {
    part.fitting = fitting;
    part.disturbed = true;
    part.mark_seen = false;
}

fn fit(part: &mut PartState, fitting: Fitting) {
    part.fitting = fitting;
    part.mark_seen = false;
}

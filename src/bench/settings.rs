//! Lists of settings: as found, wanted, left, one row an adjuster.

use super::deeds::unit_of;
use super::desk::Desk;
use super::state::AdjusterState;
use super::{SettingRow, SettingsCard};
use crate::rulebase::{Adjuster, AdjusterKind, ReadBack};

/// The list for reading back, or for the log.
pub fn list(desk: &Desk<'_>, which: ReadBack, asks: bool) -> SettingsCard {
    let rows = desk.card().map(|card| card.adjusters.iter().map(|adjuster| row(desk, adjuster)).collect());
    SettingsCard { which, rows: rows.unwrap_or_default(), asks }
}

fn row(desk: &Desk<'_>, adjuster: &Adjuster) -> SettingRow {
    let known = known(desk, &adjuster.id);
    let words = desk.state.record.wanted_words.get(&(desk.place_id(), adjuster.id.clone())).cloned();
    SettingRow {
        name: adjuster.name().to_owned(),
        unit: unit_of(adjuster).name().to_owned(),
        found: known.found,
        wanted: target(adjuster, &known),
        left: known.left,
        travel: known.travel_again.or(known.travel),
        words,
    }
}

/// Where an adjuster is to be: as wanted, else as found. A charge that nobody wants otherwise is the card's: what the
/// gauge shows as found is what a leak and its own filling have left.
pub fn target(adjuster: &Adjuster, known: &AdjusterState) -> Option<f64> {
    match &adjuster.kind {
        AdjusterKind::Charge { limit, .. } => known.wanted.or(Some(limit.nominal().value)),
        _ => known.target(),
    }
}

/// What is known of an adjuster at the place in hand.
pub fn known(desk: &Desk<'_>, id: &str) -> AdjusterState {
    desk.place().and_then(|place| place.adjusters.get(id)).cloned().unwrap_or_default()
}

/// Whether every adjuster that has a wanted setting was left somewhere.
pub fn all_left(desk: &Desk<'_>) -> bool {
    desk.place().is_some_and(|place| {
        place.adjusters.values().filter(|known| known.target().is_some()).all(|known| known.left.is_some())
    })
}

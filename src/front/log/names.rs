//! Names for the ids of events, by the pack that the job is pinned to; the ids themselves where it has none.

use crate::bench::state::State;
use crate::quantity::{Dimension, Quantity, Unit};
use crate::rulebase::Pack;
use crate::session::plain;

/// Names by a pack.
#[derive(Debug, Default)]
pub struct Names {
    pack: Option<Pack>,
}

impl Names {
    /// Names by this pack.
    pub fn new(pack: Option<Pack>) -> Self {
        Self { pack }
    }

    /// The name of a part or an adjuster of the unit at a place.
    pub fn part(&self, state: &State, place: &str, id: &str) -> String {
        let card = self.unit_at(state, place);
        card.map_or_else(|| id.replace('-', " "), |card| card.name_of(id).to_owned())
    }

    /// What a step says to do.
    pub fn step(&self, state: &State, place: &str, id: &str) -> String {
        let held = state.progress.places.get(place);
        let procedure = held.and_then(|held| self.pack.as_ref()?.procedure(&held.procedure, &held.unit));
        let text = procedure.and_then(|procedure| procedure.step(id)?.text.clone());
        text.unwrap_or_else(|| {
            let (_, last) = id.split_once('/').unwrap_or(("", id));
            last.replace('-', " ")
        })
    }

    /// The adjusters of the unit at a place, in the card's order.
    pub fn adjusters(&self, state: &State, place: &str) -> Vec<String> {
        let card = self.unit_at(state, place);
        card.map(|card| card.adjusters.iter().map(|adjuster| adjuster.id.clone()).collect())
            .unwrap_or_default()
    }

    fn unit_at(&self, state: &State, place: &str) -> Option<std::sync::Arc<crate::rulebase::UnitCard>> {
        let held = state.progress.places.get(place)?;
        self.pack.as_ref()?.unit(&held.unit).cloned()
    }
}

/// A figure with its unit, as the screen has it.
pub fn figure(value: f64, unit: Option<&str>) -> String {
    match unit.and_then(Unit::parse) {
        // What is counted is said in words: "14 clicks", "position 2".
        Some(unit) if unit.dimension() == Dimension::Position => format!("position {value}"),
        Some(unit) if unit.dimension() == Dimension::Clicks || unit.name() == "turn" => {
            format!("{value} {}", unit.words(value))
        }
        Some(unit) => Quantity::new(value, unit).show(),
        None => plain(&format!("{value} {}", unit.unwrap_or_default())),
    }
}

//! A unit card: the facts of one kind of damper.

use super::{Adjuster, Part};
use crate::quantity::Quantity;
use std::collections::BTreeMap;

/// The facts of one kind of unit.
#[derive(Debug, Clone, PartialEq)]
pub struct UnitCard {
    /// Its id ("birch-44").
    pub id: String,
    /// Spoken names, the first being the one the bench says.
    pub called: Vec<String>,
    /// What it is, in one line.
    pub what: String,
    /// `front` or `rear`, so that a bare "left" is a corner; none where the vehicle has one such unit.
    pub axle: Option<String>,
    /// For each end of the unit, from where directions are seen ("foot" -> "from below").
    pub ends: BTreeMap<String, String>,
    /// Sizes of the whole unit ("stroke", "shaft", "reservoir-bore").
    pub sizes: BTreeMap<String, Quantity>,
    /// Its adjusters, in the order they are dealt with.
    pub adjusters: Vec<Adjuster>,
    /// Its parts, fasteners and fluids, in the card's order.
    pub parts: Vec<Part>,
    /// Where the card's figures come from when an entry does not say.
    pub source: Option<String>,
}

impl UnitCard {
    /// The name the bench says.
    pub fn name(&self) -> &str {
        self.called.first().map_or(self.id.as_str(), String::as_str)
    }

    /// The adjuster of that id.
    pub fn adjuster(&self, id: &str) -> Option<&Adjuster> {
        self.adjusters.iter().find(|adjuster| adjuster.id == id)
    }

    /// The part of that id.
    pub fn part(&self, id: &str) -> Option<&Part> {
        self.parts.iter().find(|part| part.id == id)
    }

    /// The spoken name of an adjuster or part; the id itself for anything else.
    pub fn name_of<'a>(&'a self, id: &'a str) -> &'a str {
        self.adjuster(id).map(Adjuster::name).or_else(|| self.part(id).map(Part::name)).unwrap_or(id)
    }
}

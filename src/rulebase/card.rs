//! A unit card: the facts of one kind of damper.

use super::{Adjuster, Deed, Handling, Mark, Part};
use crate::quantity::Quantity;
use crate::source::Place;
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
    /// `front` or `rear`, so that a bare "left" is a corner; `none` where the unit sits at no corner.
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
    /// Where the card stands.
    pub at: Place,
}

impl UnitCard {
    /// The name the bench says.
    pub fn name(&self) -> &str {
        self.called.first().map_or(self.id.as_str(), String::as_str)
    }

    /// Whether it sits at a corner of the vehicle.
    pub fn has_corner(&self) -> bool {
        self.axle.as_deref() != Some("none")
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

    /// Whether the card has an adjuster or part of that id.
    pub fn has(&self, id: &str) -> bool {
        self.adjuster(id).is_some() || self.part(id).is_some()
    }

    /// The ids of its adjusters and parts, adjusters first.
    pub fn ids(&self) -> impl Iterator<Item = &str> {
        let adjusters = self.adjusters.iter().map(|adjuster| adjuster.id.as_str());
        adjusters.chain(self.parts.iter().map(|part| part.id.as_str()))
    }

    /// How an adjuster or part is handled for a deed, where the card says so.
    pub fn handling(&self, id: &str, deed: Deed) -> Option<&Handling> {
        let adjuster = self.adjuster(id).and_then(|adjuster| adjuster.handling.get(deed.as_str()));
        adjuster.or_else(|| self.part(id)?.handling.get(deed.as_str()))
    }

    /// The witness mark of an adjuster or part.
    pub fn mark(&self, id: &str) -> Option<&Mark> {
        self.adjuster(id).and_then(|adjuster| adjuster.mark.as_ref()).or_else(|| self.part(id)?.mark.as_ref())
    }

    /// What to do when an adjuster or part will not move, mildest first.
    pub fn stuck(&self, id: &str) -> &[String] {
        let adjuster = self.adjuster(id).map(|adjuster| adjuster.stuck.as_slice());
        adjuster.or_else(|| self.part(id).map(|part| part.stuck.as_slice())).unwrap_or_default()
    }

    /// From where the directions of an adjuster or part are seen: its own, or its end's.
    pub fn seen_from(&self, id: &str) -> Option<&str> {
        let (own, end) = match self.adjuster(id) {
            Some(adjuster) => (&adjuster.seen_from, &adjuster.end),
            None => self.part(id).map(|part| (&part.seen_from, &part.end))?,
        };
        own.as_deref().or_else(|| self.ends.get(end.as_deref()?).map(String::as_str))
    }
}

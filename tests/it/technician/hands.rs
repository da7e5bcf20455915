//! What the technician's hands and eyes find: a unit of its own invention.

use super::Dice;
use std::collections::BTreeMap;

/// The unit on the bench.
#[derive(Debug, Clone)]
pub struct Hands {
    /// Each adjuster's travel and setting as found, once it is looked at.
    adjusters: BTreeMap<String, Adjuster>,
    /// Lengths measured, by what was to be measured: the same again reads the same.
    lengths: BTreeMap<String, f64>,
    /// What chance there is.
    seed: u64,
}

/// An adjuster of the unit.
#[derive(Debug, Clone, Copy)]
pub struct Adjuster {
    /// All of its clicks, positions or turns.
    pub travel: f64,
    /// Where it stood.
    pub found: f64,
    /// Where it is to stand.
    pub wanted: f64,
}

impl Hands {
    /// A unit drawn by chance.
    pub fn new(dice: &mut Dice) -> Self {
        Self { adjusters: BTreeMap::new(), lengths: BTreeMap::new(), seed: dice.below(u64::MAX) }
    }

    /// The adjuster of that name; `most` is what was said of its range, where anything was.
    pub fn adjuster(&mut self, about: &str, most: Option<f64>) -> Adjuster {
        let letters: u64 = about.bytes().map(u64::from).sum();
        let mut dice = Dice::new(self.seed ^ letters);
        let drawn = || {
            let most = most.unwrap_or(12.0);
            // Now and then a click is lost.
            let travel = if dice.of_hundred(15) && most > 8.0 { most - 1.0 } else { most };
            let found = dice.below(travel as u64) as f64;
            Adjuster { travel, found, wanted: found }
        };
        *self.adjusters.entry(about.to_owned()).or_insert_with(drawn)
    }

    /// What was measured there before.
    pub fn measured(&self, what: &str) -> Option<f64> {
        self.lengths.get(what).copied()
    }

    /// It measures that much.
    pub fn measure(&mut self, what: &str, value: f64) {
        self.lengths.insert(what.to_owned(), value);
    }

    /// It has no setting beyond this one: looked at again, it stood lower.
    pub fn narrow(&mut self, about: &str, most: f64) {
        if let Some(adjuster) = self.adjusters.get_mut(about) {
            adjuster.travel = adjuster.travel.min(most);
            adjuster.found = adjuster.found.min(most);
            adjuster.wanted = adjuster.wanted.min(most);
        }
    }

    /// Another setting is wanted.
    pub fn want(&mut self, about: &str, wanted: f64) {
        if let Some(adjuster) = self.adjusters.get_mut(about) {
            adjuster.wanted = wanted;
        }
    }

    /// An adjuster that was looked at already.
    pub fn seen(&self) -> Vec<String> {
        self.adjusters.keys().cloned().collect()
    }
}

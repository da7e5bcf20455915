//! An adjuster on a unit card: what kind it is and how it may be moved.

use super::{Handling, Mark};
use crate::quantity::{Limit, Quantity};
use crate::source::Place;
use crate::workings::adjusters::Way;
use std::collections::BTreeMap;

/// One adjuster of a unit.
#[derive(Debug, Clone, PartialEq)]
pub struct Adjuster {
    /// Its id on the card ("slow-rebound").
    pub id: String,
    /// Spoken names, the first being the one the bench says.
    pub called: Vec<String>,
    /// What kind it is, with its figures.
    pub kind: AdjusterKind,
    /// Which end of the unit it sits at, for `seen_from`.
    pub end: Option<String>,
    /// From where its directions are seen ("from below"); the end's when not given.
    pub seen_from: Option<String>,
    /// Parts that carry its position: removing one makes the position unknown.
    pub through: Vec<String>,
    /// How it is turned and held ("finger and thumb, never forced").
    pub by_hand: Option<String>,
    /// The tool that turns it, as named in the crib, where fingers do not.
    pub tool: Option<String>,
    /// How the other side is held.
    pub hold: Option<String>,
    /// Its witness mark or index ("the dot on the ring with the line on the foot").
    pub mark: Option<Mark>,
    /// When it will not move: a ladder that stops before damage, mildest first.
    pub stuck: Vec<String>,
    /// A limit that must not be passed.
    pub never: Option<String>,
    /// What an inspection looks for.
    pub accept: Option<String>,
    /// How it is handled for a deed (by the deed's name).
    pub handling: BTreeMap<String, Handling>,
    /// Damping force of one click at the stated velocity, where the maker gives it.
    pub force_per_click: Option<Quantity>,
    /// Where the figures come from.
    pub source: Option<String>,
    /// Why it is as it is.
    pub why: Option<String>,
    /// Where the card says so.
    pub at: Place,
}

/// The kinds of adjuster (design, section 2).
#[derive(Debug, Clone, PartialEq)]
pub enum AdjusterKind {
    /// Detents between two stops; full in is 0.
    Clicker {
        /// All of its clicks.
        clicks: u32,
        /// The way that closes it.
        closes: Way,
    },
    /// Numbered positions round a circle.
    Ring {
        /// The lowest number.
        first: u32,
        /// The highest number.
        last: u32,
        /// The only way it may turn, where it has one.
        only: Option<Way>,
        /// The way that counts up.
        rises: Way,
        /// Whether it goes on from the highest number to the lowest.
        wraps: bool,
    },
    /// A threaded perch or screw.
    Screw {
        /// Length a turn.
        pitch: Quantity,
        /// All of its turns, where the card says.
        turns: Option<f64>,
        /// The way that adds preload (or closes it).
        adds: Way,
        /// What it is measured from ("top face of the perch to the carrier's collar").
        datum: Option<String>,
    },
    /// Gas in a chamber, by gauge.
    Charge {
        /// The gauge pressure and its band.
        limit: Limit,
        /// At this temperature.
        at: Quantity,
    },
}

impl Adjuster {
    /// The name the bench says.
    pub fn name(&self) -> &str {
        self.called.first().map_or(self.id.as_str(), String::as_str)
    }
}

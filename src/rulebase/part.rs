//! A part, fastener or fluid on a unit card.

use crate::quantity::{Limit, Quantity};
use crate::source::Place;
use crate::workings::adjusters::Way;
use std::collections::BTreeMap;

/// A metric or inch thread as the card writes it ("M14 x 1").
#[derive(Debug, Clone, PartialEq)]
pub struct Thread {
    /// As written.
    pub text: String,
    /// Major diameter.
    pub diameter: Quantity,
    /// Pitch.
    pub pitch: Quantity,
    /// Left-hand threads are stated.
    pub left_hand: bool,
}

/// Threadlocker on a joint.
#[derive(Debug, Clone, PartialEq)]
pub struct Locker {
    /// Strength: low, medium or high.
    pub grade: String,
    /// How little and where ("one drop on the last three threads").
    pub put: String,
    /// Where never, and why.
    pub never: Option<String>,
    /// How long it may stand before the joint is tight.
    pub open: Quantity,
    /// How long until it may be handled.
    pub handle: Option<Quantity>,
    /// How long until it may be used.
    pub cure: Option<Quantity>,
}

/// A witness mark on a part.
#[derive(Debug, Clone, PartialEq)]
pub struct Mark {
    /// What lines up with what ("the paint line on the nut with the zero of the foot").
    pub lines_up: String,
    /// How it is made.
    pub made: Option<String>,
}

/// A coil spring's figures.
#[derive(Debug, Clone, PartialEq)]
pub struct Spring {
    /// Rate.
    pub rate: Quantity,
    /// Free length.
    pub free: Quantity,
    /// Block length, coils closed.
    pub block: Option<Quantity>,
    /// Inside diameter.
    pub bore: Option<Quantity>,
}

/// How a part is handled for one deed, where it differs from turning it with its tool.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Handling {
    /// The tool ("C-spanner", "21 mm socket").
    pub tool: Option<String>,
    /// What is done, beyond the step's own sentence ("a full turn frees it").
    pub how: Option<String>,
    /// A way other than the usual one.
    pub way: Option<Way>,
}

/// One part, fastener or fluid.
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    /// Its id on the card ("foot-nut").
    pub id: String,
    /// Spoken names, the first being the one the bench says.
    pub called: Vec<String>,
    /// What it is, where the name does not say it.
    pub what: Option<String>,
    /// Its thread.
    pub thread: Option<Thread>,
    /// Width across flats of an outer hexagon.
    pub across: Option<Quantity>,
    /// Size of the hexagon key.
    pub key: Option<Quantity>,
    /// A tool that is neither ("C-spanner"), as named in the crib.
    pub tool: Option<String>,
    /// Hole through it or through what it is screwed to.
    pub bore: Option<Quantity>,
    /// How the other side is held ("12 mm flats on the shaft").
    pub hold: Option<String>,
    /// Which way round it goes ("with its lip to the foot").
    pub goes: Option<String>,
    /// The way that undoes it.
    pub opens: Way,
    /// Which end of the unit it sits at.
    pub end: Option<String>,
    /// From where its directions are seen; the end's when not given.
    pub seen_from: Option<String>,
    /// Torque and its band.
    pub torque: Option<Limit>,
    /// Snug only, and how ("short arm, finger and thumb").
    pub nip: Option<String>,
    /// Why its torque is critical; none when it is not.
    pub critical: Option<String>,
    /// What is done when its torque went past its band: what may be spoilt, and what is looked at or renewed first.
    pub too_tight: Option<String>,
    /// Threadlocker.
    pub locker: Option<Locker>,
    /// Witness mark.
    pub mark: Option<Mark>,
    /// When it will not move: a ladder that stops before damage, mildest first.
    pub stuck: Vec<String>,
    /// Spring figures: the one fitted, then the others on the shelf.
    pub springs: Vec<Spring>,
    /// Named limits ("run-out" -> at most 0.05 mm).
    pub limits: BTreeMap<String, Limit>,
    /// Named sizes ("drift" -> ...).
    pub sizes: BTreeMap<String, Quantity>,
    /// What an inspection looks for ("no score that a finger nail catches").
    pub accept: Option<String>,
    /// New each time.
    pub single_use: bool,
    /// How far it may be turned, or a limit not to be passed ("never out past the collar's face").
    pub never: Option<String>,
    /// How it is handled for a deed (by the deed's name).
    pub handling: BTreeMap<String, Handling>,
    /// What must be fitted before it.
    pub over: Vec<String>,
    /// Why a value is as it is.
    pub why: Option<String>,
    /// Where the figures come from; the card's when not given.
    pub source: Option<String>,
    /// Where the card says so.
    pub at: Place,
}

impl Part {
    /// The name the bench says.
    pub fn name(&self) -> &str {
        self.called.first().map_or(self.id.as_str(), String::as_str)
    }
}

//! One unit of one job: what is closed, and how its parts and adjusters stand.

use crate::act::{Corner, End};
use std::collections::{BTreeMap, BTreeSet};

/// One unit of one job.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Place {
    /// Unit card.
    pub unit: String,
    /// Procedure.
    pub procedure: String,
    /// Corner, when known.
    pub corner: Option<Corner>,
    /// The step in hand.
    pub cursor: Option<String>,
    /// Whether "back" put it there.
    pub went_back: bool,
    /// Closed steps.
    pub closed: BTreeMap<String, Closing>,
    /// How often a step has failed.
    pub failed: BTreeMap<String, u32>,
    /// Steps whose branch is being worked.
    pub branching: BTreeSet<String>,
    /// Parts that something was done to.
    pub parts: BTreeMap<String, PartState>,
    /// Adjusters that something was done to or known of.
    pub adjusters: BTreeMap<String, AdjusterState>,
    /// Values kept, by what they are about and their role.
    pub readings: BTreeMap<(String, String), f64>,
    /// Words kept, by role.
    pub texts: BTreeSet<String>,
    /// Which lists were said back and confirmed.
    pub said_back: BTreeSet<String>,
    /// A reading said back by ear, closed by the next entry and reopened by a denial.
    pub heard_back: Option<String>,
    /// How far each "when it will not move" ladder was climbed.
    pub stuck: BTreeMap<String, u32>,
    /// Steps with an out-of-limits value standing.
    pub out: BTreeSet<String>,
    /// Whether the spring-rate question was answered.
    pub rate_asked: bool,
}

/// How a step stands closed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Closing {
    /// Done.
    Done,
    /// Left out.
    Skipped {
        /// Whether it was critical.
        critical: bool,
    },
    /// Closed out of limits with a reason.
    Deviated,
}

/// How a part is fitted.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum Fitting {
    /// As it came.
    #[default]
    AsFound,
    /// Undone, still there.
    Loose,
    /// Off.
    Off,
    /// On by hand: between nip and torque.
    On,
    /// Tight by torque.
    Torqued,
    /// Tight by a nip.
    Nipped,
}

/// What has been done to a part.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct PartState {
    /// How it is fitted.
    pub fitting: Fitting,
    /// Whether it was ever undone or off in this job.
    pub disturbed: bool,
    /// Threadlocker that stands on it.
    pub locked: bool,
    /// It was cleaned since.
    pub clean: bool,
    /// It has a witness mark.
    pub marked: bool,
    /// The mark was looked at after the last thing that could move it.
    pub mark_seen: bool,
    /// A new one is fitted.
    pub new: bool,
    /// Gas out or spring loose, not proved.
    pub vented: bool,
    /// Proved safe.
    pub safe: bool,
    /// It was safe and is charged, or under load, again.
    pub live: bool,
    /// Fluid out.
    pub drained: bool,
    /// Inspected and good.
    pub passed: bool,
}

/// Where an adjuster stands.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub enum Position {
    /// Not known yet: nobody has counted.
    #[default]
    Uncounted,
    /// Known, from full in.
    At(f64),
    /// It has been apart.
    Lost,
}

/// What is known of an adjuster.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct AdjusterState {
    /// As found.
    pub found: Option<f64>,
    /// As found, counted from full out, while the travel is not known.
    pub found_from_out: Option<f64>,
    /// Travel counted on this unit.
    pub travel: Option<f64>,
    /// Travel counted again.
    pub travel_again: Option<f64>,
    /// Wanted, when it is not as found.
    pub wanted: Option<f64>,
    /// The end the wanted setting was said from.
    pub wanted_from: Option<End>,
    /// As left.
    pub left: Option<f64>,
    /// Where it stands.
    pub position: Position,
}

impl AdjusterState {
    /// The wanted setting: as found unless something else is wanted.
    pub fn target(&self) -> Option<f64> {
        self.wanted.or(self.found)
    }

    /// As left, if it still stands there.
    pub fn left_where_it_stands(&self) -> Option<f64> {
        self.left.filter(|left| self.position == Position::At(*left))
    }
}

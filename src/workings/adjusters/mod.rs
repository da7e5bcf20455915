//! Adjusters: the legal path from where one stands to where it is wanted, by kind.
//!
//! Every path is data (a way, an amount, the positions passed); nothing here speaks. A path that cannot be walked is
//! a typed refusal. Conventions are the design's (section 2); no standard fixes them (common practice, no source).

mod clicker;
pub(super) mod register;
mod ring;
mod screw;
mod travel;

use serde::{Deserialize, Serialize};
use thiserror::Error;

use crate::quantity::{Quantity, Unit};

pub use clicker::{Clicker, Setting};
pub use ring::Ring;
pub use screw::Screw;
pub use travel::Travel;

/// A way to turn, as seen facing the part.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Way {
    /// With the clock.
    Clockwise,
    /// Against the clock.
    Anticlockwise,
}

impl Way {
    /// The other way.
    #[must_use]
    pub const fn opposite(self) -> Self {
        match self {
            Self::Clockwise => Self::Anticlockwise,
            Self::Anticlockwise => Self::Clockwise,
        }
    }

    /// "clockwise" or "anticlockwise".
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Clockwise => "clockwise",
            Self::Anticlockwise => "anticlockwise",
        }
    }
}

/// An end of an adjuster's travel.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Stop {
    /// Closed; a clicker's zero.
    #[serde(rename = "full in")]
    FullIn,
    /// Open.
    #[serde(rename = "full out")]
    FullOut,
}

impl Stop {
    /// "full in" or "full out".
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::FullIn => "full in",
            Self::FullOut => "full out",
        }
    }
}

/// A turn of an adjuster: which way, and how many clicks, positions or turns.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Turn {
    /// The way.
    pub way: Way,
    /// How many, never negative; zero where nothing is to be turned.
    pub amount: f64,
    /// [`Unit::Click`], [`Unit::PositionStep`] or [`Unit::Turn`].
    pub unit: Unit,
}

/// How a stop is found first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct ToStop {
    /// The way to turn until it stops by itself, by finger and thumb, never forced.
    pub way: Way,
    /// The stop it ends at.
    pub stop: Stop,
}

/// A legal path to a wanted setting.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Path {
    /// The stop to go to first, where the path is counted from one.
    pub to_stop: Option<ToStop>,
    /// The turn then.
    pub then: Turn,
    /// Ring positions passed on the way, in order, without the first and the last.
    pub passes: Vec<i32>,
    /// How far a screw's part moves along its thread, in mm, signed as its length grows.
    pub length: Option<Quantity>,
}

/// Why there is no path.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum NoPath {
    /// A setting below zero.
    #[error("{wanted} is below zero")]
    Negative {
        /// What was wanted.
        wanted: f64,
    },
    /// Half a click, half a position, or no number at all.
    #[error("{wanted} is not a whole number, and this adjuster has no places between")]
    NotWhole {
        /// What was wanted.
        wanted: f64,
    },
    /// More than this unit's travel.
    #[error("{wanted} is more than the {travel} counted on this unit")]
    BeyondTravel {
        /// What was wanted.
        wanted: f64,
        /// The travel counted on this unit.
        travel: f64,
    },
    /// A ring has no such position.
    #[error("{wanted} is no position of this ring, which has {min} to {max}")]
    NoPosition {
        /// What was wanted, or read.
        wanted: f64,
        /// The lowest position.
        min: i32,
        /// The highest position.
        max: i32,
    },
    /// A one-way ring that may not pass from its last position to its first.
    #[error("it turns {} only and may not pass from its last position to its first", only.words())]
    WrongWay {
        /// The only way it turns.
        only: Way,
    },
    /// Nobody knows where it stands, and it has no stop to count from.
    #[error("where it stands is not known and it has no stop: read its number at the mark first")]
    Unknown,
    /// A pitch that is not above zero.
    #[error("a pitch of {pitch} mm a turn cannot be")]
    NoPitch {
        /// The pitch given, in mm.
        pitch: f64,
    },
}

/// A whole number of places, zero or more.
///
/// # Errors
/// [`NoPath::NotWhole`] and [`NoPath::Negative`].
fn whole(wanted: f64) -> Result<f64, NoPath> {
    if !wanted.is_finite() || (wanted - wanted.round()).abs() > 1e-9 {
        return Err(NoPath::NotWhole { wanted });
    }
    if wanted < -1e-9 {
        return Err(NoPath::Negative { wanted });
    }
    Ok(wanted.round().abs())
}

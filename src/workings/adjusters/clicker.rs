//! Clickers: set from the hard stop by counting out.

use serde::{Deserialize, Serialize};

use super::{NoPath, Path, Stop, ToStop, Turn, Way, whole};
use crate::quantity::Unit;

/// A clicker on this unit. Full in is 0, the first felt detent out is 1, so a travel of 24 clicks has 25 settings.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Clicker {
    /// The clicks from stop to stop, as counted on this unit.
    pub travel: u32,
    /// The way that closes it.
    pub closes: Way,
}

/// A clicker's setting: clicks from one of its stops.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Setting {
    /// Clicks.
    pub count: f64,
    /// The stop that they are counted from.
    pub from: Stop,
}

impl Clicker {
    /// How many settings there are: one more than the clicks.
    #[must_use]
    pub const fn settings(self) -> u32 {
        self.travel.saturating_add(1)
    }

    /// The setting as clicks out from full in.
    ///
    /// # Errors
    /// [`NoPath`]: not whole, below zero, or beyond this unit's travel.
    pub fn from_full_in(self, setting: Setting) -> Result<f64, NoPath> {
        let count = whole(setting.count)?;
        let travel = f64::from(self.travel);
        if count > travel {
            return Err(NoPath::BeyondTravel { wanted: count, travel });
        }
        Ok(match setting.from {
            Stop::FullIn => count,
            Stop::FullOut => travel - count,
        })
    }

    /// The setting counted from the other convention's stop.
    ///
    /// # Errors
    /// As [`Clicker::from_full_in`].
    pub fn counted_from(self, setting: Setting, from: Stop) -> Result<Setting, NoPath> {
        let out = self.from_full_in(setting)?;
        let count = if from == Stop::FullIn { out } else { f64::from(self.travel) - out };
        Ok(Setting { count, from })
    }

    /// To full in, then out by count. Where it stands does not matter, so an unknown position needs nothing else.
    ///
    /// # Errors
    /// As [`Clicker::from_full_in`].
    pub fn path(self, wanted: Setting) -> Result<Path, NoPath> {
        let amount = self.from_full_in(wanted)?;
        Ok(Path {
            to_stop: Some(ToStop { way: self.closes, stop: Stop::FullIn }),
            then: Turn { way: self.closes.opposite(), amount, unit: Unit::Click },
            passes: Vec::new(),
            length: None,
        })
    }
}

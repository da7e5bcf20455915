//! Screws: turns counted from a stop or a mark, and lengths measured to a datum, through the pitch.

use serde::{Deserialize, Serialize};

use super::{NoPath, Path, Stop, ToStop, Turn, Way};
use crate::quantity::{Quantity, Unit};

/// A screwed adjuster, such as a spring perch.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Screw {
    /// How far the part moves in a turn, in mm, above zero.
    pub pitch: f64,
    /// The way that adds to the count (more preload, more turns).
    pub adds: Way,
    /// Whether adding makes the length to the datum grow.
    pub adding_lengthens: bool,
    /// The turns from stop to stop, as counted on this unit, where it has stops.
    pub travel: Option<f64>,
}

impl Screw {
    /// By turns: from a count to another. With `at` unknown it goes to the stop where the count is zero first.
    ///
    /// # Errors
    /// [`NoPath`]: below zero, beyond the travel, or unknown with no stop to find.
    pub fn by_turns(self, at: Option<f64>, wanted: f64) -> Result<Path, NoPath> {
        self.check_pitch()?;
        let wanted = self.within(wanted)?;
        match at {
            Some(at) => Ok(self.path(None, wanted - self.within(at)?)),
            None if self.travel.is_some() => {
                let stop = ToStop { way: self.adds.opposite(), stop: Stop::FullOut };
                Ok(self.path(Some(stop), wanted))
            }
            None => Err(NoPath::Unknown),
        }
    }

    /// By length: from a measured length to the wanted one, both in mm to the same datum.
    ///
    /// # Errors
    /// [`NoPath`]: a length below zero, or a move of more turns than the travel.
    pub fn by_length(self, at: f64, wanted: f64) -> Result<Path, NoPath> {
        self.check_pitch()?;
        for length in [at, wanted] {
            if !length.is_finite() || length < 0.0 {
                return Err(NoPath::Negative { wanted: length });
            }
        }
        let sign = if self.adding_lengthens { 1.0 } else { -1.0 };
        let turns = sign * (wanted - at) / self.pitch;
        match self.travel {
            Some(travel) if turns.abs() > travel * (1.0 + 1e-9) => {
                Err(NoPath::BeyondTravel { wanted: turns.abs(), travel })
            }
            _ => Ok(self.path(None, turns)),
        }
    }

    fn check_pitch(self) -> Result<(), NoPath> {
        let sound = self.pitch.is_finite() && self.pitch > 0.0;
        if sound { Ok(()) } else { Err(NoPath::NoPitch { pitch: self.pitch }) }
    }

    fn within(self, turns: f64) -> Result<f64, NoPath> {
        if !turns.is_finite() || turns < 0.0 {
            return Err(NoPath::Negative { wanted: turns });
        }
        match self.travel {
            Some(travel) if turns > travel * (1.0 + 1e-9) => {
                Err(NoPath::BeyondTravel { wanted: turns, travel })
            }
            _ => Ok(turns),
        }
    }

    /// The path for a number of turns to add (negative: to take off).
    fn path(self, to_stop: Option<ToStop>, turns: f64) -> Path {
        let way = if turns >= 0.0 { self.adds } else { self.adds.opposite() };
        let sign = if self.adding_lengthens { 1.0 } else { -1.0 };
        Path {
            to_stop,
            then: Turn { way, amount: turns.abs(), unit: Unit::Turn },
            passes: Vec::new(),
            length: Some(Quantity::new(sign * turns * self.pitch, Unit::Millimetre)),
        }
    }
}

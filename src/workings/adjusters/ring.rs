//! Rings: numbered positions round a circle, some of which turn one way only.

use serde::{Deserialize, Serialize};

use super::{NoPath, Path, Stop, ToStop, Turn, Way};
use crate::quantity::Unit;

/// A ring with positions `min` to `max`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Ring {
    /// The lowest position.
    pub min: i32,
    /// The highest position.
    pub max: i32,
    /// The way that raises the number.
    pub rises: Way,
    /// The only way it may turn, where there is one.
    pub only: Option<Way>,
    /// Whether it may pass from its last position on to its first.
    pub wraps: bool,
}

impl Ring {
    /// The path from `at` to `wanted`. A two-way ring goes straight and never over its end; a one-way ring goes the
    /// long way round where it must. With `at` unknown, a two-way ring goes to its lowest end first.
    ///
    /// # Errors
    /// [`NoPath`]: no such position, a one-way ring that may not wrap, or a position that is not known.
    pub fn path(self, at: Option<f64>, wanted: f64) -> Result<Path, NoPath> {
        let wanted = self.position(wanted)?;
        let Some(at) = at else { return self.found_end(wanted) };
        let at = self.position(at)?;
        let way = match self.only {
            Some(only) => only,
            None if wanted >= at => self.rises,
            None => self.rises.opposite(),
        };
        let places = self.places(at, wanted, way)?;
        Ok(self.walk(None, way, places))
    }

    fn position(self, value: f64) -> Result<i32, NoPath> {
        let none = NoPath::NoPosition { wanted: value, min: self.min, max: self.max };
        if !value.is_finite() || (value - value.round()).abs() > 1e-9 {
            return Err(NoPath::NotWhole { wanted: value });
        }
        let whole = value.round();
        if whole < f64::from(self.min) || whole > f64::from(self.max) { Err(none) } else { Ok(whole as i32) }
    }

    /// The positions after `at` up to `wanted`, turning `way`.
    fn places(self, at: i32, wanted: i32, way: Way) -> Result<Vec<i32>, NoPath> {
        let up = way == self.rises;
        let (first, last) = if up { (self.min, self.max) } else { (self.max, self.min) };
        let mut places = Vec::new();
        let mut here = at;
        while here != wanted {
            if here == last && !self.wraps {
                return Err(NoPath::WrongWay { only: way });
            }
            here = match here {
                here if here == last => first,
                here if up => here + 1,
                here => here - 1,
            };
            places.push(here);
        }
        Ok(places)
    }

    fn walk(self, to_stop: Option<ToStop>, way: Way, mut places: Vec<i32>) -> Path {
        let amount = places.len() as f64;
        places.pop();
        Path { to_stop, then: Turn { way, amount, unit: Unit::PositionStep }, passes: places, length: None }
    }

    /// From the lowest end, where the ring has ends to find.
    fn found_end(self, wanted: i32) -> Result<Path, NoPath> {
        if self.wraps || self.only.is_some() {
            return Err(NoPath::Unknown);
        }
        let places = self.places(self.min, wanted, self.rises)?;
        let stop = ToStop { way: self.rises.opposite(), stop: Stop::FullIn };
        Ok(self.walk(Some(stop), self.rises, places))
    }
}

//! A band that a reading must keep: between, at least, at most, or exactly.

use std::fmt;

use serde::{Deserialize, Serialize};

use super::{Mismatch, Quantity, Unit, bench_figures};

/// How far float noise may carry a value past an end, as a share of the end's size: far below any gauge.
const NOISE: f64 = 1e-9;

/// Torque from which the default band is the narrow one.
const NARROW_FROM: f64 = 10.0;
/// Default band from 10 N.m up, and below it (design, section 7; the classes of ISO 6789:2003 are 4 % and 6 %).
const BAND: f64 = 0.06;
const BAND_SMALL: f64 = 0.10;

/// A band with inclusive ends, in one unit. At least one end is set; `lo` is never above `hi`.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Limit {
    /// The lower end, inclusive.
    pub lo: Option<f64>,
    /// The upper end, inclusive.
    pub hi: Option<f64>,
    /// The unit of both.
    pub unit: Unit,
}

impl Limit {
    /// Exactly one value.
    #[must_use]
    pub const fn exactly(value: Quantity) -> Self {
        Self { lo: Some(value.value), hi: Some(value.value), unit: value.unit }
    }

    /// A value and what it may be off on either side, both in the value's unit.
    #[must_use]
    pub fn around(value: Quantity, off: f64) -> Self {
        Self { lo: Some(clean(value.value - off)), hi: Some(clean(value.value + off)), unit: value.unit }
    }

    /// The band of a torque given without a tolerance: 6 % from 10 N.m up, 10 % below.
    /// Anything but a torque gets itself exactly.
    #[must_use]
    pub fn torque_band(torque: Quantity) -> Self {
        let Ok(newton_metres) = torque.in_unit(Unit::NewtonMetre) else {
            return Self::exactly(torque);
        };
        let share = if newton_metres.abs() < NARROW_FROM * (1.0 - NOISE) { BAND_SMALL } else { BAND };
        Self::around(torque, torque.value.abs() * share)
    }

    /// This limit, but a single torque widened to its default band.
    #[must_use]
    pub fn or_torque_band(self) -> Self {
        match (self.lo, self.hi) {
            (Some(lo), Some(hi)) if lo == hi => Self::torque_band(Quantity::new(lo, self.unit)),
            _ => self,
        }
    }

    /// Whether the value lies within, ends included; its unit may differ.
    ///
    /// # Errors
    /// [`Mismatch`] when the dimensions differ.
    pub fn holds(self, value: Quantity) -> Result<bool, Mismatch> {
        Ok(self.off_by(value)?.is_none())
    }

    /// How far outside the value lies, in the limit's unit: negative below, positive above, `None` within.
    ///
    /// # Errors
    /// [`Mismatch`] when the dimensions differ.
    pub fn off_by(self, value: Quantity) -> Result<Option<f64>, Mismatch> {
        let found = value.in_unit(self.unit)?;
        let slack = |end: f64| NOISE * end.abs().max(found.abs()).max(1e-6);
        let below = self.lo.filter(|lo| found < lo - slack(*lo)).map(|lo| found - lo);
        let above = self.hi.filter(|hi| found > hi + slack(*hi)).map(|hi| found - hi);
        Ok(below.or(above))
    }

    /// The value aimed at: the middle, or the one end there is.
    #[must_use]
    pub fn nominal(self) -> Quantity {
        let value = match (self.lo, self.hi) {
            (Some(lo), Some(hi)) => clean(f64::midpoint(lo, hi)),
            (Some(end), None) | (None, Some(end)) => end,
            (None, None) => 0.0,
        };
        Quantity::new(value, self.unit)
    }

    /// The same limit in another unit.
    ///
    /// # Errors
    /// [`Mismatch`] when the dimensions differ.
    pub fn to(self, unit: Unit) -> Result<Self, Mismatch> {
        let end = |end: Option<f64>| end.map(|value| self.unit.convert(value, unit)).transpose();
        Ok(Self { lo: end(self.lo)?, hi: end(self.hi)?, unit })
    }

    /// For the screen: `30 to 34 N.m`, `at least 5 mm`, `24 click`.
    #[must_use]
    pub fn show(self) -> String {
        let shown = |value: f64| Quantity::new(value, self.unit).show();
        match (self.lo, self.hi) {
            (Some(lo), Some(hi)) if lo == hi => shown(lo),
            (Some(lo), Some(hi)) => format!("{} to {}", bench_figures(lo), shown(hi)),
            (Some(lo), None) => format!("at least {}", shown(lo)),
            (None, Some(hi)) => format!("at most {}", shown(hi)),
            (None, None) => "any".to_owned(),
        }
    }

    /// For the ear: "thirty to thirty four newton metres".
    #[must_use]
    pub fn say(self) -> String {
        let said = |value: f64| self.unit.say(value);
        match (self.lo, self.hi) {
            (Some(lo), Some(hi)) if lo == hi => said(lo),
            (Some(lo), Some(hi)) => format!("{} to {}", super::figures::words(bench_figures(lo)), said(hi)),
            (Some(lo), None) => format!("at least {}", said(lo)),
            (None, Some(hi)) => format!("at most {}", said(hi)),
            (None, None) => "any".to_owned(),
        }
    }
}

impl fmt::Display for Limit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.show())
    }
}

/// Rounds the float noise of a sum away (12 significant figures).
fn clean(value: f64) -> f64 {
    if value == 0.0 || !value.is_finite() {
        return value;
    }
    let scale = 10f64.powi(11 - value.abs().log10().floor() as i32);
    if scale.is_finite() && scale > 0.0 { (value * scale).round() / scale } else { value }
}

//! The wrench: what to set with an adapter, whether it suits the value, and ISO 6789's tolerances.

use serde::{Deserialize, Serialize};

/// What to set on a wrench of effective length `length` so that the fastener gets `torque` through an adapter that
/// reaches `reach` further at `angle_deg` from the wrench's axis: T L / (L + E cos theta). 0 degrees is straight ahead,
/// 90 changes nothing, 180 points back at the hand. Lengths in one unit, from the square drive's centre to the hand
/// and to the fastener. `None` where the arm would vanish or a length is not above zero.
#[must_use]
pub fn setting(torque: f64, length: f64, reach: f64, angle_deg: f64) -> Option<f64> {
    arm_ratio(length, reach, angle_deg).map(|ratio| torque / ratio)
}

/// What the fastener gets from a wrench set to `set`: the inverse of [`setting`].
#[must_use]
pub fn at_fastener(set: f64, length: f64, reach: f64, angle_deg: f64) -> Option<f64> {
    arm_ratio(length, reach, angle_deg).map(|ratio| set * ratio)
}

/// Fastener torque over wrench torque, (L + E cos theta) / L.
fn arm_ratio(length: f64, reach: f64, angle_deg: f64) -> Option<f64> {
    let sound = length.is_finite() && reach.is_finite() && length > 0.0 && reach >= 0.0;
    let arm = length + reach * cos_deg(angle_deg);
    (sound && arm > 0.05 * length).then(|| arm / length)
}

/// Cosine of degrees, exact at right angles so that 90 degrees changes nothing at all.
fn cos_deg(angle: f64) -> f64 {
    if (angle.rem_euclid(180.0) - 90.0).abs() < 1e-12 { 0.0 } else { angle.to_radians().cos() }
}

/// Whether a wrench suits a value.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Fit {
    /// In its range, and from 20 % of its largest value up.
    Fit,
    /// In its range but below 20 % of its largest value (soft), or its calibration has run out.
    Warn,
    /// Outside its range.
    No,
}

/// The lowest share of its largest value at which a click wrench is tested (ISO 6789:2003, test points 20, 60, 100 %).
pub const LOW_SHARE: f64 = 0.20;
/// Months after which a wrench in use is calibrated again, where nothing else is laid down (ISO 6789:2003).
pub const RECALIBRATE_MONTHS: f64 = 12.0;
/// Cycles after which it is, whichever is first.
pub const RECALIBRATE_CYCLES: f64 = 5000.0;

/// Judges a wrench for a value: its range in the value's unit, and months since calibration where known.
#[must_use]
pub fn suits(value: f64, min: Option<f64>, max: f64, months: Option<f64>) -> Fit {
    let below = min.is_some_and(|min| value < min * (1.0 - 1e-9));
    if value.is_nan() || value <= 0.0 || value > max * (1.0 + 1e-9) || below {
        Fit::No
    } else if value < LOW_SHARE * max * (1.0 - 1e-9)
        || months.is_some_and(|months| months > RECALIBRATE_MONTHS)
    {
        Fit::Warn
    } else {
        Fit::Fit
    }
}

/// Permissible deviation in per cent of ISO 6789:2003: type I or II, its class, and the largest value in N.m.
/// Type I classes B, C, E and type II classes A, B, C: 4 % (6 % up to 10 N.m); the others 6 %.
/// Type II class A as quoted from the standard (read); the other classes from memory.
#[must_use]
pub fn tolerance_percent(kind: u8, class: char, max_newton_metres: f64) -> Option<f64> {
    let fine = match (kind, class.to_ascii_uppercase()) {
        (1, 'B' | 'C' | 'E') | (2, 'A' | 'B' | 'C') => true,
        (1, 'A' | 'D') | (2, 'D' | 'E' | 'F' | 'G') => false,
        _ => return None,
    };
    Some(if fine && max_newton_metres > 10.0 { 4.0 } else { 6.0 })
}

//! A crank dynamometer's rod speed.

use std::f64::consts::PI;

/// Peak rod speed of a sinusoidal crank, mm/s: pi x stroke (mm) x revolutions a second.
#[must_use]
pub fn peak_speed(stroke: f64, per_second: f64) -> f64 {
    PI * stroke * per_second
}

/// Peak rod acceleration of a sinusoidal crank, m/s2: stroke / 2 (2 pi f)^2, stroke in mm.
#[must_use]
pub fn peak_acceleration(stroke: f64, per_second: f64) -> f64 {
    stroke / 2000.0 * (2.0 * PI * per_second).powi(2)
}

/// Revolutions a second for a peak speed.
#[must_use]
pub fn revolutions_for(speed: f64, stroke: f64) -> f64 {
    speed / (PI * stroke)
}

/// Usual test speeds, m/s (common practice, memory).
pub const USUAL_SPEEDS: [f64; 8] = [0.05, 0.1, 0.13, 0.2, 0.25, 0.3, 0.4, 0.5];

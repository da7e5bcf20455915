//! Ride: wheel rate, natural frequency, damping. SI units: N/m, kg, N.s/m, Hz.

use std::f64::consts::TAU;

/// Rate at the wheel of a spring at motion ratio spring travel / wheel travel: k (MR)^2. The other way round the ratio
/// divides: which is meant has to be said.
#[must_use]
pub fn wheel_rate(spring: f64, spring_per_wheel: f64) -> f64 {
    spring * spring_per_wheel * spring_per_wheel
}

/// Undamped natural angular frequency, rad/s.
#[must_use]
pub fn angular(k: f64, m: f64) -> f64 {
    (k / m).sqrt()
}

/// Undamped natural frequency, Hz.
#[must_use]
pub fn frequency(k: f64, m: f64) -> f64 {
    angular(k, m) / TAU
}

/// Rate that gives a frequency, N/m.
#[must_use]
pub fn rate_for(hz: f64, m: f64) -> f64 {
    (TAU * hz).powi(2) * m
}

/// Critical damping coefficient, 2 sqrt(k m).
#[must_use]
pub fn critical(k: f64, m: f64) -> f64 {
    2.0 * (k * m).sqrt()
}

/// Logarithmic decrement of a damping ratio below 1; `None` at or above it: nothing swings.
#[must_use]
pub fn log_decrement(zeta: f64) -> Option<f64> {
    (zeta < 1.0).then(|| TAU * zeta / (1.0 - zeta * zeta).sqrt())
}

/// Usual undamped ride frequencies, Hz, least and most (common practice: a band, not a standard).
#[must_use]
pub fn usual_band(vehicle: &str) -> Option<(f64, f64)> {
    Some(match vehicle {
        "road car" => (0.5, 1.5),
        "rally" => (1.5, 2.0),
        "race, little downforce" => (1.5, 2.5),
        "race, more downforce" => (2.5, 3.5),
        _ => return None,
    })
}

//! A reservoir with a floating piston: its gas volume, and what the rod does to it. mm, ml, bar absolute.

use super::area;

/// Gas volume, ml: bore and the depth of the piston's gas face below the rim, less what a cap takes of the depth.
#[must_use]
pub fn gas_volume(bore: f64, depth: f64, cap: f64) -> f64 {
    area(bore) * (depth - cap) / 1000.0
}

/// Volume that a rod takes over a stroke, ml.
#[must_use]
pub fn rod_volume(rod: f64, stroke: f64) -> f64 {
    area(rod) * stroke / 1000.0
}

/// Absolute pressure once an empty hose and gauge at the air's pressure share the gas.
#[must_use]
pub fn shared(p: f64, volume: f64, hose: f64, air: f64) -> f64 {
    (p * volume + air * hose) / (volume + hose)
}

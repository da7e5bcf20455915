//! Level and volume in a fork leg, and expansion. mm, ml, K.

use std::f64::consts::FRAC_PI_4;

/// Area of the oil's surface, mm2: the leg's bore less what stands in it (rod, tube).
#[must_use]
pub fn surface(bore: f64, inside: f64) -> f64 {
    FRAC_PI_4 * (bore * bore - inside * inside)
}

/// Change of volume when the level moves by so many mm, ml.
#[must_use]
pub fn volume_of(level: f64, surface: f64) -> f64 {
    level * surface / 1000.0
}

/// Change of volume on warming: V beta (T2 - T1), in the unit of V.
#[must_use]
pub fn expansion(volume: f64, beta: f64, warmer: f64) -> f64 {
    volume * beta * warmer
}

/// Expansion coefficient of mineral oil, 1/K (Engineering ToolBox, cubical expansion of liquids).
pub const BETA_OIL: f64 = 0.0007;

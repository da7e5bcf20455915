//! Gas: charge and temperature, rod force, pressure rise over the stroke. Absolute pressure and kelvin inside, always.

pub mod nitrogen;
pub mod reservoir;

pub(super) mod register;

/// Zero of the Celsius scale, K.
pub const ZERO_C: f64 = 273.15;
/// Ratio of specific heats of an ideal diatomic gas, for adiabatic compression.
pub const DIATOMIC: f64 = 1.4;

/// Ideal gas in a fixed volume: absolute pressure at another absolute temperature.
#[must_use]
pub fn ideal_pressure(p: f64, t1: f64, t2: f64) -> f64 {
    p * t2 / t1
}

/// Ideal gas pressed to `1 / ratio` of its volume: p (V0/V1)^n. n is 1 isothermal, 1.4 adiabatic.
#[must_use]
pub fn compressed(p: f64, ratio: f64, n: f64) -> f64 {
    p * ratio.powf(n)
}

/// Ideal gas pressed adiabatically: absolute temperature at the end.
#[must_use]
pub fn adiabatic_temperature(t: f64, ratio: f64, n: f64) -> f64 {
    t * ratio.powf(n - 1.0)
}

/// Force of a gauge pressure (bar) on a rod (mm), N.
#[must_use]
pub fn rod_force(gauge_bar: f64, rod: f64) -> f64 {
    gauge_bar * 0.1 * area(rod)
}

/// Area of a circle, mm2.
#[must_use]
pub fn area(diameter: f64) -> f64 {
    std::f64::consts::FRAC_PI_4 * diameter * diameter
}

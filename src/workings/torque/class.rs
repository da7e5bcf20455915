//! Property classes of bolts and screws, and their proof loads, by ISO 898-1.

use super::super::thread::Thread;

/// Strengths of a property class, MPa.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Class {
    /// Least tensile strength Rm,min.
    pub tensile: f64,
    /// Least yield or 0.2 % proof strength, ReL,min or Rp0.2,min (Rpf for 4.8, 5.8, 6.8).
    pub yielding: f64,
    /// Stress under proof load Sp,nom.
    pub proof: f64,
}

/// ISO 898-1:2013, table 3. 8.8 steps up above 16 mm. `None` for a class that is not in it.
#[must_use]
pub fn class(name: &str, d: f64) -> Option<Class> {
    let large = d > 16.0;
    let (tensile, yielding, proof) = match name.trim() {
        // Until the edition of 1999.
        "3.6" => (330.0, 190.0, 180.0),
        "4.6" => (400.0, 240.0, 225.0),
        "4.8" => (420.0, 340.0, 310.0),
        "5.6" => (500.0, 300.0, 280.0),
        "5.8" => (520.0, 420.0, 380.0),
        "6.8" => (600.0, 480.0, 440.0),
        "8.8" if large => (830.0, 660.0, 600.0),
        "8.8" => (800.0, 640.0, 580.0),
        "9.8" if d <= 16.0 => (900.0, 720.0, 650.0),
        "10.9" => (1040.0, 940.0, 830.0),
        "12.9" => (1220.0, 1100.0, 970.0),
        _ => return None,
    };
    Some(Class { tensile, yielding, proof })
}

/// Nominal yield strength that a class's name states, MPa: 10.9 is 0.9 x 1000. `None` for no such name.
#[must_use]
pub fn nominal_yield(name: &str) -> Option<f64> {
    let (tensile, share) = name.trim().split_once('.')?;
    Some(tensile.parse::<f64>().ok()? * share.parse::<f64>().ok()? * 10.0)
}

/// Nominal stress area as the standard's tables print it: three significant figures.
#[must_use]
pub fn nominal_area(thread: &Thread) -> f64 {
    significant(thread.stress_area(), 3)
}

/// Proof load Fp = As,nom x Sp,nom, N. The standard prints it to three figures, some rows rounded up and some down.
#[must_use]
pub fn proof_load(thread: &Thread, class: Class) -> f64 {
    nominal_area(thread) * class.proof
}

/// Rounded to so many significant figures.
fn significant(value: f64, figures: i32) -> f64 {
    if value <= 0.0 || !value.is_finite() {
        return value;
    }
    let scale = 10f64.powi(figures - 1 - value.log10().floor() as i32);
    (value * scale).round() / scale
}

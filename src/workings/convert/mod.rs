//! Convert: one quantity into another unit, gauge and absolute pressure, inches to the nearest 64th.

pub(super) mod register;

use crate::quantity::{Dimension, Mismatch, PressureBasis, Quantity, Unit};

/// The standard atmosphere, bar (ISO 2533).
pub const ATMOSPHERE_BAR: f64 = 1.01325;

/// A quantity in another unit, offsets only for temperatures.
///
/// # Errors
/// [`Mismatch`] when the dimensions differ.
pub fn convert(value: Quantity, to: Unit) -> Result<Quantity, Mismatch> {
    value.to(to)
}

/// A pressure on another basis, in its own unit, about the given atmosphere in bar.
///
/// # Errors
/// [`Mismatch`] when it is no pressure.
pub fn on_basis(
    p: Quantity,
    from: PressureBasis,
    to: PressureBasis,
    atmosphere_bar: f64,
) -> Result<Quantity, Mismatch> {
    if p.unit.dimension() != Dimension::Pressure {
        return Err(Mismatch { found: p.unit, wanted: Unit::Bar });
    }
    let air = Quantity::new(atmosphere_bar, Unit::Bar);
    match (from, to) {
        (PressureBasis::Gauge, PressureBasis::Absolute) => p.plus(air),
        (PressureBasis::Absolute, PressureBasis::Gauge) => p.minus(air),
        _ => Ok(p),
    }
}

/// A length in inches as the nearest 64th: whole inches, numerator, denominator in lowest terms, and how far off the
/// fraction is (fraction minus length, in inches).
#[must_use]
pub fn nearest_fraction(inches: f64) -> (i64, u32, u32, f64) {
    let sixty_fourths = (inches * 64.0).round();
    let off = sixty_fourths / 64.0 - inches;
    let whole = (sixty_fourths / 64.0).trunc();
    let mut above = (sixty_fourths - whole * 64.0).abs() as u32;
    let mut below = 64;
    while above > 0 && above.is_multiple_of(2) {
        above /= 2;
        below /= 2;
    }
    if above == 0 {
        below = 1;
    }
    (whole as i64, above, below, off)
}

/// A text without the words for its pressure basis (`14 bar gauge`, `200 psi abs`, `15 barg`), and the basis.
#[must_use]
pub fn split_basis(text: &str) -> (&str, Option<PressureBasis>) {
    let text = text.trim();
    for (word, basis) in [
        ("gauge", PressureBasis::Gauge),
        ("absolute", PressureBasis::Absolute),
        ("abs", PressureBasis::Absolute),
        ("(g)", PressureBasis::Gauge),
        ("(a)", PressureBasis::Absolute),
    ] {
        if let Some(rest) = text.strip_suffix(word) {
            return (rest.trim_end(), Some(basis));
        }
    }
    for (letter, basis) in [("g", PressureBasis::Gauge), ("a", PressureBasis::Absolute)] {
        let rest = text.strip_suffix(letter).unwrap_or_default();
        if rest.ends_with("bar") || rest.ends_with("psi") {
            return (rest, Some(basis));
        }
    }
    (text, None)
}

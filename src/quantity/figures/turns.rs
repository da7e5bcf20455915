//! Turns as a bench counts them: in quarters or in flats of a sixth.

use super::super::{Unit, bench_figures};

/// Quarters and sixths closer than this to a figure are that quarter or flat.
const NEAR: f64 = 0.005;

/// Turns in quarters where they are quarters, in flats where they are sixths, else in decimals: `2 1/4 turns`,
/// `2 turns and 1 flat`, `2.4 turns`.
#[must_use]
pub fn turns(value: f64) -> String {
    let whole = value.abs().trunc();
    let part = value.abs() - whole;
    let sign = if value < 0.0 { "-" } else { "" };
    let quarters = (part * 4.0).round();
    let flats = (part * 6.0).round();
    if (part * 4.0 - quarters).abs() < NEAR {
        let (whole, quarters) = if quarters >= 4.0 { (whole + 1.0, 0.0) } else { (whole, quarters) };
        return format!("{sign}{}", with_quarters(whole, quarters as u32));
    }
    if (part * 6.0 - flats).abs() < NEAR {
        let flats = counted(flats, Unit::Flat);
        if whole == 0.0 {
            return format!("{sign}{flats}");
        }
        return format!("{sign}{} and {flats}", counted(whole, Unit::Turn));
    }
    counted(value, Unit::Turn)
}

/// Turns to the nearest flat, as a perch is set: `5 turns and 2 flats`.
#[must_use]
pub fn flats(value: f64) -> String {
    turns((value * 6.0).round() / 6.0)
}

fn counted(value: f64, unit: Unit) -> String {
    let value = bench_figures(value);
    format!("{value} {}", unit.words(value))
}

fn with_quarters(whole: f64, quarters: u32) -> String {
    let part = ["", "1/4", "1/2", "3/4"].get(quarters as usize).copied().unwrap_or_default();
    match (whole, part) {
        (whole, "") => counted(whole, Unit::Turn),
        (0.0, part) => format!("{part} turn"),
        (whole, part) => format!("{whole} {part} turns"),
    }
}

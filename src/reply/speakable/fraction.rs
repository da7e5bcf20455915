//! Written fractions in words: "half an inch", "two and a quarter turns", "three eighths inch drive".

use super::number::ordinal;
use crate::quantity::figures;

/// A whole and a fraction as written.
pub(super) struct Fraction {
    /// The whole; 0 when there is none.
    pub whole: u32,
    /// Above the line.
    pub above: u32,
    /// Below the line.
    pub below: u32,
}

/// Reads `1/2` or `2 1/4`.
pub(super) fn parse(text: &str) -> Option<Fraction> {
    let (head, below) = text.trim_start_matches('+').split_once('/')?;
    let (whole, above) = head.split_once(' ').unwrap_or(("0", head));
    Some(Fraction { whole: whole.parse().ok()?, above: above.parse().ok()?, below: below.parse().ok()? })
}

/// A fraction without a unit: "one half", "two and a quarter".
pub(super) fn alone(found: &Fraction) -> String {
    let Fraction { whole, above, below } = *found;
    match (whole, above) {
        (0, above) => format!("{} {}", figures::words(f64::from(above)), part(above, below)),
        (whole, 1) => format!("{} and a {}", figures::words(f64::from(whole)), part(1, below)),
        (whole, above) => format!(
            "{} and {} {}",
            figures::words(f64::from(whole)),
            figures::words(f64::from(above)),
            part(above, below)
        ),
    }
}

/// A fraction of a unit given by its symbol; `describes` when a noun follows ("half inch socket").
pub(super) fn of(found: &Fraction, one: &str, many: &str, describes: bool) -> String {
    let Fraction { whole, above, below } = *found;
    match (whole, describes) {
        (0, true) if above == 1 => format!("{} {one}", part(1, below)),
        (_, true) => format!("{} {one}", alone(found)),
        (0, false) => format!("{} {one}", before_word(above, below, one)),
        (_, false) => format!("{} {many}", alone(found)),
    }
}

/// A fraction before its unit's word: "half a", "a quarter", "three quarters of a".
pub(super) fn before_word(above: u32, below: u32, unit: &str) -> String {
    let article = if unit.starts_with(['a', 'e', 'i', 'o', 'u']) || unit == "hour" { "an" } else { "a" };
    match (above, below) {
        (1, 2) => format!("half {article}"),
        (1, below) => format!("a {}", part(1, below)),
        (above, below) => format!("{} {} of {article}", figures::words(f64::from(above)), part(above, below)),
    }
}

fn part(above: u32, below: u32) -> String {
    let one = match below {
        0 | 1 => "whole".to_owned(),
        2 => "half".to_owned(),
        4 => "quarter".to_owned(),
        _ => ordinal(below),
    };
    match (above, below) {
        (1, _) => one,
        (_, 2) => "halves".to_owned(),
        _ => format!("{one}s"),
    }
}

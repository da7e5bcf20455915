//! Figures as the screen has them: quantities, limits, settings with the end they are counted from.
//!
//! `speakable` turns each of these texts into words, so that eye and ear get one figure.

use crate::act::End;
use crate::quantity::{Dimension, Limit, Quantity, Unit, bench_figures, figures};
use crate::workings::adjusters::Way;

/// A quantity: `32 N.m`, `14 clicks`, `2 1/4 turns`, `2 turns and 1 flat`.
pub(super) fn quantity(quantity: Quantity) -> String {
    match quantity.unit {
        Unit::Turn => figures::turns(quantity.value),
        Unit::Click | Unit::PositionStep | Unit::Flat | Unit::Degree => counted(quantity),
        _ => quantity.show(),
    }
}

/// A figure with its unit's word.
fn counted(quantity: Quantity) -> String {
    let value = bench_figures(quantity.value);
    format!("{value} {}", quantity.unit.words(value))
}

/// A limit: `32 N.m, 30 to 34` for what is aimed at its middle, `at most 0.05 mm` and the like else.
pub(super) fn limit(limit: &Limit) -> String {
    let aimed = matches!(limit.unit.dimension(), Dimension::Torque | Dimension::Pressure);
    match (limit.lo, limit.hi) {
        (Some(lo), Some(hi)) if aimed && lo < hi => {
            format!("{}, {} to {}", quantity(limit.nominal()), bench_figures(lo), bench_figures(hi))
        }
        _ => band(limit),
    }
}

/// The band alone: `30 to 34 N.m`, `at least 5 mm`, `24 clicks`.
pub(super) fn band(limit: &Limit) -> String {
    let end = |value: f64| quantity(Quantity::new(value, limit.unit));
    match (limit.lo, limit.hi) {
        (Some(lo), Some(hi)) if lo == hi => end(lo),
        (Some(lo), Some(hi)) if limit.unit == Unit::Turn => format!("{} to {}", end(lo), end(hi)),
        (Some(lo), Some(hi)) => format!("{} to {}", bench_figures(lo), end(hi)),
        (Some(lo), None) => format!("at least {}", end(lo)),
        (None, Some(hi)) => format!("at most {}", end(hi)),
        (None, None) => "any value".to_owned(),
    }
}

/// A setting: `14 clicks out`, `10 clicks in from full out`, `position 2`; the plain quantity without an end.
pub(super) fn setting(value: Quantity, from: Option<End>) -> String {
    match (value.unit.dimension(), from) {
        (Dimension::Position, _) => format!("position {}", bench_figures(value.value)),
        (_, Some(End::FullIn)) => format!("{} out", quantity(value)),
        (_, Some(End::FullOut)) => format!("{} in from full out", quantity(value)),
        (_, None) => quantity(value),
    }
}

/// Where an adjuster stands: a clicker's setting is counted out from full in (design, section 2).
pub(super) fn standing(value: Quantity) -> String {
    match value.unit.dimension() {
        Dimension::Clicks => setting(value, Some(End::FullIn)),
        _ => setting(value, None),
    }
}

/// The figure of a setting again, digit by digit, for the ear: "one five".
pub(super) fn digits(value: f64) -> String {
    figures::digits(bench_figures(value))
}

/// The way in words.
pub(super) fn way(way: Way) -> &'static str {
    match way {
        Way::Clockwise => "clockwise",
        Way::Anticlockwise => "anticlockwise",
    }
}

/// From where a way is seen: "seen from below" of "below", "from below" or "seen from below".
pub(super) fn seen(from: &str) -> String {
    let from = super::sentence::inside(from);
    match from.split_whitespace().next() {
        Some("seen" | "as" | "looking" | "viewed" | "facing") => from,
        Some("from") => format!("seen {from}"),
        _ => format!("seen from {from}"),
    }
}

/// A stretch of minutes: `45 min`, `1 h 5 min`.
pub(super) fn minutes(minutes: f64) -> String {
    let all = minutes.max(0.0).round();
    let (hours, rest) = ((all / 60.0).trunc(), all % 60.0);
    match (hours, rest) {
        (0.0, rest) => format!("{rest} min"),
        (hours, 0.0) => format!("{hours} h"),
        (hours, rest) => format!("{hours} h {rest} min"),
    }
}

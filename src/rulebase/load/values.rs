//! Figures of a pack's YAML: quantities, limits, threads and ways, with messages for an author.

use super::report::Report;
use crate::quantity::{Dimension, Limit, Quantity, QuantityError, Unit};
use crate::rulebase::Thread;
use crate::source::nearest;
use crate::source::yaml::{Node, Span};
use crate::workings::adjusters::Way;

/// A quantity of the dimension wanted (any when none is).
pub(super) fn quantity(node: &Node, wanted: Option<Dimension>, report: &Report) -> Option<Quantity> {
    let text = text(node, &example(wanted), report)?;
    let found =
        Quantity::parse(text).map_err(|error| unread(node.span, text, &error, wanted, report)).ok()?;
    fits(node.span, text, found.unit, wanted, report).then_some(found)
}

/// A limit of the dimension wanted (any when none is).
pub(super) fn limit(node: &Node, wanted: Option<Dimension>, report: &Report) -> Option<Limit> {
    let text = text(node, &example(wanted), report)?;
    let found = Limit::parse(text).map_err(|error| unread(node.span, text, &error, wanted, report)).ok()?;
    fits(node.span, text, found.unit, wanted, report).then_some(found)
}

/// A way of turning.
pub(super) fn way(node: &Node, report: &Report) -> Option<Way> {
    match node.text() {
        Some("clockwise") => Some(Way::Clockwise),
        Some("anticlockwise") => Some(Way::Anticlockwise),
        other => {
            let near = other.and_then(|word| nearest(word, ["clockwise", "anticlockwise"]));
            report.wrong(
                node.span,
                format!("{} is no way of turning", node.words()),
                "`clockwise` or `anticlockwise`",
                format!("write `{}`", near.unwrap_or("anticlockwise")),
            );
            None
        }
    }
}

/// A metric thread: `M14 x 1`, with `left-hand` after it where it is one.
pub(super) fn thread(node: &Node, report: &Report) -> Option<Thread> {
    let text = text(node, "`M14 x 1`", report)?;
    let read = read_thread(text);
    if read.is_none() {
        let found = format!("`{text}` is no thread");
        report.wrong(
            node.span,
            found,
            "a diameter and a pitch in millimetres",
            "write it as `M14 x 1`, left-hand as `M14 x 1 left-hand`",
        );
    }
    read
}

fn read_thread(text: &str) -> Option<Thread> {
    let (body, left_hand) = match text.strip_suffix(" left-hand") {
        Some(body) => (body, true),
        None => (text, false),
    };
    let (diameter, pitch) = body.strip_prefix('M')?.split_once(" x ")?;
    let size = |text: &str| text.parse::<f64>().ok().filter(|size| size.is_finite() && *size > 0.0);
    let (diameter, pitch) = (size(diameter)?, size(pitch)?);
    (pitch < diameter).then(|| Thread {
        text: text.to_owned(),
        diameter: Quantity::new(diameter, Unit::Millimetre),
        pitch: Quantity::new(pitch, Unit::Millimetre),
        left_hand,
    })
}

fn text<'a>(node: &'a Node, example: &str, report: &Report) -> Option<&'a str> {
    let text = node.text();
    if text.is_none() {
        report.wrong(
            node.span,
            node.words(),
            format!("a figure such as {example}"),
            format!("write one such as {example}"),
        );
    }
    text
}

fn unread(span: Span, text: &str, error: &QuantityError, wanted: Option<Dimension>, report: &Report) {
    let example = example(wanted);
    let what = wanted.map_or("a value", Dimension::words);
    let expected = format!("{what} such as {example}");
    match error {
        QuantityError::NoUnit { found } => {
            let mend = match wanted {
                Some(wanted) => format!("write `{found} {}` if that is the unit meant", usual(wanted)),
                None => format!("write the unit after it, such as {example}"),
            };
            report.wrong(span, format!("`{text}` has no unit"), expected, mend);
        }
        QuantityError::UnknownUnit { found, near } => {
            let mend = match near {
                Some(near) => format!("write `{}` if that is what is meant", near.name()),
                None => format!("write a unit such as {example}"),
            };
            report.wrong(span, format!("`{found}` is no unit"), expected, mend);
        }
        QuantityError::Reversed { .. } => report.wrong(
            span,
            format!("`{text}` has its lower end above its upper end"),
            expected,
            "write the lower end first",
        ),
        _ => report.wrong(
            span,
            format!("`{text}` is no figure"),
            expected,
            format!("write one such as {example}"),
        ),
    }
}

fn fits(span: Span, text: &str, unit: Unit, wanted: Option<Dimension>, report: &Report) -> bool {
    let Some(wanted) = wanted.filter(|wanted| *wanted != unit.dimension()) else { return true };
    report.wrong(
        span,
        format!("`{text}` is {}", unit.dimension().words()),
        format!("{} such as {}", wanted.words(), example(Some(wanted))),
        format!("write it in a unit such as `{}`", usual(wanted)),
    );
    false
}

fn example(wanted: Option<Dimension>) -> String {
    format!("`32 {}`", wanted.map_or("N.m", usual))
}

/// The unit that a bench writes for a dimension.
fn usual(dimension: Dimension) -> &'static str {
    let unit = Unit::ALL.iter().find(|unit| unit.dimension() == dimension && usual_already(**unit));
    unit.or_else(|| Unit::ALL.iter().find(|unit| unit.dimension() == dimension))
        .map_or("", |unit| unit.name())
}

/// Units that are not the first of their dimension in the table but the one a card uses.
fn usual_already(unit: Unit) -> bool {
    matches!(unit, Unit::Bar | Unit::Minute | Unit::Celsius | Unit::Turn | Unit::KilogramCubicMetre)
}

//! How to bring an adjuster to its wanted setting: the stop first, then how far and which way, and what it passes.
//!
//! The words alone must be enough: whoever obeys them ends at the wanted setting.

use super::figure::{quantity, seen, setting, standing, way};
use super::piece::Piece;
use super::sentence::{capital, inside, list, sentence};
use crate::act::End;
use crate::bench::RestoreCard;
use crate::quantity::{Dimension, Quantity, bench_figures};
use crate::workings::adjusters::Way;

/// How to bring an adjuster to its wanted setting.
pub(super) fn restore(card: &RestoreCard) -> Piece {
    let mut lines = vec![format!("{}: {}", capital(&card.name), path(card))];
    lines.extend(length(card));
    lines.extend(card.also.map(|(value, end)| format!("That is {}", setting(value, Some(end)))));
    lines.extend(card.by_hand.as_deref().map(inside));
    let lines: Vec<String> = lines.iter().map(|line| sentence(line)).collect();
    let piece = Piece::both(&lines.join(" "));
    match drawing(card) {
        Some(drawing) => Piece { show: format!("{}\n  {drawing}", piece.show), ..piece },
        None => piece,
    }
}

/// The way to go: stop, turn, end.
fn path(card: &RestoreCard) -> String {
    let seen = card.seen_from.as_deref().map(|from| format!(", {}", seen(from))).unwrap_or_default();
    match (card.to_stop, card.turn) {
        (Some((end, to)), Some(turn)) => {
            format!("{}{seen}, then {}", stop(card, end, to), onward(card, end, turn))
        }
        (Some((end, to)), None) => {
            format!("{}{seen}, and leave it there, {}", stop(card, end, to), target(card))
        }
        (None, Some(turn)) => format!("{}{seen}", from_here(card, turn)),
        (None, None) if is_charge(card) => format!("to {} by the gauge", quantity(card.wanted)),
        // Measured, not counted: the same words are true where it stands there already and where it is off its threads.
        (None, None) if card.length == Some(card.wanted) => {
            format!("set it until it measures {}", target(card))
        }
        (None, None) => format!("it already stands at {}, leave it", target(card)),
    }
}

/// Which way to the stop. Only a clicker closes and opens; a ring is turned, a screw wound.
fn stop(card: &RestoreCard, end: End, to: Way) -> String {
    let verb = match (card.wanted.unit.dimension(), end) {
        (Dimension::Clicks, End::FullIn) => "close",
        (Dimension::Clicks, End::FullOut) => "open",
        (Dimension::Position, _) => "turn",
        _ => "wind",
    };
    format!("{verb} it {} to the stop", way(to))
}

/// From a stop: "14 clicks out, anticlockwise"; with where that is, when the count alone does not say it.
fn onward(card: &RestoreCard, end: End, (to, far): (Way, Quantity)) -> String {
    let turned = match (card.wanted.unit.dimension(), end) {
        (Dimension::Clicks, End::FullIn) => format!("{} out, {}", quantity(far), way(to)),
        (Dimension::Clicks, End::FullOut) => format!("{} in, {}", quantity(far), way(to)),
        _ => turned(card, to, far),
    };
    let counted = far == card.wanted && card.wanted.unit.dimension() != Dimension::Position;
    if counted { turned } else { format!("{turned}, to {}", target(card)) }
}

/// From where it stands: "clockwise 3 positions, through 3, 4 and 0, to 1", "4 clicks anticlockwise, to 14 clicks out".
fn from_here(card: &RestoreCard, (to, far): (Way, Quantity)) -> String {
    format!("{}, to {}", turned(card, to, far), target(card))
}

/// How far and which way, with the positions passed.
fn turned(card: &RestoreCard, to: Way, far: Quantity) -> String {
    match passed(card).as_slice() {
        [] => format!("{} {}", quantity(far), way(to)),
        passes => format!("{} {}, through {}", way(to), quantity(far), list(passes, "and")),
    }
}

/// The wanted setting as an end of the way.
fn target(card: &RestoreCard) -> String {
    let measured = card.datum.as_deref().filter(|_| card.length == Some(card.wanted));
    match measured {
        Some(datum) => format!("{}, {}", standing(card.wanted), inside(datum)),
        None => standing(card.wanted),
    }
}

fn is_charge(card: &RestoreCard) -> bool {
    card.wanted.unit.dimension() == Dimension::Pressure
}

/// Positions on the way, without the wanted one at its end.
fn passed(card: &RestoreCard) -> Vec<String> {
    let mut passes = card.passes.clone();
    if passes.last().is_some_and(|last| f64::from(*last) == card.wanted.value) {
        passes.pop();
    }
    passes.iter().map(u32::to_string).collect()
}

/// The length a screw is set to, unless that is the wanted setting already said.
fn length(card: &RestoreCard) -> Option<String> {
    let length = card.length.filter(|length| *length != card.wanted)?;
    let datum = card.datum.as_deref().map(|datum| format!(", {}", inside(datum))).unwrap_or_default();
    Some(format!("Check it measures {}{datum}", quantity(length)))
}

/// The ring's way as a line: `3 -> 4 -> 0 -> 1`.
fn drawing(card: &RestoreCard) -> Option<String> {
    let mut stations = passed(card);
    if stations.is_empty() {
        return None;
    }
    stations.push(bench_figures(card.wanted.value).to_string());
    Some(stations.join(" -> "))
}

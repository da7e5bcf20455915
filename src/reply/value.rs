//! A value said back: its name, what was kept, and what was said when that was another unit or end.

use super::figure::{digits, setting};
use super::piece::Piece;
use super::sentence::sentence;
use crate::bench::Value;

/// A value said back in one breath.
pub(super) fn said_back(value: &Value) -> Piece {
    let show = sentence(&shown(value));
    Piece::two(&sentence(&said(value)), show)
}

/// For the screen: `Foot nut, 24 lbf.ft, that is 32.54 N.m`.
pub(super) fn shown(value: &Value) -> String {
    format!("{}, {}{}", value.name, before(value), setting(value.kept, value.from))
}

/// For the ear: the same, and digit by digit where it has a sound-alike ("fifteen, one five, clicks out").
pub(super) fn said(value: &Value) -> String {
    let again = if value.digits { format!(", {}", digits(value.kept.value)) } else { String::new() };
    format!("{}{again}", shown(value))
}

/// What was said, when it was another unit or end.
fn before(value: &Value) -> String {
    match value.said {
        Some((said, from)) => format!("{}, that is ", setting(said, from)),
        None => String::new(),
    }
}

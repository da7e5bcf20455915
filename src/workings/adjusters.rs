//! Adjusters: the ways they turn.

/// The way something turns, as seen facing it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Way {
    /// As the hands of a clock.
    Clockwise,
    /// Against the hands of a clock.
    Anticlockwise,
}

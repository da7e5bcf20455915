//! A value said back, kept or refused, as data.

use crate::act::End;
use crate::quantity::{Limit, Quantity};

/// A value with what was said and made of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Value {
    /// The name of the part or adjuster.
    pub name: String,
    /// The number and unit kept.
    pub kept: Quantity,
    /// The end it is counted from, for a setting.
    pub from: Option<End>,
    /// What was said, when it was another unit or end.
    pub said: Option<(Quantity, Option<End>)>,
    /// Whether it is said digit by digit as well.
    pub digits: bool,
}

/// A value refused, or kept with a finding.
#[derive(Debug, Clone, PartialEq)]
pub enum Refusal {
    /// Out of limits.
    OutOfLimits {
        /// The part.
        name: String,
        /// The value.
        value: Quantity,
        /// The limits.
        limit: Limit,
        /// What follows.
        then: Consequence,
    },
    /// A calculation that is not done, with the reason.
    Work {
        /// Why.
        why: String,
    },
    /// Another kind of unit than the step takes.
    WrongKind {
        /// What was said.
        said: Quantity,
        /// What is wanted ("a torque").
        wanted: String,
    },
    /// More clicks than there are, a fraction of a click, a position that is not on the ring...
    NotASetting {
        /// The adjuster.
        name: String,
        /// What was said.
        value: Quantity,
        /// Why not.
        why: String,
    },
    /// The step needs a value, and "done" is not one.
    NeedsValue {
        /// The question.
        asks: String,
    },
    /// A step that is never skipped.
    NeverSkipped {
        /// The step's name.
        name: String,
    },
    /// Running ahead past a step that may not be passed.
    NotPast {
        /// What was to be closed.
        name: String,
        /// The step that comes first.
        first: String,
    },
    /// Something that this bench does not grant.
    NotGranted {
        /// Which: the talk's `refuse` entry.
        what: String,
    },
    /// It cannot be done now, and why.
    NotNow {
        /// Why.
        why: String,
    },
}

/// What follows a value out of limits.
#[derive(Debug, Clone, PartialEq)]
pub enum Consequence {
    /// Count it again.
    Recount,
    /// It stands as a finding; the job goes on.
    Finding,
    /// The step stays open: redo it, or leave it as a deviation with a reason.
    StaysOpen,
    /// Other steps follow before it is asked again.
    Branch,
    /// It has failed too often: stop.
    Stop(String),
    /// It went past the band of its torque, and its card says what is done before it is done again.
    TooTight(String),
}

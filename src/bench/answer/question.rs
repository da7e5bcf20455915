//! Questions that want a second utterance, as data.

use super::Value;
use crate::act::{Doubt, End};
use crate::quantity::{Limit, Quantity};

/// A question that wants a second utterance.
#[derive(Debug, Clone, PartialEq)]
pub enum Question {
    /// A converted or doubtful value: is it so?
    Value(Value),
    /// The same for a value that is out of limits.
    Beyond {
        /// The value.
        value: Value,
        /// The limits.
        limit: Limit,
    },
    /// A wish relative to where an adjuster was found, worked out: is it so?
    Relative {
        /// The adjuster.
        name: String,
        /// As found.
        found: Quantity,
        /// By how much, without a sign.
        by: Quantity,
        /// Whether it is taken off; added otherwise.
        less: bool,
        /// Where it would stand.
        to: Quantity,
    },
    /// Where is the adjuster to stand?
    Stand {
        /// The adjuster.
        name: String,
        /// As found, where that is known, with the end it is counted from.
        found: Option<(Quantity, Option<End>)>,
    },
    /// Which of these?
    Which {
        /// What each would be, as said.
        options: Vec<String>,
        /// What the doubt is about.
        doubt: Doubt,
        /// What would make it clear, when there are no options.
        wanted: String,
    },
    /// Leave out a critical step, or leave it out of limits: why?
    Reason {
        /// The step.
        name: String,
        /// Whether it is a deviation; a skip otherwise.
        deviation: bool,
    },
    /// The same with its reason said back.
    Sure {
        /// The step.
        name: String,
        /// The reason.
        reason: String,
        /// Whether it is a deviation; a skip otherwise.
        deviation: bool,
    },
    /// The last three digits of the serial at a switch.
    Serial {
        /// The place, spoken.
        place: String,
    },
    /// Close the job?
    Finish {
        /// Its number.
        number: u32,
    },
    /// What is missing to start: unit, procedure or corner, with what there is.
    Start {
        /// "unit", "procedure" or "corner"; "job", or "job at no corner", where none is open.
        missing: String,
        /// What there is.
        options: Vec<String>,
    },
    /// A caution waits for its acknowledgement.
    Acknowledge,
    /// A spring of another rate: what is to stay the same.
    SpringRate {
        /// Rate before.
        was: Quantity,
        /// Rate now.
        now: Quantity,
        /// The ways out, each with the preload it leads to.
        options: Vec<(String, Option<Quantity>)>,
    },
    /// An input that a calculation lacks.
    Work {
        /// The question.
        ask: String,
        /// The input's name.
        missing: String,
    },
    /// What was it, then?
    WhatWasIt {
        /// The part or adjuster.
        name: String,
    },
    /// More than one job is open.
    WhichJob {
        /// Their numbers with what they are.
        jobs: Vec<(u32, String)>,
    },
}

//! A question that is open and needs a second utterance: it is state, so it is kept.

use super::Kept;
use crate::act::{Act, Corner, Doubt};
use serde::{Deserialize, Serialize};

/// The open question.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "question", rename_all = "kebab-case")]
pub enum Pending {
    /// A value said in another unit, or doubtful by ear: said back, closed by a second utterance.
    Value {
        /// The value as it would be kept.
        kept: Kept,
    },
    /// A value out of limits may be left as a deviation: a reason, then a second utterance.
    Deviation {
        /// The step.
        step: String,
        /// The reason, once it is given.
        reason: Option<String>,
    },
    /// A critical step left out: a reason, then a second utterance.
    Skip {
        /// The step.
        step: String,
        /// The reason, once it is given.
        reason: Option<String>,
    },
    /// A switch to another place: the last three digits of its serial.
    Switch {
        /// The place.
        place: String,
    },
    /// Closing the job with what is still open.
    Finish,
    /// A job to start: what is still missing is asked for.
    Start {
        /// Procedure, once known.
        procedure: Option<String>,
        /// Unit card, once known.
        unit: Option<String>,
        /// Corner, once known.
        corner: Option<Corner>,
    },
    /// Hearing could not tell: one of these was meant.
    Between {
        /// The acts.
        acts: Vec<Act>,
        /// What the doubt is about.
        doubt: Doubt,
        /// The unclear line's other acts wait with it.
        then: Vec<Act>,
    },
    /// A caution that wants its own acknowledgement.
    Acknowledge {
        /// The cautions.
        cautions: Vec<String>,
    },
    /// A calculation lacks an input.
    Work {
        /// The way of asking, by its name in the pack's table.
        ask: String,
        /// What was said so far, by input.
        given: Vec<(String, String)>,
        /// The input asked for.
        missing: String,
        /// The unit it counts in, where it counts something.
        unit: Option<String>,
        /// The part that the question named.
        about: Option<String>,
        /// The question.
        asks: String,
    },
    /// A wish was relative to where an adjuster stands, and its direction is not clear: where is it to stand?
    Stand {
        /// The adjuster.
        about: String,
        /// The unit of its settings.
        unit: String,
    },
    /// A spring of another rate: what is to stay the same.
    SpringRate {
        /// The adjuster that sets preload.
        about: String,
        /// Rate before, N/mm.
        was: f64,
        /// Rate now, N/mm.
        now: f64,
    },
}

/// What stays the same when the spring has another rate.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Rule {
    /// The same turns of preload.
    Turns,
    /// The same preload force.
    Force,
    /// The same ride height.
    Height,
}

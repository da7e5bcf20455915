//! What the bench is given: rules, the past, an input and the time. And what it gives back.

use super::Answer;
use super::state::State;
use crate::act::{Heard, Waiting};
use crate::event::{Event, Utterance};

/// One input to the bench.
#[derive(Debug, Clone, PartialEq)]
pub enum Input {
    /// The bench was opened on this job (or on none): says where it stands.
    Opened,
    /// A line, by ear or typed, as understood.
    Heard {
        /// The utterance the events will belong to.
        utterance: Utterance,
        /// What hearing made of it.
        heard: Heard,
    },
    /// Time has passed: timers that ran out are told once.
    Tick,
}

/// What the book knows besides this job.
#[derive(Debug, Clone, Default)]
pub struct Past {
    /// The number a new job would get.
    pub next_number: u32,
    /// The last job on this serial, as it stood at its end, with the place that held the unit.
    pub last: Option<(State, String)>,
}

/// What comes of an input.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Decision {
    /// The events, in order: one transaction.
    pub events: Vec<Event>,
    /// The answer.
    pub answer: Answer,
    /// What the job waits for once the events are applied.
    pub waiting: Waiting,
}

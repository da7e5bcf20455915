//! Short acknowledgements, as data.

use super::Value;
use crate::quantity::Quantity;
use crate::rulebase::ReadBack;

/// A short acknowledgement.
#[derive(Debug, Clone, PartialEq)]
pub enum Ack {
    /// Closed (names of what was closed, when it was not the step in hand).
    Done(Vec<String>),
    /// Not done: the step stays.
    Stays,
    /// Written down.
    Noted,
    /// A trouble written down.
    Troubled,
    /// Left out.
    Skipped(String),
    /// Left as a deviation.
    Deviated(String),
    /// Taken back: what, and what the metal still is.
    TakenBack {
        /// What was taken back.
        what: String,
        /// What the metal still is.
        metal: Vec<String>,
    },
    /// There is nothing to take back.
    NothingToTakeBack,
    /// Corrected.
    Corrected(Value),
    /// Stopped for now.
    Paused,
    /// Going on, after this was last kept.
    GoingOn {
        /// The job's number.
        number: u32,
        /// The place in hand ("front left").
        corner: Option<String>,
        /// The last thing kept.
        last: Option<String>,
        /// What metal cannot keep and must be done again.
        again: Vec<String>,
    },
    /// A timer runs.
    TimerSet {
        /// What for.
        what: String,
        /// How long.
        lasts: Quantity,
    },
    /// Who is working now.
    By(String),
    /// A wanted setting is kept.
    Wanted(Value),
    /// A wish in words is kept.
    WantedWords(String),
    /// A new part is kept.
    Fitted(String),
    /// Settings confirmed.
    ReadBack(ReadBack),
    /// A job begun: its number, unit and corner.
    Started {
        /// Its number.
        number: u32,
        /// Unit.
        unit: String,
        /// Corner.
        corner: Option<String>,
        /// Procedure.
        procedure: String,
    },
    /// Another unit in hand.
    Switched(String),
    /// The job is closed.
    Closed {
        /// Its number.
        number: u32,
    },
    /// The question is dropped.
    Dropped,
    /// Acknowledged.
    Understood,
    /// It has already been kept so.
    Already(String),
}

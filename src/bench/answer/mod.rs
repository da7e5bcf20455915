//! An answer as data: figures and names, no sentences of the front end. `reply` alone renders it.

mod ack;
mod fact;
mod question;
mod setting;
mod step;
mod value;

pub use ack::Ack;
pub use fact::Fact;
pub use question::Question;
pub use setting::{RestoreCard, SettingRow, SettingsCard};
pub use step::{Asks, CautionCard, StepCard};
pub use value::{Consequence, Refusal, Value};

/// What the bench answers to one input: parts in the order they are said.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Answer {
    /// The parts.
    pub parts: Vec<Part>,
}

impl Answer {
    /// An answer of one part.
    pub fn of(part: Part) -> Self {
        Self { parts: vec![part] }
    }
}

/// One part of an answer.
#[derive(Debug, Clone, PartialEq)]
pub enum Part {
    /// A caution before its step.
    Caution(CautionCard),
    /// The step in hand.
    Step(Box<StepCard>),
    /// A value said back.
    SaidBack(Value),
    /// A value that is not what was wanted.
    Refused(Refusal),
    /// A short acknowledgement.
    Ack(Ack),
    /// A question that wants a second utterance.
    Question(Question),
    /// A fact asked for.
    Fact(Fact),
    /// How to bring an adjuster to its wanted setting.
    Restore(RestoreCard),
    /// A list of settings, one row an adjuster.
    Settings(SettingsCard),
    /// How far the job is.
    Remaining {
        /// Steps left.
        steps: usize,
        /// Their names, the nearest first.
        next: Vec<String>,
    },
    /// What is still open at the end of a job.
    OpenEnds {
        /// One sentence each.
        items: Vec<String>,
    },
    /// A sentence of the pack or of the record, as it stands.
    Sentence(String),
    /// The bench does not know, and says what.
    Unknown {
        /// What was asked for.
        what: String,
    },
    /// A timer has run out.
    TimerEnded {
        /// What for.
        what: String,
    },
}

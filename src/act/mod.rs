//! What an utterance asks or reports: acts with their slots, how sure hearing is, and what the job waits for.
//!
//! The names are the design's and fixed: they are also the JSON of `hear` and `pipe --json`.

mod name;
mod slots;
mod waiting;

pub use name::ActName;
pub use slots::{Corner, Duration, End, Said, Slots, Which};
pub use waiting::{Waiting, WaitingFor, Want};

use serde::{Deserialize, Serialize};

/// One act with its slots.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Act {
    /// Which act.
    pub act: ActName,
    /// What it is about, how much, of what.
    #[serde(default)]
    pub slots: Slots,
}

impl Act {
    /// An act without slots.
    pub fn new(act: ActName) -> Self {
        Self { act, slots: Slots::default() }
    }

    /// The same act about a part, an adjuster or a fluid of the unit card.
    #[must_use]
    pub fn about(mut self, id: impl Into<String>) -> Self {
        self.slots.about = Some(id.into());
        self
    }
}

/// What hearing made of a line.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Outcome {
    /// Sure enough to act.
    Take,
    /// Two readings compete, or a value is unclear: one short question.
    Ask,
    /// Not something to act on: chatter, another topic, noise.
    Decline,
}

/// Why hearing asks instead of taking: the bench words the question from it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Doubt {
    /// Several numbers may have been meant; `between` holds one act for each.
    Number,
    /// A value was vague ("two and a bit", "about ten"): the exact one is wanted.
    Vague,
    /// A part that this unit does not have; `between` holds the nearest that it has.
    Part,
    /// Two meanings compete; `between` holds them.
    Meaning,
    /// Hedged, reported or half denied: whether it is done is asked again.
    Hedged,
    /// A number with a unit that the step does not take.
    Unit,
    /// A corner named in a way that means two sides.
    Side,
}

/// A line as understood.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Heard {
    /// Take, ask or decline.
    pub outcome: Outcome,
    /// The acts, in the order said; empty unless taken.
    #[serde(default)]
    pub acts: Vec<Act>,
    /// The acts that compete, when asking.
    #[serde(default)]
    pub between: Vec<Act>,
    /// What the doubt is about, when asking.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub doubt: Option<Doubt>,
    /// A request that the bench never grants, named by the talk's `refuse` entry ("cautions", "everything", "records").
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub refused: Option<String>,
    /// How sure, from 0 to 1.
    pub sure: f64,
}

impl Heard {
    /// Acts taken as given.
    pub fn take(acts: Vec<Act>, sure: f64) -> Self {
        Self { outcome: Outcome::Take, acts, between: Vec::new(), doubt: None, refused: None, sure }
    }

    /// A question back, between acts (none when the doubt says enough).
    pub fn ask(between: Vec<Act>, doubt: Doubt, sure: f64) -> Self {
        Self { outcome: Outcome::Ask, acts: Vec::new(), between, doubt: Some(doubt), refused: None, sure }
    }

    /// Not something to act on.
    pub fn decline(sure: f64) -> Self {
        Self {
            outcome: Outcome::Decline,
            acts: Vec::new(),
            between: Vec::new(),
            doubt: None,
            refused: None,
            sure,
        }
    }
}

//! A caution: signal word, hazard, consequence and how to avoid it (ANSI Z535.6).

use crate::source::Place;
use serde::{Deserialize, Serialize};

/// Signal words by ANSI Z535.6, the gravest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Signal {
    /// Will kill or seriously injure.
    Danger,
    /// Could kill or seriously injure.
    Warning,
    /// Could injure.
    Caution,
    /// Damage to property only.
    Notice,
}

impl Signal {
    /// Whether it wants an acknowledgement of its own.
    pub fn wants_acknowledgement(self) -> bool {
        matches!(self, Self::Danger | Self::Warning)
    }

    /// The signal word.
    pub fn word(self) -> &'static str {
        match self {
            Self::Danger => "danger",
            Self::Warning => "warning",
            Self::Caution => "caution",
            Self::Notice => "notice",
        }
    }
}

/// One caution.
#[derive(Debug, Clone, PartialEq)]
pub struct Caution {
    /// Its id ("stored-energy-in-the-spring").
    pub id: String,
    /// Signal word.
    pub signal: Signal,
    /// The whole of it: hazard, what follows, how to avoid it.
    pub full: String,
    /// One clause, for later times.
    pub brief: String,
    /// Where it comes from.
    pub source: Option<String>,
    /// Where the pack says so.
    pub at: Place,
}

//! The kinds of question that a calculation answers.

use serde::{Deserialize, Serialize};

/// The `kind` slot of `ask_work` (design, section 5).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
#[expect(missing_docs, reason = "the names are the design's words and say what they are")]
pub enum Kind {
    Convert,
    Spring,
    Preload,
    Frequency,
    Wrench,
    Gas,
    Oil,
    Fits,
    Shaft,
    Joint,
    Viscosity,
    Cure,
    Pair,
}

impl Kind {
    /// Every kind.
    pub const ALL: [Self; 13] = [
        Self::Convert,
        Self::Spring,
        Self::Preload,
        Self::Frequency,
        Self::Wrench,
        Self::Gas,
        Self::Oil,
        Self::Fits,
        Self::Shaft,
        Self::Joint,
        Self::Viscosity,
        Self::Cure,
        Self::Pair,
    ];

    /// The word in the slot.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Convert => "convert",
            Self::Spring => "spring",
            Self::Preload => "preload",
            Self::Frequency => "frequency",
            Self::Wrench => "wrench",
            Self::Gas => "gas",
            Self::Oil => "oil",
            Self::Fits => "fits",
            Self::Shaft => "shaft",
            Self::Joint => "joint",
            Self::Viscosity => "viscosity",
            Self::Cure => "cure",
            Self::Pair => "pair",
        }
    }

    /// The kind of a word.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.name() == text)
    }
}

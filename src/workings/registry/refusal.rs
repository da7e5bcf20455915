//! Why a calculation was not done. Each says what is wrong and what would mend it.

use serde::Serialize;
use thiserror::Error;

use crate::quantity::Unit;

/// A refusal is an answer: the caller asks for what is missing, or says the reason.
#[derive(Debug, Clone, PartialEq, Error, Serialize)]
#[serde(tag = "refused", rename_all = "kebab-case")]
pub enum Refusal {
    /// No working has that name.
    #[error("no calculation is called `{name}`{}", near.as_ref().map(|near| format!("; did you mean `{near}`?")).unwrap_or_default())]
    NoSuchWorking {
        /// The name given.
        name: String,
        /// The nearest name.
        near: Option<String>,
    },
    /// The working has no such input.
    #[error("`{working}` takes no `{input}`; it takes {}", takes.join(", "))]
    NoSuchInput {
        /// The working.
        working: String,
        /// The name given.
        input: String,
        /// The names that it takes.
        takes: Vec<String>,
    },
    /// An input is missing: ask for it.
    #[error("`{input}` is missing: {ask}")]
    Missing {
        /// The working.
        working: String,
        /// The input's name.
        input: String,
        /// The question that asks for it.
        ask: String,
        /// The unit that the working counts it in.
        unit: Option<Unit>,
    },
    /// An input has the wrong dimension.
    #[error("`{input}` is {}, and `{found}` is {}; give it in a unit such as `{wanted}`", wanted.dimension(), found.dimension())]
    WrongDimension {
        /// The input's name.
        input: String,
        /// The unit given.
        found: Unit,
        /// A unit that would do.
        wanted: Unit,
    },
    /// An input cannot be read.
    #[error("`{input}`: {reason}")]
    Unreadable {
        /// The input's name.
        input: String,
        /// What was found and what is accepted.
        reason: String,
    },
    /// A value that cannot be.
    #[error("{}{reason}", input.as_ref().map(|input| format!("`{input}`: ")).unwrap_or_default())]
    Impossible {
        /// The input's name, where one is to blame.
        input: Option<String>,
        /// Why it cannot be.
        reason: String,
    },
}

impl Refusal {
    /// A value that cannot be, with the input to blame.
    pub(in crate::workings) fn impossible(input: &str, reason: impl Into<String>) -> Self {
        Self::Impossible { input: Some(input.to_owned()), reason: reason.into() }
    }

    /// Values that cannot be together.
    pub(in crate::workings) fn cannot(reason: impl Into<String>) -> Self {
        Self::Impossible { input: None, reason: reason.into() }
    }

    /// A text that cannot be read.
    pub(in crate::workings) fn unreadable(input: &str, reason: impl Into<String>) -> Self {
        Self::Unreadable { input: input.to_owned(), reason: reason.into() }
    }
}

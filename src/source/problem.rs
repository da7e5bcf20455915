//! A problem in a text: what was found, what is accepted, how to mend it. Data until the renderer draws it.

use super::Place;
use serde::Serialize;
use std::fmt;

/// How bad a problem is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Level {
    /// It must be mended before the pack is used.
    Wrong,
    /// It may be meant; it should be looked at.
    Doubtful,
    /// It reads badly.
    Style,
}

impl Level {
    /// The word shown.
    pub fn word(self) -> &'static str {
        match self {
            Self::Wrong => "wrong",
            Self::Doubtful => "doubtful",
            Self::Style => "style",
        }
    }
}

/// One problem. The author's own words stand in backticks.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct Problem {
    /// Where it is.
    pub place: Place,
    /// How bad it is.
    pub level: Level,
    /// What was found.
    pub found: String,
    /// What is accepted there.
    pub expected: Option<String>,
    /// What to do about it.
    pub mend: Option<String>,
}

impl Problem {
    /// Something wrong at a place.
    pub fn wrong(place: Place, found: impl Into<String>) -> Self {
        Self { place, level: Level::Wrong, found: found.into(), expected: None, mend: None }
    }

    /// The same with what is accepted.
    #[must_use]
    pub fn expected(mut self, expected: impl Into<String>) -> Self {
        self.expected = Some(expected.into());
        self
    }

    /// The same with how to mend it.
    #[must_use]
    pub fn mend(mut self, mend: impl Into<String>) -> Self {
        self.mend = Some(mend.into());
        self
    }
}

/// One line, for a log or a list: place, level, found, expected, mend.
impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}: {}", self.place, self.level.word(), self.found)?;
        if let Some(expected) = &self.expected {
            write!(f, "; expected {expected}")?;
        }
        if let Some(mend) = &self.mend {
            write!(f, "; {mend}")?;
        }
        Ok(())
    }
}

//! What is wrong with a talk file, and where.

/// A problem in a talk file.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{file}:{line}:{column}: {message}; {mend}")]
pub struct TalkError {
    /// The file's name in the pack.
    pub file: String,
    /// Line, from 1.
    pub line: usize,
    /// Column, from 1.
    pub column: usize,
    /// What was found.
    pub message: String,
    /// How to mend it.
    pub mend: String,
}

impl TalkError {
    /// A problem at a place.
    pub fn new(
        file: &str,
        line: usize,
        column: usize,
        message: impl Into<String>,
        mend: impl Into<String>,
    ) -> Self {
        Self { file: file.to_owned(), line, column, message: message.into(), mend: mend.into() }
    }
}

//! Whose failure it is, and so which exit code: the one place that sorts them.

use crate::book::BookError;
use crate::source::{Problem, render};
use std::collections::BTreeMap;
use std::fmt;

/// A failure, sorted by whose it is.
#[derive(Debug)]
pub enum Fault {
    /// Nobody's: whoever read our output has gone.
    Closed,
    /// What was asked about does not hold: a transcript differs, a question is refused or incomplete.
    NotSo(String),
    /// The technician's call or input.
    Call {
        /// What was found.
        found: String,
        /// What mends it.
        mend: String,
    },
    /// The author's: problems in a pack or a transcript, with the texts they are in, by file.
    Text {
        /// The problems.
        problems: Vec<Problem>,
        /// The texts.
        texts: BTreeMap<String, String>,
    },
    /// The book's.
    Book(BookError),
    /// The disk's, apart from the book.
    Disk {
        /// What was found.
        found: String,
        /// What mends it.
        mend: String,
    },
    /// Ours.
    Ours(String),
}

/// Problems drawn in one run; who has more mends these first.
const MOST_DRAWN: usize = 50;

impl Fault {
    /// A call or input that cannot be served.
    pub fn call(found: impl Into<String>, mend: impl Into<String>) -> Self {
        Self::Call { found: found.into(), mend: mend.into() }
    }

    /// A failure of the disk.
    pub fn disk(found: impl Into<String>, mend: impl Into<String>) -> Self {
        Self::Disk { found: found.into(), mend: mend.into() }
    }

    /// Problems in a text of that name.
    pub fn text(problems: Vec<Problem>, name: &str, text: &str) -> Self {
        Self::Text { problems, texts: BTreeMap::from([(name.to_owned(), text.to_owned())]) }
    }

    /// The whole of it, problems drawn with their lines; `colour` for a terminal.
    pub fn drawn(&self, colour: bool) -> String {
        let Self::Text { problems, texts } = self else { return self.to_string() };
        let drawn = problems.iter().take(MOST_DRAWN).map(|problem| {
            let text = texts.get(problem.place.file.as_ref()).map(String::as_str);
            render(problem, text, colour)
        });
        let left = problems.len().saturating_sub(MOST_DRAWN);
        let more = (left > 0).then(|| format!("and {left} more"));
        drawn.chain(more).collect::<Vec<_>>().join("\n\n")
    }

    /// The exit code of the design's table (section 6).
    pub fn exit_code(&self) -> u8 {
        match self {
            Self::Closed => 0,
            Self::NotSo(_) => 1,
            Self::Call { .. } | Self::Text { .. } => 2,
            // What does not continue the book was made by us.
            Self::Book(BookError::Clash { .. }) | Self::Ours(_) => 4,
            Self::Book(_) | Self::Disk { .. } => 3,
        }
    }
}

impl From<BookError> for Fault {
    fn from(error: BookError) -> Self {
        Self::Book(error)
    }
}

impl From<Vec<Problem>> for Fault {
    fn from(problems: Vec<Problem>) -> Self {
        Self::Text { problems, texts: BTreeMap::new() }
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Closed => Ok(()),
            Self::NotSo(what) => f.write_str(what),
            Self::Call { found, mend } | Self::Disk { found, mend } => write!(f, "{found}\n  mend: {mend}"),
            Self::Text { .. } => f.write_str(&self.drawn(false)),
            Self::Book(error) => error.fmt(f),
            Self::Ours(what) => write!(
                f,
                "a fault of the program, not yours: {what}\n  mend: nothing of that line was kept; say it another way, and report this"
            ),
        }
    }
}

//! What can go wrong with a book, sorted by kind: each says the file, what was found, and the way to mend it.

use super::Survey;
use std::path::{Path, PathBuf};
use thiserror::Error;

/// Why the book could not do what was asked. Nothing was overwritten, and nothing half kept.
#[derive(Debug, Error)]
pub enum BookError {
    /// There is no room left.
    #[error(
        "the book {} cannot grow: the disk is full\n  mend: make room on it, then say it again; nothing of the last line was kept",
        shown(book)
    )]
    Full {
        /// The book.
        book: PathBuf,
    },
    /// It cannot be written where it stands.
    #[error(
        "the book {} cannot be written: {why}\n  mend: give leave to write the book and its folder, or name another with --book",
        shown(book)
    )]
    ReadOnly {
        /// The book.
        book: PathBuf,
        /// What the system said.
        why: String,
    },
    /// Another console holds it.
    #[error(
        "the book {} is held by another console{}\n  mend: go on there, or close it; until then this one may only read",
        shown(book),
        holder(*by)
    )]
    Held {
        /// The book.
        book: PathBuf,
        /// The process that holds it, where that can be told.
        by: Option<u32>,
    },
    /// It is a book, but not as it was written.
    #[error(
        "the book {} is damaged: {place}\n  still reads: {}\n  mend: leave it as it is and put back a copy from before; `jobs` and `log` show what still reads",
        shown(book),
        still(*reads)
    )]
    Damaged {
        /// The book.
        book: PathBuf,
        /// Where, what was found, and what was expected.
        place: String,
        /// What still reads, where that was counted.
        reads: Option<Survey>,
    },
    /// It was written by a newer program.
    #[error(
        "the book {} is of form {found}, and this program reads up to form {reads}\n  mend: use the program that wrote it, or a newer one",
        shown(book)
    )]
    Newer {
        /// The book.
        book: PathBuf,
        /// The form found.
        found: u64,
        /// The newest form that this program reads.
        reads: u64,
    },
    /// It is some other file.
    #[error(
        "{} is not a book: {found}\n  mend: name another file with --book; this one was left as it is",
        shown(book)
    )]
    NotABook {
        /// The file.
        book: PathBuf,
        /// What it is instead.
        found: String,
    },
    /// There is no such file, and it was to be read only.
    #[error("there is no book at {} yet\n  mend: start a job, or name another with --book", shown(book))]
    Missing {
        /// Where it was looked for.
        book: PathBuf,
    },
    /// What was to be kept does not continue what is there: our fault, or a second writer's.
    #[error("the book {} refuses what does not continue it: {what}", shown(book))]
    Clash {
        /// The book.
        book: PathBuf,
        /// What was found, and what was expected.
        what: String,
    },
    /// The disk or the system failed.
    #[error(
        "the book {} could not be used: {what}\n  mend: look at the disk and the folder, then try again",
        shown(book)
    )]
    Io {
        /// The book.
        book: PathBuf,
        /// What failed, and what the system said.
        what: String,
    },
}

impl BookError {
    /// A failure of the system on this book, sorted by what it means.
    pub(super) fn system(book: &Path, doing: &str, error: &std::io::Error) -> Self {
        use std::io::ErrorKind as Kind;
        let book = book.to_path_buf();
        match error.kind() {
            Kind::StorageFull | Kind::QuotaExceeded | Kind::FileTooLarge => Self::Full { book },
            Kind::PermissionDenied | Kind::ReadOnlyFilesystem => {
                Self::ReadOnly { book, why: format!("{doing}: {error}") }
            }
            _ => Self::Io { book, what: format!("{doing}: {error}") },
        }
    }

    /// Damage at a place.
    pub(super) fn damaged(book: &Path, place: impl Into<String>) -> Self {
        Self::Damaged { book: book.to_path_buf(), place: place.into(), reads: None }
    }
}

/// A path fit for a terminal, in backticks: control codes in it are escaped.
fn shown(path: &Path) -> String {
    let text = path.display().to_string();
    let safe: String = text
        .chars()
        .flat_map(|c| if c.is_control() { c.escape_default().collect() } else { vec![c] })
        .collect();
    format!("`{safe}`")
}

/// " (process 1234)", where it is known.
fn holder(by: Option<u32>) -> String {
    by.map(|pid| format!(" (process {pid})")).unwrap_or_default()
}

/// What still reads, in words.
fn still(reads: Option<Survey>) -> String {
    reads.map_or_else(|| "not counted".to_owned(), |survey| survey.to_string())
}

//! SQLite's failures, sorted by what they mean for the book.

use crate::book::BookError;
use rusqlite::{Error, ErrorCode};
use std::path::Path;

/// The book's error for one of SQLite's.
pub(super) fn sort(path: &Path, error: &Error) -> BookError {
    let book = path.to_path_buf();
    match error.sqlite_error_code() {
        Some(ErrorCode::DiskFull) => BookError::Full { book },
        Some(ErrorCode::ReadOnly | ErrorCode::PermissionDenied) => {
            BookError::ReadOnly { book, why: error.to_string() }
        }
        Some(ErrorCode::DatabaseCorrupt) => BookError::damaged(path, error.to_string()),
        // Our statements are fixed: one that fails as such met tables that are not as they were made.
        Some(ErrorCode::Unknown | ErrorCode::SchemaChanged | ErrorCode::TypeMismatch) => {
            BookError::damaged(path, error.to_string())
        }
        Some(ErrorCode::NotADatabase) => BookError::damaged(path, "its head is not as it was written"),
        Some(ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked) => BookError::Held { book, by: None },
        Some(ErrorCode::ConstraintViolation) => BookError::Clash { book, what: error.to_string() },
        Some(_) => BookError::Io { book, what: error.to_string() },
        // Not the library's own: a column that holds what it never could.
        None => BookError::damaged(path, error.to_string()),
    }
}

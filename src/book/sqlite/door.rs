//! What is looked at before SQLite opens the file, and how it is opened.

use super::{Access, Sync, fault, schema, wal};
use crate::book::{BookError, lock};
use rusqlite::{Connection, OpenFlags};
use std::fs::{self, File};
use std::io::{ErrorKind, Read};
use std::path::Path;
use std::time::Duration;

/// Every SQLite file begins with this (https://www.sqlite.org/fileformat2.html, section 1.3).
const MAGIC: &[u8; 16] = b"SQLite format 3\0";
/// Books up to this size have their pages checked at each opening for writing; larger ones by `verify`.
const QUICK: u64 = 4 * 1024 * 1024;
/// How long a statement waits for another's lock.
const PATIENCE: Duration = Duration::from_secs(2);

/// Looks whether a book stands there, and changes nothing.
pub(super) fn look(path: &Path) -> Result<bool, BookError> {
    let system = |e: std::io::Error| BookError::system(path, "reading it", &e);
    let mut head = Vec::new();
    match File::open(path) {
        Ok(_) if path.is_dir() => {
            let found = "it is a folder".to_owned();
            return Err(BookError::NotABook { book: path.to_path_buf(), found });
        }
        Ok(file) => file.take(100).read_to_end(&mut head).map_err(system)?,
        Err(e) if e.kind() == ErrorKind::NotFound => return nothing(path),
        Err(e) => return Err(system(e)),
    };
    check_head(path, &head).map(|()| true)
}

/// No book; but a log without one is what is left of one, and SQLite would play it into a new book.
fn nothing(path: &Path) -> Result<bool, BookError> {
    for ending in ["-wal", "-journal"] {
        if fs::metadata(lock::beside(path, ending)).is_ok_and(|m| m.len() > 0) {
            let place = format!("its log (`{ending}`) is there, and the book itself is not");
            return Err(BookError::damaged(path, place));
        }
    }
    Ok(false)
}

/// Whether the book's log ends in a write cut short, if this console may say so: one that holds the book may
/// be writing its log just now; nobody else does.
pub(super) fn is_torn(path: &Path, holding: bool) -> Result<bool, BookError> {
    if holding || !lock::Lock::is_held(path) {
        wal::check(path, &lock::beside(path, "-wal"))
    } else {
        Ok(false)
    }
}

/// Tells a book from another file, a newer one from one of ours, and a damaged head from both.
fn check_head(path: &Path, head: &[u8]) -> Result<(), BookError> {
    let number = |at: usize| head.get(at..at + 4).and_then(|b| b.try_into().ok()).map(i32::from_be_bytes);
    let ours = number(68) == Some(schema::APPLICATION);
    if head.is_empty() {
        return Err(BookError::damaged(path, "it is empty: a book has at least its tables"));
    }
    if !head.starts_with(MAGIC) {
        return Err(match ours {
            true => BookError::damaged(path, "its first 16 bytes are not a book's"),
            false => BookError::NotABook {
                book: path.to_path_buf(),
                found: "it does not begin as a book does".to_owned(),
            },
        });
    }
    let (Some(application), Some(form)) = (number(68), number(60)) else {
        return Err(BookError::damaged(path, format!("it is cut short after {} bytes", head.len())));
    };
    check_form(path, application.into(), form.into())
}

/// Checks the marks that a book carries.
pub(super) fn check_form(path: &Path, application: i64, form: i64) -> Result<(), BookError> {
    let book = path.to_path_buf();
    if application != i64::from(schema::APPLICATION) {
        return Err(BookError::NotABook { book, found: "it is another program's database".to_owned() });
    }
    match u64::try_from(form) {
        Ok(found) if found > u64::from(schema::FORM) => {
            Err(BookError::Newer { book, found, reads: schema::FORM.into() })
        }
        Ok(1..) => Ok(()),
        _ => Err(BookError::damaged(path, format!("its form is said to be {form}; forms begin at 1"))),
    }
}

/// Whether a check of all pages is cheap enough for each opening.
pub(super) fn is_quick(path: &Path) -> bool {
    fs::metadata(path).is_ok_and(|m| m.len() <= QUICK)
}

/// Opens the file, which is there.
pub(super) fn connect(path: &Path, access: Access, sync: Sync) -> Result<Connection, BookError> {
    let opened = match access {
        Access::Write => writer(path, sync),
        Access::Read => reader(path),
    };
    opened.map_err(|e| writing(path, &e))
}

fn writer(path: &Path, sync: Sync) -> Result<Connection, rusqlite::Error> {
    let connection = Connection::open_with_flags(path, flags(OpenFlags::SQLITE_OPEN_READ_WRITE))?;
    connection.busy_timeout(PATIENCE)?;
    let _: String = connection.pragma_update_and_check(None, "journal_mode", "WAL", |row| row.get(0))?;
    connection.pragma_update(None, "synchronous", if sync == Sync::Full { "FULL" } else { "OFF" })?;
    // A customer who is forgotten is overwritten, not only unlinked.
    connection.pragma_update(None, "secure_delete", true)?;
    Ok(connection)
}

fn reader(path: &Path) -> Result<Connection, rusqlite::Error> {
    let connection = Connection::open_with_flags(path, flags(OpenFlags::SQLITE_OPEN_READ_ONLY))?;
    connection.busy_timeout(PATIENCE)?;
    match connection.query_row("SELECT count(*) FROM meta", [], |_| Ok(())) {
        Err(e) if e.sqlite_error_code() == Some(rusqlite::ErrorCode::CannotOpen) && settled(path) => {
            still(path)
        }
        Err(e) => Err(e),
        Ok(()) => Ok(connection),
    }
}

/// Whether all there is stands in the book itself, and nothing in its log.
fn settled(path: &Path) -> bool {
    fs::metadata(lock::beside(path, "-wal")).map_or(true, |m| m.len() == 0)
}

/// A settled book in a folder where nothing may be written, not even the log's index.
fn still(path: &Path) -> Result<Connection, rusqlite::Error> {
    let name = percent(path);
    let flags = flags(OpenFlags::SQLITE_OPEN_READ_ONLY) | OpenFlags::SQLITE_OPEN_URI;
    Connection::open_with_flags(format!("file:{name}?immutable=1"), flags)
}

/// The path as it is written in an address (RFC 3986, section 2.1).
fn percent(path: &Path) -> String {
    let plain = |b: u8| b.is_ascii_alphanumeric() || b"/-._~".contains(&b);
    let bytes = path.as_os_str().as_encoded_bytes();
    bytes.iter().map(|&b| if plain(b) { char::from(b).to_string() } else { format!("%{b:02X}") }).collect()
}

fn flags(access: OpenFlags) -> OpenFlags {
    access | OpenFlags::SQLITE_OPEN_NO_MUTEX | OpenFlags::SQLITE_OPEN_EXRESCODE
}

/// As [`fault::sort`], where not being able to open a file means that it may not be written.
pub(super) fn writing(path: &Path, error: &rusqlite::Error) -> BookError {
    match error.sqlite_error_code() {
        Some(rusqlite::ErrorCode::CannotOpen) => {
            BookError::ReadOnly { book: path.to_path_buf(), why: error.to_string() }
        }
        _ => fault::sort(path, error),
    }
}

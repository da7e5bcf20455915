//! The tables, their form's number, and making a new book whole or not at all.

use super::fault::sort;
use super::{Access, door};
use crate::book::{BookError, chain, lock};
use rusqlite::{Connection, params};
use std::fs::{self, File};
use std::path::Path;

/// What marks a file as a book ("SHbk").
pub(super) const APPLICATION: i32 = 0x5348_626b;
/// The form of the tables that this program writes.
pub(super) const FORM: u32 = 1;

/// Form 1. `body` is the event as JSON and is what counts; the other columns repeat what it is found by.
/// In `event`, `sum` chains the bodies of a job, and `head` says where each job's chain ends; elsewhere it is the
/// text's own.
const TABLES: &str = "
    CREATE TABLE meta (name TEXT PRIMARY KEY, value TEXT NOT NULL, sum BLOB NOT NULL) STRICT, WITHOUT ROWID;
    CREATE TABLE event (
        entry INTEGER PRIMARY KEY,
        id TEXT NOT NULL UNIQUE,
        bench TEXT NOT NULL,
        job TEXT NOT NULL,
        sequence INTEGER NOT NULL,
        utterance TEXT NOT NULL,
        utc_us INTEGER NOT NULL,
        offset_s INTEGER NOT NULL,
        mark TEXT,
        value TEXT,
        body TEXT NOT NULL,
        sum BLOB NOT NULL,
        UNIQUE (job, sequence)
    ) STRICT;
    CREATE INDEX event_mark ON event (mark, value) WHERE mark IS NOT NULL;
    CREATE UNIQUE INDEX event_number ON event (value) WHERE mark = 'opened';
    CREATE TABLE head (
        job TEXT PRIMARY KEY,
        bench TEXT NOT NULL,
        sequence INTEGER NOT NULL,
        utterance TEXT NOT NULL,
        maybe_open INTEGER NOT NULL,
        sum BLOB NOT NULL
    ) STRICT, WITHOUT ROWID;
    CREATE TABLE pack (hash TEXT PRIMARY KEY, files TEXT NOT NULL, sum BLOB NOT NULL) STRICT, WITHOUT ROWID;
    CREATE TABLE customer (id TEXT PRIMARY KEY, body TEXT NOT NULL, sum BLOB NOT NULL) STRICT, WITHOUT ROWID;
";

/// Makes an empty book beside its place and moves it there, so that no half-made one ever stands there.
pub(super) fn make(path: &Path, bench: &str) -> Result<(), BookError> {
    let part = lock::beside(path, ".part");
    let system = |e: std::io::Error| BookError::system(path, "making it", &e);
    // What a killed console half made goes, its journal too: SQLite would play that into the new file.
    for ending in ["", "-journal", "-wal", "-shm"] {
        match fs::remove_file(lock::beside(&part, ending)) {
            Err(e) if e.kind() != std::io::ErrorKind::NotFound => return Err(system(e)),
            _ => {}
        }
    }
    fill(&part, bench).map_err(|e| door::writing(path, &e))?;
    File::open(&part).and_then(|f| f.sync_all()).map_err(system)?;
    fs::rename(&part, path).map_err(system)?;
    sync_folder(path).map_err(system)
}

fn fill(part: &Path, bench: &str) -> Result<(), rusqlite::Error> {
    let mut connection = Connection::open(part)?;
    connection.pragma_update(None, "application_id", APPLICATION)?;
    let all = connection.transaction()?;
    all.execute_batch(TABLES)?;
    all.execute("INSERT INTO meta VALUES ('bench', ?1, ?2)", params![bench, chain::of(bench)])?;
    all.pragma_update(None, "user_version", FORM)?;
    all.commit()?;
    // Kept in the file's head: whoever opens it later finds the log in use.
    connection.pragma_update(None, "journal_mode", "WAL")?;
    connection.close().map_err(|(_, e)| e)
}

/// A name is durable once its folder is.
fn sync_folder(path: &Path) -> std::io::Result<()> {
    match path.parent().filter(|p| !p.as_os_str().is_empty()) {
        Some(folder) => File::open(folder)?.sync_all(),
        None => File::open(".")?.sync_all(),
    }
}

/// Checks that the open file is a book of a form that this program reads; for writing, that it is whole.
pub(super) fn settle(path: &Path, connection: &Connection, access: Access) -> Result<(), BookError> {
    let number = |name: &str| -> Result<i64, BookError> {
        connection.pragma_query_value(None, name, |row| row.get(0)).map_err(|e| sort(path, &e))
    };
    door::check_form(path, number("application_id")?, number("user_version")?)?;
    if access == Access::Write && door::is_quick(path) { check_all(path, connection) } else { Ok(()) }
}

/// SQLite's own check of its pages, and of its indices against its tables.
pub(super) fn check_all(path: &Path, connection: &Connection) -> Result<(), BookError> {
    let found: String = connection
        .query_row("PRAGMA integrity_check(1)", [], |row| row.get(0))
        .map_err(|e| sort(path, &e))?;
    if found == "ok" { Ok(()) } else { Err(BookError::damaged(path, found)) }
}

//! What is written, within a transaction that the caller commits.

use super::fault::sort;
use super::sequence::Sequence;
use crate::book::body;
use crate::book::chain::{self, Sum};
use crate::book::mark::Mark;
use crate::book::order::{self, Head};
use crate::book::{BookError, Customer, Files};
use crate::event::{Envelope, Event};
use rusqlite::{Connection, OptionalExtension, params};
use std::path::Path;

const EVENT: &str = "INSERT INTO event
    (id, bench, job, sequence, utterance, utc_us, offset_s, mark, value, body, sum)
    VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11)";
/// A taking back may open a closed job again: whether it did is for whoever reads the job's marks.
const HEAD: &str = "INSERT INTO head (job, bench, sequence, utterance, maybe_open, sum)
    VALUES (?1, ?2, ?3, ?4, coalesce(?5, 1), ?6)
    ON CONFLICT (job) DO UPDATE SET sequence = excluded.sequence, utterance = excluded.utterance,
        sum = excluded.sum, maybe_open = coalesce(?5, maybe_open)";

/// One utterance's events.
pub(super) fn append(path: &Path, connection: &Connection, events: &[Envelope]) -> Result<(), BookError> {
    order::check(path, events, |job| head(path, connection, job))?;
    events.iter().try_for_each(|event| keep(path, connection, event))
}

fn head(path: &Path, connection: &Connection, job: &str) -> Result<Option<Head>, BookError> {
    connection
        .prepare_cached("SELECT sequence, utterance FROM head WHERE job = ?1")
        .and_then(|mut s| {
            s.query_row([job], |row| {
                Ok(Head { sequence: row.get::<_, Sequence>(0)?.0, utterance: row.get(1)? })
            })
            .optional()
        })
        .map_err(|e| sort(path, &e))
}

fn keep(path: &Path, connection: &Connection, event: &Envelope) -> Result<(), BookError> {
    let body = body::of(path, event)?;
    let fail = |e: rusqlite::Error| sort(path, &e);
    let before = connection
        .prepare_cached("SELECT sum FROM head WHERE job = ?1")
        .and_then(|mut s| s.query_row([&event.job], |row| row.get::<_, Sum>(0)).optional())
        .map_err(fail)?
        .unwrap_or_else(|| chain::first(&event.job));
    let sum = chain::next(&before, &body);
    let mark = Mark::of(event);
    let sequence = Sequence(event.sequence);
    connection
        .prepare_cached(EVENT)
        .and_then(|mut s| {
            s.execute(params![
                event.id,
                event.bench,
                event.job,
                sequence,
                event.utterance.id,
                event.at.timestamp_micros(),
                event.at.offset().local_minus_utc(),
                mark.as_ref().map(Mark::name),
                mark.as_ref().map(Mark::value),
                body,
                sum
            ])
        })
        .map_err(fail)?;
    connection
        .prepare_cached(HEAD)
        .and_then(|mut s| {
            s.execute(params![event.job, event.bench, sequence, event.utterance.id, open(&event.event), sum])
        })
        .map_err(fail)?;
    Ok(())
}

/// What an event says of its job's being open; nothing, for most.
fn open(event: &Event) -> Option<bool> {
    match event {
        Event::JobClosed { .. } => Some(false),
        Event::TakenBack { .. } => Some(true),
        _ => None,
    }
}

fn json<T: serde::Serialize>(path: &Path, value: &T) -> Result<String, BookError> {
    serde_json::to_string(value).map_err(|e| BookError::Clash {
        book: path.to_path_buf(),
        what: format!("it cannot be written down: {e}"),
    })
}

/// A pack's files, unless they are there.
pub(super) fn pack(path: &Path, connection: &Connection, hash: &str, files: &Files) -> Result<(), BookError> {
    let text = json(path, files)?;
    connection
        .execute("INSERT OR IGNORE INTO pack VALUES (?1, ?2, ?3)", params![hash, text, chain::of(&text)])
        .map(|_| ())
        .map_err(|e| sort(path, &e))
}

/// A customer's record.
pub(super) fn customer(path: &Path, connection: &Connection, customer: &Customer) -> Result<(), BookError> {
    let body = json(path, customer)?;
    connection
        .execute(
            "INSERT OR REPLACE INTO customer VALUES (?1, ?2, ?3)",
            params![customer.id, body, chain::of(&body)],
        )
        .map(|_| ())
        .map_err(|e| sort(path, &e))
}

/// Removes a customer's record.
pub(super) fn forget(path: &Path, connection: &Connection, id: &str) -> Result<bool, BookError> {
    connection
        .execute("DELETE FROM customer WHERE id = ?1", [id])
        .map(|rows| rows > 0)
        .map_err(|e| sort(path, &e))
}

/// Moves everything from the log into the book and empties the log, so that what was removed is in neither.
pub(super) fn settle(path: &Path, connection: &Connection) -> Result<(), BookError> {
    connection.query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |_| Ok(())).map_err(|e| sort(path, &e))
}

//! What is read. An event is handed on only if it is as it was written: its sum is checked every time.

use super::fault::sort;
use super::sequence::Sequence;
use crate::book::chain::{self, Sum};
use crate::book::mark::plain;
use crate::book::{BookError, Customer, Files, JobLine, Query};
use crate::event::{self, Envelope, Unreadable};
use rusqlite::{Connection, OptionalExtension, Row, params};
use std::path::Path;

/// A row of `event` as it stands, with the sum of the row before it.
struct Kept {
    job: String,
    sequence: u64,
    body: String,
    sum: Sum,
    before: Option<Sum>,
}

const KEPT: &str = "SELECT e.job, e.sequence, e.body, e.sum, p.sum FROM event e
    LEFT JOIN event p ON p.job = e.job AND p.sequence = e.sequence - 1";

impl Kept {
    fn of(row: &Row<'_>) -> Result<Self, rusqlite::Error> {
        Ok(Self {
            job: row.get(0)?,
            sequence: row.get::<_, Sequence>(1)?.0,
            body: row.get(2)?,
            sum: row.get(3)?,
            before: row.get(4)?,
        })
    }

    /// The event, if the row is as it was written.
    fn open(self, path: &Path) -> Result<Envelope, BookError> {
        let place = format!("event {} of job {}", self.sequence, self.job);
        let damaged = |what: &str| BookError::damaged(path, format!("{place} {what}"));
        let before = match self.before {
            Some(before) => before,
            None if self.sequence == 1 => chain::first(&self.job),
            None => return Err(damaged("stands alone: the one before it is missing")),
        };
        if chain::next(&before, &self.body) != self.sum {
            return Err(damaged("is not as it was written: its sum differs"));
        }
        let event = event::read(&self.body).map_err(|e| match e {
            Unreadable::Newer { found } => {
                BookError::Newer { book: path.to_path_buf(), found, reads: event::VERSION.into() }
            }
            Unreadable::Form(e) => damaged(&format!("cannot be read: {e}")),
        })?;
        if event.job != self.job || event.sequence != self.sequence {
            return Err(damaged("says that it is another"));
        }
        Ok(event)
    }
}

/// Rows chosen by the end of a statement.
fn rows(
    path: &Path,
    connection: &Connection,
    which: &str,
    given: impl rusqlite::Params,
) -> Result<Vec<Envelope>, BookError> {
    let fail = |e: rusqlite::Error| sort(path, &e);
    let mut statement = connection.prepare_cached(&format!("{KEPT} {which}")).map_err(fail)?;
    let kept = statement.query_map(given, Kept::of).map_err(fail)?;
    kept.map(|row| row.map_err(fail)?.open(path)).collect()
}

/// The bench that the book was made on.
pub(super) fn bench(path: &Path, connection: &Connection) -> Result<String, BookError> {
    text(path, connection, "SELECT value, sum FROM meta WHERE name = 'bench'", [], "its bench")?
        .ok_or_else(|| BookError::damaged(path, "it does not say which bench's it is"))
}

/// A text kept with its own sum.
fn text(
    path: &Path,
    connection: &Connection,
    sql: &str,
    given: impl rusqlite::Params,
    what: &str,
) -> Result<Option<String>, BookError> {
    let row: Option<(String, Sum)> = connection
        .prepare_cached(sql)
        .and_then(|mut s| s.query_row(given, |row| Ok((row.get(0)?, row.get(1)?))).optional())
        .map_err(|e| sort(path, &e))?;
    match row {
        Some((text, sum)) if chain::of(&text) != sum => {
            Err(BookError::damaged(path, format!("{what} is not as it was written: its sum differs")))
        }
        row => Ok(row.map(|(text, _)| text)),
    }
}

/// A text kept with its own sum, as what it is.
fn value<T: serde::de::DeserializeOwned>(
    path: &Path,
    connection: &Connection,
    sql: &str,
    key: &str,
    what: &str,
) -> Result<Option<T>, BookError> {
    let Some(text) = text(path, connection, sql, [key], what)? else { return Ok(None) };
    serde_json::from_str(&text)
        .map(Some)
        .map_err(|e| BookError::damaged(path, format!("{what} cannot be read: {e}")))
}

/// A job's events after a sequence, none missing.
pub(super) fn since(
    path: &Path,
    c: &Connection,
    job: &str,
    sequence: u64,
) -> Result<Vec<Envelope>, BookError> {
    let events = rows(
        path,
        c,
        "WHERE e.job = ?1 AND e.sequence > ?2 ORDER BY e.sequence",
        params![job, Sequence(sequence)],
    )?;
    let end = end(path, c, job)?;
    let mut next = sequence.saturating_add(1);
    for event in &events {
        if event.sequence != next {
            return Err(gap(path, job, next));
        }
        next = next.saturating_add(1);
    }
    match end {
        Some((last, _)) if next <= last => Err(gap(path, job, next)),
        Some((last, sum)) if next == last.saturating_add(1) && !events.is_empty() => {
            check_end(path, c, job, last, &sum)?;
            Ok(events)
        }
        None if !events.is_empty() => {
            Err(BookError::damaged(path, format!("job {job} has events and no head")))
        }
        _ => Ok(events),
    }
}

fn gap(path: &Path, job: &str, sequence: u64) -> BookError {
    BookError::damaged(path, format!("event {sequence} of job {job} is missing"))
}

/// Where a job's chain ends, as its head says.
fn end(path: &Path, connection: &Connection, job: &str) -> Result<Option<(u64, Sum)>, BookError> {
    connection
        .prepare_cached("SELECT sequence, sum FROM head WHERE job = ?1")
        .and_then(|mut s| {
            s.query_row([job], |row| Ok((row.get::<_, Sequence>(0)?.0, row.get(1)?))).optional()
        })
        .map_err(|e| sort(path, &e))
}

fn check_end(path: &Path, c: &Connection, job: &str, last: u64, sum: &Sum) -> Result<(), BookError> {
    let found: Sum = c
        .prepare_cached("SELECT sum FROM event WHERE job = ?1 AND sequence = ?2")
        .and_then(|mut s| s.query_row(params![job, Sequence(last)], |row| row.get(0)))
        .map_err(|e| sort(path, &e))?;
    if found == *sum {
        return Ok(());
    }
    Err(BookError::damaged(path, format!("event {last} of job {job} is not the one that the job ended with")))
}

/// The jobs of a query.
pub(super) fn find(path: &Path, c: &Connection, query: &Query) -> Result<Vec<JobLine>, BookError> {
    let marked = "SELECT DISTINCT job FROM event WHERE mark = ?1 AND value = ?2";
    let jobs = match query {
        Query::All => names(path, c, "SELECT job FROM head", [])?,
        Query::Job(job) => names(path, c, "SELECT job FROM head WHERE job = ?1", [job])?,
        Query::Number(number) => names(path, c, marked, ["opened", &number.to_string()])?,
        Query::OpenAt(bench) => {
            names(path, c, "SELECT job FROM head WHERE bench = ?1 AND maybe_open = 1", [bench])?
        }
        Query::Serial(s) | Query::LastFinished(s) => names(path, c, marked, ["serial", &plain(s)])?,
    };
    let mut lines = jobs.iter().map(|job| line(path, c, job)).collect::<Result<Vec<_>, _>>()?;
    match query {
        Query::OpenAt(_) => lines.retain(|l| l.closed.is_none()),
        Query::Serial(s) | Query::LastFinished(s) => lines.retain(|l| l.has(&plain(s))),
        _ => {}
    }
    if matches!(query, Query::LastFinished(_)) {
        lines = JobLine::last_closed(lines);
    }
    lines.sort_by(|a, b| (a.number, a.opened, &a.job).cmp(&(b.number, b.opened, &b.job)));
    Ok(lines)
}

/// One column of texts.
pub(super) fn names(
    path: &Path,
    c: &Connection,
    sql: &str,
    given: impl rusqlite::Params,
) -> Result<Vec<String>, BookError> {
    c.prepare_cached(sql)
        .and_then(|mut s| s.query_map(given, |row| row.get(0))?.collect())
        .map_err(|e| sort(path, &e))
}

fn line(path: &Path, c: &Connection, job: &str) -> Result<JobLine, BookError> {
    let (last, _) = end(path, c, job)?.ok_or_else(|| gap(path, job, 1))?;
    let one = "WHERE e.job = ?1 AND e.sequence = ?2";
    let at = |sequence: u64| -> Result<Envelope, BookError> {
        rows(path, c, one, params![job, Sequence(sequence)])?.pop().ok_or_else(|| gap(path, job, sequence))
    };
    let marked = rows(path, c, "WHERE e.job = ?1 AND e.mark IS NOT NULL ORDER BY e.sequence", [job])?;
    Ok(JobLine::fold(&at(1)?, &marked, &at(last)?))
}

/// The number after the highest.
pub(super) fn next_job_number(path: &Path, connection: &Connection) -> Result<u32, BookError> {
    let highest: Option<u32> = connection
        .query_row("SELECT max(CAST(value AS INTEGER)) FROM event WHERE mark = 'opened'", [], |row| {
            row.get(0)
        })
        .map_err(|e| sort(path, &e))?;
    Ok(highest.map_or(1, |n| n.saturating_add(1)))
}

/// A pack's files.
pub(super) fn pack(path: &Path, connection: &Connection, hash: &str) -> Result<Option<Files>, BookError> {
    let sql = "SELECT files, sum FROM pack WHERE hash = ?1";
    value(path, connection, sql, hash, &format!("the pack {hash}"))
}

/// A customer's record.
pub(super) fn customer(
    path: &Path,
    connection: &Connection,
    id: &str,
) -> Result<Option<Customer>, BookError> {
    let sql = "SELECT body, sum FROM customer WHERE id = ?1";
    value(path, connection, sql, id, &format!("the record of customer {id}"))
}

/// All customers, by id.
pub(super) fn customers(path: &Path, connection: &Connection) -> Result<Vec<Customer>, BookError> {
    let ids = names(path, connection, "SELECT id FROM customer ORDER BY id", [])?;
    ids.iter().filter_map(|id| customer(path, connection, id).transpose()).collect()
}

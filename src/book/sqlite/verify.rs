//! Reading all of a book: what does not read, and what still does.

use super::fault::sort;
use super::schema;
use super::sequence::Sequence;
use super::{read, wal};
use crate::book::mark::Mark;
use crate::book::{BookError, JobLine, Survey, lock};
use crate::event::Envelope;
use rusqlite::{Connection, params};
use std::path::Path;

/// Reads all of the book; on damage says the first place, and counts what still reads.
pub(super) fn verify(path: &Path, connection: &Connection, holding: bool) -> Result<Survey, BookError> {
    let mut walk = Walk { path, connection, survey: Survey::default(), first: None };
    walk.jobs();
    walk.packs();
    walk.note(read::customers(path, connection).map(|_| ()));
    walk.note(schema::check_all(path, connection));
    if holding {
        walk.note(wal::check(path, &lock::beside(path, "-wal")).map(|_| ()));
    }
    let survey = walk.survey;
    match walk.first {
        None => Ok(survey),
        Some(BookError::Damaged { book, place, .. }) => {
            Err(BookError::Damaged { book, place, reads: Some(survey) })
        }
        Some(other) => Err(other),
    }
}

/// A way through the book that goes on behind damage.
struct Walk<'a> {
    path: &'a Path,
    connection: &'a Connection,
    survey: Survey,
    first: Option<BookError>,
}

impl Walk<'_> {
    /// Keeps the first failure.
    fn note<T>(&mut self, result: Result<T, BookError>) -> Option<T> {
        match result {
            Ok(value) => Some(value),
            Err(error) => {
                self.first.get_or_insert(error);
                None
            }
        }
    }

    fn jobs(&mut self) {
        let all = "SELECT job FROM head UNION SELECT job FROM event ORDER BY job";
        let jobs = self.note(read::names(self.path, self.connection, all, [])).unwrap_or_default();
        for job in jobs {
            let result = self.job(&job);
            if let Some(events) = self.note(result) {
                self.survey.jobs += 1;
                self.survey.events += events;
            }
        }
    }

    fn packs(&mut self) {
        let all = "SELECT hash FROM pack ORDER BY hash";
        let packs = self.note(read::names(self.path, self.connection, all, [])).unwrap_or_default();
        for hash in packs {
            let result = read::pack(self.path, self.connection, &hash);
            self.survey.packs += usize::from(self.note(result).is_some());
        }
    }

    /// Reads a job, and checks that it would be found by what it says.
    fn job(&self, job: &str) -> Result<usize, BookError> {
        let events = read::since(self.path, self.connection, job, 0)?;
        for event in &events {
            self.columns(event)?;
        }
        let ends = events.first().zip(events.last());
        let line = ends.map(|(first, last)| JobLine::fold(first, &events, last));
        self.head(job, line)?;
        Ok(events.len())
    }

    /// What an event is found by repeats what it says.
    fn columns(&self, event: &Envelope) -> Result<(), BookError> {
        let mark = Mark::of(event);
        let same: bool = self
            .connection
            .prepare_cached(
                "SELECT id = ?3 AND bench = ?4 AND utterance = ?5 AND utc_us = ?6 AND offset_s = ?7
                    AND mark IS ?8 AND value IS ?9 FROM event WHERE job = ?1 AND sequence = ?2",
            )
            .and_then(|mut s| {
                let given = params![
                    event.job,
                    Sequence(event.sequence),
                    event.id,
                    event.bench,
                    event.utterance.id,
                    event.at.timestamp_micros(),
                    event.at.offset().local_minus_utc(),
                    mark.as_ref().map(Mark::name),
                    mark.as_ref().map(Mark::value)
                ];
                s.query_row(given, |row| row.get(0))
            })
            .map_err(|e| sort(self.path, &e))?;
        let place = || format!("event {} of job {} is listed as what it is not", event.sequence, event.job);
        if same { Ok(()) } else { Err(BookError::damaged(self.path, place())) }
    }

    /// A job's head says its bench, and never that an open job is closed.
    fn head(&self, job: &str, line: Option<JobLine>) -> Result<(), BookError> {
        let (bench, maybe_open): (String, bool) = self
            .connection
            .query_row("SELECT bench, maybe_open FROM head WHERE job = ?1", [job], |row| {
                Ok((row.get(0)?, row.get(1)?))
            })
            .map_err(|e| sort(self.path, &e))?;
        let same = line.is_some_and(|l| l.bench == bench && (maybe_open || l.closed.is_some()));
        if same {
            Ok(())
        } else {
            Err(BookError::damaged(self.path, format!("the head of job {job} differs")))
        }
    }
}

//! `log`: what was done in a job, from its events alone; names come from the pack that the job is pinned to.

mod as_json;
mod line;
mod names;
mod page;
mod table;
mod times;

use as_json::log_json;

use super::{Cli, LogArgs, open, out::Out};
use crate::bench::state::State;
use crate::book::{Book, JobLine, Query};
use crate::rulebase::Pack;
use crate::session::Fault;
use names::Names;

/// A job as the log tells it.
pub struct Job<'a> {
    /// Its line in the list of jobs.
    pub line: &'a JobLine,
    /// The fold of its events, with the events.
    pub state: &'a State,
    /// Names by its pack.
    pub names: &'a Names,
}

/// Shows it.
///
/// # Errors
/// A job that is not there; a book that cannot be read; nobody reading any more.
pub fn run(cli: &Cli, args: &LogArgs) -> Result<u8, Fault> {
    let none =
        || Fault::call(format!("there is no job {}", args.number), "see `sparehand jobs` for their numbers");
    let book = open::book_to_read(cli)?.ok_or_else(none)?;
    let line = book.find(&Query::Number(args.number))?.into_iter().next().ok_or_else(none)?;
    let (state, names) = read(&book, &line)?;
    let job = Job { line: &line, state: &state, names: &names };
    let mut out = Out::new();
    if cli.place.json {
        out.json(&log_json(&job))?
    } else {
        out.text(&page::page(&job))?
    }
    Ok(0)
}

/// The log of a job as JSON.
///
/// # Errors
/// A book that cannot be read.
pub fn log_of(book: &dyn Book, line: &JobLine) -> Result<serde_json::Value, Fault> {
    let (state, names) = read(book, line)?;
    Ok(log_json(&Job { line, state: &state, names: &names }))
}

fn read(book: &dyn Book, line: &JobLine) -> Result<(State, Names), Fault> {
    let state = State::of(&book.since(&line.job, 0)?);
    let pinned = book.pack(&line.pack)?.map(Pack::from_files);
    // Without its pack a job still reads, by its ids.
    Ok((state, Names::new(pinned.and_then(Result::ok))))
}

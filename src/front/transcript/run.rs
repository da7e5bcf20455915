//! Runs a transcript on a book of its own, and compares.

use super::difference::{Broken, Outcome};
use super::{Head, Item, Kind, Transcript};
use crate::bench::state::State;
use crate::book::{Access, Book, SqliteBook};
use crate::session::{Clock, Fault, Line, LinesClock, Rules, Scratch, SeededIds, Session, Setup, Turn};
use std::path::{Path, PathBuf};

/// Runs it under these rules. What differs and what is broken is in the outcome.
///
/// # Errors
/// What keeps it from running at all.
pub fn run(transcript: &Transcript, rules: &Rules) -> Result<Outcome, Fault> {
    let scratch = Scratch::new()?;
    let mut bench = Bench::open(&transcript.head, rules.clone(), scratch.path())?;
    let mut outcome = Outcome::default();
    for item in &transcript.items {
        if let Some(turns) = bench.play(item)? {
            outcome.answers.push((item.line, turns));
        } else if let Kind::Must(must) = &item.kind {
            let turns = outcome.answers.last().map(|(_, turns)| turns.as_slice()).unwrap_or_default();
            outcome.broken.extend(must.broken(turns).map(|what| Broken { line: item.line, what }));
        }
    }
    outcome.lost = bench.lost()?;
    outcome.compare(transcript);
    Ok(outcome)
}

/// The bench that a transcript runs on.
struct Bench {
    path: PathBuf,
    rules: Rules,
    clock: LinesClock,
    ear: bool,
    by: Option<String>,
    openings: u64,
    session: Option<Session>,
}

impl Bench {
    fn open(head: &Head, rules: Rules, folder: &Path) -> Result<Self, Fault> {
        let clock = LinesClock::at(head.clock);
        let (ear, by) = (head.ear, head.by.clone());
        let path = folder.join("book.sqlite");
        let mut bench = Self { path, rules, clock, ear, by, openings: 0, session: None };
        bench.reopen()?;
        Ok(bench)
    }

    /// Opens the book anew, as another process would.
    fn reopen(&mut self) -> Result<Turn, Fault> {
        // The one before lets go of the book first.
        self.session = None;
        self.openings += 1;
        let (session, turn) = Session::open(Setup {
            rules: self.rules.clone(),
            book: Box::new(SqliteBook::open(&self.path, Access::Write, "transcript")?),
            clock: Box::new(self.clock.clone()),
            ids: Box::new(SeededIds::new(self.openings)),
            ear: self.ear,
            by: self.by.clone(),
            job: None,
        })?;
        self.session = Some(session);
        Ok(turn)
    }

    /// What comes of an item; none when it does nothing.
    fn play(&mut self, item: &Item) -> Result<Option<Vec<Turn>>, Fault> {
        match &item.kind {
            Kind::Said(words) => Ok(self.session.as_mut().map(|session| session.line(&Line::new(words)))),
            Kind::At(at) => {
                self.clock.set(*at);
                Ok(self.session.as_mut().map(|session| session.tick().into_iter().collect()))
            }
            Kind::Kill | Kind::Reopen => self.reopen().map(|turn| Some(vec![turn])),
            Kind::Quiet | Kind::Spoken(_) | Kind::Shown(_) | Kind::Must(_) => Ok(None),
        }
    }

    /// What the reopened book does not give back of the state that the bench had.
    fn lost(&mut self) -> Result<Option<String>, Fault> {
        let Some(session) = self.session.take() else { return Ok(None) };
        let (had, job) = (session.state().clone(), session.job().map(str::to_owned));
        drop(session);
        let book = SqliteBook::open(&self.path, Access::Read, "transcript")?;
        book.verify()?;
        let again = match job {
            Some(job) => State::of(&book.since(&job, 0)?),
            None => State::default(),
        };
        let same = again.progress == had.progress && again.record == had.record;
        Ok((!same).then(|| "the reopened book gives another state than the bench had".to_owned()))
    }
}

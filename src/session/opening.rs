//! Opening a bench: which job is taken up, and under which pack.

use super::{Cause, Clock, Fault, Ids, Rules, Session, Turn};
use crate::act::Waiting;
use crate::bench::state::State;
use crate::bench::{self, Past};
use crate::book::{Book, JobLine, Query};
use crate::rulebase::Pack;

/// What a session is made of.
pub struct Setup {
    /// The newest rules.
    pub rules: Rules,
    /// The record.
    pub book: Box<dyn Book + Send>,
    /// The time.
    pub clock: Box<dyn Clock>,
    /// Ids.
    pub ids: Box<dyn Ids>,
    /// Whether lines come by ear; typed otherwise.
    pub ear: bool,
    /// Who works.
    pub by: Option<String>,
    /// The job to take up; this bench's open one otherwise.
    pub job: Option<u32>,
}

impl Session {
    /// Opens the bench: takes up the job named or the open one, asks which when there are several.
    ///
    /// # Errors
    /// A job that is not there or is closed; a book or a pinned pack that cannot be read.
    pub fn open(setup: Setup) -> Result<(Self, Turn), Fault> {
        let mut session = Self {
            book: setup.book,
            clock: setup.clock,
            ids: setup.ids,
            rules: setup.rules,
            ear: setup.ear,
            by: setup.by,
            job: None,
            state: State::default(),
            waiting: Waiting::default(),
            past: Past::default(),
            looked_for: None,
            choice: Vec::new(),
        };
        let mut open = session.candidates(setup.job)?;
        let turn = match open.len() {
            0 => session.resume_or_begin(None)?,
            1 => session.resume_or_begin(open.pop().as_ref())?,
            _ => session.ask_which(open),
        };
        Ok((session, turn))
    }

    /// Gives the book back, as a process that ends would leave it.
    pub fn into_book(self) -> Box<dyn Book + Send> {
        self.book
    }

    /// Where the job stands.
    pub fn state(&self) -> &State {
        &self.state
    }

    /// The pack in force.
    pub fn pack(&self) -> &Pack {
        self.rules.pack()
    }

    /// What the job waits for.
    pub fn waiting(&self) -> &Waiting {
        &self.waiting
    }

    /// The job in hand, by its id in the book.
    pub fn job(&self) -> Option<&str> {
        self.job.as_deref()
    }

    /// The time of its clock.
    pub fn now(&self) -> super::Moment {
        self.clock.now()
    }

    /// The jobs that may be taken up: the one named, or those open on this bench. What was said before any job
    /// was begun has a record too (number 0); it is gone on with when there is nothing else.
    fn candidates(&self, named: Option<u32>) -> Result<Vec<JobLine>, Fault> {
        if let Some(number) = named {
            let found = self.book.find(&Query::Number(number))?;
            let mend = "see `sparehand jobs` for their numbers";
            let line = found
                .into_iter()
                .next()
                .ok_or_else(|| Fault::call(format!("there is no job {number}"), mend))?;
            if line.closed.is_some() {
                return Err(Fault::call(format!("job {number} is closed"), "read it with `sparehand log`"));
            }
            return Ok(vec![line]);
        }
        let open = self.book.find(&Query::OpenAt(self.book.bench().to_owned()))?;
        let (mut begun, unbegun): (Vec<_>, Vec<_>) = open.into_iter().partition(|line| line.number > 0);
        if begun.is_empty() {
            begun.extend(unbegun.into_iter().next_back());
        }
        Ok(begun)
    }

    fn resume_or_begin(&mut self, line: Option<&JobLine>) -> Result<Turn, Fault> {
        if let Some(line) = line {
            self.take_up(line)?;
        }
        Ok(self.opened(Cause::Opened))
    }

    /// What is said when the bench is opened on a job, or on none.
    pub(super) fn opened(&mut self, cause: Cause<'_>) -> Turn {
        let mut turn = self.answer(Cause::Opened);
        if let Cause::Line(line) = cause {
            turn.line = Some(line.words());
        }
        if !self.rules.newest_in_force() {
            let note =
                "There are newer rules. This job keeps those it began with; the next one takes the newer.";
            turn.reply.say = format!("{} {note}", turn.reply.say);
            turn.reply.show = format!("{}\n{note}", turn.reply.show);
        }
        turn
    }

    /// Takes a job in hand as the book has it, under the pack it is pinned to.
    pub(super) fn take_up(&mut self, line: &JobLine) -> Result<(), Fault> {
        let begun = line.number > 0;
        if begun && !self.rules.is_newest(&line.pack) {
            let files = self.book.pack(&line.pack)?.ok_or_else(|| {
                Fault::Ours(format!("the book has no pack {} for job {}", line.pack, line.number))
            })?;
            self.rules.pin(Pack::from_files(files)?);
        }
        self.state = State::of(&self.book.since(&line.job, 0)?);
        self.job = Some(line.job.clone());
        self.waiting = bench::waiting(self.rules.pack(), &self.state, self.clock.now(), self.ear);
        Ok(())
    }
}

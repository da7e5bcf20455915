//! One line in, one reply out: hear, decide, word, keep, apply. The only place with a clock, ids, folders and the
//! environment; whose failure it is is sorted here too.

mod choose;
mod clock;
mod fault;
mod folders;
mod guard;
mod ids;
mod keep;
mod line;
mod opening;
mod past;
mod question;
mod rules;
mod several;
mod turn;
mod typed;

pub use clock::{Clock, LinesClock, Moment, SystemClock, read_time};
pub use fault::Fault;
pub use folders::{Scratch, book_path, history_path, make_room_for, no_color, unsynced};
pub use guard::{guarded, quiet};
pub use ids::{Ids, SeededIds, SystemIds};
pub use line::{LONGEST, Line, plain};
pub use opening::Setup;
pub use question::{Asked, Told, as_if_on_bench};
pub use rules::Rules;
pub use turn::Turn;

use crate::act::{Heard, Waiting};
use crate::bench::state::{State, apply};
use crate::bench::{self, Input, Past};
use crate::book::{Book, JobLine};
use crate::event::{JobId, Utterance};
use crate::reply::reply;

/// A bench at work: the rules in force, the job in hand, and the book that keeps it.
pub struct Session {
    book: Box<dyn Book + Send>,
    clock: Box<dyn Clock>,
    ids: Box<dyn Ids>,
    rules: Rules,
    /// Whether lines come by ear; typed otherwise.
    ear: bool,
    /// Who works, when the call said so.
    by: Option<String>,
    job: Option<JobId>,
    state: State,
    waiting: Waiting,
    past: Past,
    /// The serial that `past` was looked up for.
    looked_for: Option<String>,
    /// Open jobs to choose from, until one is chosen.
    choice: Vec<JobLine>,
}

/// What sets the bench going.
#[derive(Debug, Clone, Copy)]
enum Cause<'a> {
    Opened,
    Line(&'a Line),
    Tick,
}

impl Session {
    /// Takes a line in. Timers that ran out before it are told first.
    pub fn line(&mut self, line: &Line) -> Vec<Turn> {
        if let Some(at) = line.at {
            self.clock.set(at);
        }
        let mut turns: Vec<Turn> = self.tick().into_iter().collect();
        turns.push(if self.choice.is_empty() { self.answer(Cause::Line(line)) } else { self.choose(line) });
        turns
    }

    /// Tells each timer that has run out, once; none when there is none.
    pub fn tick(&mut self) -> Option<Turn> {
        self.next_due().filter(|due| *due <= self.clock.now())?;
        Some(self.answer(Cause::Tick))
    }

    /// When the next timer runs out.
    pub fn next_due(&self) -> Option<Moment> {
        self.state.record.timers.values().filter(|timer| !timer.told).map(|timer| timer.ends).min()
    }

    fn answer(&mut self, cause: Cause<'_>) -> Turn {
        match guarded(|| self.journey(cause)) {
            Ok(Ok(turn)) => turn,
            Ok(Err(fault)) => self.failed(cause, fault),
            Err(what) => {
                self.stand_by_the_book();
                self.failed(cause, Fault::Ours(what))
            }
        }
    }

    /// A line's whole journey. All that may fail without leaving a trace comes before the book; the reply is handed
    /// out only when the book has the events.
    fn journey(&mut self, cause: Cause<'_>) -> Result<Turn, Fault> {
        let now = self.clock.now();
        self.look_back()?;
        let mut utterance = self.utterance(now);
        let heard = self.hear(cause, &mut utterance);
        let input = input(cause, &utterance, heard.as_ref());
        let decision = bench::decide(self.rules.pack(), &self.past, &self.state, &input, now);
        let reply = reply(&decision.answer, &decision.waiting);
        let envelopes = self.wrap(&utterance, decision.events, now);
        self.append(&envelopes)?;
        for envelope in &envelopes {
            apply(&mut self.state, envelope);
        }
        self.waiting = Waiting { ear: self.ear, ..decision.waiting };
        self.after(&envelopes);
        Ok(self.turn(cause, heard, reply, envelopes))
    }
}

fn input(cause: Cause<'_>, utterance: &Utterance, heard: Option<&Heard>) -> Input {
    match (cause, heard) {
        (Cause::Line(_), Some(heard)) => Input::Heard { utterance: utterance.clone(), heard: heard.clone() },
        (Cause::Opened, _) => Input::Opened,
        (Cause::Tick | Cause::Line(_), _) => Input::Tick,
    }
}

//! Several jobs are open: which one is asked, and the answer is the job's number.

use super::{Cause, Line, Session, Turn};
use crate::act::{ActName, Heard, Waiting, WaitingFor};
use crate::bench::{Answer, Part, Question};
use crate::book::JobLine;
use crate::quantity::figures::read_number;
use crate::reply::reply;

impl Session {
    /// Asks which of the open jobs is meant.
    pub(super) fn ask_which(&mut self, open: Vec<JobLine>) -> Turn {
        self.choice = open;
        self.waiting = Waiting { kind: WaitingFor::Position, ear: self.ear, ..Waiting::default() };
        self.which(Cause::Opened, None)
    }

    /// Takes the answer: a job's number; "start" begins another; questions are answered meanwhile.
    pub(super) fn choose(&mut self, line: &Line) -> Turn {
        let heard = self.listen(line);
        if heard.acts.iter().any(|act| act.act == ActName::Start) {
            self.choice.clear();
            self.waiting = Waiting { ear: self.ear, ..Waiting::default() };
            return self.answer(Cause::Line(line));
        }
        if let Some(job) = self.named(&line.words()) {
            self.choice.clear();
            let taken = self.take_up(&job);
            return match taken {
                Ok(()) => self.opened(Cause::Line(line)),
                Err(fault) => self.failed(Cause::Line(line), fault),
            };
        }
        self.which(Cause::Line(line), Some(heard))
    }

    fn which(&self, cause: Cause<'_>, heard: Option<Heard>) -> Turn {
        let jobs = self.choice.iter().map(|line| (line.number, described(line))).collect();
        let answer = Answer::of(Part::Question(Question::WhichJob { jobs }));
        self.turn(cause, heard, reply(&answer, &self.waiting), Vec::new())
    }

    /// The open job whose number is said, when exactly one is.
    fn named(&self, words: &str) -> Option<JobLine> {
        let tokens: Vec<&str> = words.split_whitespace().collect();
        let said: Vec<f64> = (0..tokens.len())
            .filter_map(|from| read_number(tokens.get(from..)?).into_iter().next())
            .map(|reading| reading.value)
            .collect();
        let mut meant = self.choice.iter().filter(|line| said.contains(&f64::from(line.number)));
        meant.next().filter(|_| meant.next().is_none()).cloned()
    }
}

/// A job in a few words: its units with their corners.
fn described(line: &JobLine) -> String {
    let places = line.places.values().map(|place| {
        let words = [place.unit.as_deref(), place.corner.as_deref(), place.procedure.as_deref()];
        words.into_iter().flatten().map(|word| word.replace('-', " ")).collect::<Vec<_>>().join(" ")
    });
    places.collect::<Vec<_>>().join(", ")
}

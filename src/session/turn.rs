//! What comes of a line, for whoever speaks or prints it.

use super::{Cause, Fault, Session};
use crate::act::{Heard, Waiting};
use crate::event::Envelope;
use crate::reply::Reply;

/// What came of a line, a timer or an opening.
#[derive(Debug)]
pub struct Turn {
    /// The line as it came; none for what is told unasked.
    pub line: Option<String>,
    /// What hearing made of it.
    pub heard: Option<Heard>,
    /// What is said and shown.
    pub reply: Reply,
    /// What the job waits for now.
    pub waiting: Waiting,
    /// The place in hand.
    pub place: Option<String>,
    /// The step in hand.
    pub step: Option<String>,
    /// What was kept.
    pub events: Vec<Envelope>,
    /// Why nothing was kept, when something failed.
    pub fault: Option<Fault>,
}

impl Session {
    pub(super) fn turn(
        &self,
        cause: Cause<'_>,
        heard: Option<Heard>,
        reply: Reply,
        events: Vec<Envelope>,
    ) -> Turn {
        Turn {
            line: words(cause),
            heard,
            reply,
            waiting: self.waiting.clone(),
            place: self.state.progress.current.clone(),
            step: self.state.place().and_then(|place| place.cursor.clone()),
            events,
            fault: None,
        }
    }

    /// A line that could not be taken in as one: nothing is heard, and nothing kept.
    pub fn unheard(&self, fault: &Fault) -> Turn {
        let say = "I did not get that line. Say it again, shorter.".to_owned();
        let reply = Reply { show: format!("I did not get that line: {fault}"), say };
        Turn {
            line: Some(String::new()),
            ..self.turn(Cause::Tick, Some(Heard::decline(0.0)), reply, Vec::new())
        }
    }

    /// A line that failed: nothing of it is kept, and the bench stands where it stood.
    pub(super) fn failed(&self, cause: Cause<'_>, fault: Fault) -> Turn {
        let reply = Reply { say: spoken(&fault).to_owned(), show: fault.to_string() };
        Turn { fault: Some(fault), ..self.turn(cause, None, reply, Vec::new()) }
    }
}

fn words(cause: Cause<'_>) -> Option<String> {
    match cause {
        Cause::Line(line) => Some(line.words()),
        Cause::Opened | Cause::Tick => None,
    }
}

/// What is said aloud of a failure; the screen has the whole of it.
fn spoken(fault: &Fault) -> &'static str {
    match fault.exit_code() {
        3 => "Not kept. The book cannot be written. See the screen.",
        4 => "Not kept. That was a fault of the program, not yours. Say it another way.",
        _ => "Not kept. See the screen.",
    }
}

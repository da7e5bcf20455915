//! The conversation as the console prints it: what was heard where nobody saw it typed, and what is shown in answer.

use super::out::{Out, aside};
use crate::session::{Fault, Session, Turn};

/// A conversation on standard output.
pub struct Talk {
    /// The bench.
    pub session: Session,
    /// Where it is printed.
    pub out: Out,
    /// The worst exit code so far.
    pub worst: u8,
}

impl Talk {
    /// Prints what came of a line or of an opening.
    ///
    /// # Errors
    /// Nobody reading any more.
    pub fn print(&mut self, turn: &Turn) -> Result<(), Fault> {
        match &turn.fault {
            Some(fault) => {
                self.worst = self.worst.max(fault.exit_code());
                aside(&fault.to_string());
                self.out.text(&turn.reply.say)
            }
            None => self.out.text(&paragraph(turn)),
        }
    }
}

/// What is shown, and a blank line after it.
fn paragraph(turn: &Turn) -> String {
    turn.reply.show.trim_end().to_owned()
}

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
            None => {
                let text = self.out.fitted(&turn.reply.show);
                let text = painted(&text, self.out.colour());
                self.out.text(&text)
            }
        }
    }
}

/// Signal words by the colours of ISO 3864-4 and ANSI Z535.1, where colour is welcome: danger red, warning orange (the
/// nearest a terminal has is bright red), caution yellow, notice blue.
fn painted(show: &str, colour: bool) -> String {
    if !colour {
        return show.to_owned();
    }
    show.lines().map(paint).collect::<Vec<_>>().join("\n")
}

fn paint(line: &str) -> String {
    let colours = [("DANGER", 31), ("WARNING", 91), ("CAUTION", 33), ("NOTICE", 34), ("Step ", 1)];
    match colours.iter().find(|(word, _)| line.starts_with(word)) {
        Some((_, code)) => format!("\x1b[{code}m{line}\x1b[0m"),
        None => line.to_owned(),
    }
}

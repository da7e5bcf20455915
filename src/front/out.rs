//! Standard output that never panics: a reader that has gone is the end of the work, and no failure.

use crate::session::{Fault, no_color};
use std::io::{self, IsTerminal, Write};

/// Where lines are printed.
pub struct Out {
    out: io::Stdout,
    colour: bool,
}

impl Out {
    /// Standard output; colour on a terminal alone, and not where `NO_COLOR` is set.
    pub fn new() -> Self {
        let out = io::stdout();
        let colour = out.is_terminal() && !no_color();
        Self { out, colour }
    }

    /// Whether it is a terminal that colour is welcome on.
    pub fn colour(&self) -> bool {
        self.colour
    }

    /// Prints a line and hands it on at once.
    ///
    /// # Errors
    /// [`Fault::Closed`] when nobody reads any more; the disk's failure when it cannot be written.
    pub fn line(&mut self, text: &str) -> Result<(), Fault> {
        let mut lock = self.out.lock();
        lock.write_all(text.as_bytes())
            .and_then(|()| lock.write_all(b"\n"))
            .and_then(|()| lock.flush())
            .map_err(|error| gone(&error))
    }

    /// Prints a text that may be several lines, or none.
    ///
    /// # Errors
    /// As [`Out::line`].
    pub fn text(&mut self, text: &str) -> Result<(), Fault> {
        if text.trim().is_empty() { Ok(()) } else { self.line(text.trim_end()) }
    }

    /// Prints a value as JSON on one line.
    ///
    /// # Errors
    /// As [`Out::line`]; our own fault when it cannot be said as JSON.
    pub fn json(&mut self, value: &impl serde::Serialize) -> Result<(), Fault> {
        let text = serde_json::to_string(value).map_err(|error| Fault::Ours(error.to_string()))?;
        self.line(&text)
    }
}

fn gone(error: &io::Error) -> Fault {
    if error.kind() == io::ErrorKind::BrokenPipe {
        return Fault::Closed;
    }
    Fault::disk(format!("the output cannot be written: {error}"), "look at where it goes to")
}

/// Prints to standard error; whoever does not read it misses nothing that the exit code does not say.
pub fn aside(text: &str) {
    let _ = writeln!(io::stderr(), "sparehand: {text}");
}

//! Standard output that never panics: a reader that has gone is the end of the work, and no failure.

use crate::session::{Fault, no_color};
use std::io::{self, IsTerminal, Write};

/// Where lines are printed.
pub struct Out {
    out: io::Stdout,
    colour: bool,
    terminal: bool,
}

/// The width of a terminal that nobody asks for its own, in characters.
const WIDTH: usize = 80;

impl Out {
    /// Standard output; colour on a terminal alone, and not where `NO_COLOR` is set.
    pub fn new() -> Self {
        let out = io::stdout();
        let terminal = out.is_terminal();
        Self { out, colour: terminal && !no_color(), terminal }
    }

    /// Whether it is a terminal that colour is welcome on.
    pub fn colour(&self) -> bool {
        self.colour
    }

    /// The text as it is printed: on a terminal, long lines of prose are broken between words.
    pub fn fitted(&self, text: &str) -> String {
        if self.terminal { wrapped(text, WIDTH) } else { text.to_owned() }
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

/// Lines of prose that are longer than the width, broken between words; what follows stands under the line's first word
/// or, where a label leads it, under the first word after the label. Tables keep their lines.
pub fn wrapped(text: &str, width: usize) -> String {
    text.lines().map(|line| wrap(line, width)).collect::<Vec<_>>().join("\n")
}

fn wrap(line: &str, width: usize) -> String {
    let (lead, prose) = led(line);
    if line.chars().count() <= width || prose.contains("  ") {
        return line.to_owned();
    }
    let indent = lead.chars().count();
    let mut out = lead.to_owned();
    let mut column = indent;
    for (n, word) in prose.split(' ').enumerate() {
        let long = word.chars().count();
        if n > 0 && column + 1 + long > width {
            out.push('\n');
            out.push_str(&" ".repeat(indent));
            column = indent;
        } else if n > 0 {
            out.push(' ');
            column += 1;
        }
        out.push_str(word);
        column += long;
    }
    out
}

/// What leads a line (spaces, and a label with two spaces or more after it), and its prose.
fn led(line: &str) -> (&str, &str) {
    let indent = line.len() - line.trim_start().len();
    let label = line.split_at(indent).1.find("  ").filter(|_| indent > 0).map_or(0, |at| {
        let rest = line.split_at(indent + at).1;
        at + rest.len() - rest.trim_start().len()
    });
    line.split_at(indent + label)
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

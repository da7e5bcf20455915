//! The book as JSON lines, for other programs and other years: a head, packs, events, and an end that tells a
//! file cut short from a whole one. Customers stay behind: who they are is not the record's.

use super::{Book, BookError, Files, Query};
use crate::event::{self, Envelope};
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use std::io::{self, BufRead, Write};
use thiserror::Error;

/// The form of the export that this program writes.
const FORM: u32 = 1;

/// A line that is not an event's.
#[derive(Debug, Serialize, Deserialize)]
#[serde(untagged, deny_unknown_fields)]
enum Line {
    Head { export: u32, bench: String },
    Pack { pack: String, files: Files },
    End { end: usize, sha256: String },
}

/// Why an export could not be written.
#[derive(Debug, Error)]
pub enum ExportError {
    /// The book cannot be read.
    #[error(transparent)]
    Book(#[from] BookError),
    /// The output cannot be written.
    #[error("the export cannot be written: {0}")]
    Output(#[from] io::Error),
    /// A line cannot be put as JSON.
    #[error("the export cannot be written: {0}")]
    Form(#[from] serde_json::Error),
}

/// Why an export could not be read.
#[derive(Debug, Error)]
#[error("line {line} of the export: {what}")]
pub struct ImportError {
    /// The line, from 1.
    pub line: usize,
    /// What was found, and what was expected.
    pub what: String,
}

/// What an export held.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Imported {
    /// The bench of the book it came from.
    pub bench: String,
    /// Packs by hash.
    pub packs: BTreeMap<String, Files>,
    /// Utterances as they were kept: the events of each belong together.
    pub utterances: Vec<Vec<Envelope>>,
}

/// Writes all jobs of a book, each from its first event to its last.
///
/// # Errors
/// [`ExportError`] when the book cannot be read, or the output not be written.
pub fn export(book: &dyn Book, output: &mut dyn Write) -> Result<(), ExportError> {
    let mut out = Summed { output, sum: Sha256::new(), lines: 0 };
    out.line(&serde_json::to_string(&Line::Head { export: FORM, bench: book.bench().to_owned() })?)?;
    let mut packs = BTreeMap::new();
    for job in book.find(&Query::All)? {
        for event in book.since(&job.job, 0)? {
            if packs.insert(event.pack.clone(), ()).is_none()
                && let Some(files) = book.pack(&event.pack)?
            {
                out.line(&serde_json::to_string(&Line::Pack { pack: event.pack.clone(), files })?)?;
            }
            out.line(&serde_json::to_string(&event)?)?;
        }
    }
    let end = Line::End { end: out.lines, sha256: hex(out.sum.clone()) };
    out.line(&serde_json::to_string(&end)?)?;
    Ok(output.flush()?)
}

/// Lines going out, counted and summed.
struct Summed<'a> {
    output: &'a mut dyn Write,
    sum: Sha256,
    lines: usize,
}

impl Summed<'_> {
    fn line(&mut self, text: &str) -> io::Result<()> {
        self.sum.update(text.as_bytes());
        self.sum.update(b"\n");
        self.lines += 1;
        writeln!(self.output, "{text}")
    }
}

fn hex(sum: Sha256) -> String {
    sum.finalize().iter().map(|b| format!("{b:02x}")).collect()
}

/// Reads an export, and checks that it is whole and that each job's events follow one another.
/// What it gives can be appended to an empty book, one utterance at a time.
///
/// # Errors
/// [`ImportError`] with the first line that is not as it should be.
pub fn import(input: &mut dyn BufRead) -> Result<Imported, ImportError> {
    let mut reader = Reader::default();
    for (number, line) in input.lines().enumerate() {
        let at = |what: String| ImportError { line: number + 1, what };
        let line = line.map_err(|e| at(e.to_string()))?;
        reader.take(number, &line).map_err(at)?;
    }
    if reader.ended {
        Ok(reader.imported)
    } else {
        Err(ImportError {
            line: reader.lines + 1,
            what: "the end is missing: the file was cut short".to_owned(),
        })
    }
}

/// An export as far as it was read.
#[derive(Default)]
struct Reader {
    imported: Imported,
    next: BTreeMap<String, u64>,
    sum: Sha256,
    lines: usize,
    ended: bool,
}

impl Reader {
    fn take(&mut self, number: usize, line: &str) -> Result<(), String> {
        if self.ended {
            return Err("there is more after the end".to_owned());
        }
        match serde_json::from_str::<Line>(line) {
            Ok(Line::Head { export, bench }) if number == 0 && export <= FORM => self.imported.bench = bench,
            Ok(Line::Head { export, .. }) if number == 0 => {
                return Err(format!(
                    "the export is of form {export}, and this program reads up to form {FORM}"
                ));
            }
            _ if number == 0 => return Err("an export begins with its head".to_owned()),
            Ok(Line::Head { .. }) => return Err("a second head".to_owned()),
            Ok(Line::Pack { pack, files }) => {
                self.imported.packs.insert(pack, files);
            }
            Ok(Line::End { end, sha256 }) => self.end(end, &sha256)?,
            Err(_) => self.event(event::read(line).map_err(|e| e.to_string())?)?,
        }
        self.sum.update(line.as_bytes());
        self.sum.update(b"\n");
        self.lines += 1;
        Ok(())
    }

    fn end(&mut self, end: usize, sha256: &str) -> Result<(), String> {
        if end != self.lines {
            return Err(format!("{} lines before the end, and it says {end}", self.lines));
        }
        if hex(self.sum.clone()) != sha256 {
            return Err("the lines are not as they were written: their sum differs".to_owned());
        }
        self.ended = true;
        Ok(())
    }

    fn event(&mut self, event: Envelope) -> Result<(), String> {
        let next = self.next.entry(event.job.clone()).or_insert(1);
        if event.sequence != *next {
            return Err(format!("event {} of job {}, {next} expected", event.sequence, event.job));
        }
        *next += 1;
        match self.imported.utterances.last_mut() {
            Some(last) if last.first().is_some_and(|e| e.utterance.id == event.utterance.id) => {
                last.push(event)
            }
            _ => self.imported.utterances.push(vec![event]),
        }
        Ok(())
    }
}

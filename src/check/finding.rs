//! A finding of the checker: declared once under fixed headings, from which listing and papers are made.

use super::sink::Sink;
use super::subject::{OnCard, OnPack, OnProcedure};
use super::walk::{Finish, Moment, Seen};
use crate::source::Level;

/// One kind of finding.
#[derive(Debug)]
pub struct Finding {
    /// Its name in plain words ("left off").
    pub name: &'static str,
    /// How bad it is.
    pub level: Level,
    /// Whether a milder case of it is raised as doubtful.
    pub milder: bool,
    /// What it finds.
    pub what: &'static str,
    /// Why it matters at the bench.
    pub why: &'static str,
    /// An example of what raises it.
    pub example: &'static str,
    /// How to mend it.
    pub mend: &'static str,
    /// What it looks at.
    pub look: Look,
}

/// What a finding looks at.
#[derive(Debug, Clone, Copy)]
pub enum Look {
    /// The pack as a whole, once.
    Pack(fn(&OnPack<'_>, &mut Sink<'_>)),
    /// Each unit card.
    Card(fn(&OnCard<'_>, &mut Sink<'_>)),
    /// Each procedure, as it is written.
    Procedure(fn(&OnProcedure<'_>, &mut Sink<'_>)),
    /// Each step that is closed on a walked path, with the job just before it.
    Closing(fn(&Moment<'_>, &mut Sink<'_>)),
    /// The end of each walked path on which nothing was left out.
    End(fn(&Finish<'_>, &mut Sink<'_>)),
    /// Everything that a procedure's walk has seen.
    Walk(fn(&Seen<'_>, &mut Sink<'_>)),
}

impl Finding {
    /// Its level in words, with that of its milder cases.
    pub fn levels(&self) -> String {
        let milder = if self.milder { format!(", or {}", Level::Doubtful.word()) } else { String::new() };
        format!("{}{milder}", self.level.word())
    }

    /// The name as a file or a folder is called ("left-off").
    pub fn slug(&self) -> String {
        self.name.replace(' ', "-")
    }
}

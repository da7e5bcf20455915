//! The prompt: history, completion, and a hint of what can be said now.

use crate::act::{Waiting, WaitingFor};
use crate::session::{Fault, Session, history_path, make_room_for, no_color};
use rustyline::completion::Completer;
use rustyline::highlight::Highlighter;
use rustyline::hint::Hinter;
use rustyline::history::FileHistory;
use rustyline::validate::Validator;
use rustyline::{ColorMode, Config, Context, Editor, ExternalPrinter, Helper};
use std::borrow::Cow;
use std::sync::{Arc, Mutex, PoisonError};

/// What can be said now, shared between the bench and the prompt.
#[derive(Debug, Clone, Default)]
pub struct Offer {
    inner: Arc<Mutex<Now>>,
}

#[derive(Debug, Default)]
struct Now {
    hint: &'static str,
    words: Vec<String>,
}

/// What may be asked at any time, for completion.
const ALWAYS: [&str; 16] = [
    "done",
    "not yet",
    "scratch that",
    "go back",
    "say that again",
    "what's next",
    "which way",
    "how tight",
    "which tool",
    "why",
    "what can go wrong",
    "how many steps are left",
    "pause",
    "resume",
    "note",
    "help",
];

impl Offer {
    /// Brings it up to what the bench waits for.
    pub fn renew(&self, session: &Session) {
        let mut now = self.inner.lock().unwrap_or_else(PoisonError::into_inner);
        now.hint = hint(session.waiting(), session.state().progress.open);
        now.words = ALWAYS.iter().map(|word| (*word).to_owned()).chain(names(session)).collect();
    }

    fn hint(&self) -> &'static str {
        self.inner.lock().unwrap_or_else(PoisonError::into_inner).hint
    }

    fn beginning_with(&self, start: &str) -> Vec<String> {
        let now = self.inner.lock().unwrap_or_else(PoisonError::into_inner);
        now.words.iter().filter(|word| word.starts_with(start)).cloned().collect()
    }
}

/// What would close the step, without leading.
fn hint(waiting: &Waiting, open: bool) -> &'static str {
    match waiting.kind {
        WaitingFor::Done => "done, or a question",
        WaitingFor::YesOrNo => "yes or no",
        WaitingFor::Torque => "the torque, with its unit if it is another",
        WaitingFor::Clicks => "how many clicks",
        WaitingFor::Position => "a number",
        WaitingFor::Turns => "how many turns",
        WaitingFor::Length => "a length",
        WaitingFor::Pressure => "a pressure",
        WaitingFor::Temperature => "a temperature",
        WaitingFor::Volume => "a volume",
        WaitingFor::Mass => "a mass",
        WaitingFor::Rate => "a spring rate",
        WaitingFor::Tool => "done, once the tool is there",
        WaitingFor::Text => "say it in your own words",
        WaitingFor::Nothing if open => "a question, or finish",
        WaitingFor::Nothing => "start, and which unit",
    }
}

/// The spoken names on the unit in hand; those of the units while there is none.
fn names(session: &Session) -> Vec<String> {
    let pack = session.pack();
    match session.state().place().and_then(|place| pack.unit(&place.unit)) {
        Some(card) => {
            let adjusters = card.adjusters.iter().flat_map(|adjuster| &adjuster.called);
            adjusters.chain(card.parts.iter().flat_map(|part| &part.called)).cloned().collect()
        }
        None => pack.units.values().flat_map(|card| &card.called).cloned().collect(),
    }
}

/// A prompt on the terminal.
pub struct Prompt {
    editor: Editor<Offers, FileHistory>,
}

impl Prompt {
    /// A prompt with the history of earlier sessions, and what prints above it.
    ///
    /// # Errors
    /// A terminal that cannot be used.
    pub fn new(offer: Offer) -> Result<(Self, impl ExternalPrinter + use<>), Fault> {
        let colour = if no_color() { ColorMode::Disabled } else { ColorMode::Enabled };
        let config = Config::builder().auto_add_history(true).color_mode(colour).build();
        let unusable = |error: rustyline::error::ReadlineError| {
            Fault::call(format!("the terminal cannot be used: {error}"), "use `sparehand pipe`")
        };
        let mut editor = Editor::with_config(config).map_err(unusable)?;
        editor.set_helper(Some(Offers { offer, colour: !no_color() }));
        if let Some(path) = history_path() {
            // There is none the first time.
            let _ = editor.load_history(&path);
        }
        let printer = editor.create_external_printer().map_err(unusable)?;
        Ok((Self { editor }, printer))
    }

    /// Reads what is typed, or pasted, up to Enter.
    ///
    /// # Errors
    /// Ctrl-C, Ctrl-D, or a terminal that is gone.
    pub fn read(&mut self) -> rustyline::Result<String> {
        self.editor.readline("> ")
    }

    /// Keeps the history for the next session; without it nothing else is lost.
    pub fn keep_history(&mut self) {
        if let Some(path) = history_path().filter(|path| make_room_for(path).is_ok()) {
            let _ = self.editor.save_history(&path);
        }
    }
}

/// Completion and hint for the line being typed.
struct Offers {
    offer: Offer,
    colour: bool,
}

impl Completer for Offers {
    type Candidate = String;

    fn complete(&self, line: &str, pos: usize, _: &Context<'_>) -> rustyline::Result<(usize, Vec<String>)> {
        let typed = line.get(..pos).unwrap_or(line);
        // The longest tail of words that something begins with: names are of several words.
        let starts = typed.match_indices(' ').map(|(at, _)| at + 1);
        for start in std::iter::once(0).chain(starts) {
            let tail = typed.get(start..).unwrap_or_default();
            let found = self.offer.beginning_with(tail);
            if !tail.is_empty() && !found.is_empty() {
                return Ok((start, found));
            }
        }
        Ok((pos, Vec::new()))
    }
}

impl Hinter for Offers {
    type Hint = String;

    fn hint(&self, line: &str, _: usize, _: &Context<'_>) -> Option<String> {
        Some(self.offer.hint().to_owned()).filter(|hint| line.is_empty() && !hint.is_empty())
    }
}

impl Highlighter for Offers {
    fn highlight_hint<'h>(&self, hint: &'h str) -> Cow<'h, str> {
        if self.colour { Cow::Owned(format!("\x1b[2m{hint}\x1b[0m")) } else { Cow::Borrowed(hint) }
    }
}

impl Validator for Offers {}
impl Helper for Offers {}

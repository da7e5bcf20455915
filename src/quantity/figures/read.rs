//! Number words in: every number that can be read at the start of a row of tokens, with its doubt.
//!
//! What could mean two numbers is never settled here: "one twenty", "four fifteen" and "seven eleven" come back as
//! ambiguous with their candidates, "two and a bit" as vague, and the caller asks.

mod cardinal;
mod fraction;
mod run;

use super::super::Unit;
use super::words_in::{self, Word};

/// How sure a reading is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// One meaning.
    Sure,
    /// A number said loosely: "two and a bit", "about twenty".
    Vague,
    /// More than one meaning, or a number cut off: ask.
    Ambiguous,
}

/// How the number was put.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Form {
    /// A whole number in words or figures.
    Whole,
    /// With a decimal point.
    Decimal,
    /// A fraction, or a whole and a fraction.
    Fraction,
    /// Digit by digit: "one four". Ambiguous by itself, sure when it repeats a number ("fourteen, one four").
    Digits,
    /// "a" or "an" before a unit.
    Article,
}

/// One way to read a number at the start of the tokens.
#[derive(Debug, Clone, PartialEq)]
pub struct Reading {
    /// The value, or the first candidate.
    pub value: f64,
    /// How many tokens it takes.
    pub len: usize,
    /// How sure it is.
    pub kind: Kind,
    /// How it was put.
    pub form: Form,
    /// What it may mean, likeliest first; one entry when it is sure.
    pub candidates: Vec<f64>,
    /// The unit said inside the number ("an inch and five eighths"), which the reading has taken up.
    pub unit: Option<Unit>,
}

/// A number found between two words, before it is fitted to tokens.
#[derive(Debug, Clone, PartialEq)]
struct Found {
    candidates: Vec<f64>,
    end: usize,
    kind: Kind,
    form: Form,
    unit: Option<Unit>,
}

impl Found {
    fn sure(value: f64, end: usize, form: Form) -> Self {
        Self { candidates: vec![value], end, kind: Kind::Sure, form, unit: None }
    }

    fn value(&self) -> f64 {
        self.candidates.first().copied().unwrap_or_default()
    }

    fn doubtful(mut self, kind: Kind) -> Self {
        self.kind = self.kind.max(kind);
        self
    }
}

/// The words under reading.
struct Words(Vec<Word>);

impl Words {
    /// The word at a place; empty past the end.
    fn at(&self, place: usize) -> &str {
        self.0.get(place).map_or("", |word| word.text.as_str())
    }

    /// Tokens used when reading stops before `end`; `None` inside a token.
    fn tokens(&self, end: usize) -> Option<usize> {
        self.0.get(end.checked_sub(1)?)?.tokens_after
    }
}

/// Every number that can be read from the first token on, longest first.
#[must_use]
pub fn read_number(tokens: &[&str]) -> Vec<Reading> {
    // No spoken number is longer; the cap keeps a hostile line from being read over and over.
    let words = Words(words_in::cut(tokens.get(..tokens.len().min(24)).unwrap_or_default()));
    let mut found = hedged(&words);
    found.sort_by(|a, b| b.end.cmp(&a.end).then(a.kind.cmp(&b.kind)));
    found.dedup_by(|a, b| a.end == b.end);
    found
        .into_iter()
        .filter_map(|found| {
            Some(Reading {
                value: found.value(),
                len: words.tokens(found.end)?,
                kind: found.kind,
                form: found.form,
                candidates: found.candidates,
                unit: found.unit,
            })
        })
        .collect()
}

/// The number that takes all the tokens, if they are one.
#[must_use]
pub fn read_all(tokens: &[&str]) -> Option<Reading> {
    read_number(tokens).into_iter().find(|reading| reading.len == tokens.len())
}

const HEDGES: [&[&str]; 12] = [
    &["about"],
    &["around"],
    &["roughly"],
    &["nearly"],
    &["almost"],
    &["maybe"],
    &["approximately"],
    &["just", "over"],
    &["just", "under"],
    &["just", "about"],
    &["something", "like"],
    &["best", "part", "of"],
];

/// With a hedge before it, a number is vague.
fn hedged(words: &Words) -> Vec<Found> {
    let hedge = HEDGES
        .iter()
        .filter(|hedge| hedge.iter().enumerate().all(|(n, word)| words.at(n) == *word))
        .map(|hedge| hedge.len())
        .max();
    match hedge {
        Some(after) => signed(words, after).into_iter().map(|found| found.doubtful(Kind::Vague)).collect(),
        None => signed(words, 0),
    }
}

fn signed(words: &Words, at: usize) -> Vec<Found> {
    if !matches!(words.at(at), "minus" | "negative") {
        return run::numbers(words, at);
    }
    let mut found = run::numbers(words, at + 1);
    for one in &mut found {
        one.candidates.iter_mut().for_each(|value| *value = -*value);
    }
    found
}

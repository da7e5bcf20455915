//! Written text to speakable text: figures, units and symbols become words.
//!
//! "Torque to 32 N.m (M14 x 1)" becomes "Torque to thirty two newton metres, M fourteen by one". A text that is
//! speakable already stays as it is.

mod fraction;
mod number;
mod signs;
mod spoken;
mod times;

use regex::{Captures, Regex};
use std::sync::LazyLock;

/// A code ("M14"), a number with the word or symbol after it, or a unit's symbol by itself.
static TOKEN: LazyLock<Option<Regex>> = LazyLock::new(|| {
    let code = r"(?P<code>[A-Za-z]+[0-9][A-Za-z0-9./^]*)";
    let number = r"(?P<number>[-+]?(?:[0-9]+[ ][0-9]+/[0-9]+|[0-9]+/[0-9]+|[0-9]{1,3}(?:,[0-9]{3})+(?:\.[0-9]+)?|[0-9]+(?:\.[0-9]+)?|\.[0-9]+))";
    let unit = r#"(?:(?P<gap> ?)(?P<unit>[A-Za-zµΔ°"″%][A-Za-z0-9./^²³°·_%]*))?"#;
    let symbol = r"(?P<symbol>[A-Za-z°µ][A-Za-z0-9°]*[./][A-Za-z0-9./²³]+|°[CF]|\bmm\b|\bdeg[CF]\b)";
    Regex::new(&format!("{code}|{number}{unit}|{symbol}")).ok()
});

/// The text in words: ASCII letters, commas, full stops, question marks, apostrophes and single spaces only.
#[must_use]
pub fn speakable(text: &str) -> String {
    let text = signs::signs(&times::times(text));
    spoken::spoken(&scan(&text))
}

/// Every token of `part` in words.
fn scan(part: &str) -> String {
    let Some(token) = TOKEN.as_ref() else { return part.to_owned() };
    let mut out = String::with_capacity(part.len() * 2);
    let mut done = 0;
    for found in token.captures_iter(part) {
        let Some(all) = found.get(0) else { continue };
        out.push_str(part.get(done..all.start()).unwrap_or_default());
        out.push_str(&token_words(&found, part.get(all.end()..).unwrap_or_default()));
        done = all.end();
    }
    out.push_str(part.get(done..).unwrap_or_default());
    out
}

/// One token in words; `after` is the text that follows it.
fn token_words(found: &Captures<'_>, after: &str) -> String {
    let group = |name: &str| found.name(name).map(|group| group.as_str());
    if let Some(code) = group("code") {
        return number::code(code);
    }
    if let Some(symbol) = group("symbol") {
        return number::symbol(symbol);
    }
    let number = group("number").unwrap_or_default();
    match (group("unit"), group("gap").unwrap_or_default()) {
        (Some(unit), gap) => number::with_unit(number, gap, unit, after),
        (None, _) => number::bare(number),
    }
}

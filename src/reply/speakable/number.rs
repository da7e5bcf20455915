//! One number, with or without a unit, and codes such as "M14", in words.

use super::fraction::{self, Fraction};
use crate::quantity::{Unit, figures};

/// Whole numbers from so many figures on, without a unit, are names (serials, years) and said digit by digit.
const NAME_FROM: usize = 4;
/// The same inside a code ("B441").
const CODE_FROM: usize = 3;

/// Words after a quantity that begin a new phrase; any other word is what the quantity describes ("12 mm flats").
const NOT_DESCRIBED: [&str; 58] = [
    "to", "or", "and", "of", "at", "in", "on", "off", "out", "from", "for", "per", "by", "with", "below",
    "above", "over", "under", "up", "down", "left", "before", "after", "when", "then", "than", "a", "an",
    "the", "each", "every", "is", "are", "was", "must", "may", "can", "clear", "proud", "short", "gauge",
    "apart", "deep", "long", "wide", "thick", "plus", "minus", "that", "if", "so", "as", "now", "through",
    "between", "across", "into", "past",
];

/// A number without a unit.
pub(super) fn bare(text: &str) -> String {
    match fraction::parse(text) {
        Some(found) => fraction::alone(&found),
        None => plain(text, NAME_FROM),
    }
}

/// A number and the word or symbol after it.
pub(super) fn with_unit(number: &str, gap: &str, unit: &str, after: &str) -> String {
    let trimmed = unit.trim_end_matches(['.', '/', '·']);
    let tail = unit.get(trimmed.len()..).unwrap_or_default();
    if gap.is_empty()
        && let Some(ordinal) = ordinal_of(number, trimmed)
    {
        return format!("{ordinal}{tail}");
    }
    let ends = !tail.is_empty() || !after.starts_with(' ');
    match Unit::parse(trimmed).filter(|unit| means_unit(*unit, trimmed, number, ends)) {
        Some(known) if is_symbol(known, trimmed) => {
            format!("{}{tail}", measured(number, known, tail.is_empty() && describes(after)))
        }
        Some(known) => format!("{} {trimmed}{tail}", in_word_unit(number, known)),
        None => format!("{} {}", bare(number), super::scan(unit)),
    }
}

/// Whether the letters after a number are the unit, and not a word of the sentence ("5 in the tray", "2 a side").
fn means_unit(unit: Unit, text: &str, number: &str, ends: bool) -> bool {
    if text == "in" {
        return ends || number.contains(['/', '.']);
    }
    let letters = text.chars().filter(|c| c.is_alphabetic()).count();
    letters != 1 || text == unit.name() || !text.is_ascii()
}

/// Whether the unit is written as a symbol ("N.m"), which must become words; a word ("clicks") stays.
fn is_symbol(unit: Unit, text: &str) -> bool {
    let is_word = |words: &str| words.split(' ').any(|word| word == text);
    !(is_word(unit.words(1.0))
        || is_word(unit.words(2.0))
        || text.len() > 4 && text.chars().all(|c| c.is_lowercase()))
}

/// Whether the quantity describes the word after it ("12 mm flats"), so that the unit is singular.
fn describes(after: &str) -> bool {
    let Some(rest) = after.strip_prefix(' ') else { return false };
    let word: String = rest.chars().take_while(|c| c.is_alphabetic()).collect();
    word.len() > 1 && !NOT_DESCRIBED.contains(&word.as_str())
}

/// A number with a unit's symbol.
fn measured(number: &str, unit: Unit, describes: bool) -> String {
    if let Some(found) = fraction::parse(number) {
        return fraction::of(&found, unit.words(1.0), unit.words(2.0), describes);
    }
    let value = value(number);
    let words = if describes { unit.words(1.0) } else { unit.words(value) };
    format!("{} {words}", figures::words(value)).trim_end().to_owned()
}

/// A number before a unit that is a word already.
fn in_word_unit(number: &str, unit: Unit) -> String {
    match fraction::parse(number) {
        Some(Fraction { whole: 0, above, below }) if below > 0 => {
            fraction::before_word(above, below, unit.words(1.0))
        }
        Some(found) => fraction::alone(&found),
        None if value(number) == 0.0 => "nought".to_owned(),
        None => figures::words(value(number)),
    }
}

/// A whole number or decimal; one of `from` figures or more, or with a nought in front, digit by digit.
fn plain(text: &str, from: usize) -> String {
    let digits = text.trim_start_matches('+');
    let whole = digits.chars().all(|c| c.is_ascii_digit());
    if whole && (digits.len() >= from || digits.len() > 1 && digits.starts_with('0')) {
        return each(digits);
    }
    if value(text) == 0.0 { "nought".to_owned() } else { figures::words(value(text)) }
}

/// Digit by digit, noughts in front kept.
fn each(digits: &str) -> String {
    let said: Vec<String> =
        digits.chars().filter_map(|c| c.to_digit(10)).map(|digit| figures::words(f64::from(digit))).collect();
    said.join(" ")
}

fn value(text: &str) -> f64 {
    text.replace([',', '+'], "").parse().unwrap_or_default()
}

/// A code: letters as they are, its figures in words ("M fourteen", "B four four one").
pub(super) fn code(text: &str) -> String {
    let trimmed = text.trim_end_matches(['.', '/', '^']);
    let tail = text.get(trimmed.len()..).unwrap_or_default();
    if let Some(unit) = Unit::parse(trimmed).filter(|unit| unit.name() == trimmed) {
        return format!("{}{tail}", unit.words(2.0));
    }
    let mut runs: Vec<String> = Vec::new();
    for c in trimmed.chars() {
        let same = runs
            .last()
            .and_then(|run| run.chars().last())
            .is_some_and(|last| last.is_ascii_digit() == c.is_ascii_digit());
        match runs.last_mut() {
            Some(run) if same => run.push(c),
            _ => runs.push(c.to_string()),
        }
    }
    let said: Vec<String> =
        runs.iter()
            .map(|run| {
                if run.starts_with(|c: char| c.is_ascii_digit()) {
                    plain(run, CODE_FROM)
                } else {
                    letters(run)
                }
            })
            .collect();
    format!("{}{tail}", said.join(" "))
}

/// Symbols that are no words and no letters of a code: they become words wherever they stand.
const STANDALONE: [&str; 3] = ["mm", "degC", "degF"];

fn letters(run: &str) -> String {
    let unit = Unit::parse(run).filter(|_| STANDALONE.contains(&run));
    unit.map_or_else(|| run.to_owned(), |unit| unit.words(2.0).to_owned())
}

/// A unit's symbol without a number: its words; any other text as it stands.
pub(super) fn symbol(text: &str) -> String {
    let trimmed = text.trim_end_matches(['.', '/']);
    let tail = text.get(trimmed.len()..).unwrap_or_default();
    match Unit::parse(trimmed).filter(|unit| unit.name() == trimmed || !trimmed.is_ascii()) {
        Some(unit) => format!("{}{tail}", unit.words(2.0)),
        None => text.split('.').map(letters).collect::<Vec<_>>().join("."),
    }
}

/// "third" of "3" and "rd".
fn ordinal_of(number: &str, suffix: &str) -> Option<String> {
    matches!(suffix, "st" | "nd" | "rd" | "th").then(|| number.parse().ok().map(ordinal))?
}

/// An ordinal in words: "first", "twenty third".
pub(super) fn ordinal(number: u32) -> String {
    let words = figures::words(f64::from(number));
    let (head, last) = words.rsplit_once(' ').map_or(("", words.as_str()), |(head, last)| (head, last));
    let last = match last {
        "one" => "first".to_owned(),
        "two" => "second".to_owned(),
        "three" => "third".to_owned(),
        "five" => "fifth".to_owned(),
        "eight" => "eighth".to_owned(),
        "nine" => "ninth".to_owned(),
        "twelve" => "twelfth".to_owned(),
        tens if tens.ends_with('y') => format!("{}ieth", tens.trim_end_matches('y')),
        other => format!("{other}th"),
    };
    format!("{head} {last}").trim_start().to_owned()
}

//! Signs and abbreviations that mean words: ranges, tolerances, comparisons, "e.g.".

use regex::Regex;
use std::sync::LazyLock;

/// Signs, the longer first, and their words.
const SIGNS: [(&str, &str); 17] = [
    ("+/-", " plus or minus "),
    ("±", " plus or minus "),
    ("->", " to "),
    ("→", " to "),
    ("<=", " at most "),
    ("≤", " at most "),
    (">=", " at least "),
    ("≥", " at least "),
    ("−", "-"),
    ("½", " 1/2"),
    ("¼", " 1/4"),
    ("¾", " 3/4"),
    ("e.g.", "for example"),
    ("i.e.", "that is"),
    ("&", " and "),
    ("@", " at "),
    ("#", " number "),
];

/// Abbreviations, with or without their full stop.
static SHORT: LazyLock<Option<Regex>> = LazyLock::new(|| Regex::new(r"\b(etc|approx|vs)\b\.?").ok());
static BY: LazyLock<Option<Regex>> = LazyLock::new(|| Regex::new(r"([0-9]) ?[x×] ?([.0-9])").ok());
static RANGE: LazyLock<Option<Regex>> = LazyLock::new(|| Regex::new(r"([0-9]) ?[-–—] ?([.0-9])").ok());

/// The text with such signs as words. A hyphen between two figures is a range.
pub(super) fn signs(text: &str) -> String {
    let text = SIGNS.iter().fold(text.to_owned(), |text, (sign, words)| text.replace(sign, words));
    let text = match SHORT.as_ref() {
        Some(short) => short
            .replace_all(&text, |found: &regex::Captures<'_>| {
                long(found.get(1).map_or("", |short| short.as_str()))
            })
            .into_owned(),
        None => text,
    };
    let text = between(&BY, &text, "$1 by $2");
    between(&RANGE, &text, "$1 to $2")
}

fn long(short: &str) -> &'static str {
    match short {
        "etc" => "and so on",
        "approx" => "about",
        _ => "against",
    }
}

/// Twice, since neighbours share their figure ("2 x 3 x 4").
fn between(regex: &LazyLock<Option<Regex>>, text: &str, with: &str) -> String {
    match regex.as_ref() {
        Some(regex) => regex.replace_all(&regex.replace_all(text, with), with).into_owned(),
        None => text.to_owned(),
    }
}

//! Dates (ISO 8601) and clock times in words.

use super::number::ordinal;
use crate::quantity::figures;
use regex::{Captures, Regex};
use std::borrow::Cow;
use std::sync::LazyLock;

static DATE: LazyLock<Option<Regex>> =
    LazyLock::new(|| Regex::new(r"\b([0-9]{4})-([0-9]{2})-([0-9]{2})\b").ok());
static CLOCK: LazyLock<Option<Regex>> = LazyLock::new(|| Regex::new(r"\b([0-9]{1,2}):([0-9]{2})\b").ok());

const MONTHS: [&str; 12] = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
];

/// The text with its dates and times in words.
pub(super) fn times(text: &str) -> String {
    let text = replaced(&DATE, text, date);
    replaced(&CLOCK, &text, clock).into_owned()
}

fn replaced<'a>(
    regex: &LazyLock<Option<Regex>>,
    text: &'a str,
    words: fn(&Captures<'_>) -> String,
) -> Cow<'a, str> {
    match regex.as_ref() {
        Some(regex) => regex.replace_all(text, words),
        None => Cow::Borrowed(text),
    }
}

/// "third of November, two zero two six"; the text as it stands when there is no such month.
fn date(found: &Captures<'_>) -> String {
    let (year, month, day) = (part(found, 1), part(found, 2), part(found, 3));
    match MONTHS.get((month as usize).wrapping_sub(1)) {
        Some(name) => format!("the {} of {name}, {}", ordinal(day), figures::digits(f64::from(year))),
        None => format!("{year} {month} {day}"),
    }
}

/// "fourteen thirty two", "nine zero five", "nine o'clock".
fn clock(found: &Captures<'_>) -> String {
    let (hour, minute) = (part(found, 1), part(found, 2));
    let hour = figures::words(f64::from(hour));
    match minute {
        0 => format!("{hour} o'clock"),
        1..=9 => format!("{hour} zero {}", figures::words(f64::from(minute))),
        _ => format!("{hour} {}", figures::words(f64::from(minute))),
    }
}

fn part(found: &Captures<'_>, group: usize) -> u32 {
    found.get(group).and_then(|group| group.as_str().parse().ok()).unwrap_or_default()
}

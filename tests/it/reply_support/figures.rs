//! Every number of a text, written or in English words. Written for the tests: it shares nothing with the crate.

use regex::Regex;
use std::collections::BTreeSet;
use std::sync::LazyLock;

static WRITTEN: LazyLock<Regex> = LazyLock::new(|| {
    Regex::new(r"([0-9]+) ([0-9]+)/([0-9]+)|([0-9]+)/([0-9]+)|([0-9]+(?:\.[0-9]+)?)").unwrap()
});
static WORD: LazyLock<Regex> = LazyLock::new(|| Regex::new(r"[a-z']+|[^a-z'\s]").unwrap());

const SMALL: [&str; 20] = [
    "zero",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
];
const TENS: [&str; 8] = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

/// The figures of a text, in thousandths.
pub fn figures(text: &str) -> BTreeSet<i64> {
    let mut found = BTreeSet::new();
    for part in WRITTEN.captures_iter(text) {
        let group = |n: usize| part.get(n).map_or(0.0, |m| m.as_str().parse::<f64>().unwrap());
        let value = match (part.get(1), part.get(4)) {
            (Some(_), _) => group(1) + group(2) / group(3),
            (_, Some(_)) => group(4) / group(5),
            _ => group(6),
        };
        found.insert((value * 1000.0).round() as i64);
    }
    let words = WRITTEN.replace_all(text, " | ").to_lowercase();
    let mut words: Vec<String> = WORD.find_iter(&words).map(|word| word.as_str().to_owned()).collect();
    words.push("|".to_owned());
    let mut at = 0;
    while at < words.len() {
        match number(&words[at..]) {
            Some((value, used)) => {
                found.insert((value * 1000.0).round() as i64);
                at += used;
            }
            None => at += 1,
        }
    }
    found
}

/// A number at the start of the words, and how many it takes.
pub fn number(words: &[String]) -> Option<(f64, usize)> {
    if let Some(part) = quarter(words) {
        return Some(part);
    }
    let (whole, mut used) = below_thousand(words)?;
    let mut value = whole;
    if words[used] == "point" {
        let mut scale = 0.1;
        used += 1;
        while let Some(digit) = SMALL[..10].iter().position(|name| *name == words[used]) {
            value += digit as f64 * scale;
            scale /= 10.0;
            used += 1;
        }
    } else if words[used] == "and"
        && let Some((part, more)) = quarter(&words[used + 1..])
    {
        value += part;
        used += 1 + more;
    }
    Some((value, used))
}

/// "a quarter", "half a", "three quarters of a".
fn quarter(words: &[String]) -> Option<(f64, usize)> {
    let word = |n: usize| words.get(n).map_or("", String::as_str);
    match (word(0), word(1)) {
        ("half", _) => Some((0.5, 1)),
        ("a", "half") => Some((0.5, 2)),
        ("a", "quarter") => Some((0.25, 2)),
        ("three", "quarters") => Some((0.75, 2)),
        _ => None,
    }
}

fn below_thousand(words: &[String]) -> Option<(f64, usize)> {
    let (mut value, mut used) = below_hundred(words)?;
    if words[used] == "hundred" {
        value *= 100;
        used += 1;
        if words[used] == "and"
            && let Some((rest, more)) = below_hundred(&words[used + 1..])
        {
            value += rest;
            used += 1 + more;
        }
    }
    Some((value as f64, used))
}

fn below_hundred(words: &[String]) -> Option<(usize, usize)> {
    if words[0] == "nought" {
        return Some((0, 1));
    }
    if let Some(value) = SMALL.iter().position(|name| *name == words[0]) {
        return Some((value, 1));
    }
    let tens = 20 + 10 * TENS.iter().position(|name| *name == words[0])?;
    let ones =
        words.get(1).and_then(|word| SMALL[1..10].iter().position(|name| name == word)).map(|at| at + 1);
    Some(ones.map_or((tens, 1), |ones| (tens + ones, 2)))
}

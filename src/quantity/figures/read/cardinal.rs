//! Whole numbers and decimals in words or figures: "a hundred and ten", "fifteen hundred", "thirteen point eight".

use super::super::words_in::{digit, numeral, teen, ten};
use super::{Form, Found, Kind, Words};

/// Every whole number or decimal that begins at `at`, one for each place where it can end.
pub(super) fn plain(words: &Words, at: usize) -> Vec<Found> {
    let mut found: Vec<Found> =
        whole(words, at).into_iter().map(|(value, end)| Found::sure(value, end, Form::Whole)).collect();
    if let Some(value) = numeral(words.at(at)).filter(|value| value.fract() != 0.0 || *value < 0.0) {
        found.push(Found::sure(value, at + 1, Form::Decimal));
    }
    let pointed: Vec<Found> = found
        .iter()
        .filter(|whole| whole.form == Form::Whole)
        .flat_map(|whole| point(words, whole.value(), whole.end))
        .chain(point(words, 0.0, at))
        .collect();
    found.extend(pointed);
    found
}

/// "point two five" after a whole number, one for each figure where it may end. Cut off after "point", or with a
/// two-figure word after it, it is a question.
fn point(words: &Words, whole: f64, at: usize) -> Vec<Found> {
    if !matches!(words.at(at), "point" | "decimal" | "dot") {
        return Vec::new();
    }
    let mut found = Vec::new();
    let mut figures = String::new();
    let mut end = at + 1;
    while let Some(figure) = figure(words.at(end)) {
        figures.push_str(&figure);
        end += 1;
        found.extend(decimal(whole, &figures, end));
    }
    if let (true, Some((value, after))) = (found.is_empty(), below_hundred(words, end)) {
        found.extend(decimal(whole, &value.to_string(), after).map(|one| one.doubtful(Kind::Ambiguous)));
    }
    if found.is_empty() && whole_before(words, at) {
        // A bare "point" is no number at all; "one point" is one that was cut off.
        found.push(Found::sure(whole, end, Form::Decimal).doubtful(Kind::Ambiguous));
    }
    found
}

/// The figures of a digit word or a bare numeral.
fn figure(word: &str) -> Option<String> {
    let written = !word.is_empty() && word.chars().all(|c| c.is_ascii_digit());
    if written { Some(word.to_owned()) } else { digit(word).map(|digit| digit.to_string()) }
}

fn decimal(whole: f64, figures: &str, end: usize) -> Option<Found> {
    Some(Found::sure(format!("{whole}.{figures}").parse().ok()?, end, Form::Decimal))
}

fn whole_before(words: &Words, point: usize) -> bool {
    point.checked_sub(1).is_some_and(|before| super::super::words_in::numberish(words.at(before)))
}

/// Whole numbers from `at`, each with its end.
fn whole(words: &Words, at: usize) -> Vec<(f64, usize)> {
    let mut found = below_million(words, at, true);
    for (head, end) in heads(words, at) {
        if words.at(end) == "million" {
            let base = head * 1e6;
            found.push((base, end + 1));
            let rest = tail(words, end + 1).into_iter().chain(below_million(words, end + 1, false));
            found.extend(rest.filter(|(value, _)| *value > 0.0).map(|(value, end)| (base + value, end)));
        }
    }
    found.extend(dozen(words, at));
    found
}

/// Numbers built on "thousand", and those below it.
fn below_million(words: &Words, at: usize, loose: bool) -> Vec<(f64, usize)> {
    let mut found = below_thousand(words, at, loose);
    let heads = if loose { heads(words, at) } else { found.clone() };
    for (head, end) in heads {
        if words.at(end) == "thousand" {
            let base = head * 1e3;
            found.push((base, end + 1));
            found.extend(tail(words, end + 1).into_iter().map(|(value, end)| (base + value, end)));
        }
    }
    found
}

/// What may stand before "thousand" and "million": a number, "a", or nothing.
fn heads(words: &Words, at: usize) -> Vec<(f64, usize)> {
    below_thousand(words, at, true).into_iter().chain(article(words, at)).chain([(1.0, at)]).collect()
}

/// What may follow "thousand": "three hundred and forty", "and ten", "ten"; not "a hundred".
fn tail(words: &Words, at: usize) -> Vec<(f64, usize)> {
    match words.at(at) {
        "and" => below_hundred_all(words, at + 1),
        "a" | "an" | "hundred" => Vec::new(),
        _ => below_thousand(words, at, false),
    }
    .into_iter()
    .filter(|(value, _)| *value > 0.0)
    .collect()
}

/// Numbers built on "hundred", and those below it. "a hundred" and a bare "hundred" only where `loose`.
fn below_thousand(words: &Words, at: usize, loose: bool) -> Vec<(f64, usize)> {
    let mut found = below_hundred_all(words, at);
    let mut heads: Vec<(f64, usize)> = found.iter().copied().filter(|(head, _)| *head >= 1.0).collect();
    if loose {
        heads.extend(article(words, at));
        heads.push((1.0, at));
    }
    for (head, end) in heads {
        if words.at(end) != "hundred" {
            continue;
        }
        let base = head * 100.0;
        found.push((base, end + 1));
        let after = if words.at(end + 1) == "and" { end + 2 } else { end + 1 };
        let rest = below_hundred_all(words, after).into_iter().filter(|(value, _)| *value > 0.0);
        found.extend(rest.map(|(value, end)| (base + value, end)));
    }
    found
}

fn article(words: &Words, at: usize) -> Option<(f64, usize)> {
    matches!(words.at(at), "a" | "an").then_some((1.0, at + 1))
}

/// The longest number below a hundred.
fn below_hundred(words: &Words, at: usize) -> Option<(f64, usize)> {
    below_hundred_all(words, at).into_iter().max_by_key(|(_, end)| *end)
}

/// Numbers below a hundred in words, and whole numerals of any size.
fn below_hundred_all(words: &Words, at: usize) -> Vec<(f64, usize)> {
    let word = words.at(at);
    if let Some(value) = numeral(word).filter(|value| value.fract() == 0.0 && *value >= 0.0) {
        return vec![(value, at + 1)];
    }
    if let Some(value) = digit(word).map(f64::from).or_else(|| teen(word)) {
        return vec![(value, at + 1)];
    }
    let Some(tens) = ten(word) else { return Vec::new() };
    let mut found = vec![(tens, at + 1)];
    if let Some(ones) = digit(words.at(at + 1)).filter(|ones| *ones > 0) {
        found.push((tens + f64::from(ones), at + 2));
    }
    found
}

/// "a dozen", "two dozen", "half a dozen".
fn dozen(words: &Words, at: usize) -> Option<(f64, usize)> {
    let (count, end) = match (words.at(at), words.at(at + 1)) {
        ("dozen", _) => (1.0, at),
        ("a", _) => (1.0, at + 1),
        ("half", "a") => (0.5, at + 2),
        ("half", _) => (0.5, at + 1),
        _ => below_hundred(words, at)?,
    };
    (words.at(end) == "dozen").then_some((count * 12.0, end + 1))
}

//! Fractions: "half", "five eighths", "two and three quarters", "an inch and five eighths", `2 1/4`.

use super::super::super::Unit;
use super::super::words_in::{denominator, numeral, stroke};
use super::{Form, Found, Kind, Words, cardinal};

/// Every fraction that begins at `at`.
pub(super) fn fractions(words: &Words, at: usize) -> Vec<Found> {
    let mut found = Vec::new();
    let lead = usize::from(matches!(words.at(at), "a" | "an"));
    if let Some(value) = stroke(words.at(at + lead)) {
        found.push(Found::sure(value, at + lead + 1, Form::Fraction));
    }
    if let Some((below, false)) =
        denominator(words.at(at + lead)).filter(|(below, _)| lead == 1 || *below <= 4.0)
    {
        // "a half", "an eighth", and bare "half", "quarter"; a bare "third" is an ordinal.
        if lead == 1 || below != 3.0 {
            found.push(Found::sure(1.0 / below, at + lead + 1, Form::Fraction));
        }
    }
    found.extend(
        cardinal::plain(words, at)
            .into_iter()
            .filter(|n| n.form == Form::Whole)
            .filter_map(|n| over(words, &n)),
    );
    let longer: Vec<Found> = found.iter().filter_map(|one| of_a(words, one)).collect();
    found.extend(longer);
    found
}

/// "five" and "eighths". An improper one ("twenty two eighths") or "two half turns" has two meanings.
fn over(words: &Words, above: &Found) -> Option<Found> {
    let (below, plural, end) = compound(words, above.end)
        .or_else(|| denominator(words.at(above.end)).map(|(below, plural)| (below, plural, above.end + 1)))?;
    let n = above.value();
    if n < 1.0 {
        return None;
    }
    let found = Found::sure(n / below, end, Form::Fraction);
    let odd = n > 1.0 && !plural && below <= 4.0 && !(n == 3.0 && below == 4.0);
    if odd || (n >= below && n > 2.0) {
        let split = if n < 20.0 { n + 1.0 / below } else { (n / 10.0).trunc() * 10.0 + n % 10.0 / below };
        return Some(Found { candidates: vec![n / below, split], ..found.doubtful(Kind::Ambiguous) });
    }
    Some(found)
}

/// "thirty seconds", "sixty fourths", said as two words.
fn compound(words: &Words, at: usize) -> Option<(f64, bool, usize)> {
    let (below, plural) = match (words.at(at), words.at(at + 1)) {
        ("thirty", "second" | "secondth") => (32.0, false),
        ("thirty", "seconds" | "secondths") => (32.0, true),
        ("sixty", "fourth") => (64.0, false),
        ("sixty", "fourths") => (64.0, true),
        _ => return None,
    };
    Some((below, plural, at + 2))
}

/// "half a (turn)", "three quarters of an (inch)": the small words belong to the fraction.
fn of_a(words: &Words, one: &Found) -> Option<Found> {
    let end = match (words.at(one.end), words.at(one.end + 1)) {
        ("of", "a" | "an") => one.end + 2,
        ("a" | "an", _) if one.form == Form::Fraction => one.end + 1,
        _ => return None,
    };
    Some(Found { end, ..one.clone() })
}

/// A whole and a fraction: "two and a half", `2 1/4`.
pub(super) fn mixed(words: &Words, whole: &Found) -> Vec<Found> {
    if whole.form != Form::Whole {
        return Vec::new();
    }
    if let (Some(_), Some(part)) =
        (numeral(words.at(whole.end.saturating_sub(1))), stroke(words.at(whole.end)))
    {
        return vec![Found::sure(whole.value() + part, whole.end + 1, Form::Fraction)];
    }
    if words.at(whole.end) != "and" {
        return Vec::new();
    }
    join(words, whole, whole.end + 1, None)
}

/// A whole, its unit, and a fraction: "an inch and five eighths", "two turns and a half".
pub(super) fn around_unit(words: &Words, at: usize) -> Vec<Found> {
    let article = matches!(words.at(at), "a" | "an").then(|| Found::sure(1.0, at + 1, Form::Article));
    let wholes: Vec<Found> =
        cardinal::plain(words, at).into_iter().filter(|n| n.form == Form::Whole).chain(article).collect();
    let mut found = Vec::new();
    for whole in wholes {
        let Some((unit, end)) = unit_at(words, whole.end) else { continue };
        if whole.form == Form::Article {
            found.push(whole.clone());
        }
        if words.at(end) == "and" {
            found.extend(join(words, &whole, end + 1, Some(unit)));
        }
    }
    found
}

/// Adds each proper fraction at `at` to a whole.
fn join(words: &Words, whole: &Found, at: usize, unit: Option<Unit>) -> Vec<Found> {
    fractions(words, at)
        .into_iter()
        .filter(|part| part.value() < 1.0)
        .map(|part| Found {
            candidates: part.candidates.iter().map(|value| whole.value() + value).collect(),
            unit,
            ..part
        })
        .collect()
}

/// The unit word at a place. One letter is no unit here: it is as often a letter.
fn unit_at(words: &Words, at: usize) -> Option<(Unit, usize)> {
    (1..=3).rev().find_map(|count| {
        let text: Vec<&str> = (at..at + count).map(|place| words.at(place)).collect();
        let text = text.join(" ");
        if text.trim_end().len() < 2 || text.ends_with(' ') {
            return None;
        }
        Unit::parse(&text).map(|unit| (unit, at + count))
    })
}

//! Whole utterances of a number: what stands alone, what runs into another number, and what is said loosely.

use super::super::words_in::{digit, numberish};
use super::{Form, Found, Kind, Words, cardinal, fraction};

/// Every number at `at`, with those that run on into more words.
pub(super) fn numbers(words: &Words, at: usize) -> Vec<Found> {
    let single = single(words, at);
    let mut found = single.clone();
    found.extend(single.iter().filter_map(|one| loose(words, one)));
    found.extend(single.iter().filter_map(|one| either(words, one)));
    found.extend(couple(words, at));
    found.extend(run(words, at));
    // A shorter number that runs on into more of one is not sure by itself.
    let longest = found.iter().map(|one| one.end).max().unwrap_or(at);
    for one in &mut found {
        if one.end < longest && (continues(words, one.end) || is_point(words.at(one.end))) {
            one.kind = Kind::Ambiguous;
        }
    }
    let spelled: Vec<Found> = single.iter().filter_map(|one| spelled_after(words, one)).collect();
    found.extend(spelled);
    found
}

fn single(words: &Words, at: usize) -> Vec<Found> {
    let plain = cardinal::plain(words, at);
    let mixed: Vec<Found> = plain.iter().flat_map(|whole| fraction::mixed(words, whole)).collect();
    let mut found = plain;
    found.extend(mixed);
    found.extend(fraction::fractions(words, at));
    found.extend(fraction::around_unit(words, at));
    found
}

fn longest(words: &Words, at: usize) -> Option<Found> {
    single(words, at).into_iter().filter(|found| found.form != Form::Article).max_by_key(|found| found.end)
}

fn continues(words: &Words, at: usize) -> bool {
    let word = words.at(at);
    numberish(word) || (matches!(word, "a" | "an") && words.at(at + 1) == "hundred")
}

/// Two or more numbers in a row, such as "one twenty": ambiguous, unless the one spells the other out.
fn run(words: &Words, at: usize) -> Option<Found> {
    let mut parts = vec![longest(words, at)?];
    let mut end = parts.last()?.end;
    while continues(words, end) {
        let next = longest(words, end)?;
        end = next.end;
        parts.push(next);
    }
    if parts.len() < 2 {
        return None;
    }
    if let Some(value) = spelled_before(words, at, &parts) {
        return Some(Found::sure(value, end, Form::Digits));
    }
    let single_digits = (at..end).all(|place| is_digit(words.at(place)) || is_point(words.at(place)));
    let form = if single_digits { Form::Digits } else { Form::Whole };
    let candidates = candidates(&parts, single_digits);
    let first = candidates.first().copied()?;
    Some(Found { candidates, ..Found::sure(first, end, form).doubtful(Kind::Ambiguous) })
}

fn is_digit(word: &str) -> bool {
    digit(word).is_some() || (word.len() == 1 && word.chars().all(|c| c.is_ascii_digit()))
}

fn is_point(word: &str) -> bool {
    matches!(word, "point" | "decimal" | "dot")
}

/// "fourteen, one four": the number, then its figures.
fn spelled_after(words: &Words, one: &Found) -> Option<Found> {
    let figures = shown(one.value());
    let end = one.end + figures.len();
    let told = figures.len() > 1 && self::figures(words, one.end, end)? == figures;
    told.then(|| Found::sure(one.value(), end, Form::Digits))
}

/// "one four, fourteen": the figures, then the number.
fn spelled_before(words: &Words, at: usize, parts: &[Found]) -> Option<f64> {
    let last = parts.last()?;
    let head_end = parts.get(parts.len().checked_sub(2)?)?.end;
    let told = shown(last.value()).len() > 1 && figures(words, at, head_end)? == shown(last.value());
    told.then(|| last.value())
}

fn shown(value: f64) -> String {
    format!("{value}")
}

/// The figures said digit by digit between two places.
fn figures(words: &Words, from: usize, to: usize) -> Option<String> {
    let mut said = String::new();
    for place in from..to {
        let word = words.at(place);
        match digit(word) {
            Some(digit) => said.push_str(&digit.to_string()),
            None if is_point(word) => said.push('.'),
            None if is_digit(word) => said.push_str(word),
            None => return None,
        }
    }
    Some(said)
}

/// What numbers in a row may mean: run together, with a point between, or one upon the other.
fn candidates(parts: &[Found], single_digits: bool) -> Vec<f64> {
    let texts: Vec<String> = parts.iter().map(|part| shown(part.value())).collect();
    let mut found: Vec<f64> = Vec::new();
    if let [first, second] = parts {
        let (first, second) = (first.value(), second.value());
        let room = 10f64.powi(shown(second.trunc()).len() as i32);
        if second < 1.0 || (first >= room && first % room == 0.0) {
            found.push(first + second);
        }
    }
    found.extend(texts.concat().parse::<f64>());
    if let (false, Some((head, tail))) = (single_digits, texts.split_first()) {
        found.extend(format!("{head}.{}", tail.concat()).parse::<f64>());
    }
    found.dedup();
    found.retain(|value| value.is_finite());
    found
}

/// "two and a bit", "twenty odd", "ten or so", "twelve ish".
fn loose(words: &Words, one: &Found) -> Option<Found> {
    let after = |n: usize| words.at(one.end + n);
    let taken = match (after(0), after(1), after(2)) {
        ("and" | "plus", "a", "bit" | "little" | "touch" | "smidge" | "tad") => 3,
        ("and", "a", "half" | "quarter") => return None,
        ("and", "something" | "some" | "change", _) => 2,
        ("or", "so", _) | ("or", "thereabouts", _) => 2,
        ("odd" | "ish" | "something" | "plus", _, _) => 1,
        _ => return None,
    };
    let found = Found { end: one.end + taken, ..one.clone() };
    Some(found.doubtful(Kind::Vague))
}

/// "two or three".
fn either(words: &Words, one: &Found) -> Option<Found> {
    if words.at(one.end) != "or" || one.form == Form::Article {
        return None;
    }
    let other = longest(words, one.end + 1)?;
    let candidates = vec![one.value(), other.value()];
    Some(Found { candidates, ..other.doubtful(Kind::Ambiguous) })
}

/// "a couple", "a few", "several": a number that nobody counted.
fn couple(words: &Words, at: usize) -> Option<Found> {
    let lead = usize::from(words.at(at) == "a");
    let value = match words.at(at + lead) {
        "couple" => 2.0,
        "few" | "several" => 3.0,
        _ => return None,
    };
    let of = usize::from(words.at(at + lead + 1) == "of");
    Some(Found::sure(value, at + lead + 1 + of, Form::Whole).doubtful(Kind::Vague))
}

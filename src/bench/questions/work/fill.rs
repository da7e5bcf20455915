//! Puts the figures of a question to the inputs of a calculation: by dimension, by the words beside them, by order.

use super::words::{Figure, Words};
use crate::quantity::{PressureBasis, Quantity, Unit};
use crate::rulebase::talk::{Asking, Found};
use crate::workings::registry::{Input, Takes, Value, Working};
use std::collections::BTreeMap;

/// What was said of a calculation's inputs.
#[derive(Debug, Clone, Default)]
pub struct Said {
    /// Values by input.
    pub values: BTreeMap<String, Value>,
    /// Figures that fit nowhere.
    pub left_over: Vec<Figure>,
}

/// Reads what the words say of the inputs.
#[must_use]
pub fn said(asking: &Asking, working: &Working, words: &Words) -> Said {
    let mut said = Said::default();
    let mut pairs = Vec::new();
    for (n, figure) in words.figures.iter().enumerate() {
        for (i, found) in asking.inputs.iter().enumerate() {
            if let Some(score) = score(working, found, words, figure) {
                // Inputs are said in their order unless the words tell otherwise.
                let order = 0.01 * (n as f64 - i as f64).abs() + 0.001 * i as f64;
                pairs.push((score - order, n, i));
            }
        }
    }
    pairs.sort_by(|a, b| b.0.total_cmp(&a.0));
    let mut used = std::collections::BTreeSet::new();
    for (_, n, i) in pairs {
        let (Some(figure), Some(found)) = (words.figures.get(n), asking.inputs.get(i)) else { continue };
        if used.contains(&n) || said.values.contains_key(&found.input) {
            continue;
        }
        if let Some(value) = value(working, found, figure) {
            used.insert(n);
            said.values.insert(found.input.clone(), value);
        }
    }
    said.left_over =
        words.figures.iter().enumerate().filter(|(n, _)| !used.contains(n)).map(|(_, f)| f.clone()).collect();
    texts(asking, working, words, &mut said);
    said
}

/// Threads and choices among the words.
fn texts(asking: &Asking, working: &Working, words: &Words, said: &mut Said) {
    for found in &asking.inputs {
        let Some(Input { takes: Takes::Text(_), .. }) = working.input(&found.input) else { continue };
        let chosen = found.choose.iter().find(|(_, cues)| cues.iter().any(|cue| words.cue(cue) > 0));
        if let Some((choice, _)) = chosen {
            said.values.insert(found.input.clone(), Value::Text(choice.clone()));
        } else if found.input == "thread"
            && let Some((_, thread)) = words.threads.first()
        {
            said.values.insert(found.input.clone(), Value::Text(thread.clone()));
        }
    }
}

/// How well a figure suits an input; none when it cannot be it.
fn score(working: &Working, found: &Found, words: &Words, figure: &Figure) -> Option<f64> {
    let beside = found.said.iter().map(|phrase| beside(words, figure, phrase)).fold(0.0, f64::max);
    if found.strict && beside < STRICT {
        return None;
    }
    let own = dimension(working, found)?;
    match (figure.unit, own) {
        (Some(unit), own) if fits(unit, own) => Some(3.0 + beside),
        (Some(_), _) => None,
        (None, Unit::One | Unit::Percent) => Some(1.0 + beside),
        (None, _) if beside > 0.0 => Some(0.8 + beside),
        (None, _) => Some(0.1),
    }
}

/// The least by which a strict input's words have to stand beside a number.
const STRICT: f64 = 2.5;

/// The unit that an input counts in, which tells its dimension.
fn dimension(working: &Working, found: &Found) -> Option<Unit> {
    let input = working.input(&found.input)?;
    match input.takes {
        Takes::Text(_) if found.bare.is_some() => found.bare.as_deref().and_then(Unit::parse),
        Takes::Text(_) | Takes::Any => None,
        Takes::Quantity { .. } | Takes::Pressure(_) => input.unit(),
    }
}

/// Whether a unit measures what the input counts; "degrees" alone may be of warmth.
#[must_use]
pub fn fits(unit: Unit, own: Unit) -> bool {
    unit.same_dimension(own)
        || (unit == Unit::Degree && own == Unit::Celsius)
        || (unit == Unit::Pound && own == Unit::Newton)
        || (unit == Unit::Kilogram && own == Unit::Newton)
}

/// Whether a figure can be the value of an input.
#[must_use]
pub fn suits(asking: &Asking, working: &Working, input: &str, figure: &Figure) -> bool {
    let bare = Found { input: input.to_owned(), ..Found::default() };
    match (figure.unit, dimension(working, asking.input(input).unwrap_or(&bare))) {
        (Some(unit), Some(own)) => fits(unit, own),
        (None, Some(_)) => true,
        (_, None) => false,
    }
}

/// The value of a figure for an input; a bare number has the unit that the table says.
fn value(working: &Working, found: &Found, figure: &Figure) -> Option<Value> {
    let own = dimension(working, found)?;
    let unit = match figure.unit {
        Some(Unit::Degree) if own == Unit::Celsius => Unit::Celsius,
        Some(Unit::Pound) if own == Unit::Newton => Unit::PoundForce,
        Some(Unit::Kilogram) if own == Unit::Newton => Unit::KilogramForce,
        Some(unit) => unit,
        None if figure.fraction && found.bare.as_deref() == Some("mm") => Unit::Inch,
        None => found.bare_unit(working)?,
    };
    let quantity = Quantity::new(figure.value, unit);
    Some(match (working.input(&found.input)?.takes, figure.basis) {
        (Takes::Pressure(_), Some(basis)) => Value::Pressure(quantity, basis),
        (Takes::Pressure(_), None) => Value::Pressure(quantity, PressureBasis::Gauge),
        (Takes::Text(_), _) => Value::Text(format!("{} {}", quantity.value, quantity.unit.name())),
        _ => Value::Quantity(quantity),
    })
}

/// How well a phrase stands beside a figure. `#` in a phrase stands for the figure; a phrase without it may stand on
/// either side, the nearer the better, and not beyond another figure or a break.
fn beside(words: &Words, figure: &Figure, phrase: &str) -> f64 {
    let tokens: Vec<&str> = phrase.split_whitespace().collect();
    let length = tokens.len() as f64;
    if let Some(hole) = tokens.iter().position(|token| *token == "#") {
        let (before, after) = tokens.split_at(hole);
        let after = after.get(1..).unwrap_or_default();
        let stands = ends_before(words, figure.start, before) && begins_after(words, figure.end, after);
        return if stands { 3.0 + 0.5 * (length - 1.0) } else { 0.0 };
    }
    let near = |distance: usize| 2.6 - 0.3 * distance as f64 + 0.2 * length;
    let reach = 4;
    let after = (0..=reach)
        .find(|gap| clear(words, figure.end, figure.end + gap) && words.stands(figure.end + gap, &tokens));
    let before = (0..=reach).find(|gap| {
        let end = figure.start.checked_sub(*gap);
        let start = end.and_then(|end| end.checked_sub(tokens.len()));
        start.is_some_and(|start| words.stands(start, &tokens) && clear(words, start, figure.start))
    });
    let after = after.map_or(0.0, near);
    let before = before.map_or(0.0, |gap| near(gap) - 0.15);
    after.max(before)
}

/// Whether no break and no other figure lies between two places.
fn clear(words: &Words, from: usize, to: usize) -> bool {
    (from..to).all(|place| !words.at(place).is_empty())
        && !words.figures.iter().any(|other| other.start >= from && other.start < to)
}

/// Little words that may stand between a phrase and its figure.
fn small(word: &str) -> bool {
    matches!(word, "is" | "a" | "an" | "the" | "of" | "at" | "about" | "just" | "with" | "")
}

fn ends_before(words: &Words, start: usize, phrase: &[&str]) -> bool {
    if phrase.is_empty() {
        return true;
    }
    let mut end = start;
    for _ in 0..=2 {
        let from = end.checked_sub(phrase.len());
        if from.is_some_and(|from| words.stands(from, phrase) && clear(words, from, start)) {
            return true;
        }
        match end.checked_sub(1) {
            Some(place) if small(words.at(place)) => end = place,
            _ => return false,
        }
    }
    false
}

fn begins_after(words: &Words, end: usize, phrase: &[&str]) -> bool {
    if phrase.is_empty() {
        return true;
    }
    for start in end..=end + 2 {
        if words.stands(start, phrase) {
            return true;
        }
        if !small(words.at(start)) || words.at(start).is_empty() {
            return false;
        }
    }
    false
}

/// The answer to a question for one input: its figure, thread or choice.
#[must_use]
pub fn answer(
    asking: &Asking,
    working: &Working,
    missing: &str,
    words: &Words,
    act: &crate::act::Act,
) -> Option<Value> {
    let bare = Found { input: missing.to_owned(), ..Found::default() };
    let found = asking.input(missing).unwrap_or(&bare);
    let mut own = words.figures.clone();
    if own.is_empty() {
        own.extend(act.slots.value.map(|value| Figure {
            start: 0,
            end: 1,
            value,
            unit: act.slots.unit.as_deref().and_then(Unit::parse),
            fraction: false,
            basis: None,
            strange: None,
        }));
    }
    let figure = own.iter().find(|figure| suits(asking, working, missing, figure));
    if let Some(figure) = figure {
        return value(working, found, figure);
    }
    let mut said = Said::default();
    let only = Asking { inputs: vec![found.clone()], ..Asking::default() };
    texts(&only, working, words, &mut said);
    // A wrong dimension is an answer too: the calculation refuses it with the reason.
    let wrong =
        || own.first().and_then(|figure| Some(Value::Quantity(Quantity::new(figure.value, figure.unit?))));
    said.values.remove(missing).or_else(wrong)
}

//! A calculation's answer as data: the figure with its inputs said back for the ear; method, source and what it rests
//! on for the screen.

use super::with;
use crate::bench::{Fact, Part};
use crate::quantity::{PressureBasis, Quantity, Unit, figures};
use crate::rulebase::talk::Asking;
use crate::workings::convert::nearest_fraction;
use crate::workings::registry::{Answer, More, Refusal, Told, Worked, Working};
use std::collections::BTreeMap;

/// Where inputs were found that were not said.
#[derive(Debug, Clone, Default)]
pub struct Rest {
    /// Place by input.
    pub places: BTreeMap<String, String>,
    /// What is told of inputs that were nowhere found.
    pub lacking: Vec<String>,
}

/// The basis of a pressure in a word.
#[must_use]
pub const fn basis(basis: PressureBasis) -> &'static str {
    match basis {
        PressureBasis::Gauge => "gauge",
        PressureBasis::Absolute => "abs",
    }
}

/// One answer, or one a way of asking.
#[must_use]
pub fn answer(asking: &Asking, worked: &[Worked], rest: &Rest) -> Part {
    let split: Vec<&str> = asking.each.keys().map(String::as_str).collect();
    let told: Vec<Worked> = worked.iter().map(|one| rounded(asking, one)).collect();
    let figures = told.iter().map(|one| figure(asking, one, &split)).collect();
    let inputs = told.first().map(|one| with::sentences(asking, one, rest, &split)).unwrap_or_default();
    let cautions: Vec<String> = worked.iter().flat_map(spoken_cautions).take(2).collect();
    let notes = rest.lacking.iter().chain(&asking.note).cloned();
    let sentences = [figures, inputs, notes.clone().collect(), cautions];
    let say: Vec<String> =
        sentences.into_iter().flatten().filter(|text| !text.is_empty()).map(|text| sentence(&text)).collect();
    Part::Fact(Fact::Worked {
        name: asking.ask.replace('-', " "),
        say: say.join(" "),
        show: shown(&told, rest, &split).into_iter().chain(notes).collect(),
        worked: worked.to_vec(),
    })
}

/// A conversion's answer: both figures in one breath.
#[must_use]
pub fn converted(value: Quantity, worked: &Worked) -> Part {
    let fraction = worked.more.iter().find_map(|more| match (&more.value, worked.quantity()) {
        (Answer::Text(text), Some(inches)) if !text.is_empty() => {
            Some(format!(" ({})", nearest(text, inches)))
        }
        _ => None,
    });
    let mut show = vec![format!("{} = {}{}", value.show(), worked.show(), fraction.unwrap_or_default())];
    show.push(format!("source: {}", worked.source));
    Part::Fact(Fact::Worked {
        name: "convert".to_owned(),
        say: format!("{} is {}", value.say(), worked.say()),
        show,
        worked: vec![worked.clone()],
    })
}

/// A fraction of an inch with how far it is off: it is no more than the nearest that there is.
fn nearest(fraction: &str, inches: Quantity) -> String {
    let (_, _, _, off) = nearest_fraction(inches.value);
    let off = off * 25.4;
    if off.abs() < EXACT {
        return fraction.to_owned();
    }
    let side = if off > 0.0 { "more" } else { "less" };
    format!("the nearest 64th is {fraction}, {} {side}", Quantity::new(off.abs(), Unit::Millimetre).show())
}

/// Below this a fraction of an inch is told as it stands, mm: no caliper of the bench shows it.
const EXACT: f64 = 0.005;

/// The answer in the steps of the bench, for ear and screen alike; for other programs it stays exact.
fn rounded(asking: &Asking, worked: &Worked) -> Worked {
    let mut told = worked.clone();
    if let (Answer::Number(value), Some(step)) = (&worked.value, asking.step) {
        // 0.1 has no exact double, and 79 x 0.1 shows it: a part is divided by what it is a part of.
        let steps = (value / step).round();
        told.value = Answer::Number(if step < 1.0 { steps / (1.0 / step).round() } else { steps * step });
    }
    told
}

fn figure(asking: &Asking, worked: &Worked, split: &[&str]) -> String {
    let way = worked.inputs.iter().filter(|told| split.contains(&told.name)).map(|told| match &told.value {
        Answer::Text(text) => format!("same {text}: "),
        _ => String::new(),
    });
    let lead = asking.say.as_ref().filter(|_| split.is_empty());
    let also = worked.more.iter().filter(|more| asking.also.iter().any(|name| name == more.name));
    let also: String = also.map(|more| format!(", {}", say(&more.value, more.unit))).collect();
    let lead = lead.map(|lead| format!("{lead} ")).unwrap_or_default();
    format!("{}{lead}{}{also}", way.collect::<String>(), said(worked))
}

fn said(worked: &Worked) -> String {
    match worked.quantity() {
        // A ratio has no unit to be said with.
        Some(quantity) if quantity.unit == crate::quantity::Unit::One => {
            figures::words(crate::quantity::bench_figures(quantity.value))
        }
        Some(quantity) if quantity.unit == crate::quantity::Unit::Turn => figures::flats(quantity.value),
        _ => worked.say(),
    }
}

/// What an input is called.
#[must_use]
pub fn called(asking: &Asking, told: &Told) -> String {
    let own = asking.input(told.name).and_then(|found| found.called.clone());
    own.unwrap_or_else(|| told.what.split([',', ':']).next().unwrap_or(told.name).to_owned())
}

/// A value for the ear.
#[must_use]
pub fn say(value: &Answer, unit: Option<crate::quantity::Unit>) -> String {
    match (value, unit) {
        (Answer::Number(value), Some(crate::quantity::Unit::Turn)) => figures::flats(*value),
        (
            Answer::Number(value),
            Some(crate::quantity::Unit::One | crate::quantity::Unit::PositionStep) | None,
        ) => figures::words(crate::quantity::bench_figures(*value)),
        (Answer::Number(value), Some(unit)) => Quantity::new(*value, unit).say(),
        (Answer::Text(text), _) => text.clone(),
        (Answer::List(values), unit) => {
            let each = |value: &f64| figures::words(crate::quantity::bench_figures(*value));
            let by = if values.len() == 2 { " to " } else { ", " };
            let unit = unit.map_or("", |unit| unit.words(2.0));
            format!("{} {unit}", values.iter().map(each).collect::<Vec<_>>().join(by)).trim_end().to_owned()
        }
        (Answer::Nothing, _) => "none".to_owned(),
    }
}

/// A caution that this very calculation brought, not one that always stands.
fn spoken_cautions(worked: &Worked) -> Vec<String> {
    let always = crate::workings::registry::find(worked.name).map(|working| working.cautions.clone());
    let always = always.unwrap_or_default();
    worked.cautions.iter().filter(|caution| !always.contains(&caution.as_str())).cloned().collect()
}

fn sentence(text: &str) -> String {
    let mut chars = text.chars();
    let first: String = chars.next().into_iter().flat_map(char::to_uppercase).collect();
    let rest = chars.as_str().trim_end_matches(['.', ' ']);
    format!("{first}{rest}.")
}

/// On the screen: the figure, one line for each way of asking, then each input once with where it is from, method and
/// source once, and what is to be minded this time.
fn shown(worked: &[Worked], rest: &Rest, split: &[&str]) -> Vec<String> {
    let mut lines: Vec<String> = worked.iter().map(|one| head(one, split)).collect();
    if let [one] = worked {
        lines.extend(one.more.iter().map(|more| format!("{}: {}", more.name, shown_more(more))));
    }
    let inputs = worked.iter().take(1).flat_map(|one| &one.inputs);
    let inputs = inputs.filter(|told| !is_nothing(told) && !split.contains(&told.name));
    lines.extend(inputs.map(|told| {
        let usual = if told.usual { "usual value" } else { "said" };
        let from = rest.places.get(told.name).map_or(usual, String::as_str);
        let what = told.what.split(['(', ';']).next().unwrap_or(told.what).trim_end();
        format!("{what}: {} ({from})", shown_value(&told.value, told.unit))
    }));
    if let Some(one) = worked.first() {
        lines.extend([format!("method: {}", one.method), format!("source: {}", one.source)]);
    }
    let mut cautions: Vec<String> = worked.iter().flat_map(|one| one.cautions.clone()).collect();
    cautions.dedup();
    lines.extend(cautions.iter().map(|caution| format!("mind: {caution}")));
    lines
}

/// A usual value that changes nothing: a text, or nought.
fn is_nothing(told: &Told) -> bool {
    let nought = matches!(told.value, Answer::Number(value) if value == 0.0);
    told.usual && (nought || matches!(told.value, Answer::Text(_) | Answer::Nothing))
}

/// The figure of one way of asking: alone, or with its way and its other figures in the same line.
fn head(worked: &Worked, split: &[&str]) -> String {
    let way: Vec<String> = worked
        .inputs
        .iter()
        .filter(|told| split.contains(&told.name))
        .map(|told| shown_value(&told.value, told.unit))
        .collect();
    if way.is_empty() {
        return format!("{} = {}", worked.name, worked.show());
    }
    let more = worked.more.iter().map(|more| format!(", {} {}", more.name, shown_more(more)));
    format!("same {}: {}{}", way.join(", "), worked.show(), more.collect::<String>())
}

fn shown_more(more: &More) -> String {
    shown_value(&more.value, more.unit)
}

fn shown_value(value: &Answer, unit: Option<crate::quantity::Unit>) -> String {
    let rounded = |value: f64| crate::quantity::bench_figures(value).to_string();
    match (value, unit) {
        (Answer::Number(value), Some(unit)) if unit != crate::quantity::Unit::One => {
            Quantity::new(*value, unit).show()
        }
        (Answer::Number(value), _) => rounded(*value),
        (Answer::Text(text), _) => text.clone(),
        (Answer::List(values), unit) => {
            let values: Vec<String> = values.iter().map(|value| rounded(*value)).collect();
            format!("{} {}", values.join(", "), unit.map_or("", crate::quantity::Unit::name))
                .trim_end()
                .to_owned()
        }
        (Answer::Nothing, _) => "none".to_owned(),
    }
}

/// Why it was not worked out, in words: inputs by what they are called.
#[must_use]
pub fn reason(asking: &Asking, working: &Working, refusal: &Refusal) -> String {
    let name = |input: &str| {
        let own = asking.input(input).and_then(|found| found.called.clone());
        let what = || {
            working
                .input(input)
                .map(|input| input.what.split([',', ':']).next().unwrap_or(input.what).to_owned())
        };
        own.or_else(what).unwrap_or_else(|| input.to_owned())
    };
    match refusal {
        Refusal::WrongDimension { input, found, wanted } => {
            let dimension = |unit: &crate::quantity::Unit| unit.dimension().words();
            format!(
                "the {} is {}, and {} is {}",
                name(input),
                dimension(wanted),
                found.words(2.0),
                dimension(found)
            )
        }
        Refusal::Unreadable { input, reason } | Refusal::Impossible { input: Some(input), reason } => {
            let name = name(input);
            if reason.contains(&name) { reason.clone() } else { format!("the {name}: {reason}") }
        }
        Refusal::Impossible { input: None, reason } => reason.clone(),
        other => other.to_string(),
    }
}

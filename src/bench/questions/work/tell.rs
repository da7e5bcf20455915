//! A calculation's answer as data: the figure with its inputs said back for the ear; method, source and what it rests
//! on for the screen.

use crate::bench::{Fact, Part};
use crate::quantity::{PressureBasis, Quantity, figures};
use crate::rulebase::talk::Asking;
use crate::workings::registry::{Answer, Refusal, Told, Worked, Working};
use std::collections::BTreeMap;

/// Where inputs were found that were not said.
#[derive(Debug, Clone, Default)]
pub struct Rest {
    /// Place by input.
    pub places: BTreeMap<String, String>,
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
    let figures: Vec<String> = worked.iter().map(|one| figure(asking, one, &split)).collect();
    let inputs = worked.first().map(|one| inputs(asking, one, rest, &split)).unwrap_or_default();
    let cautions: Vec<String> = worked.iter().flat_map(spoken_cautions).take(2).collect();
    let sentences =
        [vec![figures.join("; ")], vec![inputs], asking.note.clone().into_iter().collect(), cautions];
    let say: Vec<String> =
        sentences.into_iter().flatten().filter(|text| !text.is_empty()).map(|text| sentence(&text)).collect();
    Part::Fact(Fact::Worked {
        name: asking.ask.replace('-', " "),
        say: say.join(" "),
        show: worked.iter().flat_map(|one| shown(one, rest)).collect(),
        worked: worked.to_vec(),
    })
}

/// A conversion's answer: both figures in one breath.
#[must_use]
pub fn converted(value: Quantity, worked: &Worked) -> Part {
    let fraction = worked.more.iter().find_map(|more| match &more.value {
        Answer::Text(text) if !text.is_empty() => Some(format!(" ({text})")),
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
        _ => worked.say(),
    }
}

/// The inputs said back: what was given and found, not the usual values.
fn inputs(asking: &Asking, worked: &Worked, rest: &Rest, split: &[&str]) -> String {
    let own = worked.inputs.iter().filter(|told| !told.usual && !split.contains(&told.name));
    // What only its own words give and the card gave goes without saying; it is on the screen.
    let quiet = |told: &&Told| {
        let found = rest.places.get(told.name).is_some_and(|place| !place.starts_with("assumed"));
        asking.with.contains_key(told.name)
            || found && asking.input(told.name).is_some_and(|found| found.strict)
    };
    let place = |told: &Told| asking.inputs.iter().position(|found| found.input == told.name);
    let mut own: Vec<&Told> = own.filter(|told| !quiet(told)).collect();
    own.sort_by_key(|told| place(told));
    let tool = |told: &Told| rest.places.get(told.name).filter(|place| !place.ends_with("card")).cloned();
    let texts: Vec<String> = own
        .into_iter()
        .map(|told| {
            let from = tool(told).map(|tool| format!(" ({tool})")).unwrap_or_default();
            format!("{} {}{from}", called(asking, told), say(&told.value, told.unit))
        })
        .collect();
    if texts.is_empty() { String::new() } else { format!("With {}", texts.join(", ")) }
}

fn called(asking: &Asking, told: &Told) -> String {
    let own = asking.input(told.name).and_then(|found| found.called.clone());
    own.unwrap_or_else(|| told.what.split([',', ':']).next().unwrap_or(told.name).to_owned())
}

fn say(value: &Answer, unit: Option<crate::quantity::Unit>) -> String {
    match (value, unit) {
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

/// Everything on the screen: the figure, each input with where it is from, method, source, cautions.
fn shown(worked: &Worked, rest: &Rest) -> Vec<String> {
    let mut lines = vec![format!("{} = {}", worked.name, worked.show())];
    lines.extend(worked.inputs.iter().map(|told| {
        let from = match (told.usual, rest.places.get(told.name)) {
            (true, _) => "usual value",
            (false, Some(place)) => place,
            (false, None) => "said",
        };
        format!("{}: {} ({from})", told.what, shown_value(&told.value, told.unit))
    }));
    lines.extend(
        worked.more.iter().map(|more| format!("{}: {}", more.name, shown_value(&more.value, more.unit))),
    );
    lines.push(format!("method: {}", worked.method));
    lines.push(format!("source: {}", worked.source));
    lines.extend(worked.cautions.iter().map(|caution| format!("mind: {caution}")));
    lines
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
        Refusal::Unreadable { input, reason } => format!("the {}: {reason}", name(input)),
        Refusal::Impossible { input: Some(input), reason } => format!("the {}: {reason}", name(input)),
        Refusal::Impossible { input: None, reason } => reason.clone(),
        other => other.to_string(),
    }
}

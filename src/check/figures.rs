//! The figures of a sentence, with what they are figures of.

use crate::quantity::figures::read_number;
use crate::quantity::{Quantity, Unit};

/// Every number with the words behind it.
fn numbers(text: &str) -> Vec<(f64, Vec<String>)> {
    let all: Vec<String> = text
        .split_whitespace()
        .map(|word| word.trim_matches([',', ';', '(', ')', '"', ':', '?']).to_lowercase())
        .collect();
    let plain: Vec<&str> = all.iter().map(|word| word.trim_end_matches('.')).collect();
    let (mut out, mut at) = (Vec::new(), 0);
    while let Some(rest) = plain.get(at..).filter(|rest| !rest.is_empty()) {
        match read_number(rest).into_iter().next().filter(|found| found.len > 0 && starts_number(rest)) {
            Some(found) => {
                at += found.len;
                let behind =
                    plain.get(at..).unwrap_or_default().iter().take(2).map(|word| (*word).to_owned());
                out.push((found.value, behind.collect()));
            }
            None => at += 1,
        }
    }
    out
}

/// "a" and "about" may begin a spoken number; alone they are none.
fn starts_number(rest: &[&str]) -> bool {
    !matches!(
        rest.first(),
        Some(
            &("a"
                | "an"
                | "about"
                | "one"
                | "point"
                | "o"
                | "oh"
                | "nearly"
                | "around"
                | "almost"
                | "roughly")
        )
    ) || rest.first() == Some(&"one")
}

/// The numbers of a text.
pub fn numbers_in(text: &str) -> Vec<f64> {
    numbers(text).into_iter().map(|(value, _)| value).collect()
}

/// The torques of a text, N.m.
pub fn torques_in(text: &str) -> Vec<f64> {
    let torque = |behind: &[String]| match behind {
        [first, second, ..] if first.starts_with("newton") && second.starts_with("met") => true,
        [first, ..] => matches!(first.as_str(), "n.m" | "nm" | "newton-metres"),
        [] => false,
    };
    numbers(text).into_iter().filter(|(_, behind)| torque(behind)).map(|(value, _)| value).collect()
}

/// The counts of clicks of a text.
pub fn clicks_in(text: &str) -> Vec<f64> {
    let clicks = |behind: &[String]| behind.first().is_some_and(|word| word.starts_with("click"));
    numbers(text).into_iter().filter(|(_, behind)| clicks(behind)).map(|(value, _)| value).collect()
}

/// The figures of a text with their units: spoken ones ("fourteen bar") and written ones ("14 bar").
pub fn figures_in(text: &str) -> Vec<Quantity> {
    // Most sentences have none: no number is looked for where no unit stands.
    if !text
        .split_whitespace()
        .any(|word| unit_of(word.trim_matches(|c: char| !c.is_alphanumeric())).is_some())
    {
        return Vec::new();
    }
    let unit = |behind: &[String]| behind.first().and_then(|word| unit_of(word));
    numbers(text)
        .into_iter()
        .filter_map(|(value, behind)| Some(Quantity::new(value, unit(&behind)?)))
        .collect()
}

/// The unit that a word stands for, among those that pass between people at a bench.
fn unit_of(word: &str) -> Option<Unit> {
    Some(match word.trim_end_matches('s') {
        "millimetre" | "millimeter" | "mm" | "mil" => Unit::Millimetre,
        "millilitre" | "milliliter" | "ml" | "cc" | "cm3" => Unit::Millilitre,
        "litre" | "liter" | "l" => Unit::Litre,
        "bar" => Unit::Bar,
        "minute" | "min" => Unit::Minute,
        "second" | "sec" => Unit::Second,
        "hour" | "h" => Unit::Hour,
        _ => return None,
    })
}

/// The bores of a text, mm.
pub fn bores_in(text: &str) -> Vec<f64> {
    let bore = |behind: &[String]| matches!(behind, [mm, bore] if (mm == "mm" || mm.starts_with("millimet")) && bore == "bore");
    numbers(text).into_iter().filter(|(_, behind)| bore(behind)).map(|(value, _)| value).collect()
}

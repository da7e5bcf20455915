//! Calls a working: what is given is read, checked and put into its units; then it runs.

use std::collections::BTreeMap;

use super::super::convert::ATMOSPHERE_BAR;
use super::{Answer, Done, Given, Input, Refusal, Takes, Told, Value, Worked, Working, all, find};
use crate::quantity::{PressureBasis, Quantity, QuantityError, Unit};

/// Inputs that every working takes: another unit for the answer, another output as the answer.
const AS: &str = "as";
const WANT: &str = "want";

/// Calls a working with texts, as a command line gives them.
///
/// # Errors
/// [`Refusal`]: unknown names, missing inputs, wrong dimensions, values that cannot be.
pub fn call_text(name: &str, given: &BTreeMap<String, String>) -> Result<Worked, Refusal> {
    let given = given.iter().map(|(key, text)| (key.clone(), Value::Text(text.clone()))).collect();
    call(name, &given)
}

/// Calls a working. A text is read as its input takes it. Every working also takes `as` (a unit for the answer) and
/// `want` (the name of another of its outputs).
///
/// # Errors
/// [`Refusal`]: unknown names, missing inputs, wrong dimensions, values that cannot be.
pub fn call(name: &str, values: &BTreeMap<String, Value>) -> Result<Worked, Refusal> {
    let working = find(name).ok_or_else(|| no_such_working(name))?;
    let given = take(working, values)?;
    if let Some(missing) = working.inputs.iter().find(|input| input.required && !has(&given, input)) {
        return Err(given.missing(missing.name));
    }
    let mut done = (working.run)(&given)?;
    if let Some(want) = text_of(values, WANT) {
        done = wanted(done, working, want)?;
    }
    if let Some(unit) = text_of(values, AS) {
        convert_answer(&mut done, unit)?;
    }
    finite(&done)?;
    Ok(put_together(working, given, done))
}

fn no_such_working(name: &str) -> Refusal {
    let near = all()
        .iter()
        .map(|working| (strsim::normalized_levenshtein(working.name, name), working.name))
        .filter(|(near, _)| *near > 0.5)
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, name)| name.to_owned());
    Refusal::NoSuchWorking { name: name.to_owned(), near }
}

fn text_of<'a>(values: &'a BTreeMap<String, Value>, key: &str) -> Option<&'a str> {
    match values.get(key) {
        Some(Value::Text(text)) => Some(text),
        _ => None,
    }
}

fn has(given: &Given, input: &Input) -> bool {
    given.numbers.contains_key(input.name) || given.texts.contains_key(input.name)
}

/// Reads and checks everything given, then lets usual values stand for what is not.
fn take(working: &'static Working, values: &BTreeMap<String, Value>) -> Result<Given, Refusal> {
    let mut given = Given {
        working,
        numbers: BTreeMap::new(),
        texts: BTreeMap::new(),
        units: BTreeMap::new(),
        bases: BTreeMap::new(),
        told: Vec::new(),
    };
    for (key, value) in values {
        if key == AS || key == WANT {
            continue;
        }
        let (input, unit) = input_of(working, key)?;
        if has(&given, input) {
            return Err(Refusal::unreadable(input.name, "given twice, under two names"));
        }
        take_one(&mut given, input, value, unit)?;
    }
    for input in &working.inputs {
        if !has(&given, input) {
            let told = if let Some(usual) = input.usual {
                given.numbers.insert(input.name, usual);
                Some(Answer::Number(usual))
            } else if let Some(usual) = input.usual_text {
                given.texts.insert(input.name, usual.to_owned());
                Some(Answer::Text(usual.to_owned()))
            } else {
                None
            };
            given.told.extend(told.map(|value| tell(input, value, input.unit(), true)));
        }
    }
    Ok(given)
}

fn tell(input: &Input, value: Answer, unit: Option<Unit>, usual: bool) -> Told {
    Told { name: input.name, what: input.what, value, unit, usual }
}

/// The input of a key. A key may carry its unit (`F_N`, `k_N_m`), which then stands for a bare number.
fn input_of(working: &'static Working, key: &str) -> Result<(&'static Input, Option<Unit>), Refusal> {
    if let Some(input) = working.input(key) {
        return Ok((input, None));
    }
    for (at, _) in key.match_indices('_') {
        let (Some(head), Some(tail)) = (key.get(..at), key.get(at + 1..)) else { continue };
        let unit = unit_of_suffix(tail);
        if let (Some(input), Some(unit)) = (working.input(head), unit) {
            return Ok((input, Some(unit)));
        }
    }
    let lower = key.to_lowercase();
    let mut same = working.inputs.iter().filter(|input| input.name.to_lowercase() == lower);
    match (same.next(), same.next()) {
        (Some(input), None) => Ok((input, None)),
        _ => Err(Refusal::NoSuchInput {
            working: working.name.to_owned(),
            input: key.to_owned(),
            takes: working.inputs.iter().map(|input| input.name.to_owned()).collect(),
        }),
    }
}

/// `N_m` is N/m in a key, as no key can hold a stroke; `Nm` is the torque.
fn unit_of_suffix(tail: &str) -> Option<Unit> {
    Unit::parse(&tail.replacen('_', "/", 1)).or_else(|| Unit::parse(tail))
}

fn take_one(
    given: &mut Given,
    input: &'static Input,
    value: &Value,
    unit: Option<Unit>,
) -> Result<(), Refusal> {
    match input.takes {
        Takes::Text(choices) => take_text(given, input, value, choices),
        Takes::Any => {
            let (quantity, basis) = quantity_of(input, value, unit)?;
            store(given, input, quantity, quantity.value, basis);
            Ok(())
        }
        Takes::Pressure(wanted) => {
            let (quantity, basis) = quantity_of(input, value, unit)?;
            let bar = in_unit(input, quantity, Unit::Bar)?;
            let found = basis.unwrap_or(PressureBasis::Gauge);
            let bar = shift(bar, found, wanted);
            if shift(bar, wanted, PressureBasis::Absolute) <= 0.0 {
                return Err(Refusal::impossible(input.name, "no pressure lies below a vacuum"));
            }
            store(given, input, quantity, bar, Some(found));
            Ok(())
        }
        Takes::Quantity { unit: own, least, most, open } => {
            let (quantity, _) = quantity_of(input, value, unit)?;
            let number = in_unit(input, quantity, own)?;
            if number < least || number > most || (open && number <= least) {
                return Err(Refusal::impossible(input.name, out_of_range(quantity, own, least, most, open)));
            }
            store(given, input, quantity, number, None);
            Ok(())
        }
    }
}

fn out_of_range(found: Quantity, own: Unit, least: f64, most: f64, open: bool) -> String {
    let shown = |value: f64| Quantity::new(value, own).show();
    match (least, most) {
        _ if open => format!("{} cannot be; it has to be above {}", found.show(), shown(least)),
        (least, f64::MAX) => format!("{} cannot be; it has to be at least {}", found.show(), shown(least)),
        (least, most) => {
            format!("{} cannot be; it lies between {} and {}", found.show(), shown(least), shown(most))
        }
    }
}

fn shift(bar: f64, from: PressureBasis, to: PressureBasis) -> f64 {
    match (from, to) {
        (PressureBasis::Gauge, PressureBasis::Absolute) => bar + ATMOSPHERE_BAR,
        (PressureBasis::Absolute, PressureBasis::Gauge) => bar - ATMOSPHERE_BAR,
        _ => bar,
    }
}

fn store(
    given: &mut Given,
    input: &'static Input,
    quantity: Quantity,
    number: f64,
    basis: Option<PressureBasis>,
) {
    given.numbers.insert(input.name, number);
    given.units.insert(input.name, quantity.unit);
    given.bases.extend(basis.map(|basis| (input.name, basis)));
    given.told.push(tell(input, Answer::Number(quantity.value), Some(quantity.unit), false));
}

fn in_unit(input: &Input, quantity: Quantity, unit: Unit) -> Result<f64, Refusal> {
    quantity.in_unit(unit).map_err(|mismatch| Refusal::WrongDimension {
        input: input.name.to_owned(),
        found: mismatch.found,
        wanted: mismatch.wanted,
    })
}

fn take_text(
    given: &mut Given,
    input: &'static Input,
    value: &Value,
    choices: &'static [&'static str],
) -> Result<(), Refusal> {
    let text = match value {
        Value::Text(text) => text.trim().to_owned(),
        Value::Quantity(quantity) | Value::Pressure(quantity, _) => quantity.show(),
    };
    let lower = text.to_lowercase().replace(['_', ' '], "-");
    let chosen = choices.iter().find(|choice| choice.to_lowercase().replace(['_', ' '], "-") == lower);
    let text = match chosen {
        Some(choice) => (*choice).to_owned(),
        None if choices.is_empty() && !text.is_empty() => text,
        None => {
            let reason = format!("found `{text}`; it takes one of {}", choices.join(", "));
            return Err(Refusal::unreadable(input.name, reason));
        }
    };
    let shown = if input.file { format!("a file of {} lines", text.lines().count()) } else { text.clone() };
    given.told.push(tell(input, Answer::Text(shown), None, false));
    given.texts.insert(input.name, text);
    Ok(())
}

/// The quantity of a value, with its basis where it says one.
fn quantity_of(
    input: &Input,
    value: &Value,
    unit: Option<Unit>,
) -> Result<(Quantity, Option<PressureBasis>), Refusal> {
    let text = match value {
        Value::Quantity(quantity) => return sound(input, *quantity).map(|quantity| (quantity, None)),
        Value::Pressure(quantity, basis) => {
            return sound(input, *quantity).map(|quantity| (quantity, Some(*basis)));
        }
        Value::Text(text) => text.trim(),
    };
    let (text, basis) = super::super::convert::split_basis(text);
    let bare = match (unit, input.takes) {
        (Some(unit), _) => Some(unit),
        (None, Takes::Quantity { unit: unit @ (Unit::One | Unit::Percent), .. }) => Some(unit),
        _ => None,
    };
    match (Quantity::parse(text), bare) {
        (Ok(quantity), _) => Ok((quantity, basis)),
        (Err(QuantityError::NoUnit { found }), Some(unit)) => {
            let quantity = Quantity::parse(&format!("{found} {unit}"));
            quantity
                .map(|quantity| (quantity, basis))
                .map_err(|error| Refusal::unreadable(input.name, error.to_string()))
        }
        (Err(QuantityError::NoUnit { found }), None) => {
            Err(Refusal::unreadable(input.name, no_unit(input, &found)))
        }
        (Err(error), _) => Err(Refusal::unreadable(input.name, error.to_string())),
    }
}

/// A number without a unit is a guess; the way to mend it names a unit that fits.
fn no_unit(input: &Input, found: &str) -> String {
    let unit = input.unit().unwrap_or(Unit::Millimetre);
    format!("found `{found}` with no unit; write the unit after it, such as `{found} {unit}`")
}

fn sound(input: &Input, quantity: Quantity) -> Result<Quantity, Refusal> {
    if quantity.value.is_finite() {
        return Ok(quantity);
    }
    Err(Refusal::unreadable(input.name, "the value is not a finite number"))
}

/// Makes another output the answer.
fn wanted(mut done: Done, working: &Working, want: &str) -> Result<Done, Refusal> {
    if working.outputs.first().is_some_and(|(name, _)| *name == want) {
        return Ok(done);
    }
    let Some(at) = done.more.iter().position(|more| more.name == want) else {
        let names: Vec<&str> = working.outputs.iter().map(|(name, _)| *name).collect();
        return Err(Refusal::unreadable(WANT, format!("found `{want}`; this gives {}", names.join(", "))));
    };
    let more = done.more.swap_remove(at);
    (done.value, done.unit) = (more.value, more.unit);
    Ok(done)
}

/// Puts the answer into another unit of its dimension.
fn convert_answer(done: &mut Done, text: &str) -> Result<(), Refusal> {
    let unit = Unit::parse(text).ok_or_else(|| Refusal::unreadable(AS, format!("unknown unit `{text}`")))?;
    let Some(from) = done.unit else { return Ok(()) };
    let to = |value: f64| {
        from.convert(value, unit).map_err(|mismatch| Refusal::WrongDimension {
            input: AS.to_owned(),
            found: mismatch.wanted,
            wanted: mismatch.found,
        })
    };
    done.value = match &done.value {
        Answer::Number(value) => Answer::Number(to(*value)?),
        Answer::List(values) => {
            Answer::List(values.iter().map(|value| to(*value)).collect::<Result<_, _>>()?)
        }
        other => other.clone(),
    };
    done.unit = Some(unit);
    Ok(())
}

/// No working may hand back a figure that is none.
fn finite(done: &Done) -> Result<(), Refusal> {
    let sound = |answer: &Answer| match answer {
        Answer::Number(value) => value.is_finite(),
        Answer::List(values) => values.iter().all(|value| value.is_finite()),
        Answer::Text(_) | Answer::Nothing => true,
    };
    if sound(&done.value) && done.more.iter().all(|more| sound(&more.value)) {
        return Ok(());
    }
    Err(Refusal::cannot("these values have no answer together: the figure runs out of all bounds"))
}

fn put_together(working: &'static Working, given: Given, done: Done) -> Worked {
    let mut cautions: Vec<String> = working.cautions.iter().map(|caution| (*caution).to_owned()).collect();
    cautions.extend(done.cautions);
    Worked {
        name: working.name,
        kind: working.kind,
        value: done.value,
        unit: done.unit,
        inputs: given.told,
        method: done.method.unwrap_or_else(|| working.method.to_owned()),
        source: working.source,
        cautions,
        more: done.more,
    }
}

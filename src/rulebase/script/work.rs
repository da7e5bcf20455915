//! Every calculation, callable from a script: `work("coil-bind", #{free: "200 mm", preload: 10.0, ...})`.

use super::fault::NotKnown;
use crate::quantity::Quantity;
use crate::workings::registry::{self, Answer, Refusal, Value, Working};
use rhai::{Dynamic, Engine, EvalAltResult, ImmutableString as Text, Map, Position};
use std::collections::BTreeMap;

type Result<T> = std::result::Result<T, Box<EvalAltResult>>;

/// Gives `work` its body.
pub(super) fn register(engine: &mut Engine) {
    engine.register_fn("work", |name: Text, given: Map| work(&name, given));
}

/// The answer: a number in the calculation's own unit, a text, or a list.
fn work(name: &str, given: Map) -> Result<Dynamic> {
    let working = registry::find(name).ok_or_else(|| broken(format!("no calculation is called `{name}`")))?;
    let mut values = BTreeMap::new();
    for (key, value) in given {
        let value = read(working, &key, value)?;
        values.insert(key.to_string(), value);
    }
    match registry::call(name, &values) {
        Ok(worked) => Ok(handed(worked.value)),
        // Values that cannot be are the job's: the script is right, and fails only on them.
        Err(refusal @ (Refusal::Missing { .. } | Refusal::Impossible { .. })) => {
            Err(missing(refusal.to_string()))
        }
        Err(refusal) => Err(broken(refusal.to_string())),
    }
}

/// A text is read with its unit; a number is in the unit that the calculation counts in.
fn read(working: &Working, key: &str, value: Dynamic) -> Result<Value> {
    if let Some(text) = value.clone().try_cast::<Text>() {
        return Ok(Value::Text(text.to_string()));
    }
    let number = value.as_float().or_else(|_| value.as_int().map(|whole| whole as f64));
    let number = number.map_err(|kind| broken(format!("`{key}` is a {kind}; give a number or a text")))?;
    match working.input(key).and_then(registry::Input::unit) {
        Some(unit) => Ok(Value::Quantity(Quantity::new(number, unit))),
        None => Ok(Value::Text(number.to_string())),
    }
}

fn handed(answer: Answer) -> Dynamic {
    match answer {
        Answer::Number(value) => value.into(),
        Answer::Text(text) => text.into(),
        Answer::List(values) => values.into_iter().map(Dynamic::from).collect::<Vec<_>>().into(),
        Answer::Nothing => Dynamic::UNIT,
    }
}

fn missing(found: String) -> Box<EvalAltResult> {
    Box::new(EvalAltResult::ErrorRuntime(Dynamic::from(NotKnown(found)), Position::NONE))
}

fn broken(found: String) -> Box<EvalAltResult> {
    Box::new(EvalAltResult::ErrorRuntime(found.into(), Position::NONE))
}

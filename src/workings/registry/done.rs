//! What a working gives back: the figure, and everything that it rests on.

use serde::Serialize;

use super::Kind;
use crate::quantity::{Quantity, Unit, bench_figures};

/// An answer's value. Exact: rounding is for the screen.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(untagged)]
pub enum Answer {
    /// One figure.
    Number(f64),
    /// Several figures in a stated order, such as least and most.
    List(Vec<f64>),
    /// A verdict or a name.
    Text(String),
    /// There is no such figure (a viscosity index below its range).
    Nothing,
}

/// One more output.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct More {
    /// Its name.
    pub name: &'static str,
    /// Its value.
    pub value: Answer,
    /// Its unit, where it has one.
    pub unit: Option<Unit>,
}

/// One input as it was used.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Told {
    /// Its name.
    pub name: &'static str,
    /// What it is.
    pub what: &'static str,
    /// Its value as given.
    pub value: Answer,
    /// Its unit as given.
    pub unit: Option<Unit>,
    /// Whether it was not given, and the usual value stands.
    pub usual: bool,
}

/// What a working hands back before its inputs, method and source are put to it.
#[derive(Debug)]
pub struct Done {
    pub(super) value: Answer,
    pub(super) unit: Option<Unit>,
    pub(super) more: Vec<More>,
    pub(super) cautions: Vec<String>,
    pub(super) method: Option<String>,
}

impl Done {
    fn new(value: Answer, unit: Option<Unit>) -> Self {
        Self { value, unit, more: Vec::new(), cautions: Vec::new(), method: None }
    }

    /// A figure.
    pub(in crate::workings) fn of(value: f64, unit: Unit) -> Self {
        Self::new(Answer::Number(value), Some(unit))
    }

    /// Several figures.
    pub(in crate::workings) fn list(values: Vec<f64>, unit: Unit) -> Self {
        Self::new(Answer::List(values), Some(unit))
    }

    /// A text.
    pub(in crate::workings) fn text(text: impl Into<String>) -> Self {
        Self::new(Answer::Text(text.into()), None)
    }

    /// No figure.
    pub(in crate::workings) fn nothing() -> Self {
        Self::new(Answer::Nothing, None)
    }

    /// Adds a figure.
    pub(in crate::workings) fn and(mut self, name: &'static str, value: f64, unit: Unit) -> Self {
        self.more.push(More { name, value: Answer::Number(value), unit: Some(unit) });
        self
    }

    /// Adds several figures.
    pub(in crate::workings) fn and_list(mut self, name: &'static str, values: Vec<f64>, unit: Unit) -> Self {
        self.more.push(More { name, value: Answer::List(values), unit: Some(unit) });
        self
    }

    /// Adds a text.
    pub(in crate::workings) fn and_text(mut self, name: &'static str, text: impl Into<String>) -> Self {
        self.more.push(More { name, value: Answer::Text(text.into()), unit: None });
        self
    }

    /// Adds a caution.
    pub(in crate::workings) fn caution(mut self, text: impl Into<String>) -> Self {
        self.cautions.push(text.into());
        self
    }

    /// Adds a caution if it holds.
    pub(in crate::workings) fn caution_if(self, holds: bool, text: &str) -> Self {
        if holds { self.caution(text) } else { self }
    }

    /// Says the method more exactly than the working's own line.
    pub(in crate::workings) fn by(mut self, method: impl Into<String>) -> Self {
        self.method = Some(method.into());
        self
    }
}

/// A finished calculation.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Worked {
    /// The working's name.
    pub name: &'static str,
    /// The kind of question it answers.
    pub kind: Kind,
    /// The answer, exact.
    pub value: Answer,
    /// Its unit.
    pub unit: Option<Unit>,
    /// The inputs as used.
    pub inputs: Vec<Told>,
    /// The formula.
    pub method: String,
    /// Where it is from.
    pub source: &'static str,
    /// What to mind.
    pub cautions: Vec<String>,
    /// The other outputs.
    pub more: Vec<More>,
}

impl Worked {
    /// The answer as a quantity, where it is one figure.
    #[must_use]
    pub fn quantity(&self) -> Option<Quantity> {
        match (&self.value, self.unit) {
            (Answer::Number(value), Some(unit)) => Some(Quantity::new(*value, unit)),
            _ => None,
        }
    }

    /// The answer for the screen, rounded for the bench.
    #[must_use]
    pub fn show(&self) -> String {
        show(&self.value, self.unit)
    }

    /// The answer for the ear, with the same figures.
    #[must_use]
    pub fn say(&self) -> String {
        let words = crate::quantity::figures::words;
        match (&self.value, self.unit) {
            (Answer::Number(value), Some(unit)) => unit.say(*value),
            (Answer::Number(value), None) => words(bench_figures(*value)),
            (Answer::List(values), unit) => {
                let said: Vec<String> = values.iter().map(|value| words(bench_figures(*value))).collect();
                let unit = unit.map_or("", |unit| unit.words(2.0));
                format!("{} {unit}", said.join(", ")).trim_end().to_owned()
            }
            (Answer::Text(text), _) => text.clone(),
            (Answer::Nothing, _) => "there is no such figure".to_owned(),
        }
    }
}

/// A value for the screen.
#[must_use]
pub(super) fn show(value: &Answer, unit: Option<Unit>) -> String {
    match (value, unit) {
        (Answer::Number(value), Some(unit)) => Quantity::new(*value, unit).show(),
        (Answer::Number(value), None) => bench_figures(*value).to_string(),
        (Answer::List(values), unit) => {
            let shown: Vec<String> = values.iter().map(|value| bench_figures(*value).to_string()).collect();
            let unit = unit.filter(|unit| *unit != Unit::One).map_or("", Unit::name);
            format!("{} {unit}", shown.join(", ")).trim_end().to_owned()
        }
        (Answer::Text(text), _) => text.clone(),
        (Answer::Nothing, _) => "none".to_owned(),
    }
}

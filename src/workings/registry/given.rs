//! The values that a working was given, checked and in its own units.

use std::collections::BTreeMap;

use super::{Refusal, Told, Working};
use crate::quantity::{PressureBasis, Quantity, Unit};

/// A value for an input.
#[derive(Debug, Clone, PartialEq)]
pub enum Value {
    /// A quantity; a pressure without a basis is gauge.
    Quantity(Quantity),
    /// A pressure with its basis.
    Pressure(Quantity, PressureBasis),
    /// A text, as written; also a quantity still to be read.
    Text(String),
}

impl From<Quantity> for Value {
    fn from(quantity: Quantity) -> Self {
        Self::Quantity(quantity)
    }
}

impl From<&str> for Value {
    fn from(text: &str) -> Self {
        Self::Text(text.to_owned())
    }
}

/// What a working runs on.
#[derive(Debug)]
pub struct Given {
    pub(super) working: &'static Working,
    pub(super) numbers: BTreeMap<&'static str, f64>,
    pub(super) texts: BTreeMap<&'static str, String>,
    pub(super) units: BTreeMap<&'static str, Unit>,
    pub(super) bases: BTreeMap<&'static str, PressureBasis>,
    pub(super) told: Vec<Told>,
}

impl Given {
    /// The number of an input in the working's unit.
    ///
    /// # Errors
    /// [`Refusal::Missing`] with the question that asks for it.
    pub(in crate::workings) fn n(&self, name: &str) -> Result<f64, Refusal> {
        self.maybe(name).ok_or_else(|| self.missing(name))
    }

    /// The number of an input that may be missing.
    pub(in crate::workings) fn maybe(&self, name: &str) -> Option<f64> {
        self.numbers.get(name).copied()
    }

    /// The text of an input.
    ///
    /// # Errors
    /// [`Refusal::Missing`] with the question that asks for it.
    pub(in crate::workings) fn t(&self, name: &str) -> Result<&str, Refusal> {
        self.maybe_text(name).ok_or_else(|| self.missing(name))
    }

    /// The text of an input that may be missing.
    pub(in crate::workings) fn maybe_text(&self, name: &str) -> Option<&str> {
        self.texts.get(name).map(String::as_str)
    }

    /// The unit that an input was given in, or the working's own.
    pub(in crate::workings) fn unit(&self, name: &str) -> Unit {
        let own = || self.working.input(name).and_then(super::Input::unit).unwrap_or(Unit::One);
        self.units.get(name).copied().unwrap_or_else(own)
    }

    /// The basis that a pressure was given on, where it said one.
    pub(in crate::workings) fn basis(&self, name: &str) -> Option<PressureBasis> {
        self.bases.get(name).copied()
    }

    /// The refusal that asks for an input.
    pub(in crate::workings) fn missing(&self, name: &str) -> Refusal {
        let input = self.working.input(name);
        Refusal::Missing {
            working: self.working.name.to_owned(),
            input: name.to_owned(),
            ask: input.map_or_else(|| format!("what is {name}?"), super::Input::ask),
            unit: input.and_then(super::Input::unit),
        }
    }
}

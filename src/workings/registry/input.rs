//! One input of a working: its name, what it takes, and how to ask for it.

use crate::quantity::{PressureBasis, Unit};

/// What an input takes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Takes {
    /// A quantity of this unit's dimension, within the range (in this unit, ends included).
    Quantity {
        /// The unit that the working counts in.
        unit: Unit,
        /// The least value that can be.
        least: f64,
        /// The greatest value that can be.
        most: f64,
        /// Whether the least value itself is out.
        open: bool,
    },
    /// A pressure in bar on this basis; one given without a basis is gauge, as every workshop gauge reads.
    Pressure(PressureBasis),
    /// A text; one of the choices where there are any.
    Text(&'static [&'static str]),
    /// A quantity of any dimension.
    Any,
}

/// One input.
#[derive(Debug, Clone, PartialEq)]
pub struct Input {
    /// Its name; case tells `d` from `D`.
    pub name: &'static str,
    /// Other names that are taken for it.
    pub also: &'static [&'static str],
    /// What it is, with what it is measured from.
    pub what: &'static str,
    /// What it takes.
    pub takes: Takes,
    /// Whether the working cannot do without it.
    pub required: bool,
    /// The usual value, in the working's unit.
    pub usual: Option<f64>,
    /// The usual text.
    pub usual_text: Option<&'static str>,
    /// Whether its text is a file's: a command line names the file.
    pub file: bool,
}

impl Input {
    const fn new(name: &'static str, takes: Takes, what: &'static str) -> Self {
        Self { name, also: &[], what, takes, required: true, usual: None, usual_text: None, file: false }
    }

    /// A quantity above zero.
    pub(in crate::workings) const fn of(name: &'static str, unit: Unit, what: &'static str) -> Self {
        Self::new(name, Takes::Quantity { unit, least: 0.0, most: f64::MAX, open: true }, what)
    }

    /// A plain number above zero.
    pub(in crate::workings) const fn number(name: &'static str, what: &'static str) -> Self {
        Self::of(name, Unit::One, what)
    }

    /// A temperature in degC, above absolute zero.
    pub(in crate::workings) const fn temperature(name: &'static str, what: &'static str) -> Self {
        Self::new(
            name,
            Takes::Quantity { unit: Unit::Celsius, least: -273.15, most: 2000.0, open: true },
            what,
        )
    }

    /// A pressure that the working counts above the air.
    pub(in crate::workings) const fn gauge(name: &'static str, what: &'static str) -> Self {
        Self::new(name, Takes::Pressure(PressureBasis::Gauge), what)
    }

    /// A pressure that the working counts above nothing. Without a basis it is still read as gauge.
    pub(in crate::workings) const fn absolute(name: &'static str, what: &'static str) -> Self {
        Self::new(name, Takes::Pressure(PressureBasis::Absolute), what)
    }

    /// A text.
    pub(in crate::workings) const fn text(
        name: &'static str,
        choices: &'static [&'static str],
        what: &'static str,
    ) -> Self {
        Self::new(name, Takes::Text(choices), what)
    }

    /// The text of a file.
    pub(in crate::workings) const fn file(name: &'static str, what: &'static str) -> Self {
        let mut input = Self::new(name, Takes::Text(&[]), what);
        input.file = true;
        input
    }

    /// Any quantity.
    pub(in crate::workings) const fn any(name: &'static str, what: &'static str) -> Self {
        Self::new(name, Takes::Any, what)
    }

    /// May be left out.
    pub(in crate::workings) const fn optional(mut self) -> Self {
        self.required = false;
        self
    }

    /// May be left out; then this value stands, and the answer says so.
    pub(in crate::workings) const fn usually(mut self, value: f64) -> Self {
        (self.required, self.usual) = (false, Some(value));
        self
    }

    /// May be left out; then this text stands.
    pub(in crate::workings) const fn usually_text(mut self, text: &'static str) -> Self {
        (self.required, self.usual_text) = (false, Some(text));
        self
    }

    /// Other names for it.
    pub(in crate::workings) const fn also(mut self, names: &'static [&'static str]) -> Self {
        self.also = names;
        self
    }

    /// May be from `least` to `most`, ends included.
    pub(in crate::workings) const fn between(mut self, low: f64, high: f64) -> Self {
        if let Takes::Quantity { unit, .. } = self.takes {
            self.takes = Takes::Quantity { unit, least: low, most: high, open: false };
        }
        self
    }

    /// May be zero.
    pub(in crate::workings) const fn or_zero(self) -> Self {
        self.between(0.0, f64::MAX)
    }

    /// May be below zero.
    pub(in crate::workings) const fn signed(self) -> Self {
        self.between(f64::MIN, f64::MAX)
    }

    /// The unit that the working counts in, where it has one.
    #[must_use]
    pub const fn unit(&self) -> Option<Unit> {
        match self.takes {
            Takes::Quantity { unit, .. } => Some(unit),
            Takes::Pressure(_) => Some(Unit::Bar),
            Takes::Text(_) | Takes::Any => None,
        }
    }

    /// What it takes, in words for the list.
    #[must_use]
    pub fn dimension_words(&self) -> String {
        match self.takes {
            Takes::Quantity { unit: Unit::One, .. } => "a plain number".to_owned(),
            Takes::Quantity { unit, .. } => format!("{} ({unit})", unit.dimension()),
            Takes::Pressure(PressureBasis::Gauge) => "a pressure (bar; gauge unless it says abs)".to_owned(),
            Takes::Pressure(PressureBasis::Absolute) => {
                "a pressure (bar; gauge unless it says abs, counted as absolute)".to_owned()
            }
            Takes::Text(_) if self.file => "a file".to_owned(),
            Takes::Text([]) => "a text".to_owned(),
            Takes::Text(choices) => format!("one of: {}", choices.join(", ")),
            Takes::Any => "a value with its unit".to_owned(),
        }
    }

    /// The question that asks for it.
    #[must_use]
    pub fn ask(&self) -> String {
        match self.takes {
            Takes::Text(choices) if !choices.is_empty() => format!("{}: {}?", self.what, choices.join(", ")),
            _ => format!("what is the {}?", self.what),
        }
    }
}

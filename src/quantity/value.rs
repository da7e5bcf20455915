//! A value with its unit.

use std::cmp::Ordering;
use std::fmt;

use serde::{Deserialize, Serialize};

use super::{Mismatch, QuantityError, Unit};

/// Whether a pressure is read above the air about it or above nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum PressureBasis {
    /// Above the surrounding air, as every workshop gauge shows it.
    Gauge,
    /// Above vacuum, as the gas laws want it.
    Absolute,
}

/// A finite number with its unit.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Quantity {
    /// The number, finite.
    pub value: f64,
    /// Its unit.
    pub unit: Unit,
}

impl Quantity {
    /// A value with its unit.
    #[must_use]
    pub const fn new(value: f64, unit: Unit) -> Self {
        Self { value, unit }
    }

    /// The same quantity in another unit.
    ///
    /// # Errors
    /// [`Mismatch`] when the dimensions differ.
    pub fn to(self, unit: Unit) -> Result<Self, Mismatch> {
        Ok(Self { value: self.unit.convert(self.value, unit)?, unit })
    }

    /// The number alone, in a unit.
    ///
    /// # Errors
    /// [`Mismatch`] when the dimensions differ.
    pub fn in_unit(self, unit: Unit) -> Result<f64, Mismatch> {
        self.unit.convert(self.value, unit)
    }

    /// Whether the two measure the same thing.
    #[must_use]
    pub fn same_dimension(self, other: Self) -> bool {
        self.unit.same_dimension(other.unit)
    }

    /// The sum, in this one's unit. A temperature takes a temperature difference, never another temperature.
    ///
    /// # Errors
    /// [`Mismatch`] when the two do not add.
    pub fn plus(self, other: Self) -> Result<Self, Mismatch> {
        Ok(Self { value: self.value + self.step(other)?, unit: self.unit })
    }

    /// The difference, in this one's unit. Of two temperatures it is a temperature difference, in kelvin.
    ///
    /// # Errors
    /// [`Mismatch`] when the two do not subtract.
    pub fn minus(self, other: Self) -> Result<Self, Mismatch> {
        if self.unit.dimension() == super::Dimension::Temperature && self.same_dimension(other) {
            let value = self.in_unit(Unit::Kelvin)? - other.in_unit(Unit::Kelvin)?;
            return Ok(Self { value, unit: Unit::DeltaKelvin });
        }
        Ok(Self { value: self.value - self.step(other)?, unit: self.unit })
    }

    /// How far `other` moves this one, in this one's unit.
    fn step(self, other: Self) -> Result<f64, Mismatch> {
        use super::Dimension::{Temperature, TemperatureDifference};
        if self.unit.dimension() == Temperature {
            if other.unit.dimension() != TemperatureDifference {
                return Err(Mismatch { found: other.unit, wanted: Unit::DeltaKelvin });
            }
            let scale = if self.unit == Unit::Fahrenheit { Unit::DeltaFahrenheit } else { Unit::DeltaKelvin };
            return other.in_unit(scale);
        }
        other.in_unit(self.unit)
    }

    /// Which is greater.
    ///
    /// # Errors
    /// [`Mismatch`] when the dimensions differ.
    pub fn compare(self, other: Self) -> Result<Ordering, Mismatch> {
        Ok(self.value.total_cmp(&other.in_unit(self.unit)?))
    }

    /// Reads `32 N.m`, `13.8 psi`, `1/2 in`, `2 1/4 turn`, `-40 degC`.
    ///
    /// # Errors
    /// [`QuantityError`] with what was found and how to mend it: no number, no unit (`32`), an unknown unit, not finite.
    pub fn parse(text: &str) -> Result<Self, QuantityError> {
        let (number, rest) = super::limit_text::split_number(text)?;
        let rest = rest.trim();
        if rest.is_empty() {
            return Err(QuantityError::NoUnit { found: text.trim().to_owned() });
        }
        let unit = Unit::parse(rest).ok_or_else(|| QuantityError::UnknownUnit {
            found: rest.to_owned(),
            near: Unit::nearest(rest),
        })?;
        Ok(Self { value: number, unit })
    }

    /// For the screen: `32 N.m`, `1.5 mm`. Four significant figures, whole numbers whole.
    #[must_use]
    pub fn show(self) -> String {
        let number = bench_figures(self.value);
        match self.unit {
            Unit::One => format!("{number}"),
            Unit::Celsius => format!("{number} °C"),
            Unit::Fahrenheit => format!("{number} °F"),
            // A count is a word and no symbol: it takes its plural.
            Unit::Click | Unit::Turn => format!("{number} {}", self.unit.words(number)),
            unit => format!("{number} {unit}"),
        }
    }

    /// For the ear: "thirty two newton metres". The same figures as [`Quantity::show`].
    #[must_use]
    pub fn say(self) -> String {
        self.unit.say(self.value)
    }
}

impl fmt::Display for Quantity {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.show())
    }
}

/// The figures a bench can use: four significant, a whole number never cut, noise and minus zero gone.
#[must_use]
pub fn bench_figures(value: f64) -> f64 {
    if !value.is_finite() || value == 0.0 {
        return 0.0;
    }
    let whole_digits = value.abs().log10().floor() as i32 + 1;
    let decimals = (4 - whole_digits).max(0);
    let scale = 10f64.powi(decimals.min(300));
    let rounded = (value * scale).round() / scale;
    if rounded == 0.0 { 0.0 } else { rounded }
}

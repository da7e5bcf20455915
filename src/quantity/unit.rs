//! The units that the program knows: name, dimension, spoken words, size.

use std::fmt;

use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

use super::figures;
use super::{Dimension, Mismatch};

macro_rules! unit_enum {
    ($($variant:ident)*) => {
        /// A unit of measure. Written to data as its design name (`N.m`); see [`Unit::name`].
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[expect(missing_docs, reason = "each variant is a unit's own name; the table in `unit_rows` says the rest")]
        pub enum Unit { $($variant),* }
    };
}

unit_enum! {
    NewtonMetre NewtonMillimetre KilonewtonMetre PoundFoot PoundInch OunceInch KilogramMetre KilogramCentimetre
    Joule FootPoundEnergy Newton Kilonewton PoundForce KilogramForce Click PositionStep Turn Flat Degree Radian
    Millimetre Centimetre Metre Micrometre Inch Thou Foot
    SquareMillimetre SquareCentimetre SquareMetre SquareInch
    Millilitre Litre CubicMillimetre CubicMetre CubicInch Quart FluidOunce MillimetreFourth InchFourth
    Pascal Kilopascal Megapascal Gigapascal Bar Millibar Psi KilopoundSquareInch Atmosphere KilogramSquareCentimetre
    Celsius Fahrenheit Kelvin DeltaCelsius DeltaKelvin DeltaFahrenheit
    Kilogram Gram Pound Ounce KilogramCubicMetre GramMillilitre
    NewtonPerMillimetre NewtonPerMetre PoundPerInch KilogramPerMillimetre
    MillimetrePerSecond MetrePerSecond InchPerSecond FootPerSecond KilometrePerHour
    Centistokes SquareMetrePerSecond Stokes PascalSecond MillipascalSecond Poise Centipoise
    NewtonSecondPerMetre NewtonSecondPerMillimetre PoundSecondPerInch
    Hertz Rpm RadianPerSecond DegreePerSecond Second Minute Hour Day Month PerKelvin Percent One
}

impl Unit {
    /// The design's name for the unit: `N.m`, `lbf.ft`, `mm2/s`, `degC`.
    #[must_use]
    pub const fn name(self) -> &'static str {
        self.row().name
    }

    /// What the unit measures.
    #[must_use]
    pub const fn dimension(self) -> Dimension {
        self.row().dimension
    }

    /// The unit's words alone, for a value of `value`: "newton metre" for one, "newton metres" else.
    #[must_use]
    pub fn words(self, value: f64) -> &'static str {
        let row = self.row();
        if (value - 1.0).abs() < 1e-9 { row.one } else { row.many }
    }

    /// A value with the unit, as spoken: "thirty two newton metres". No symbols, rounded as [`super::Quantity::show`].
    #[must_use]
    pub fn say(self, value: f64) -> String {
        let value = super::bench_figures(value);
        format!("{} {}", figures::words(value), self.words(value)).trim_end().to_owned()
    }

    /// Whether the two measure the same thing.
    #[must_use]
    pub fn same_dimension(self, other: Self) -> bool {
        self.dimension() == other.dimension()
    }

    /// `value` of this unit, in `to`. Offsets apply to temperatures and to nothing else.
    ///
    /// # Errors
    /// [`Mismatch`] when the dimensions differ.
    pub fn convert(self, value: f64, to: Self) -> Result<f64, Mismatch> {
        if self == to {
            return Ok(value);
        }
        if !self.same_dimension(to) {
            return Err(Mismatch { found: self, wanted: to });
        }
        let (from, onto) = (self.row(), to.row());
        // One ratio, so that a whole ratio (25.4, 100) stays whole.
        Ok((value + from.offset) * (from.size / onto.size) - onto.offset)
    }
}

impl fmt::Display for Unit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

impl Serialize for Unit {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.name())
    }
}

impl<'de> Deserialize<'de> for Unit {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        Self::parse(&text).ok_or_else(|| de::Error::custom(format!("unknown unit `{text}`")))
    }
}

//! What a unit measures. Units of one dimension convert into each other; units of two never do.

use std::fmt;

use serde::{Deserialize, Serialize};

/// A physical (or counted) dimension. Torque and energy are kept apart, and so are a temperature and a
/// temperature difference, and clicks and positions.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Dimension {
    /// Turning moment; base N.m.
    Torque,
    /// Work; base J. Never torque.
    Energy,
    /// Base N.
    Force,
    /// Pressure and stress; base Pa. Gauge or absolute is [`super::PressureBasis`].
    Pressure,
    /// Base mm.
    Length,
    /// Base mm2.
    Area,
    /// Volume and section modulus; base ml.
    Volume,
    /// Second moment of area; base mm4.
    SecondMoment,
    /// Turns and angles; base deg.
    Angle,
    /// Detents of a clicker, counted.
    Clicks,
    /// Numbered positions of a ring, or a dial.
    Position,
    /// Base K, with the offsets of degC and degF.
    Temperature,
    /// Base K, without offsets.
    TemperatureDifference,
    /// Base kg.
    Mass,
    /// Base kg/m3.
    Density,
    /// Spring rate; base N/m.
    Rate,
    /// Base m/s.
    Speed,
    /// Base mm2/s.
    KinematicViscosity,
    /// Base Pa.s.
    DynamicViscosity,
    /// Damping coefficient; base N.s/m.
    Damping,
    /// Cycles per time; base Hz.
    Frequency,
    /// Base rad/s.
    AngularSpeed,
    /// Base s.
    Time,
    /// Coefficient of thermal expansion; base 1/K.
    Expansion,
    /// A plain number or a share.
    Pure,
}

impl Dimension {
    /// The dimension in words, as a refusal says it ("a torque").
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Torque => "a torque",
            Self::Energy => "an energy",
            Self::Force => "a force",
            Self::Pressure => "a pressure",
            Self::Length => "a length",
            Self::Area => "an area",
            Self::Volume => "a volume",
            Self::SecondMoment => "a second moment of area",
            Self::Angle => "an angle or turns",
            Self::Clicks => "a number of clicks",
            Self::Position => "a position",
            Self::Temperature => "a temperature",
            Self::TemperatureDifference => "a temperature difference",
            Self::Mass => "a mass",
            Self::Density => "a density",
            Self::Rate => "a spring rate",
            Self::Speed => "a speed",
            Self::KinematicViscosity => "a kinematic viscosity",
            Self::DynamicViscosity => "a dynamic viscosity",
            Self::Damping => "a damping coefficient",
            Self::Frequency => "a frequency",
            Self::AngularSpeed => "an angular speed",
            Self::Time => "a time",
            Self::Expansion => "a coefficient of expansion",
            Self::Pure => "a plain number",
        }
    }
}

impl fmt::Display for Dimension {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

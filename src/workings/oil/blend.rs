//! Mixing two oils. The rules differ by a few per cent: an answer names its rule. mm2/s, shares 0 to 1.

/// A blending rule: a scale on which the oils' shares add up.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rule {
    /// Viscosity blending number 14.534 ln ln(v + 0.8) + 10.975, by mass: Refutas (Maples, 2000).
    Refutas,
    /// log log(v + 0.7), by volume, at one temperature: ASTM D7152.
    D7152,
    /// ln ln(v + K), K 4.1 at 40 degC, 1.8 at 100 degC, 1.9 at -5 degC: as lubepy 1.0a0 has it.
    Offset(Offset),
}

/// The constant K of [`Rule::Offset`], by temperature.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Offset {
    /// 1.9.
    Minus5,
    /// 4.1.
    At40,
    /// 1.8.
    At100,
}

impl Rule {
    /// What the rule adds to a viscosity.
    fn added(self) -> f64 {
        match self {
            Self::Refutas => 0.8,
            Self::D7152 => 0.7,
            Self::Offset(Offset::Minus5) => 1.9,
            Self::Offset(Offset::At40) => 4.1,
            Self::Offset(Offset::At100) => 1.8,
        }
    }

    /// A viscosity on the rule's scale; `None` where it has no value there.
    fn number(self, v: f64) -> Option<f64> {
        Some((v + self.added()).ln()).filter(|inner| *inner > 0.0).map(f64::ln)
    }

    fn viscosity(self, number: f64) -> f64 {
        number.exp().exp() - self.added()
    }

    /// Viscosity of a mix with share `x1` of the first oil.
    #[must_use]
    pub fn mix(self, v1: f64, x1: f64, v2: f64) -> Option<f64> {
        Some(self.viscosity(x1 * self.number(v1)? + (1.0 - x1) * self.number(v2)?))
    }

    /// Share of the first oil that gives a target; `None` when the target does not lie between the two.
    #[must_use]
    pub fn share(self, v1: f64, v2: f64, target: f64) -> Option<f64> {
        let (n1, n2) = (self.number(v1)?, self.number(v2)?);
        Some((self.number(target)? - n2) / (n1 - n2)).filter(|share| (0.0..=1.0).contains(share))
    }
}

/// Refutas' viscosity blending number.
#[must_use]
pub fn blending_number(v: f64) -> Option<f64> {
    Rule::Refutas.number(v).map(|number| 14.534 * number + 10.975)
}

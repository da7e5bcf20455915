//! Viscosity at a temperature by ASTM D341: log10 log10(v + 0.7) = A - B log10 T. mm2/s, K.

/// Constants of an oil.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Constants {
    /// A.
    pub a: f64,
    /// B.
    pub b: f64,
}

/// D341's constant added to the viscosity, mm2/s. Sound from 2 mm2/s up; below that it is off by a few per cent.
pub const ADDED: f64 = 0.7;

/// log10 log10(v + 0.7); `None` where the outer logarithm has no value.
fn loglog(v: f64) -> Option<f64> {
    Some((v + ADDED).log10()).filter(|inner| *inner > 0.0).map(f64::log10)
}

/// From the viscosities at two absolute temperatures. `None` when they are one temperature or the viscosity is too low.
#[must_use]
pub fn constants(v1: f64, t1: f64, v2: f64, t2: f64) -> Option<Constants> {
    let (w1, w2) = (loglog(v1)?, loglog(v2)?);
    let b = (w1 - w2) / (t2.log10() - t1.log10());
    b.is_finite().then(|| Constants { a: w1 + b * t1.log10(), b })
}

impl Constants {
    /// Viscosity at an absolute temperature.
    #[must_use]
    pub fn at(self, t: f64) -> f64 {
        10f64.powf(10f64.powf(self.a - self.b * t.log10())) - ADDED
    }
}

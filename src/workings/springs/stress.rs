//! Shear stress in the wire, with the factor for its curvature named. mm, N, MPa.

use std::f64::consts::PI;

/// Which correction for curvature is used. They differ by about 1 %: never mix them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Factor {
    /// (C + 0.5) / (C - 0.75), the same as Bergstraesser's (4C + 2) / (4C - 3): EN 13906-1.
    Bergstraesser,
    /// (4C - 1) / (4C - 4) + 0.615 / C: Wahl.
    Wahl,
    /// None: the uncorrected stress that EN 13906-1 compares with the static limit.
    Plain,
}

impl Factor {
    /// Its value for a spring index C = D / d.
    #[must_use]
    pub fn of(self, index: f64) -> f64 {
        match self {
            Self::Bergstraesser => (4.0 * index + 2.0) / (4.0 * index - 3.0),
            Self::Wahl => (4.0 * index - 1.0) / (4.0 * index - 4.0) + 0.615 / index,
            Self::Plain => 1.0,
        }
    }
}

/// tau = K 8 F D / (pi d^3).
#[must_use]
pub fn stress(force: f64, d: f64, mean: f64, factor: Factor) -> f64 {
    factor.of(mean / d) * 8.0 * force * mean / (PI * d.powi(3))
}

/// The force at which the stress is `tau`.
#[must_use]
pub fn force_at(tau: f64, d: f64, mean: f64, factor: Factor) -> f64 {
    tau * PI * d.powi(3) / (8.0 * factor.of(mean / d) * mean)
}

/// Tensile strength A / d^m of a wire and its torsional yield, MPa, d in mm: Shigley (9th edition, tables 10-4 and 10-6;
/// memory). `None` for a wire that is not in the table.
#[must_use]
pub fn wire_strength(wire: &str, d: f64) -> Option<(f64, f64)> {
    let (a, m, share) = match wire {
        "music" => (2211.0, 0.145, 0.45),
        "oil-tempered" => (1855.0, 0.187, 0.50),
        "hard-drawn" => (1783.0, 0.190, 0.45),
        "chrome-vanadium" => (2005.0, 0.168, 0.50),
        "chrome-silicon" => (1974.0, 0.108, 0.50),
        _ => return None,
    };
    let tensile = a / d.powf(m);
    Some((tensile, share * tensile))
}

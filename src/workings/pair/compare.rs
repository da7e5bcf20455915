//! Two traces, or two forces, against each other and against a band.

use super::Trace;

/// Share of the mean that left and right may differ by (common practice, no source).
pub const USUAL_LIMIT: f64 = 0.05;

/// Two forces at one velocity.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Difference {
    /// Velocity, mm/s.
    pub velocity: f64,
    /// First force, N.
    pub first: f64,
    /// Second force, N.
    pub second: f64,
    /// Second less first as a share of the mean of their sizes; 0 when both are 0.
    pub share: f64,
}

/// The difference of two forces as a share of the mean of their sizes.
#[must_use]
pub fn share(first: f64, second: f64) -> f64 {
    let mean = f64::midpoint(first.abs(), second.abs());
    if mean > 0.0 { (second - first) / mean } else { 0.0 }
}

/// Compares two traces at the given velocities; one that either does not reach is left out.
#[must_use]
pub fn compare(first: &Trace, second: &Trace, velocities: &[f64]) -> Vec<Difference> {
    velocities
        .iter()
        .filter_map(|velocity| {
            let (one, two) = (first.force_at(*velocity)?, second.force_at(*velocity)?);
            Some(Difference { velocity: *velocity, first: one, second: two, share: share(one, two) })
        })
        .collect()
}

/// The points of a trace that lie outside a target's band (a share either side): velocity, force, how far outside in N.
#[must_use]
pub fn outside(trace: &Trace, target: &Trace, band: f64) -> Vec<(f64, f64, f64)> {
    let off = |(velocity, force): &(f64, f64)| {
        let wanted = target.force_at(*velocity)?;
        let room = wanted.abs() * band;
        let beyond = (force - wanted).abs() - room;
        (beyond > 1e-9 * wanted.abs()).then(|| (*velocity, *force, beyond * (force - wanted).signum()))
    };
    trace.points().iter().filter_map(off).collect()
}

//! Lengths: solid, free, at a load, and what is left before the coils bind. mm, N, N/mm.

/// How the ends are made.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ends {
    /// Closed and ground flat.
    SquaredGround,
    /// Closed, not ground.
    Squared,
    /// Open, not ground.
    Plain,
    /// Open, ground flat.
    PlainGround,
    /// EN 13906-1's upper bound for closed ends that are not ground.
    EnUnground,
}

/// Length with every coil touching: Nt d for ground ends, (Nt + 1) d else (Shigley, table 10-1);
/// EN 13906-1's bound for ends not ground is (nt + 1.5) d max.
#[must_use]
pub fn solid(d: f64, total_coils: f64, ends: Ends) -> f64 {
    match ends {
        Ends::SquaredGround | Ends::PlainGround => total_coils * d,
        Ends::Squared | Ends::Plain => (total_coils + 1.0) * d,
        Ends::EnUnground => (total_coils + 1.5) * d,
    }
}

/// Free length of a spring that has `gap` left between its coils at the deflection: solid + (Nt - 1) gap + deflection.
#[must_use]
pub fn free(solid: f64, total_coils: f64, gap: f64, deflection: f64) -> f64 {
    solid + (total_coils - 1.0).max(0.0) * gap + deflection
}

/// What is left between the coils, summed, with this preload and the full stroke: below zero it binds.
#[must_use]
pub fn bind_margin(free: f64, block: f64, preload: f64, stroke: f64) -> f64 {
    free - preload - stroke - block
}

/// Least sum of the gaps between active coils at the greatest static load, cold coiled, mm:
/// n (0.0015 D^2 / d + 0.1 d) (EN 13906-1:2013, clause 9; memory). Half as much again under dynamic load.
#[must_use]
pub fn least_gaps(d: f64, mean: f64, coils: f64) -> f64 {
    coils * (0.0015 * mean * mean / d + 0.1 * d)
}

//! Preload when the rate changes: the same turns, the same force, or the same ride height. mm, N, N/mm.

/// What is to stay the same.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Keep {
    /// The turns on the perch: the spring is squeezed by the same length.
    Turns,
    /// The force at full extension.
    Force,
    /// The height at which the unit stands under its load.
    RideHeight,
}

/// A change of spring.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Change {
    /// Rate that comes off.
    pub old_rate: f64,
    /// Rate that goes on.
    pub new_rate: f64,
    /// Length by which the old spring is squeezed at full extension.
    pub old_preload: f64,
    /// Static load on the spring.
    pub load: f64,
}

/// Preload length of the new spring. May come out below zero: then the spring would be loose at full extension.
#[must_use]
pub fn kept(change: Change, keep: Keep) -> f64 {
    match keep {
        Keep::Turns => change.old_preload,
        Keep::Force => change.old_rate * change.old_preload / change.new_rate,
        Keep::RideHeight => {
            change.load / change.new_rate - sag(change.load, change.old_rate, change.old_preload)
        }
    }
}

/// How far the unit sinks from full extension under a load: none while the preload carries it.
#[must_use]
pub fn sag(load: f64, rate: f64, preload: f64) -> f64 {
    (load / rate - preload).max(0.0)
}

//! How long each step took: from when it was first shown until it was last closed.

use crate::bench::state::State;
use crate::session::Moment;

/// A step with its times.
#[derive(Debug, Clone, PartialEq)]
pub struct StepTime {
    /// The place.
    pub place: String,
    /// The step.
    pub step: String,
    /// When it was first shown.
    pub shown: Moment,
    /// When it was closed, if it is.
    pub closed: Option<Moment>,
}

impl StepTime {
    /// How long it took, in minutes.
    pub fn minutes(&self) -> Option<f64> {
        self.closed.map(|closed| minutes(closed - self.shown))
    }
}

/// A length of time in minutes, to the second.
pub fn minutes(lasted: chrono::Duration) -> f64 {
    lasted.num_seconds() as f64 / 60.0
}

/// The steps in the order in which they were shown.
pub fn steps(state: &State) -> Vec<StepTime> {
    let shown = state.record.shown.iter().map(|((place, step), shown)| StepTime {
        place: place.clone(),
        step: step.clone(),
        shown: *shown,
        closed: state.record.closed.get(&(place.clone(), step.clone())).copied(),
    });
    let mut steps: Vec<StepTime> = shown.collect();
    steps.sort_by(|a, b| a.shown.cmp(&b.shown).then_with(|| a.closed.cmp(&b.closed)));
    steps
}

/// "4 min", "1 h 05 min".
pub fn spoken(minutes: f64) -> String {
    let whole = minutes.max(0.0).round() as u64;
    if whole < 60 { format!("{whole} min") } else { format!("{} h {:02} min", whole / 60, whole % 60) }
}

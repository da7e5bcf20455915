//! A procedure: phases of steps, in the order they are worked.

use super::Step;
use crate::source::Place;

/// One procedure for one kind of unit.
#[derive(Debug, Clone, PartialEq)]
pub struct Procedure {
    /// Its id ("re-spring").
    pub id: String,
    /// Spoken names.
    pub called: Vec<String>,
    /// The unit card it is for.
    pub unit: String,
    /// What it is for, in one line.
    pub what: Option<String>,
    /// Its phases.
    pub phases: Vec<Phase>,
    /// What is checked again after the first run, told at hand-over.
    pub afterwards: Vec<String>,
    /// Where the pack says so.
    pub at: Place,
}

/// A phase of a procedure.
#[derive(Debug, Clone, PartialEq)]
pub struct Phase {
    /// Its id ("strip").
    pub id: String,
    /// Whether its steps make the unit safe and so are never skipped.
    pub makes_safe: bool,
    /// Its steps.
    pub steps: Vec<Step>,
}

impl Procedure {
    /// The name the bench says.
    pub fn name(&self) -> &str {
        self.called.first().map_or(self.id.as_str(), String::as_str)
    }

    /// Every step in the order of the file, those of `else` after the step they follow.
    pub fn all_steps(&self) -> Vec<&Step> {
        let mut out = Vec::new();
        for step in self.phases.iter().flat_map(|phase| &phase.steps) {
            step.collect(&mut out);
        }
        out
    }

    /// The step of that id.
    pub fn step(&self, id: &str) -> Option<&Step> {
        self.phases.iter().flat_map(|phase| &phase.steps).find_map(|step| step.find(id))
    }

    /// The phase that holds the step.
    pub fn phase_of(&self, id: &str) -> Option<&Phase> {
        self.phases.iter().find(|phase| phase.steps.iter().any(|step| step.holds(id)))
    }
}

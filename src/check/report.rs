//! What a check comes to: findings in a stable order, and how far the walk went.

use super::finding::Finding;
use crate::source::{Level, Problem};
use serde::{Serialize, Serializer, ser::SerializeStruct};
use std::ops::AddAssign;

/// One thing found.
#[derive(Debug, Clone)]
pub struct Found {
    /// Which finding.
    pub finding: &'static Finding,
    /// Level, place, what was found and how to mend it.
    pub problem: Problem,
}

impl Found {
    /// What the order and the weeding out of doubles go by: place, level, name, words.
    pub(super) fn key(&self) -> (&crate::source::Place, Level, &'static str, &str) {
        (&self.problem.place, self.problem.level, self.finding.name, &self.problem.found)
    }

    /// The problem with the finding's name before it, as it is drawn.
    pub fn named(&self) -> Problem {
        let found = format!("{}: {}", self.finding.name, self.problem.found);
        Problem { found, ..self.problem.clone() }
    }
}

impl Serialize for Found {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut out = serializer.serialize_struct("Found", 8)?;
        out.serialize_field("finding", self.finding.name)?;
        out.serialize_field("level", &self.problem.level)?;
        out.serialize_field("file", &*self.problem.place.file)?;
        out.serialize_field("line", &self.problem.place.line)?;
        out.serialize_field("column", &self.problem.place.column)?;
        out.serialize_field("found", &self.problem.found)?;
        out.serialize_field("expected", &self.problem.expected)?;
        out.serialize_field("mend", &self.problem.mend)?;
        out.end()
    }
}

/// How far the walk went.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize)]
pub struct Walked {
    /// Procedures walked.
    pub procedures: usize,
    /// Steps of those procedures, steps under `else` among them.
    pub steps: usize,
    /// States of a job that differ in what matters from there on.
    pub states: usize,
    /// Paths followed: to their end, or to a state from which another had been followed.
    pub paths: usize,
    /// Paths followed to the end of the job.
    pub ended: usize,
    /// Decisions of the bench.
    pub decisions: usize,
    /// Procedures whose walk was cut short by the bound.
    pub cut: usize,
}

impl AddAssign for Walked {
    fn add_assign(&mut self, other: Self) {
        self.procedures += other.procedures;
        self.steps += other.steps;
        self.states += other.states;
        self.paths += other.paths;
        self.ended += other.ended;
        self.decisions += other.decisions;
        self.cut += other.cut;
    }
}

/// A whole check.
#[derive(Debug, Clone, Default, Serialize)]
pub struct Report {
    /// Everything found, by file, line, column, level and name.
    pub found: Vec<Found>,
    /// How far the walk went.
    pub walked: Walked,
}

impl Report {
    /// How many findings of a level there are.
    pub fn count(&self, level: Level) -> usize {
        self.found.iter().filter(|found| found.problem.level == level).count()
    }
}

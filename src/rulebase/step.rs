//! A step: one thing to do, what it waits for, and what follows when it fails.

use super::Deed;
use crate::act::WaitingFor;
use crate::quantity::{Limit, Quantity, Unit};
use crate::source::Place;
use crate::workings::adjusters::Way;

/// One step of a procedure.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// Stable id ("strip/loosen-foot-nut").
    pub id: String,
    /// What it does.
    pub deed: Deed,
    /// The part or adjuster it does it to; none for a step about the whole unit.
    pub about: Option<String>,
    /// The words after the deed as written, when they are no id ("foot mark on zero").
    pub object: Option<String>,
    /// The sentence, when the deed and the part do not make it.
    pub text: Option<String>,
    /// The short form said every day, when the part does not make it.
    pub brief: Option<String>,
    /// Ids of the cautions that guard it.
    pub before: Vec<String>,
    /// Rhai: whether it applies.
    pub when: Option<String>,
    /// The value it wants.
    pub read: Option<Read>,
    /// The question whose yes closes it.
    pub question: Option<String>,
    /// Rhai over `value`: whether the reading is acceptable.
    pub accept: Option<String>,
    /// Steps worked when the answer is no or the reading out of limits, before it is asked again.
    pub fails: Vec<Step>,
    /// How many times it may fail before the bench says to stop.
    pub tries: u32,
    /// What is said when it has failed that often.
    pub stop: Option<String>,
    /// A list that is read back and confirmed.
    pub reads_back: Option<ReadBack>,
    /// A tool other than the part's.
    pub tool: Option<String>,
    /// A way of holding other than the part's.
    pub hold: Option<String>,
    /// A way of turning other than the part's.
    pub way: Option<Way>,
    /// How much ("a full turn", "three threads by hand").
    pub amount: Option<String>,
    /// Started when the step is done.
    pub timer: Option<Timer>,
    /// What is told with it.
    pub note: Option<String>,
    /// Why it is done.
    pub why: Option<String>,
    /// Where it comes from.
    pub source: Option<String>,
    /// Where the pack says so.
    pub at: Place,
}

/// The value a step wants.
#[derive(Debug, Clone, PartialEq)]
pub struct Read {
    /// What is waited for.
    pub kind: WaitingFor,
    /// The name it is kept under; the adjuster's or part's id goes before it.
    pub role: Role,
    /// The unit a bare number takes.
    pub unit: Option<Unit>,
    /// The accepted band, inclusive.
    pub limit: Option<Limit>,
    /// Whether it must be read back as critical.
    pub critical: bool,
    /// A count out of limits is counted again before it is a finding.
    pub recount: bool,
}

/// What a reading says about its part.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum Role {
    /// Where the adjuster stood.
    Found,
    /// All of its clicks or turns.
    Travel,
    /// Travel, counted after it was apart.
    TravelAgain,
    /// Where the adjuster was left.
    Left,
    /// The torque it was tightened to.
    Torque,
    /// Anything else, by name ("run-out", "complaint").
    Named(String),
}

impl Role {
    /// The name kept in the record.
    pub fn as_str(&self) -> &str {
        match self {
            Self::Found => "found",
            Self::Travel => "travel",
            Self::TravelAgain => "travel-again",
            Self::Left => "left",
            Self::Torque => "torque",
            Self::Named(name) => name,
        }
    }

    /// The role of that name.
    pub fn parse(name: &str) -> Self {
        match name {
            "found" => Self::Found,
            "travel" => Self::Travel,
            "travel-again" => Self::TravelAgain,
            "left" => Self::Left,
            "torque" => Self::Torque,
            other => Self::Named(other.to_owned()),
        }
    }
}

/// A list read back for the whole unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ReadBack {
    /// Settings as found.
    Found,
    /// Settings wanted.
    Wanted,
    /// Settings as left, beside found and wanted.
    Left,
}

/// A timer a step starts.
#[derive(Debug, Clone, PartialEq)]
pub struct Timer {
    /// How long.
    pub lasts: Quantity,
    /// What it is for ("bubbles to rise").
    pub what: String,
}

impl Step {
    /// Itself and the steps under it, in order.
    pub fn collect<'a>(&'a self, out: &mut Vec<&'a Step>) {
        out.push(self);
        for step in &self.fails {
            step.collect(out);
        }
    }

    /// The step of that id: itself, or one under it.
    pub fn find(&self, id: &str) -> Option<&Step> {
        if self.id == id { Some(self) } else { self.fails.iter().find_map(|step| step.find(id)) }
    }

    /// Whether a yes or no closes it: it asks a question, or reads a list back.
    pub fn answers_yes_or_no(&self) -> bool {
        self.read.as_ref().map_or(self.question.is_some() || self.reads_back.is_some(), |read| {
            read.kind == WaitingFor::YesOrNo
        })
    }

    /// Whether it is that step or holds it.
    pub fn holds(&self, id: &str) -> bool {
        self.id == id || self.fails.iter().any(|step| step.holds(id))
    }
}

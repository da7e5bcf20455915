//! What findings are shown of a walk: a step closing, a path's end, the whole of it.

use super::trail::{Trail, fitting};
use crate::bench::state::{Fitting, PartState, Place};
use crate::check::subject::OnProcedure;
use crate::rulebase::{Part, Step};
use std::collections::{BTreeMap, BTreeSet};

/// A step closing on a path.
pub struct Moment<'a> {
    /// Pack, card and procedure.
    pub on: OnProcedure<'a>,
    /// The step.
    pub step: &'a Step,
    /// The unit just before it.
    pub before: &'a Place,
    /// What the path had done before it.
    pub trail: &'a Trail,
    /// Threadlocker that stands, by part, with the minutes since.
    pub locked: &'a BTreeMap<String, f64>,
    /// Whether nothing was left out on the way here.
    pub clean: bool,
}

impl Moment<'_> {
    /// How a part stood just before.
    pub fn fitting(&self, part: &str) -> Fitting {
        fitting(self.before, part)
    }

    /// What had been done to a part.
    pub fn part(&self, id: &str) -> PartState {
        self.before.parts.get(id).cloned().unwrap_or_default()
    }

    /// The part that the step is about.
    pub fn about(&self) -> Option<&Part> {
        self.on.part(self.step)
    }
}

/// The end of a path on which nothing was left out.
pub struct Finish<'a> {
    /// Pack, card and procedure.
    pub on: OnProcedure<'a>,
    /// The unit.
    pub place: &'a Place,
    /// What the path has done.
    pub trail: &'a Trail,
}

impl<'a> Finish<'a> {
    /// The step that last did something to a part or an adjuster; the procedure's first step where none did.
    pub fn last(&self, about: &str) -> Option<&'a Step> {
        let id = self.trail.last.get(about)?;
        self.on.steps.iter().copied().find(|step| step.id == *id)
    }

    /// Where to point at for a part: the step that last did something to it, or the card.
    pub fn at(&self, about: &str) -> crate::source::Place {
        self.last(about).map_or_else(|| self.on.procedure.at.clone(), |step| step.at.clone())
    }
}

/// What a guard or a judgement was seen to give.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Both {
    /// It held.
    pub yes: bool,
    /// It did not.
    pub no: bool,
}

/// Everything that a procedure's walk has seen.
pub struct Seen<'a> {
    /// Pack, card and procedure.
    pub on: OnProcedure<'a>,
    /// Steps that were put in hand on some path.
    pub shown: &'a BTreeSet<String>,
    /// What guards gave, by step.
    pub guards: &'a BTreeMap<String, Both>,
    /// What `accept` gave, by step.
    pub accepts: &'a BTreeMap<String, Both>,
    /// Steps at which right answers lead nowhere: to the same state again, or round without end.
    pub endless: &'a BTreeSet<String>,
    /// Steps at which the bench, opened again, had nothing to say.
    pub lost: &'a BTreeSet<String>,
    /// Steps that went on failing and never said to stop.
    pub unstopped: &'a BTreeSet<String>,
    /// Whether any path came to the end, or was held up at the settings as left by what is said of an adjuster.
    pub ended: bool,
    /// Whether the walk was cut short by its bound.
    pub cut: bool,
}

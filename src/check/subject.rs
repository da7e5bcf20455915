//! What findings look at: the pack, a card, a procedure with its card.

use crate::hearing::Ear;
use crate::rulebase::{Pack, Part, Procedure, Step, UnitCard};
use std::collections::BTreeSet;

/// The pack as a whole.
pub struct OnPack<'a> {
    /// The pack.
    pub pack: &'a Pack,
    /// Its ear; none where the pack has no talk.
    pub ear: Option<&'a Ear>,
}

/// A unit card.
pub struct OnCard<'a> {
    /// The pack.
    pub pack: &'a Pack,
    /// The card.
    pub card: &'a UnitCard,
}

/// A procedure with its card.
#[derive(Clone, Copy)]
pub struct OnProcedure<'a> {
    /// The pack.
    pub pack: &'a Pack,
    /// The card.
    pub card: &'a UnitCard,
    /// The procedure.
    pub procedure: &'a Procedure,
    /// Every step, those of an `else` after the step that they follow.
    pub steps: &'a [&'a Step],
}

impl<'a> OnProcedure<'a> {
    /// The part that a step is about.
    pub fn part(&self, step: &Step) -> Option<&'a Part> {
        self.card.part(step.about.as_deref()?)
    }
}

/// The parts that stand over one of these, directly or through others: what has to come off before it is free.
pub fn over<'a>(card: &'a UnitCard, under: &str) -> BTreeSet<&'a str> {
    let mut found: BTreeSet<&str> = BTreeSet::new();
    let mut todo = vec![under];
    while let Some(below) = todo.pop() {
        for part in card.parts.iter().filter(|part| part.over.iter().any(|id| id == below)) {
            if found.insert(&part.id) {
                todo.push(&part.id);
            }
        }
    }
    found
}

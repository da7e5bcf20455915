//! The lengths, pressures and times that a card and a procedure give, to hold what a sentence says against.

use crate::quantity::{Dimension, Limit, Quantity};
use crate::rulebase::{AdjusterKind, Deed, Part, Step, UnitCard};

/// What is given on a card and at the steps of a procedure.
pub struct Facts<'a> {
    card: &'a UnitCard,
    /// The limits that steps give themselves.
    steps: Vec<Limit>,
    /// What is filled in by the steps, once for each of them.
    fills: Vec<&'a str>,
}

impl<'a> Facts<'a> {
    /// Those of a card, and of the steps of a procedure.
    pub fn of(card: &'a UnitCard, steps: &[&'a Step]) -> Self {
        let fills = steps.iter().filter(|step| step.deed == Deed::Fill);
        let fills = fills.filter_map(|step| step.about.as_deref()).collect();
        let steps = steps.iter().filter_map(|step| step.read.as_ref()?.limit).collect();
        Self { card, steps, fills }
    }

    /// What is given, where a figure that a step says agrees with none of it. None where it agrees, or nothing is given.
    /// A caution is held against pressures alone: it may tell of any other thing.
    pub fn against(&self, step: &Step, figure: Quantity, caution: bool) -> Option<String> {
        let given = match figure.unit.dimension() {
            Dimension::Time if !caution => {
                step.timer.iter().map(|timer| Limit::exactly(timer.lasts)).collect()
            }
            Dimension::Volume if !caution && step.deed == Deed::Fill => self.volume(step),
            Dimension::Pressure => self.pressures(),
            Dimension::Length if !caution => self.lengths(step),
            _ => Vec::new(),
        };
        let agrees = given.iter().any(|limit| limit.holds(figure).unwrap_or(false));
        let shown = || given.iter().map(|limit| limit.show()).collect::<Vec<_>>().join(", ");
        (!given.is_empty() && !agrees && figure.value != 0.0).then(shown)
    }

    /// The volume of what is filled in; up to it, where several steps fill it in.
    fn volume(&self, step: &Step) -> Vec<Limit> {
        let Some(id) = step.about.as_deref() else { return Vec::new() };
        let volume = self.card.part(id).and_then(|part| part.sizes.get("volume")).copied();
        let alone = self.fills.iter().filter(|filled| **filled == id).count() == 1;
        let given = volume.map(Limit::exactly);
        given.map(|limit| if alone { limit } else { Limit { lo: None, ..limit } }).into_iter().collect()
    }

    fn pressures(&self) -> Vec<Limit> {
        let charges = self.card.adjusters.iter().filter_map(|one| match one.kind {
            AdjusterKind::Charge { limit, .. } => Some(limit),
            _ => None,
        });
        let sizes = self.card.sizes.values().copied().map(Limit::exactly);
        let all = charges.chain(sizes).chain(self.steps.iter().copied());
        all.filter(|limit| limit.unit.dimension() == Dimension::Pressure).collect()
    }

    /// Those of the part in hand; where it has none, those of the whole card.
    fn lengths(&self, step: &Step) -> Vec<Limit> {
        let is_length = |limit: &Limit| limit.unit.dimension() == Dimension::Length;
        let part = step.about.as_deref().and_then(|id| self.card.part(id));
        let own: Vec<Limit> = part.into_iter().flat_map(of_part).filter(is_length).collect();
        let mut given = if own.is_empty() {
            self.card.parts.iter().flat_map(of_part).filter(is_length).collect()
        } else {
            own
        };
        if !given.is_empty() {
            given.extend(self.steps.iter().copied().filter(is_length));
        }
        given
    }
}

fn of_part(part: &Part) -> impl Iterator<Item = Limit> {
    part.limits.values().copied().chain(part.sizes.values().copied().map(Limit::exactly))
}

/// What a step says, each with the field that says it.
pub fn texts_of(step: &Step) -> impl Iterator<Item = (&'static str, &str)> {
    let own = [("say", &step.text), ("note", &step.note), ("amount", &step.amount)];
    own.into_iter().filter_map(|(field, text)| Some((field, text.as_deref()?)))
}

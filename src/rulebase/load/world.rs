//! What the steps of a procedure may name: the card in hand, cautions, tools.

use super::report::Report;
use super::slug;
use crate::rulebase::{Caution, Tool, UnitCard};
use crate::source::nearest;
use crate::source::yaml::Span;
use std::collections::BTreeMap;
use std::sync::Arc;

/// Everything that a procedure may name.
#[derive(Clone, Copy)]
pub(super) struct World<'a> {
    /// The unit cards of the pack.
    pub units: &'a BTreeMap<String, Arc<UnitCard>>,
    /// The cautions, by id.
    pub cautions: &'a BTreeMap<String, Caution>,
    /// The crib.
    pub tools: &'a [Tool],
    /// The card of the procedure that is read.
    pub card: Option<&'a UnitCard>,
}

impl<'a> World<'a> {
    /// The same with a card in hand.
    pub fn with(self, card: &'a UnitCard) -> Self {
        Self { card: Some(card), ..self }
    }

    /// The card of that id, reporting it where there is none.
    pub fn card(&self, id: &str, span: Span, report: &Report) -> Option<&'a UnitCard> {
        let card = self.units.get(id).map(AsRef::as_ref);
        if card.is_none() {
            dangling(span, id, "unit card", self.units.keys().map(String::as_str), report);
        }
        card
    }

    /// Reports a name that is neither an adjuster nor a part of the card in hand.
    pub fn check_about(&self, id: &str, span: Span, report: &Report) -> bool {
        let Some(card) = self.card else { return true };
        if card.has(id) {
            return true;
        }
        dangling(span, id, "adjuster or part on this card", card.ids(), report);
        false
    }

    /// The id of a caution named in a step, reporting it where there is none.
    pub fn caution(&self, name: &str, span: Span, report: &Report) -> Option<String> {
        let id = slug(name);
        if self.cautions.contains_key(&id) {
            return Some(id);
        }
        dangling(span, name, "caution", self.cautions.keys().map(String::as_str), report);
        None
    }

    /// Reports a tool that is not in the crib.
    pub fn check_tool(&self, name: &str, span: Span, report: &Report) {
        if self.tools.iter().any(|tool| tool.answers_to(name)) {
            return;
        }
        let known = self.tools.iter().flat_map(|tool| tool.called.iter().chain([&tool.id, &tool.kind]));
        dangling(span, name, "tool in the crib", known.map(String::as_str), report);
    }
}

/// Reports a name that stands for nothing.
pub(super) fn dangling<'a>(
    span: Span,
    name: &str,
    what: &str,
    known: impl IntoIterator<Item = &'a str>,
    report: &Report,
) {
    let mend = match nearest(name, known) {
        Some(near) => format!("write `{near}` if that is what is meant"),
        None => format!("add it, or name a {what} that is there"),
    };
    report.wrong(span, format!("there is no {what} `{name}`"), format!("the name of a {what}"), mend);
}

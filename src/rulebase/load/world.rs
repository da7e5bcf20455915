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
            dangling(span, id, "a unit card of this pack", self.units.keys().map(String::as_str), report);
        }
        card
    }

    /// Reports a name that is neither an adjuster nor a part of the card in hand.
    pub fn check_about(&self, id: &str, span: Span, report: &Report) -> bool {
        let Some(card) = self.card else { return true };
        if card.has(id) {
            return true;
        }
        dangling(span, id, "an adjuster or part of this card", card.ids(), report);
        false
    }

    /// The same for a deed that words of one's own may follow: one word alone is an id.
    pub fn check_about_or_words(&self, id: &str, span: Span, report: &Report) {
        let Some(card) = self.card else { return };
        let words = "; one word is an id, words of your own are two or more (`whole unit`)";
        dangling_or(span, id, "an adjuster or part of this card", card.ids(), words, report);
    }

    /// The id of a caution named in a step, reporting it where there is none.
    pub fn caution(&self, name: &str, span: Span, report: &Report) -> Option<String> {
        let id = slug(name);
        if self.cautions.contains_key(&id) {
            return Some(id);
        }
        dangling(span, name, "a caution of this pack", self.cautions.keys().map(String::as_str), report);
        None
    }

    /// Reports a tool that is not in the crib.
    pub fn check_tool(&self, name: &str, span: Span, report: &Report) {
        if self.tools.iter().any(|tool| tool.answers_to(name)) {
            return;
        }
        let known =
            self.tools.iter().flat_map(|tool| [&tool.kind].into_iter().chain(&tool.called).chain([&tool.id]));
        dangling(span, name, "a tool in the crib", known.map(String::as_str), report);
    }
}

/// Reports a name that stands for nothing. `what` says what it should be, with its article ("an end of this unit").
pub(super) fn dangling<'a>(
    span: Span,
    name: &str,
    what: &str,
    known: impl IntoIterator<Item = &'a str>,
    report: &Report,
) {
    dangling_or(span, name, what, known, "", report);
}

/// The same, with what else could stand there at the end of the mend.
fn dangling_or<'a>(
    span: Span,
    name: &str,
    what: &str,
    known: impl IntoIterator<Item = &'a str>,
    or: &str,
    report: &Report,
) {
    let mut known: Vec<&str> = known.into_iter().collect();
    known.dedup();
    let (_, noun) = what.split_once(' ').unwrap_or(("", what));
    let mend = match nearest(name, known.iter().copied()) {
        Some(near) => format!("write `{near}` if that is what is meant{or}"),
        None => format!("add it, or name {what} that is there{or}"),
    };
    let expected = match known.len() {
        0 => format!("{what}, and there is none yet"),
        1..=6 => {
            format!("one of {}", known.iter().map(|name| format!("`{name}`")).collect::<Vec<_>>().join(", "))
        }
        _ => what.to_owned(),
    };
    report.wrong(span, format!("`{name}` is no {noun}"), expected, mend);
}

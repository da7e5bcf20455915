//! Two values for one fact.

use crate::check::facts::{Facts, texts_of};
use crate::check::figures::{bores_in, figures_in, torques_in};
use crate::check::finding::{Finding, Look};
use crate::check::language::{has_word, threads_in};
use crate::check::sink::Sink;
use crate::check::subject::OnPack;
use crate::quantity::Unit;
use crate::rulebase::{Caution, Deed, Part, Step, UnitCard};
use crate::source::{Level, Place};
use std::borrow::Cow;

/// The same fact is given twice, with two values.
pub static FINDING: Finding = Finding {
    name: "two values for one fact",
    level: Level::Wrong,
    milder: true,
    what: "The same fact is given twice, with two values.",
    why: "One of the two is wrong, and nobody knows which is followed.",
    example: "torque: 32 N.m on the card, and a caution at its step that says thirty newton metres",
    mend: "give it once, on the card; mend or take out the other",
    look: Look::Pack(look),
};

fn look(on: &OnPack<'_>, sink: &mut Sink<'_>) {
    for card in on.pack.units.values() {
        on_card(card, sink);
    }
    for procedure in on.pack.procedures.values() {
        let Some(card) = on.pack.units.get(&procedure.unit) else { continue };
        let steps = procedure.all_steps();
        let facts = Facts::of(card, &steps);
        for step in steps {
            let cautions: Vec<&Caution> = step.before.iter().filter_map(|id| on.pack.caution(id)).collect();
            other_figures(&facts, step, &cautions, sink);
            if let Some(part) = step.about.as_deref().and_then(|id| card.part(id)) {
                on_step(step, part, &cautions, sink);
            }
        }
    }
}

/// How a left-hand thread is written.
const LEFT_HAND: [&str; 3] = ["left-hand", "left hand", "left-handed"];

fn on_card(card: &UnitCard, sink: &mut Sink<'_>) {
    for part in &card.parts {
        let texts = [("what", &part.what), ("why", &part.why), ("critical", &part.critical)];
        let thread = part.thread.as_ref().filter(|thread| !thread.left_hand);
        let never = [("never", &part.never)];
        let said = texts.iter().chain(&never);
        let mut said = said.filter(|(_, text)| text.as_deref().is_some_and(|text| has_word(text, &LEFT_HAND)));
        if let (Some(thread), Some((field, _))) = (thread, said.next()) {
            let place = sink.field(&card.at, &format!("parts/{}/{field}", part.id));
            let mend = format!("`{} left-hand`", thread.text);
            sink.raise_for(place, format!("a left-hand thread here, and `{}` above", thread.text), mend);
        }
        for (field, text) in texts.into_iter().filter_map(|(field, text)| Some((field, text.as_deref()?))) {
            if let Some(thread) = &part.thread
                && let Some(said) =
                    threads_in(text).into_iter().find(|said| (said - thread.diameter.value).abs() > 0.005)
                && field == "what"
            {
                let place = sink.field(&card.at, &format!("parts/{}/what", part.id));
                sink.raise_for(
                    place,
                    format!("M{said} here, and another thread above"),
                    format!("`{}`", thread.text),
                );
            }
            let bore = part.bore.and_then(|bore| bore.in_unit(Unit::Millimetre).ok());
            if let Some(bore) = bore
                && let Some(said) = bores_in(text).into_iter().find(|said| (said - bore).abs() > 0.005)
            {
                let place = sink.field(&card.at, &format!("parts/{}/{field}", part.id));
                sink.raise_for(
                    place,
                    format!("a bore of {said} mm here, and another above"),
                    format!("{bore} mm"),
                );
            }
        }
    }
}

/// Where a text stands: in a field of the step, or in a caution before it.
enum At<'a> {
    Field(&'static str),
    Caution(&'a Caution),
}

impl At<'_> {
    /// Its place: looked up in the file only when there is something to say of it.
    fn place(&self, step: &Step, sink: &mut Sink<'_>) -> Place {
        match self {
            Self::Field(field) => sink.of_step(step, field),
            Self::Caution(caution) => caution.at.clone(),
        }
    }
}

/// All that is said with a step.
fn said<'a>(step: &'a Step, cautions: &[&'a Caution]) -> Vec<(At<'a>, Cow<'a, str>)> {
    let own = texts_of(step).map(|(field, text)| (At::Field(field), Cow::Borrowed(text)));
    let full = |one: &'a Caution| Cow::Owned(format!("{} {}", one.full, one.brief));
    own.chain(cautions.iter().map(|one| (At::Caution(one), full(one)))).collect()
}

fn on_step(step: &Step, part: &Part, cautions: &[&Caution], sink: &mut Sink<'_>) {
    let Some(torque) = part.torque.and_then(|limit| limit.to(Unit::NewtonMetre).ok()) else { return };
    if step.deed != Deed::Tighten {
        return;
    }
    let agrees = |said: f64| {
        torque.lo.is_none_or(|lo| said >= lo - 1e-9) && torque.hi.is_none_or(|hi| said <= hi + 1e-9)
    };
    for (at, text) in said(step, cautions) {
        if let Some(said) = torques_in(&text).into_iter().find(|said| !agrees(*said)) {
            let found = format!("{said} N.m here, and another torque on the card of the {}", part.name());
            let place = at.place(step, sink);
            sink.raise_for(place, found, torque.show());
        }
    }
}

/// Lengths, pressures and times that a step says, and that agree with nothing that is given for it.
fn other_figures(facts: &Facts<'_>, step: &Step, cautions: &[&Caution], sink: &mut Sink<'_>) {
    for (at, text) in said(step, cautions) {
        for figure in figures_in(&text) {
            if let Some(given) = facts.against(step, figure, matches!(at, At::Caution(_))) {
                let found = format!("{} here agrees with nothing that is given", figure.show());
                let place = at.place(step, sink);
                sink.doubt(place, found, given);
            }
        }
    }
}

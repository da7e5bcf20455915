//! Two values for one fact.

use crate::check::facts::{Facts, texts_of};
use crate::check::figures::{bores_in, figures_in, torques_in};
use crate::check::finding::{Finding, Look};
use crate::check::language::{has_word, threads_in};
use crate::check::sink::Sink;
use crate::check::subject::OnPack;
use crate::quantity::Unit;
use crate::rulebase::{Caution, Deed, Part, Step, UnitCard};
use crate::source::Level;

/// The same fact is given twice, with two values.
pub static FINDING: Finding = Finding {
    name: "two values for one fact",
    level: Level::Wrong,
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
            other_figures(&facts, step, step.before.iter().filter_map(|id| on.pack.caution(id)), sink);
            let Some(part) = step.about.as_deref().and_then(|id| card.part(id)) else { continue };
            let cautions = step.before.iter().filter_map(|id| on.pack.caution(id));
            on_step(step, part, cautions, sink);
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

fn on_step<'a>(step: &Step, part: &Part, cautions: impl Iterator<Item = &'a Caution>, sink: &mut Sink<'_>) {
    let Some(torque) = part.torque.and_then(|limit| limit.to(Unit::NewtonMetre).ok()) else { return };
    let guards = cautions.map(|one| (one.at.clone(), format!("{} {}", one.full, one.brief)));
    for (place, text) in texts_of(step, sink).into_iter().chain(guards) {
        let agrees = |said: f64| {
            torque.lo.is_none_or(|lo| said >= lo - 1e-9) && torque.hi.is_none_or(|hi| said <= hi + 1e-9)
        };
        if step.deed == Deed::Tighten
            && let Some(said) = torques_in(&text).into_iter().find(|said| !agrees(*said))
        {
            let found = format!("{said} N.m here, and another torque on the card of the {}", part.name());
            sink.raise_for(place, found, torque.show());
        }
    }
}

/// Lengths, pressures and times that a step says, and that agree with nothing that is given for it.
fn other_figures<'a>(
    facts: &Facts<'_>,
    step: &Step,
    cautions: impl Iterator<Item = &'a Caution>,
    sink: &mut Sink<'_>,
) {
    let own = texts_of(step, sink).into_iter().map(|(place, text)| (place, text, false));
    let guards = cautions.map(|one| (one.at.clone(), format!("{} {}", one.full, one.brief), true));
    for (place, text, guards) in own.collect::<Vec<_>>().into_iter().chain(guards) {
        for figure in figures_in(&text) {
            if let Some(given) = facts.against(step, figure, guards) {
                sink.doubt(
                    place.clone(),
                    format!("{} here agrees with nothing that is given", figure.show()),
                    given,
                );
            }
        }
    }
}

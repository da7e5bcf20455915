//! Leaving a step out, and closing one out of limits as a deviation: with a reason and a second utterance where it matters.

use crate::act::Act;
use crate::bench::desk::Desk;
use crate::bench::{Ack, Part, Question, Refusal, deeds, flow, present};
use crate::event::{Event, Kept, Pending};
use crate::rulebase::{Procedure, Step, UnitCard};

/// Leave this step out.
pub fn skip(desk: &mut Desk<'_>, act: &Act) {
    let (Some(card), Some(procedure)) = (desk.card(), desk.procedure()) else {
        return super::job::none_open(desk);
    };
    let Some(step) = desk.cursor().and_then(|id| procedure.step(&id).cloned()) else { return };
    let name = present::title(&card, &step);
    if flow::makes_safe(&procedure, &step) {
        return desk.say(Part::Refused(Refusal::NeverSkipped { name }));
    }
    let reason = act.slots.reason.clone().or_else(|| act.slots.text.clone());
    if desk.place().is_some_and(|place| place.out.contains(&step.id) || place.failed.contains_key(&step.id)) {
        return ask(desk, &card, &step, reason, true);
    }
    if is_critical(&step) {
        return ask(desk, &card, &step, reason, false);
    }
    let reason = reason.unwrap_or_default();
    desk.emit(Event::Skipped { step: step.id.clone(), reason, critical: false });
    desk.say(Part::Ack(Ack::Skipped(name)));
}

/// Whether a step is critical: its value is read back, or a list rests on it.
pub fn is_critical(step: &Step) -> bool {
    step.reads_back.is_some() || step.read.as_ref().is_some_and(|read| read.critical)
}

/// Asks for the reason, or says it back for the second utterance.
pub fn ask(desk: &mut Desk<'_>, card: &UnitCard, step: &Step, reason: Option<String>, deviation: bool) {
    let name = present::title(card, step);
    let id = step.id.clone();
    let pending = if deviation {
        Pending::Deviation { step: id, reason: reason.clone() }
    } else {
        Pending::Skip { step: id, reason: reason.clone() }
    };
    desk.open(pending);
    desk.say(Part::Question(match reason {
        None => Question::Reason { name, deviation },
        Some(reason) => Question::Sure { name, reason, deviation },
    }));
}

/// The second utterance has come: the step is left out, or left out of limits.
pub fn sure(
    desk: &mut Desk<'_>,
    card: &UnitCard,
    procedure: &Procedure,
    id: &str,
    reason: &str,
    deviation: bool,
) {
    let Some(step) = procedure.step(id) else { return };
    desk.emit(Event::Settled);
    let name = present::title(card, step);
    if !deviation {
        desk.emit(Event::Skipped { step: id.to_owned(), reason: reason.to_owned(), critical: true });
        return desk.say(Part::Ack(Ack::Skipped(name)));
    }
    let value = last_value(desk, id);
    let moved = deeds::effects(card, step, value.as_ref());
    desk.emit(Event::Deviated { step: id.to_owned(), reason: reason.to_owned(), value, moved });
    desk.say(Part::Ack(Ack::Deviated(name)));
}

/// The value the step was last given.
fn last_value(desk: &Desk<'_>, id: &str) -> Option<Kept> {
    let here = desk.place_id();
    let mut entries = desk.state.record.kept.iter().rev();
    entries
        .find(|entry| entry.place == here && !entry.corrected && entry.kept.step.as_deref() == Some(id))
        .map(|entry| entry.kept.clone())
}

//! Cautions before their step: in full once a job and person, later the signal word and one clause; never silent.

use super::desk::Desk;
use super::{CautionCard, Part};
use crate::event::{Event, Pending};
use crate::rulebase::{Caution, Step};

/// Gives the step's cautions; true when one waits for its own acknowledgement, so that the step waits too.
pub fn give(desk: &mut Desk<'_>, step: &Step) -> bool {
    let mut waiting = Vec::new();
    for caution in cards(desk, step) {
        let full = !was_given(desk, &caution.id);
        let acknowledge = caution.signal.wants_acknowledgement() && !is_acknowledged(desk, &caution.id);
        desk.emit(Event::Cautioned { caution: caution.id.clone(), full });
        say(desk, &caution, full, acknowledge);
        if acknowledge {
            waiting.push(caution.id);
        }
    }
    if waiting.is_empty() {
        return false;
    }
    desk.open(Pending::Acknowledge { cautions: waiting });
    true
}

/// Says all of the step's cautions again, in full.
pub fn again(desk: &mut Desk<'_>, step: &Step) -> bool {
    let cards = cards(desk, step);
    for caution in &cards {
        say(desk, caution, true, false);
    }
    !cards.is_empty()
}

/// The cautions of a step, the gravest first.
pub fn cards(desk: &Desk<'_>, step: &Step) -> Vec<Caution> {
    let mut cards: Vec<Caution> =
        step.before.iter().filter_map(|id| desk.rules.cautions.get(id).cloned()).collect();
    cards.sort_by_key(|caution| caution.signal);
    cards
}

/// Whether a step has a caution that the person in hand has not acknowledged.
pub fn holds(desk: &Desk<'_>, step: &Step) -> bool {
    cards(desk, step)
        .iter()
        .any(|caution| caution.signal.wants_acknowledgement() && !is_acknowledged(desk, &caution.id))
}

fn say(desk: &mut Desk<'_>, caution: &Caution, full: bool, acknowledge: bool) {
    let text = if full { &caution.full } else { &caution.brief }.clone();
    desk.say(Part::Caution(CautionCard { signal: caution.signal, text, acknowledge }));
}

fn was_given(desk: &Desk<'_>, id: &str) -> bool {
    let progress = &desk.state.progress;
    progress.cautioned.contains(&(progress.person.clone(), id.to_owned()))
}

fn is_acknowledged(desk: &Desk<'_>, id: &str) -> bool {
    let progress = &desk.state.progress;
    progress.acknowledged.contains(&(progress.person.clone(), id.to_owned()))
}

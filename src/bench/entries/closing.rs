//! Closing a step, and failing one: the only two places where that happens.

use crate::bench::desk::Desk;
use crate::bench::{Consequence, deeds, present, timers};
use crate::event::{Change, Event, How, Kept};
use crate::rulebase::{Deed, Step, UnitCard};

/// Closes a step, with what it does to its part and the clocks it starts.
pub fn close(desk: &mut Desk<'_>, card: &UnitCard, step: &Step, how: How, value: Option<&Kept>) {
    let renewed = step.about.as_ref().filter(|_| step.deed == Deed::Replace && step.read.is_none());
    if let Some(about) = renewed.filter(|about| !kept_as_fitted(desk, about)) {
        desk.emit(Event::Fitted { about: about.clone(), text: String::new() });
    }
    let mut moved = deeds::effects(card, step, value);
    if present::counts_in(desk, card, step).is_some() {
        // Counted inwards, it ends on its seat.
        moved.iter_mut().for_each(|moved| moved.change = Change::At { value: 0.0 });
    }
    desk.emit(Event::StepDone { step: step.id.clone(), how, moved: moved.clone() });
    timers::for_locker(desk, card, &moved);
    if step.deed != Deed::Wait {
        timers::start_for(desk, step);
    }
}

/// Whether the line in hand has told of the new part already.
fn kept_as_fitted(desk: &Desk<'_>, part: &str) -> bool {
    desk.events.iter().any(|event| matches!(event, Event::Fitted { about, .. } if about == part))
}

/// Fails a step, and says what follows: its branch, a stop, or that it stays open.
pub fn fail(desk: &mut Desk<'_>, step: &Step) -> Consequence {
    let failed = desk.place().and_then(|place| place.failed.get(&step.id)).copied().unwrap_or_default();
    let attempt = failed + 1;
    let branch = !step.fails.is_empty() && attempt < step.tries.max(2);
    let mut inner = Vec::new();
    for step in &step.fails {
        step.collect(&mut inner);
    }
    let reopens = if branch { inner.iter().map(|step| step.id.clone()).collect() } else { Vec::new() };
    desk.emit(Event::StepFailed { step: step.id.clone(), attempt, branch, reopens });
    match (branch, &step.stop) {
        (true, _) => Consequence::Branch,
        (false, Some(stop)) if attempt >= step.tries => {
            let text = stop.clone();
            desk.emit(Event::Finding {
                step: Some(step.id.clone()),
                about: step.about.clone(),
                text: text.clone(),
            });
            Consequence::Stop(text)
        }
        _ => Consequence::StaysOpen,
    }
}

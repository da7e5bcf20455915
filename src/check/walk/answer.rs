//! The right answer to whatever a job waits for.

use super::candidates::{Literals, values};
use super::hand::{Hand, Node, Step as Done};
use crate::act::{ActName, Slots, WaitingFor};
use crate::check::subject::OnProcedure;
use crate::event::{Event, Verdict};
use crate::quantity::Unit;
use crate::rulebase::{Deed, Step};

/// Answers rightly; none when no answer is taken.
pub fn rightly(hand: &mut Hand<'_>, on: &OnProcedure<'_>, literals: &Literals, node: &Node) -> Option<Done> {
    let asked = node.state.progress.pending.is_some();
    let step = node.cursor().and_then(|id| on.steps.iter().copied().find(|step| step.id == id));
    match (node.waiting.kind, step) {
        (WaitingFor::Text, _) => Some(words(hand, node)),
        (WaitingFor::Nothing, _) => Some(hand.say(node, ActName::Finish)),
        (WaitingFor::Done, Some(step)) if step.deed == Deed::Wait => {
            Some(hand.say(&waited(node, step), ActName::Confirm))
        }
        (WaitingFor::Done | WaitingFor::YesOrNo | WaitingFor::Tool, _) => {
            Some(hand.say(node, ActName::Confirm))
        }
        (_, Some(step)) if !asked => number(hand, on, literals, node, step),
        _ => Some(hand.say(node, ActName::Confirm)),
    }
}

/// The same job when the wait of a step is over.
fn waited(node: &Node, step: &Step) -> Node {
    let seconds =
        step.timer.as_ref().and_then(|timer| timer.lasts.in_unit(Unit::Second).ok()).unwrap_or_default();
    node.clone().later(seconds.ceil() as i64)
}

/// Words, where a step or a question wants some.
pub fn words(hand: &mut Hand<'_>, node: &Node) -> Done {
    hand.act(node, ActName::Note, Slots { text: Some("four one seven".to_owned()), ..Slots::default() })
}

/// A value said.
pub fn value(hand: &mut Hand<'_>, node: &Node, value: f64) -> Done {
    hand.act(node, ActName::Reading, Slots { value: Some(value), ..Slots::default() })
}

/// The first value that the step takes.
fn number(
    hand: &mut Hand<'_>,
    on: &OnProcedure<'_>,
    literals: &Literals,
    node: &Node,
    step: &Step,
) -> Option<Done> {
    let mut last = None;
    for try_it in values(on, node, step, literals) {
        let done = value(hand, node, try_it);
        if verdict(&done, step).is_some_and(|verdict| verdict != Verdict::Out) {
            return Some(done);
        }
        last = Some(done);
    }
    last
}

/// What came of a value at its step.
pub fn verdict(done: &Done, step: &Step) -> Option<Verdict> {
    done.events.iter().find_map(|event| match event {
        Event::Reading(kept) if kept.step.as_deref() == Some(step.id.as_str()) => Some(kept.verdict),
        _ => None,
    })
}

/// The value that a step was closed with.
pub fn closed_with(done: &Done, step: &Step) -> Option<f64> {
    done.events.iter().find_map(|event| match event {
        Event::Reading(kept) if kept.step.as_deref() == Some(step.id.as_str()) => kept.value,
        _ => None,
    })
}

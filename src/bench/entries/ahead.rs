//! Running ahead: named steps closed in their order, never past a make-safe or critical step.

use super::closing;
use super::confirm::{needs_value, says_only};
use crate::act::Act;
use crate::bench::desk::Desk;
use crate::bench::flow::{self, Judge};
use crate::bench::{Ack, Part, Refusal, cautions, present};
use crate::event::How;
use crate::rulebase::{Procedure, Step, UnitCard};

/// Closes the next open step of the named part, if nothing that may not be passed stands before it.
pub fn confirm(desk: &mut Desk<'_>, card: &UnitCard, procedure: &Procedure, about: &str, act: &Act) {
    let fits = |step: &Step| {
        !needs_value(step) && !says_only(desk, act, step.deed.as_str()) && !says_only(desk, act, "step")
    };
    match find(desk, procedure, about, &fits) {
        Found::Step(step) => {
            closing::close(desk, card, &step, How::Ahead, None);
            desk.say(Part::Ack(Ack::Done(vec![present::title(card, &step)])));
        }
        Found::Blocked(first) => {
            let name = card.name_of(about).to_owned();
            let first = present::title(card, &first);
            desk.say(Part::Refused(Refusal::NotPast { name, first }));
        }
        Found::Nothing => {
            desk.say(Part::Ack(Ack::Already(card.name_of(about).to_owned())));
        }
    }
}

/// What looking ahead found.
pub enum Found {
    /// A step that may be closed now.
    Step(Box<Step>),
    /// A step that has to come first.
    Blocked(Box<Step>),
    /// No open step of that part.
    Nothing,
}

/// Looks ahead for an open step of that part that `fits`.
pub fn find(desk: &Desk<'_>, procedure: &Procedure, about: &str, fits: &dyn Fn(&Step) -> bool) -> Found {
    let Some(place) = desk.place() else { return Found::Nothing };
    let judge = Judge { rules: desk.rules, state: &desk.state, now: desk.now };
    let ahead = judge.ahead(procedure, place);
    let named = |step: &&&Step| step.about.as_deref() == Some(about) && fits(step);
    let Some(target) = ahead.iter().find(named) else { return Found::Nothing };
    if let Some(first) = judge.branch(target, place) {
        return Found::Blocked(Box::new(first.clone()));
    }
    let first =
        ahead.iter().take_while(|step| step.id != target.id).find(|step| fixed(desk, procedure, step));
    let own = guarded(desk, procedure, target).then_some(target);
    match first.or(own) {
        Some(first) => Found::Blocked(Box::new((**first).clone())),
        None => Found::Step(Box::new((**target).clone())),
    }
}

/// Whether the step may not be passed: make-safe, critical, danger, a list that is read back.
fn fixed(desk: &Desk<'_>, procedure: &Procedure, step: &Step) -> bool {
    guarded(desk, procedure, step)
        || step.read.as_ref().is_some_and(|read| read.critical)
        || !step.fails.is_empty()
        || step.answers_yes_or_no()
}

/// Whether the step may not be closed ahead of its turn.
fn guarded(desk: &Desk<'_>, procedure: &Procedure, step: &Step) -> bool {
    flow::makes_safe(procedure, step) || cautions::holds(desk, step) || step.reads_back.is_some()
}

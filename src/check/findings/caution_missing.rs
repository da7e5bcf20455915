//! Caution missing.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnProcedure;
use crate::quantity::Dimension;
use crate::rulebase::{AdjusterKind, Deed, Signal, Step};
use crate::source::Level;

/// A step that can hurt somebody, or break what holds them, has no caution before it.
pub static FINDING: Finding = Finding {
    name: "caution missing",
    level: Level::Wrong,
    milder: true,
    what: "A step that can hurt somebody, or break what holds them, has no caution before it.",
    why: "The technician learns of the danger from the accident.",
    example: "strike: foot-nut without before: [flying chips]",
    mend: "name the caution with `before:`; cautions are in `cautions.yaml`",
    look: Look::Procedure(look),
};

fn look(on: &OnProcedure<'_>, sink: &mut Sink<'_>) {
    for step in on.steps {
        let signals: Vec<Signal> =
            step.before.iter().filter_map(|id| Some(on.pack.caution(id)?.signal)).collect();
        let people = signals.iter().any(|signal| *signal != Signal::Notice);
        match hazard(on, step) {
            Some(hazard) if !people && !told_above(on, step) => {
                sink.raise(
                    step.at.clone(),
                    format!("`{}` with no caution before it: {hazard}", step.deed.as_str()),
                );
            }
            None if step.deed == Deed::Threadlock && !people && !told(on, step) => {
                sink.doubt(
                    step.at.clone(),
                    "threadlocker with no caution before it",
                    "a caution for skin and eyes",
                );
            }
            _ => {}
        }
    }
}

/// Whether a step under an `else` does again what was done with a caution on the way to it.
fn told_above(on: &OnProcedure<'_>, step: &Step) -> bool {
    let top = on.procedure.phases.iter().any(|phase| phase.steps.iter().any(|one| one.id == step.id));
    let mut before = on.steps.iter().take_while(|one| one.id != step.id);
    !top && before.any(|one| one.deed == step.deed && one.about == step.about && !one.before.is_empty())
}

/// Whether an earlier step of the same deed has told it.
fn told(on: &OnProcedure<'_>, step: &Step) -> bool {
    let before = on.steps.iter().take_while(|one| one.id != step.id);
    before.into_iter().any(|one| one.deed == step.deed && !one.before.is_empty())
}

/// What can happen, by what the step does to what.
fn hazard(on: &OnProcedure<'_>, step: &Step) -> Option<&'static str> {
    let about = step.about.as_deref();
    let gas = about
        .and_then(|id| on.card.adjuster(id))
        .is_some_and(|one| matches!(one.kind, AdjusterKind::Charge { .. }));
    let spring = on.part(step).is_some_and(|part| !part.springs.is_empty());
    let sealed = on.card.sizes.values().any(|size| size.unit.dimension() == Dimension::Pressure);
    match step.deed {
        Deed::Strike | Deed::Drive => Some("what is struck throws chips"),
        Deed::Heat => Some("what is heated burns, and bursts where it is closed"),
        Deed::Compress => Some("a compressed spring can let go"),
        Deed::Vent | Deed::Charge => Some("gas under pressure"),
        Deed::Prove if spring => Some("a spring that may be under load"),
        Deed::Prove if gas || sealed => Some("gas that may be under pressure"),
        Deed::Release if gas || spring => Some("stored energy is let go"),
        Deed::Tighten if on.part(step).is_some_and(|part| part.critical.is_some()) => {
            Some("a critical joint")
        }
        _ => None,
    }
}

//! No way of holding.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnProcedure;
use crate::rulebase::Deed;
use crate::source::Level;

/// A joint is turned, and nothing says how the other side is held.
pub static FINDING: Finding = Finding {
    name: "no way of holding",
    level: Level::Wrong,
    milder: false,
    what: "A joint is turned, and nothing says how the other side is held.",
    why: "The shaft turns in its seal, or the unit in the hand.",
    example: "loosen: foot-nut with no hold: on its card or at the step",
    mend: "give the part its `hold:`",
    look: Look::Procedure(look),
};

fn look(on: &OnProcedure<'_>, sink: &mut Sink<'_>) {
    let mut told = std::collections::BTreeSet::new();
    for step in on.steps.iter().filter(|step| matches!(step.deed, Deed::Loosen | Deed::Tighten)) {
        let Some(part) = on.part(step) else { continue };
        let turned = part.thread.is_some() && (part.torque.is_some() || part.nip.is_some());
        if turned && part.hold.is_none() && step.hold.is_none() && told.insert(&part.id) {
            sink.raise(
                step.at.clone(),
                format!("the {} is turned, and nothing says how the other side is held", part.name()),
            );
        }
    }
}

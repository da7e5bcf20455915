//! Renewed each time.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnProcedure;
use crate::rulebase::Deed;
use crate::source::Level;

/// A step that is always worked takes a new part, and the card does not say that it is new each time.
pub static FINDING: Finding = Finding {
    name: "renewed each time",
    level: Level::Doubtful,
    milder: false,
    what: "A step that is always worked takes a new part, and the card does not say that it is new each time.",
    why: "A procedure that forgets to renew it is not found out.",
    example: "replace: seal, and no single use: yes on its card",
    mend: "add `single use: yes` to the part; or put the step under an `else:` or a `when:`",
    look: Look::Procedure(look),
};

fn look(on: &OnProcedure<'_>, sink: &mut Sink<'_>) {
    let tops = on.procedure.phases.iter().flat_map(|phase| &phase.steps);
    for step in tops.filter(|step| step.deed == Deed::Replace && step.when.is_none()) {
        // A spring is chosen, and not used up.
        let Some(part) = on.part(step).filter(|part| part.springs.is_empty() && !part.single_use) else {
            continue;
        };
        sink.raise(
            step.at.clone(),
            format!("the {} is renewed each time, and its card does not say so", part.name()),
        );
    }
}

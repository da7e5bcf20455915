//! Nothing when it will not move.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnProcedure;
use crate::check::turning::is_turned;
use crate::rulebase::Deed;
use crate::source::Level;

/// A part is loosened or taken off, and its card has no ladder for when it will not move.
pub static FINDING: Finding = Finding {
    name: "nothing when it will not move",
    level: Level::Doubtful,
    milder: false,
    what: "A part is loosened or taken off, and its card has no ladder for when it will not move.",
    why: "The technician does what comes to hand, and that is a longer lever.",
    example: "loosen: top-nut with no stuck: on its card",
    mend: "add `stuck:`, mildest first, stopping before damage",
    look: Look::Procedure(look),
};

fn look(on: &OnProcedure<'_>, sink: &mut Sink<'_>) {
    let mut told = std::collections::BTreeSet::new();
    for step in on.steps.iter().filter(|step| step.deed == Deed::Loosen) {
        let Some(part) = on.part(step).filter(|part| is_turned(part) && part.stuck.is_empty()) else {
            continue;
        };
        if told.insert(&part.id) {
            sink.raise(
                step.at.clone(),
                format!("nothing says what to do when the {} will not move", part.name()),
            );
        }
    }
}

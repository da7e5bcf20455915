//! Not marked as critical.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnProcedure;
use crate::rulebase::{Deed, Signal};
use crate::source::Level;

/// A warning of what a wrong torque does stands at a joint whose card does not call it critical.
pub static FINDING: Finding = Finding {
    name: "not marked as critical",
    level: Level::Doubtful,
    milder: false,
    what: "A warning of what a wrong torque does stands at a joint whose card does not call it critical.",
    why: "Only the torque of a critical joint is asked for by value; of any other a \"done\" will do.",
    example: "tighten: foot-nut with before: [hollow shaft], and no critical: on its card",
    mend: "add `critical:` with the reason to the part, or take the caution off the step",
    look: Look::Procedure(look),
};

fn look(on: &OnProcedure<'_>, sink: &mut Sink<'_>) {
    for step in on.steps.iter().filter(|step| step.deed == Deed::Tighten) {
        let Some(part) = on.part(step).filter(|part| part.critical.is_none() && part.torque.is_some()) else {
            continue;
        };
        let grave = |id: &&String| {
            on.pack.caution(id).is_some_and(|one| matches!(one.signal, Signal::Danger | Signal::Warning))
        };
        if let Some(caution) = step.before.iter().find(grave) {
            let found = format!(
                "the caution `{}` for the {}, which is not critical",
                caution.replace('-', " "),
                part.name()
            );
            sink.raise(step.at.clone(), found);
        }
    }
}

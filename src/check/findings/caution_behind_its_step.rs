//! Caution behind its step.

use crate::check::finding::{Finding, Look};
use crate::check::language::names_in;
use crate::check::sink::Sink;
use crate::check::subject::OnProcedure;
use crate::rulebase::Step;
use crate::source::Level;

/// A caution that speaks of a part stands at a step on another part, just after the one it speaks of.
pub static FINDING: Finding = Finding {
    name: "caution behind its step",
    level: Level::Doubtful,
    milder: false,
    what: "A caution that speaks of a part stands at a step on another part, just after the one it speaks of.",
    why: "A caution that comes after the step has warned nobody.",
    example: "before: [press fit ring] at the step after rock: rebound-range",
    mend: "move it to the step that it is about",
    look: Look::Procedure(look),
};

fn look(on: &OnProcedure<'_>, sink: &mut Sink<'_>) {
    for (at, step) in on.steps.iter().enumerate() {
        for id in &step.before {
            let Some(caution) = on.pack.caution(id) else { continue };
            let named = names_in(on.card, &format!("{} {}", caution.full, caution.brief));
            let own = step.about.as_deref().is_none_or(|about| named.contains(about));
            // What another step has too, for the same thing, is no slip.
            let elsewhere = on.steps.iter().any(|other| {
                other.id != step.id
                    && other.deed == step.deed
                    && other.about == step.about
                    && other.before.contains(id)
            });
            if own || named.is_empty() || elsewhere {
                continue;
            }
            let before = at.checked_sub(1).and_then(|at| on.steps.get(at));
            if before.is_some_and(|before| is_meant(before, id, &named)) {
                let place = sink.of_step(step, "before");
                let name = id.replace('-', " ");
                sink.raise(place, format!("the caution `{name}` speaks of the step before this one"));
            }
        }
    }
}

fn is_meant(before: &Step, caution: &str, named: &std::collections::BTreeSet<&str>) -> bool {
    let about = before.about.as_deref().is_some_and(|about| named.contains(about));
    about && !before.before.iter().any(|id| id == caution)
}

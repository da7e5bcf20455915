//! Caution in one place only.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnProcedure;
use crate::source::Level;

/// A caution guards a step, and not another step that does the same thing to the same part.
pub static FINDING: Finding = Finding {
    name: "caution in one place only",
    level: Level::Doubtful,
    milder: false,
    what: "A caution guards a step, and not another step that does the same thing to the same part.",
    why: "On the path that comes by the other step nobody is warned.",
    example: "two steps refit: carrier, one with before: [lip over a thread]",
    mend: "name the caution with `before:` in both",
    look: Look::Procedure(look),
};

fn look(on: &OnProcedure<'_>, sink: &mut Sink<'_>) {
    for step in on.steps.iter().filter(|step| step.about.is_some()) {
        let same = on.steps.iter().filter(|other| {
            other.deed == step.deed
                && other.about == step.about
                && other.id != step.id
                && other.text == step.text
        });
        let missing = same.flat_map(|other| &other.before).find(|id| !step.before.contains(id));
        if let Some(caution) = missing {
            let name = caution.replace('-', " ");
            sink.raise(
                step.at.clone(),
                format!("the same step elsewhere has the caution `{name}`, and this one has not"),
            );
        }
    }
}

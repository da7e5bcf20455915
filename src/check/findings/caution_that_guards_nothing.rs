//! Caution that guards nothing.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnPack;
use crate::source::Level;
use std::collections::BTreeSet;

/// A caution that no step names.
pub static FINDING: Finding = Finding {
    name: "caution that guards nothing",
    level: Level::Doubtful,
    milder: false,
    what: "A caution that no step names.",
    why: "It was written for something, and whoever does that is not warned.",
    example: "a caution in `cautions.yaml` that stands in no `before:`",
    mend: "name it with `before:` at the step that it guards, or take it out",
    look: Look::Pack(look),
};

fn look(on: &OnPack<'_>, sink: &mut Sink<'_>) {
    let steps = on.pack.procedures.values().flat_map(|procedure| procedure.all_steps());
    let used: BTreeSet<&str> = steps.flat_map(|step| step.before.iter().map(String::as_str)).collect();
    for caution in on.pack.cautions.values().filter(|caution| !used.contains(caution.id.as_str())) {
        sink.raise(caution.at.clone(), "no step names this caution");
    }
}

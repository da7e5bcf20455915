//! Signal word in a step.

use crate::check::finding::{Finding, Look};
use crate::check::language::words;
use crate::check::sink::Sink;
use crate::check::subject::OnProcedure;
use crate::source::Level;

/// A warning written into a step or its note.
pub static FINDING: Finding = Finding {
    name: "signal word in a step",
    level: Level::Doubtful,
    milder: false,
    what: "A warning written into a step or its note.",
    why: "A warning that comes with the step comes too late, and is not acknowledged (ANSI Z535.6).",
    example: "note: Warning, the spring is under load.",
    mend: "make a caution of it in `cautions.yaml`, and name it with `before:`",
    look: Look::Procedure(look),
};

fn look(on: &OnProcedure<'_>, sink: &mut Sink<'_>) {
    for step in on.steps {
        for (field, text) in [("say", &step.text), ("note", &step.note)] {
            let first = text.as_deref().and_then(|text| words(text).first().map(|word| word.to_lowercase()));
            if first.is_some_and(|word| {
                matches!(word.as_str(), "danger" | "warning" | "caution" | "notice" | "beware" | "careful")
            }) {
                let place = sink.of_step(step, field);
                sink.raise(place, "a warning stands in the step itself");
            }
        }
    }
}

//! Condition comes last.

use crate::check::finding::{Finding, Look};
use crate::check::language::late_condition;
use crate::check::sink::Sink;
use crate::check::subject::OnProcedure;
use crate::source::Level;

/// A step whose condition stands behind what to do.
pub static FINDING: Finding = Finding {
    name: "condition comes last",
    level: Level::Style,
    milder: false,
    what: "A step whose condition stands behind what to do.",
    why: "It is done before the condition is heard (ASD-STE100: the condition first).",
    example: "say: Tighten the nut if it is loose.",
    mend: "begin with the condition: \"If the nut is loose, tighten it.\"; or make it a `when:`",
    look: Look::Procedure(look),
};

fn look(on: &OnProcedure<'_>, sink: &mut Sink<'_>) {
    for step in on.steps {
        let Some(word) = step.text.as_deref().and_then(late_condition) else { continue };
        let place = sink.of_step(step, "say");
        sink.raise(place, format!("`{word}` stands behind what to do"));
    }
}

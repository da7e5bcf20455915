//! More than one instruction.

use crate::check::finding::{Finding, Look};
use crate::check::language::second_instruction;
use crate::check::sink::Sink;
use crate::check::subject::OnProcedure;
use crate::source::Level;

/// A step that says two things to do.
pub static FINDING: Finding = Finding {
    name: "more than one instruction",
    level: Level::Style,
    milder: false,
    what: "A step that says two things to do.",
    why: "One of them is forgotten, and \"done\" stands for both (ASD-STE100: one instruction a sentence).",
    example: "say: Loosen the nut and remove the washer.",
    mend: "make two steps of it",
    look: Look::Procedure(look),
};

fn look(on: &OnProcedure<'_>, sink: &mut Sink<'_>) {
    for step in on.steps {
        let Some(second) = step.text.as_deref().and_then(second_instruction) else { continue };
        let place = sink.of_step(step, "say");
        sink.raise(place, format!("a second instruction begins at `{second}`"));
    }
}

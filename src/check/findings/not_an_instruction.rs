//! Not an instruction.

use crate::check::finding::{Finding, Look};
use crate::check::language::is_instruction;
use crate::check::sink::Sink;
use crate::check::subject::OnProcedure;
use crate::source::Level;

/// A step that does not begin with what to do.
pub static FINDING: Finding = Finding {
    name: "not an instruction",
    level: Level::Style,
    milder: false,
    what: "A step that does not begin with what to do.",
    why: "Whether it tells something or wants something done is not heard (ASD-STE100: the imperative).",
    example: "say: The nut should be loosened.",
    mend: "begin it with the verb: \"Loosen the nut.\"",
    look: Look::Procedure(look),
};

fn look(on: &OnProcedure<'_>, sink: &mut Sink<'_>) {
    for step in on.steps {
        let Some(text) = step.text.as_deref().filter(|text| !is_instruction(text)) else { continue };
        let place = sink.of_step(step, "say");
        sink.raise(
            place,
            format!("`{}` is no way to begin an instruction", text.split(' ').next().unwrap_or_default()),
        );
    }
}

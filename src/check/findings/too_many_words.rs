//! Too many words.

use crate::check::finding::{Finding, Look};
use crate::check::language::words;
use crate::check::sink::Sink;
use crate::check::subject::OnProcedure;
use crate::source::Level;

/// A step of more than 20 words.
pub static FINDING: Finding = Finding {
    name: "too many words",
    level: Level::Style,
    milder: false,
    what: "A step of more than 20 words.",
    why: "Read out in a loud room, the end of it is not heard (ASD-STE100, rule 5.1).",
    example: "say: Turn the ... (21 words)",
    mend: "make two steps of it, or take words out",
    look: Look::Procedure(look),
};

/// The most words of an instruction (ASD-STE100).
const MOST: usize = 20;

fn look(on: &OnProcedure<'_>, sink: &mut Sink<'_>) {
    for step in on.steps {
        let Some(text) = &step.text else { continue };
        let count = words(text).len();
        if count > MOST {
            let place = sink.of_step(step, "say");
            sink.raise_for(place, format!("{count} words"), format!("at most {MOST}"));
        }
    }
}

//! Words run together.

use crate::check::finding::{Finding, Look};
use crate::check::language::contraction;
use crate::check::sink::Sink;
use crate::check::subject::OnProcedure;
use crate::source::Level;

/// A contraction in a step or its question.
pub static FINDING: Finding = Finding {
    name: "words run together",
    level: Level::Style,
    milder: false,
    what: "A contraction in a step or its question.",
    why: "Spoken over noise, \"don't\" is heard as \"do\" (ASD-STE100: no contractions).",
    example: "say: Don't turn the shaft.",
    mend: "write both words out",
    look: Look::Procedure(look),
};

fn look(on: &OnProcedure<'_>, sink: &mut Sink<'_>) {
    for step in on.steps {
        let fields =
            [("say", &step.text), ("question", &step.question), ("stop", &step.stop), ("note", &step.note)];
        for (field, text) in fields.into_iter().filter_map(|(field, text)| Some((field, text.as_deref()?))) {
            if let Some(word) = contraction(text) {
                let place = sink.of_step(step, field);
                sink.raise(place, format!("`{word}`"));
            }
        }
    }
}

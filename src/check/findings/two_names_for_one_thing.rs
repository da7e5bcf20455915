//! Two names for one thing.

use crate::check::finding::{Finding, Look};
use crate::check::language::alias;
use crate::check::sink::Sink;
use crate::check::subject::OnProcedure;
use crate::source::Level;

/// A step calls its part by another name than the bench does.
pub static FINDING: Finding = Finding {
    name: "two names for one thing",
    level: Level::Style,
    milder: false,
    what: "A step calls its part by another name than the bench does.",
    why: "Whoever hears two names looks for two things.",
    example: "say: Run the bottom nut back., where the card says foot nut first",
    mend: "use the first name of `called:`",
    look: Look::Procedure(look),
};

fn look(on: &OnProcedure<'_>, sink: &mut Sink<'_>) {
    for step in on.steps {
        let (Some(text), Some(about)) = (&step.text, &step.about) else { continue };
        let called = on
            .card
            .adjuster(about)
            .map(|one| &one.called)
            .or_else(|| on.card.part(about).map(|part| &part.called));
        if let Some((alias, name)) = called.and_then(|called| alias(text, called)) {
            let place = sink.of_step(step, "say");
            sink.raise_for(place, format!("`{alias}` here"), format!("`{name}`"));
        }
    }
}

//! Judgement that decides nothing.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Seen;
use crate::source::Level;

/// An `accept` that took, or refused, every value that was tried.
pub static FINDING: Finding = Finding {
    name: "judgement that decides nothing",
    level: Level::Doubtful,
    milder: false,
    what: "An `accept` that took, or refused, every value that was tried.",
    why: "A reading that nothing can fail is not looked at; one that nothing can pass stops the job.",
    example: "accept: value < 1000000",
    mend: "mend what it compares, or give the step a `limit:`",
    look: Look::Walk(look),
};

fn look(seen: &Seen<'_>, sink: &mut Sink<'_>) {
    // A walk that was cut short has not seen all that they can give.
    if seen.cut {
        return;
    }
    for step in seen.on.steps.iter().filter(|step| step.accept.is_some()) {
        let Some(both) = seen.accepts.get(&step.id) else { continue };
        let always = match (both.yes, both.no) {
            (true, false) => "took",
            (false, true) => "refused",
            _ => continue,
        };
        let place = sink.of_step(step, "accept");
        sink.raise(place, format!("this {always} every value that was tried"));
    }
}

//! Guard that decides nothing.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Seen;
use crate::source::Level;

/// A `when` that held, or did not hold, on every path that was walked.
pub static FINDING: Finding = Finding {
    name: "guard that decides nothing",
    level: Level::Doubtful,
    milder: false,
    what: "A `when` that held, or did not hold, on every path that was walked.",
    why: "Either the step always applies and the guard is in the way, or it never does and something is left undone.",
    example: "when: 1 < 0",
    mend: "take the guard out, or mend what it compares",
    look: Look::Walk(look),
};

fn look(seen: &Seen<'_>, sink: &mut Sink<'_>) {
    // A walk that was cut short has not seen all that they can give.
    if seen.cut {
        return;
    }
    for step in seen.on.steps {
        let Some(both) = seen.guards.get(&step.id) else { continue };
        let always = match (both.yes, both.no) {
            (true, false) => "held",
            (false, true) => "did not hold",
            _ => continue,
        };
        let place = sink.of_step(step, "when");
        sink.raise(place, format!("this {always} on every path"));
    }
}

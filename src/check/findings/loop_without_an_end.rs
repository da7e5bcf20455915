//! Loop without an end.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Seen;
use crate::source::Level;

/// A step that is failed again and again never says to stop.
pub static FINDING: Finding = Finding {
    name: "loop without an end",
    level: Level::Wrong,
    milder: false,
    what: "A step that is failed again and again never says to stop.",
    why: "The technician is sent round, with more force each time.",
    example: "a step with `else:` and no `stop:`",
    mend: "add `stop:` with what is said when it has failed that often",
    look: Look::Walk(look),
};

fn look(seen: &Seen<'_>, sink: &mut Sink<'_>) {
    for step in seen.on.steps {
        if seen.unstopped.contains(&step.id) {
            let found =
                format!("failed {} times, this step still says nothing but try again", step.tries.max(2) + 2);
            sink.raise(step.at.clone(), found);
        }
    }
}

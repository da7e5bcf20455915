//! Step never reached.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Seen;
use crate::source::Level;

/// A step that no path of the procedure comes to.
pub static FINDING: Finding = Finding {
    name: "step never reached",
    level: Level::Wrong,
    milder: false,
    what: "A step that no path of the procedure comes to.",
    why: "What it does is never done.",
    example: "a step under `else:` of a step that nothing can fail",
    mend: "mend what keeps it from being reached, or take it out",
    look: Look::Walk(look),
};

fn look(seen: &Seen<'_>, sink: &mut Sink<'_>) {
    let never = |id: &str| seen.guards.get(id).is_some_and(|both| both.no && !both.yes);
    // Behind a step at which every path ends, or a guard that never holds, everything is out of reach: one is enough.
    if seen.cut || !seen.ended {
        return;
    }
    for step in seen.on.steps {
        if !seen.shown.contains(&step.id) && !never(&step.id) {
            sink.raise(step.at.clone(), "no path comes to this step");
        }
    }
}

//! No way on.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Seen;
use crate::source::Level;

/// A step from which no answer leads on, or at which the job cannot be taken up again.
pub static FINDING: Finding = Finding {
    name: "no way on",
    level: Level::Wrong,
    milder: false,
    what: "A step from which no answer leads on, or at which the job cannot be taken up again.",
    why: "The job cannot be brought to its end.",
    example: "accept: value > 100 && value < 50",
    mend: "mend what its answer is held against",
    look: Look::Walk(look),
};

fn look(seen: &Seen<'_>, sink: &mut Sink<'_>) {
    for step in seen.on.steps {
        if seen.endless.contains(&step.id) {
            sink.raise(step.at.clone(), "no answer that was tried leads on from this step");
        }
        if seen.lost.contains(&step.id) {
            sink.raise(step.at.clone(), "the job cannot be taken up again at this step");
        }
    }
    if !seen.ended && seen.endless.is_empty() {
        sink.raise(seen.on.procedure.at.clone(), "no path comes to the end of this procedure");
    }
}

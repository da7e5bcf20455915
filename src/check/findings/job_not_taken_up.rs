//! Job not taken up.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Seen;
use crate::source::Level;

/// The bench, opened again at a step, has nothing to say or stands nowhere.
pub static FINDING: Finding = Finding {
    name: "job not taken up",
    level: Level::Wrong,
    what: "The bench, opened again at a step, has nothing to say or stands nowhere.",
    why: "A job that was left overnight cannot be gone on with.",
    example: "(none is known: it proves the bench and the procedure together)",
    mend: "report it with the procedure",
    look: Look::Walk(look),
};

fn look(seen: &Seen<'_>, sink: &mut Sink<'_>) {
    for step in seen.on.steps.iter().filter(|step| seen.lost.contains(&step.id)) {
        sink.raise(step.at.clone(), "the job cannot be taken up again at this step");
    }
}

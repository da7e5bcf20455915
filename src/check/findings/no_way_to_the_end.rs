//! No way to the end.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Seen;
use crate::source::Level;

/// Right answers do not lead to the end of the procedure.
pub static FINDING: Finding = Finding {
    name: "no way to the end",
    level: Level::Wrong,
    what: "Right answers do not lead to the end of the procedure.",
    why: "The job cannot be closed.",
    example: "a step whose reading no value satisfies",
    mend: "mend the step at which it goes no further",
    look: Look::Walk(look),
};

fn look(seen: &Seen<'_>, sink: &mut Sink<'_>) {
    if !seen.ended && seen.endless.is_empty() {
        sink.raise(seen.on.procedure.at.clone(), "no path comes to the end of this procedure");
    }
}

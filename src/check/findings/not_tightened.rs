//! Not tightened.

use crate::bench::state::Fitting;
use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Finish;
use crate::source::Level;

/// A fastener that was loosened or fitted by hand is not tightened at the end of a path.
pub static FINDING: Finding = Finding {
    name: "not tightened",
    level: Level::Wrong,
    milder: false,
    what: "A fastener that was loosened or fitted by hand is not tightened at the end of a path.",
    why: "It works loose on the road.",
    example: "loosen: top-nut, and no tighten: top-nut after it",
    mend: "add the step that tightens it, by the torque or the nip of its card; or, where that is done on the vehicle, a `record:` of the part for who was told",
    look: Look::End(look),
};

fn look(finish: &Finish<'_>, sink: &mut Sink<'_>) {
    for (id, known) in &finish.place.parts {
        let Some(part) = finish.on.card.part(id) else { continue };
        // What is tightened on the vehicle is told at hand-over, and the telling is recorded.
        if finish.trail.told.contains(id) {
            continue;
        }
        let fastens = part.torque.is_some() || part.nip.is_some();
        if known.disturbed && fastens && matches!(known.fitting, Fitting::Loose | Fitting::On) {
            sink.raise(
                finish.at(id),
                format!("the {} is left by hand, neither torqued nor nipped", part.name()),
            );
        } else if known.disturbed && !fastens && known.fitting == Fitting::Loose && part.thread.is_some() {
            sink.raise(
                finish.at(id),
                format!("the {} is left loose, and its card has neither torque nor nip", part.name()),
            );
        }
    }
}

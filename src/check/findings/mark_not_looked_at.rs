//! Mark not looked at.

use crate::bench::state::Fitting;
use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Finish;
use crate::source::Level;

/// A witness mark is not looked at after the last thing that could move it.
pub static FINDING: Finding = Finding {
    name: "mark not looked at",
    level: Level::Wrong,
    milder: false,
    what: "A witness mark is not looked at after the last thing that could move it.",
    why: "A part that turned while it was tightened is not seen.",
    example: "tighten: foot-nut with a mark on its card, and no look: foot-nut after it",
    mend: "add `look:` after the last step that moves it",
    look: Look::End(look),
};

fn look(finish: &Finish<'_>, sink: &mut Sink<'_>) {
    for (id, known) in &finish.place.parts {
        let Some(part) = finish.on.card.part(id).filter(|part| part.mark.is_some()) else { continue };
        if known.disturbed && !known.mark_seen && known.fitting != Fitting::Off {
            sink.raise(finish.at(id), format!("the mark of the {} is not looked at after this", part.name()));
        }
    }
    for id in &finish.trail.unlooked {
        if finish.on.card.mark(id).is_some() {
            let name = finish.on.card.name_of(id);
            sink.raise(finish.at(id), format!("the mark of the {name} is not looked at after this"));
        }
    }
}

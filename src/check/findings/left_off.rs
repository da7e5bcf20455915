//! Left off.

use crate::bench::state::Fitting;
use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Finish;
use crate::source::Level;

/// A part that came off is not back on at the end of a path.
pub static FINDING: Finding = Finding {
    name: "left off",
    level: Level::Wrong,
    milder: false,
    what: "A part that came off is not back on at the end of a path.",
    why: "The unit goes out without it, and nobody is asked.",
    example: "remove: carrier, and no refit: carrier after it",
    mend: "add the step that refits it, before the end",
    look: Look::End(look),
};

fn look(finish: &Finish<'_>, sink: &mut Sink<'_>) {
    for (id, known) in &finish.place.parts {
        if known.fitting == Fitting::Off {
            sink.raise(
                finish.at(id),
                format!("the {} came off and is not back on at the end", finish.on.card.name_of(id)),
            );
        }
    }
    for id in &finish.trail.apart {
        sink.raise(
            finish.at(id),
            format!("the {} came off and is not back on at the end", finish.on.card.name_of(id)),
        );
    }
}

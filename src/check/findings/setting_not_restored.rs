//! Setting not restored.

use crate::bench::state::Position;
use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Finish;
use crate::source::Level;

/// An adjuster that was moved, zeroed or apart is left neither as found nor as wanted.
pub static FINDING: Finding = Finding {
    name: "setting not restored",
    level: Level::Wrong,
    milder: false,
    what: "An adjuster that was moved, zeroed or apart is left neither as found nor as wanted.",
    why: "The vehicle goes out on a setting that nobody chose.",
    example: "zero: slow-rebound, and no set: slow-rebound after it",
    mend: "add the step that sets it, after the last thing that moves it",
    look: Look::End(look),
};

fn look(finish: &Finish<'_>, sink: &mut Sink<'_>) {
    for adjuster in &finish.on.card.adjusters {
        let Some(known) = finish.place.adjusters.get(&adjuster.id) else { continue };
        let moved = known.position != Position::Uncounted;
        let as_found = known.found.is_some_and(|found| known.position == Position::At(found));
        if moved && known.left_where_it_stands().is_none() && !as_found {
            sink.raise(
                finish.at(&adjuster.id),
                format!("the {} is moved and not set again at the end", adjuster.name()),
            );
        }
    }
}

//! Travel not counted again.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Finish;
use crate::source::Level;

/// A clicker that was apart or zeroed is not counted from stop to stop again.
pub static FINDING: Finding = Finding {
    name: "travel not counted again",
    level: Level::Wrong,
    milder: false,
    what: "A clicker that was apart or zeroed is not counted from stop to stop again.",
    why: "A needle that lost travel or stands on a burr sets another damping at the same number.",
    example: "remove: needle-collar, with through: [needle-collar] on the clicker, and no count with as: travel again",
    mend: "add `count:` with `as: travel again`, after it is together and before it is set",
    look: Look::End(look),
};

fn look(finish: &Finish<'_>, sink: &mut Sink<'_>) {
    for id in &finish.trail.uncounted {
        let name = finish.on.card.name_of(id);
        sink.raise(finish.at(id), format!("the travel of the {name} is not counted again"));
    }
}

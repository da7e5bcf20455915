//! Settings as left not read back.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Finish;
use crate::source::Level;

/// Adjusters are set, and the settings as left are not read back after the last of them.
pub static FINDING: Finding = Finding {
    name: "settings as left not read back",
    level: Level::Wrong,
    milder: false,
    what: "Adjusters are set, and the settings as left are not read back after the last of them.",
    why: "What is written on the sheet is not what somebody has confirmed.",
    example: "set: slow-rebound, and no record with reads back: left after it",
    mend: "add `- record: settings as left` with `reads back: left`, at the end",
    look: Look::End(look),
};

fn look(finish: &Finish<'_>, sink: &mut Sink<'_>) {
    for id in &finish.trail.unsaid {
        let name = finish.on.card.name_of(id);
        sink.raise(
            finish.at(id),
            format!("the {name} is set, and the settings as left are not read back after it"),
        );
    }
}

//! Still to be filled in.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnPack;
use crate::source::Level;
use crate::source::Place;

/// A place that is marked as still to be filled in.
pub static FINDING: Finding = Finding {
    name: "still to be filled in",
    level: Level::Doubtful,
    milder: false,
    what: "A place that is marked as still to be filled in.",
    why: "What stands there is made up, so that the rest can be checked.",
    example: "torque: 40 N.m   # FILL IN",
    mend: "put the true value there, and take the mark out",
    look: Look::Pack(look),
};

/// The mark that `pack new` leaves.
const MARK: &str = "FILL IN";

fn look(on: &OnPack<'_>, sink: &mut Sink<'_>) {
    for (path, text) in on.pack.files().iter().filter(|(path, _)| path.ends_with(".yaml")) {
        for (line, text) in (1..).zip(text.lines()) {
            let Some((before, _)) = text.split_once(MARK) else { continue };
            let column = u32::try_from(before.chars().count() + 1).unwrap_or(1);
            let place = Place::new(path.as_str(), line, column).to(line, column + 7);
            sink.raise(place, "this is still to be filled in");
        }
    }
}

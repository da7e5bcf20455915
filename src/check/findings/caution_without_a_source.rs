//! Caution without a source.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnPack;
use crate::source::Level;

/// A caution that nobody says the source of.
pub static FINDING: Finding = Finding {
    name: "caution without a source",
    level: Level::Doubtful,
    milder: false,
    what: "A caution that nobody says the source of.",
    why: "A caution that nobody stands behind is passed over.",
    example: "a caution with no source:",
    mend: "add `source:`, or write \"common practice, no source\"",
    look: Look::Pack(look),
};

fn look(on: &OnPack<'_>, sink: &mut Sink<'_>) {
    for caution in on.pack.cautions.values().filter(|caution| caution.source.is_none()) {
        sink.raise(caution.at.clone(), "nothing says where this caution comes from");
    }
}

//! No source.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnCard;
use crate::rulebase::Part;
use crate::source::Level;

/// A figure that nobody says the source of.
pub static FINDING: Finding = Finding {
    name: "no source",
    level: Level::Doubtful,
    milder: false,
    what: "A figure that nobody says the source of.",
    why: "Nobody can tell a maker's figure from a guess.",
    example: "a part with torque: and no source: on it or on its card",
    mend: "add `source:`, or write \"common practice, no source\"",
    look: Look::Card(look),
};

fn look(on: &OnCard<'_>, sink: &mut Sink<'_>) {
    if on.card.source.is_some() {
        return;
    }
    for part in on.card.parts.iter().filter(|part| part.source.is_none() && has_figures(part)) {
        sink.raise(
            part.at.clone(),
            format!("nothing says where the figures of the {} come from", part.name()),
        );
    }
    for adjuster in on.card.adjusters.iter().filter(|one| one.source.is_none()) {
        sink.raise(
            adjuster.at.clone(),
            format!("nothing says where the figures of the {} come from", adjuster.name()),
        );
    }
}

fn has_figures(part: &Part) -> bool {
    part.torque.is_some()
        || part.thread.is_some()
        || part.locker.is_some()
        || !part.springs.is_empty()
        || !part.limits.is_empty()
}

//! Settings wanted not asked.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Moment;
use crate::rulebase::Deed;
use crate::source::Level;

/// An adjuster is set, and nobody was asked where the customer wants it.
pub static FINDING: Finding = Finding {
    name: "settings wanted not asked",
    level: Level::Doubtful,
    milder: false,
    what: "An adjuster is set, and nobody was asked where the customer wants it.",
    why: "It goes back to where it stood, whatever was agreed.",
    example: "set: slow-rebound, and no record with reads back: wanted before it",
    mend: "add `- record: settings wanted` with `reads back: wanted`, after the settings as found",
    look: Look::Closing(look),
};

fn look(moment: &Moment<'_>, sink: &mut Sink<'_>) {
    if moment.step.deed == Deed::Set && moment.clean && !moment.trail.said_back.contains("wanted") {
        let name = moment.step.about.as_deref().map_or("adjuster", |id| moment.on.card.name_of(id));
        sink.raise(
            moment.step.at.clone(),
            format!("the {name} is set before the settings wanted are asked for"),
        );
    }
}

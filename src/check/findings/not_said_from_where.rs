//! Not said from where.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnCard;
use crate::check::turning::is_turned;
use crate::rulebase::AdjusterKind;
use crate::source::Level;

/// A direction, and not from where it is seen.
pub static FINDING: Finding = Finding {
    name: "not said from where",
    level: Level::Wrong,
    milder: false,
    what: "A direction, and not from where it is seen.",
    why: "Clockwise from the other side is the other way.",
    example: "a part with a thread and neither end: nor seen from:",
    mend: "give it its `end:`, or `seen from:`",
    look: Look::Card(look),
};

fn look(on: &OnCard<'_>, sink: &mut Sink<'_>) {
    let turning = on.card.adjusters.iter().filter(|one| !matches!(one.kind, AdjusterKind::Charge { .. }));
    let adjusters = turning.map(|one| (&one.id, one.name(), &one.at));
    let parts =
        on.card.parts.iter().filter(|part| is_turned(part)).map(|part| (&part.id, part.name(), &part.at));
    for (id, name, at) in adjusters.chain(parts) {
        if on.card.seen_from(id).is_none() {
            sink.raise(at.clone(), format!("the {name} turns, and nothing says from where that is seen"));
        }
    }
}

//! Critical without a torque.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnCard;
use crate::source::Level;

/// A critical part without a torque.
pub static FINDING: Finding = Finding {
    name: "critical without a torque",
    level: Level::Wrong,
    milder: false,
    what: "A critical part without a torque.",
    why: "A critical value is what is read back; here there is none.",
    example: "critical: the shaft is hollow, and no torque:",
    mend: "give it its `torque:`, or take `critical:` out",
    look: Look::Card(look),
};

fn look(on: &OnCard<'_>, sink: &mut Sink<'_>) {
    for part in on.card.parts.iter().filter(|part| part.critical.is_some() && part.torque.is_none()) {
        let place = sink.field(&on.card.at, &format!("parts/{}/critical", part.id));
        sink.raise(place, format!("the {} is critical and has no torque", part.name()));
    }
}

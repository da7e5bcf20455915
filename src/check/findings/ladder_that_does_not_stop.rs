//! Ladder that does not stop.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnCard;
use crate::source::Level;

/// A ladder for when something will not move, whose last rung does not say to stop.
pub static FINDING: Finding = Finding {
    name: "ladder that does not stop",
    level: Level::Doubtful,
    milder: false,
    what: "A ladder for when something will not move, whose last rung does not say to stop.",
    why: "More force is what comes next, and that is where things break.",
    example: "stuck: [Try again., Pull harder.]",
    mend: "end it with \"Stop.\" and why",
    look: Look::Card(look),
};

fn look(on: &OnCard<'_>, sink: &mut Sink<'_>) {
    let parts = on.card.parts.iter().map(|part| ("parts", &part.id, part.name(), &part.stuck));
    let adjusters = on.card.adjusters.iter().map(|one| ("adjusters", &one.id, one.name(), &one.stuck));
    for (kind, id, name, stuck) in parts.chain(adjusters) {
        let Some(last) = stuck.last() else { continue };
        if !last.to_lowercase().contains("stop") {
            let place = sink.field(&on.card.at, &format!("{kind}/{id}/stuck/{}", stuck.len() - 1));
            sink.raise(place, format!("the last thing to try on the {name} does not say to stop"));
        }
    }
}

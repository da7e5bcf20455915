//! Cure not told.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnCard;
use crate::source::Level;

/// Threadlocker without the time until it may be handled and used.
pub static FINDING: Finding = Finding {
    name: "cure not told",
    level: Level::Doubtful,
    milder: false,
    what: "Threadlocker without the time until it may be handled and used.",
    why: "At hand-over nobody is told to wait.",
    example: "locker: with open: and neither handle: nor cure:",
    mend: "add `handle:` and `cure:` from the maker of the threadlocker",
    look: Look::Card(look),
};

fn look(on: &OnCard<'_>, sink: &mut Sink<'_>) {
    for part in &on.card.parts {
        let Some(locker) = &part.locker else { continue };
        if locker.handle.is_none() || locker.cure.is_none() {
            let place = sink.field(&on.card.at, &format!("parts/{}/locker", part.id));
            sink.raise(place, format!("the threadlocker of the {} has no time to cure", part.name()));
        }
    }
}

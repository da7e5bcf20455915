//! Under itself.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnCard;
use crate::check::subject::over;
use crate::source::Level;

/// Parts that must each be under the other.
pub static FINDING: Finding = Finding {
    name: "under itself",
    level: Level::Wrong,
    milder: false,
    what: "Parts that must each be under the other.",
    why: "There is no order in which they go on.",
    example: "carrier over: [spring], spring over: [carrier]",
    mend: "mend `over:`; it names what is fitted before",
    look: Look::Card(look),
};

fn look(on: &OnCard<'_>, sink: &mut Sink<'_>) {
    for part in &on.card.parts {
        if over(on.card, &part.id).contains(part.id.as_str()) {
            let place = sink.field(&on.card.at, &format!("parts/{}/over", part.id));
            sink.raise(place, format!("the {} has to be under itself", part.name()));
        }
    }
}

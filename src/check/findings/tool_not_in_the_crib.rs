//! Tool not in the crib.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnCard;
use crate::check::turning::size_of;
use crate::quantity::{Quantity, Unit};
use crate::source::Level;

/// A size that no tool of the crib has.
pub static FINDING: Finding = Finding {
    name: "tool not in the crib",
    level: Level::Wrong,
    milder: false,
    what: "A size that no tool of the crib has.",
    why: "The technician takes what nearly fits, and rounds the flats.",
    example: "across: 23 mm with no 23 mm spanner or socket in tools.yaml",
    mend: "add the size to the crib, or mend it on the card",
    look: Look::Card(look),
};

fn look(on: &OnCard<'_>, sink: &mut Sink<'_>) {
    if on.pack.tools.is_empty() {
        return;
    }
    for part in &on.card.parts {
        let name = part.name();
        if let Some(key) = part.key.filter(|key| !has(on, &["hex key"], *key)) {
            let place = sink.field(&on.card.at, &format!("parts/{}/key", part.id));
            sink.raise(place, format!("the crib has no {} hex key for the {name}", key.show()));
        }
        if let Some(across) =
            part.across.filter(|across| part.tool.is_none() && !has(on, &["spanner", "socket"], *across))
        {
            let place = sink.field(&on.card.at, &format!("parts/{}/across", part.id));
            sink.raise(place, format!("the crib has no {} spanner or socket for the {name}", across.show()));
        }
        if let Some(flats) =
            part.hold.as_deref().and_then(size_of).filter(|flats| !has(on, &["spanner"], *flats))
        {
            let place = sink.field(&on.card.at, &format!("parts/{}/hold", part.id));
            sink.raise(place, format!("the crib has no {} spanner to hold by", flats.show()));
        }
    }
}

fn has(on: &OnCard<'_>, kinds: &[&str], size: Quantity) -> bool {
    let same = |own: &Quantity| match (own.in_unit(Unit::Millimetre), size.in_unit(Unit::Millimetre)) {
        (Ok(own), Ok(size)) => (own - size).abs() < 0.005,
        _ => false,
    };
    on.pack
        .tools
        .iter()
        .filter(|tool| kinds.contains(&tool.kind.as_str()))
        .any(|tool| tool.sizes.iter().any(same))
}

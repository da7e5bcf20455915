//! Torque out of proportion.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnCard;
use crate::check::turning::{Carry, carry};
use crate::quantity::Unit;
use crate::rulebase::Part;
use crate::source::Level;

/// A torque that the thread, its bore or the relief cannot carry, or that is next to nothing for it.
pub static FINDING: Finding = Finding {
    name: "torque out of proportion",
    level: Level::Wrong,
    milder: true,
    what: "A torque that the thread, its bore or the relief cannot carry, or that is next to nothing for it.",
    why: "Too much snaps a hollow shaft; too little lets the joint work loose.",
    example: "torque: 320 N.m on M14 x 1 with a 6 mm bore",
    mend: "mend the torque or the thread; where the part is hollow, or closes what is hollow, give its `bore:`",
    look: Look::Card(look),
};

/// What was taken for granted of a part whose card gives no bore.
fn solid(part: &Part) -> &'static str {
    if part.thread.is_some() && part.bore.is_none() { " if it is solid, as it has no `bore:`" } else { "" }
}

fn look(on: &OnCard<'_>, sink: &mut Sink<'_>) {
    for part in &on.card.parts {
        let Some(torque) = part.torque.and_then(|limit| limit.to(Unit::NewtonMetre).ok()) else { continue };
        let Some(Carry { most, usual, least }) = carry(part) else { continue };
        let (high, aim) = (torque.hi.unwrap_or(torque.nominal().value), torque.nominal().value);
        let place = sink.field(&on.card.at, &format!("parts/{}/torque", part.id));
        let name = part.name();
        if high > most {
            sink.raise_for(
                place,
                format!("{high} N.m is more than the {name} carries"),
                format!("at most {most:.0} N.m at yield"),
            );
        } else if high > usual && part.sizes.is_empty() {
            sink.doubt(
                place,
                format!("{high} N.m is more than class 8.8 is tightened to"),
                format!("about {usual:.0} N.m at most"),
            );
        } else if aim < least {
            sink.doubt(
                place,
                format!("{aim} N.m is next to nothing for the {name}"),
                format!("at least {least:.1} N.m{}; class 8.8 takes up to {usual:.0} N.m", solid(part)),
            );
        }
    }
}

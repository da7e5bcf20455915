//! Torque out of proportion.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnCard;
use crate::check::turning::{Carry, carry};
use crate::quantity::Unit;
use crate::source::Level;

/// A torque that the thread, its bore or the relief cannot carry, or that is next to nothing for it.
pub static FINDING: Finding = Finding {
    name: "torque out of proportion",
    level: Level::Wrong,
    what: "A torque that the thread, its bore or the relief cannot carry, or that is next to nothing for it.",
    why: "Too much snaps a hollow shaft; too little lets the joint work loose.",
    example: "torque: 320 N.m on M14 x 1 with a 6 mm bore",
    mend: "mend the torque, the thread or the bore",
    look: Look::Card(look),
};

/// Below this share of what class 8.8 is tightened to, a joint is next to loose; large thin rings are made so.
const LITTLE: f64 = 0.06;
/// The same for rings and caps.
const NEXT_TO_NOTHING: f64 = 0.01;
/// From this diameter on a thread is that of a ring or a cap, mm.
const RING: f64 = 30.0;

fn look(on: &OnCard<'_>, sink: &mut Sink<'_>) {
    for part in &on.card.parts {
        let Some(torque) = part.torque.and_then(|limit| limit.to(Unit::NewtonMetre).ok()) else { continue };
        let Some(Carry { most, usual, d }) = carry(part) else { continue };
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
        } else if aim < usual * if d < RING { LITTLE } else { NEXT_TO_NOTHING } {
            sink.doubt(
                place,
                format!("{aim} N.m is next to nothing for the {name}"),
                format!("up to {usual:.0} N.m for class 8.8"),
            );
        }
    }
}

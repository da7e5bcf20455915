//! Spring closes in the stroke.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnCard;
use crate::quantity::Unit;
use crate::source::Level;

/// A spring whose coils touch before the unit is at the end of its stroke.
pub static FINDING: Finding = Finding {
    name: "spring closes in the stroke",
    level: Level::Wrong,
    milder: false,
    what: "A spring whose coils touch before the unit is at the end of its stroke.",
    why: "Coils that bind break the perch or the top mount.",
    example: "free: 200 mm, block: 130 mm, and a stroke of 85 mm",
    mend: "mend the lengths of the spring or the stroke; or take the spring off the shelf",
    look: Look::Card(look),
};

fn look(on: &OnCard<'_>, sink: &mut Sink<'_>) {
    let Some(stroke) = on.card.sizes.get("stroke").and_then(|stroke| stroke.in_unit(Unit::Millimetre).ok())
    else {
        return;
    };
    // A tender is there to close: the room of the unit's own spring is what counts.
    let longest = on
        .card
        .parts
        .iter()
        .flat_map(|part| &part.springs)
        .map(|spring| spring.free.value)
        .fold(0.0, f64::max);
    for part in &on.card.parts {
        for (at, spring) in
            part.springs.iter().enumerate().filter(|(_, spring)| spring.free.value >= 0.8 * longest)
        {
            let Some(block) = spring.block else { continue };
            let room = spring.free.in_unit(Unit::Millimetre).ok().zip(block.in_unit(Unit::Millimetre).ok());
            if let Some((free, block)) = room.filter(|(free, block)| free - block < stroke) {
                let place = sink.field(&on.card.at, &format!("parts/{}/springs/{at}", part.id));
                let found =
                    format!("this spring closes after {} mm, and the stroke is {stroke} mm", free - block);
                sink.raise(place, found);
            }
        }
    }
}

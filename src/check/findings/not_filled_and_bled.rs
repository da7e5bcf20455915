//! Not filled and bled.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Finish;
use crate::rulebase::Deed;
use crate::source::Level;

/// Oil that was drained is not filled again, or not bled, by the end of a path.
pub static FINDING: Finding = Finding {
    name: "not filled and bled",
    level: Level::Wrong,
    milder: true,
    what: "Oil that was drained is not filled again, or not bled, by the end of a path.",
    why: "Air in the oil foams, and the damping is gone for part of the stroke.",
    example: "drain: oil and fill: oil, and no bleed: oil after it",
    mend: "add `fill:` and, behind it, `bleed:` with a question such as \"Are there no more bubbles?\"",
    look: Look::End(look),
};

fn look(finish: &Finish<'_>, sink: &mut Sink<'_>) {
    let bled = finish.on.steps.iter().filter(|step| step.deed == Deed::Bleed);
    for step in bled {
        if step.question.is_none() && step.read.is_none() {
            let place = step.at.clone();
            sink.doubt(place, "bled, and nobody is asked whether the air is out", "`question:` and `stop:`");
        } else if step.stop.is_none() && step.fails.is_empty() {
            let place = step.at.clone();
            sink.doubt(place, "air that stays in, and nothing follows", "`stop:`, or `else:` with its `stop:`");
        }
    }
    let dry = finish.place.parts.iter().filter(|(_, known)| known.drained).map(|(id, _)| (id, "filled"));
    let unbled = finish
        .trail
        .unbled
        .iter()
        .filter(|id| finish.place.parts.get(*id).is_none_or(|known| !known.drained));
    for (id, done) in dry.chain(unbled.map(|id| (id, "bled"))) {
        let name = finish.on.card.name_of(id);
        sink.raise(finish.at(id), format!("the {name} was drained and is not {done} again"));
    }
}

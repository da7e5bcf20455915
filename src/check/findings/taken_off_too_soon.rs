//! Taken off too soon.

use crate::bench::state::Fitting;
use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Moment;
use crate::rulebase::Deed;
use crate::source::Level;

/// A part is taken off while what stands over it is still fast.
pub static FINDING: Finding = Finding {
    name: "taken off too soon",
    level: Level::Wrong,
    milder: false,
    what: "A part is taken off while what stands over it is still fast.",
    why: "The technician forces it, or something breaks.",
    example: "remove: spring before remove: carrier, with over: [spring] on the carrier",
    mend: "move the step behind the one that takes off what stands over it",
    look: Look::Closing(look),
};

fn look(moment: &Moment<'_>, sink: &mut Sink<'_>) {
    let takes = matches!(moment.step.deed, Deed::Remove | Deed::Rock);
    let Some(about) = moment.step.about.as_deref().filter(|_| takes && moment.clean) else { return };
    for part in moment.on.card.parts.iter().filter(|part| part.over.iter().any(|under| under == about)) {
        // What the procedure only loosens (a set screw in a knob) goes with it; what it takes off has to be off.
        let comes_off = moment
            .on
            .steps
            .iter()
            .any(|step| step.deed == Deed::Remove && step.about.as_ref() == Some(&part.id));
        let free = match moment.fitting(&part.id) {
            Fitting::Off => true,
            Fitting::Loose => !comes_off,
            _ => false,
        };
        if !free {
            let name = moment.on.card.name_of(about);
            sink.raise(
                moment.step.at.clone(),
                format!("the {name} comes off while the {} is still on it", part.name()),
            );
        }
    }
}

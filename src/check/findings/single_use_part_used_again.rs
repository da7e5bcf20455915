//! Single-use part used again.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Moment;
use crate::rulebase::{Deed, Part};
use crate::source::Level;

/// A part that is new each time is fitted again, or covered again.
pub static FINDING: Finding = Finding {
    name: "single-use part used again",
    level: Level::Wrong,
    milder: false,
    what: "A part that is new each time is fitted again, or what stands over it is, without a new one.",
    why: "A crushed washer, a cut lip or a spent nut leaks or lets go.",
    example: "press: shaft-seal with single use: yes on its card, and no replace: shaft-seal before it",
    mend: "add the step that takes a new one",
    look: Look::Closing(look),
};

fn look(moment: &Moment<'_>, sink: &mut Sink<'_>) {
    let fits = matches!(moment.step.deed, Deed::Refit | Deed::Press | Deed::Tighten);
    let Some(part) = moment.about().filter(|_| fits && moment.clean) else { return };
    if part.single_use && moment.trail.worn.contains(&part.id) {
        sink.raise(
            moment.step.at.clone(),
            format!("the {} is new each time, and the old one goes on again", part.name()),
        );
    }
    under(moment, part, sink);
}

/// What lay bare and was never taken off by a step of its own: it was to be renewed before it is covered.
fn under(moment: &Moment<'_>, cover: &Part, sink: &mut Sink<'_>) {
    for id in cover.over.iter().filter(|id| moment.trail.bared.contains(*id)) {
        if moment.trail.off.contains(&cover.id) && !moment.trail.worn.contains(id) {
            let under = moment.on.card.name_of(id);
            sink.raise(
                moment.step.at.clone(),
                format!("the {under} is new each time, and the {} goes on over the old one", cover.name()),
            );
        }
    }
}

//! Fitted too soon.

use crate::bench::state::Fitting;
use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Moment;
use crate::rulebase::Deed;
use crate::source::Level;

/// A part is fitted before what must be under it.
pub static FINDING: Finding = Finding {
    name: "fitted too soon",
    level: Level::Wrong,
    milder: false,
    what: "A part is fitted before what must be under it.",
    why: "It has to come off again; or it is not noticed and what is missing stays out.",
    example: "refit: carrier before refit: spring, with over: [spring] on the carrier",
    mend: "move the step behind the one that fits what stands under it",
    look: Look::Closing(look),
};

fn look(moment: &Moment<'_>, sink: &mut Sink<'_>) {
    let fits = matches!(moment.step.deed, Deed::Refit | Deed::Press | Deed::Tighten);
    let Some(part) = moment.about().filter(|_| fits && moment.clean) else { return };
    for under in &part.over {
        if moment.fitting(under) == Fitting::Off || moment.trail.apart.contains(under) {
            let name = moment.on.card.name_of(under);
            sink.raise(
                moment.step.at.clone(),
                format!("the {} goes on while the {name} is still off", part.name()),
            );
        }
    }
}

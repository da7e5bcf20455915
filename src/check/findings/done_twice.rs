//! Done twice.

use crate::bench::state::Fitting;
use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Moment;
use crate::rulebase::Deed;
use crate::source::Level;

/// A part is fitted, tightened, or taken off twice running, or renewed when it is on again, without the step that belongs between.
pub static FINDING: Finding = Finding {
    name: "done twice",
    level: Level::Doubtful,
    milder: false,
    what: "A part is fitted, tightened, or taken off twice running, or renewed when it is on again, without the step that belongs between.",
    why: "One of the two says something else than what it does to the part.",
    example: "remove: foot-nut twice, or refit: carrier while it is on",
    mend: "take the second out, or put in what belongs between them",
    look: Look::Closing(look),
};

fn look(moment: &Moment<'_>, sink: &mut Sink<'_>) {
    let Some(part) = moment.about().filter(|_| moment.clean) else { return };
    let fitting = moment.fitting(&part.id);
    let twice = match moment.step.deed {
        // What went on and did not pass is not on yet: the steps under its `else` may take it off.
        Deed::Remove => fitting == Fitting::Off && is_top(moment),
        Deed::Refit => matches!(fitting, Fitting::Torqued | Fitting::Nipped) || never_off(moment, fitting),
        Deed::Loosen | Deed::Strike => fitting == Fitting::Off,
        // A new one that is taken when the old one is on again.
        Deed::Replace => {
            is_top(moment) && matches!(fitting, Fitting::On | Fitting::Torqued | Fitting::Nipped)
        }
        _ => false,
    };
    if twice {
        let deed = moment.step.deed.as_str();
        let is = if fitting == Fitting::Off { "off" } else { "on" };
        sink.raise(
            moment.step.at.clone(),
            format!("`{deed}` on the {} while it is {is} already", part.name()),
        );
    }
}

/// Whether a part is fitted that never came off, and is no new one.
fn never_off(moment: &Moment<'_>, fitting: Fitting) -> bool {
    let new = moment.about().is_some_and(|part| moment.part(&part.id).new);
    fitting == Fitting::AsFound && is_top(moment) && !new
}

/// Whether the step stands in no `else`.
fn is_top(moment: &Moment<'_>) -> bool {
    moment.on.procedure.phases.iter().any(|phase| phase.steps.iter().any(|step| step.id == moment.step.id))
}

//! Undone by itself.

use crate::bench::state::Fitting;
use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Moment;
use crate::rulebase::Deed;
use crate::source::Level;

/// A part is fitted, tightened, or taken off twice running, without the step that belongs between.
pub static FINDING: Finding = Finding {
    name: "undone by itself",
    level: Level::Wrong,
    what: "A part is fitted, tightened, or taken off twice running, without the step that belongs between.",
    why: "One of the two says something else than what it does to the part.",
    example: "remove: foot-nut twice, or refit: carrier while it is on",
    mend: "take the second out, or put in what belongs between them",
    look: Look::Closing(look),
};

fn look(moment: &Moment<'_>, sink: &mut Sink<'_>) {
    let Some(part) = moment.about().filter(|_| moment.clean) else { return };
    let fitting = moment.fitting(&part.id);
    let twice = match moment.step.deed {
        Deed::Remove => fitting == Fitting::Off,
        Deed::Refit => matches!(fitting, Fitting::On | Fitting::Torqued | Fitting::Nipped),
        Deed::Loosen | Deed::Strike => fitting == Fitting::Off,
        Deed::Tighten => fitting == Fitting::Off,
        _ => false,
    };
    if twice {
        let deed = moment.step.deed.as_str();
        let is = if fitting == Fitting::Off { "off" } else { "on" };
        sink.raise(moment.step.at.clone(), format!("`{deed}` on the {} while it is {is} already", part.name()));
    }
}

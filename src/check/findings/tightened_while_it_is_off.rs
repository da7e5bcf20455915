//! Tightened while it is off.

use crate::bench::state::Fitting;
use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Moment;
use crate::rulebase::Deed;
use crate::source::Level;

/// A part is tightened, or its mark looked at, that came off and was not put back.
pub static FINDING: Finding = Finding {
    name: "tightened while it is off",
    level: Level::Wrong,
    milder: false,
    what: "A part is tightened, or its mark looked at, that came off and was not put back.",
    why: "The step that puts it back is missing, with all that goes with it.",
    example: "remove: foot-nut, then tighten: foot-nut with no refit: foot-nut between",
    mend: "add `refit:` before it",
    look: Look::Closing(look),
};

fn look(moment: &Moment<'_>, sink: &mut Sink<'_>) {
    let Some(part) = moment.about().filter(|_| moment.clean) else { return };
    let done = match moment.step.deed {
        Deed::Tighten => "tightened",
        Deed::Look if part.mark.is_some() => "looked at by its mark",
        _ => return,
    };
    if moment.fitting(&part.id) == Fitting::Off {
        sink.raise(moment.step.at.clone(), format!("the {} is {done}, and it is off", part.name()));
    }
}

//! Held by what is off.

use crate::bench::state::Fitting;
use crate::check::finding::{Finding, Look};
use crate::check::language::names_in;
use crate::check::sink::Sink;
use crate::check::walk::Moment;
use crate::rulebase::Deed;
use crate::source::Level;

/// A joint is turned while what it is held by is off.
pub static FINDING: Finding = Finding {
    name: "held by what is off",
    level: Level::Wrong,
    milder: false,
    what: "A joint is turned while what it is held by is off.",
    why: "Nothing holds the other side, and the shaft turns in its seal.",
    example: "tighten: piston-nut with hold: 24 mm flats on the eye, while the eye is off",
    mend: "refit what it is held by first, or hold it otherwise at that step with `hold:`",
    look: Look::Closing(look),
};

fn look(moment: &Moment<'_>, sink: &mut Sink<'_>) {
    let turns = matches!(moment.step.deed, Deed::Loosen | Deed::Tighten) && moment.clean;
    let Some(part) = moment.about().filter(|_| turns) else { return };
    let Some(hold) = moment.step.hold.as_ref().or(part.hold.as_ref()) else { return };
    let held_by = names_in(moment.on.card, hold).into_iter().filter(|id| *id != part.id);
    for id in held_by.filter(|id| moment.fitting(id) == Fitting::Off) {
        let name = moment.on.card.name_of(id);
        sink.raise(
            moment.step.at.clone(),
            format!("the {} is held by the {name}, which is off", part.name()),
        );
    }
}

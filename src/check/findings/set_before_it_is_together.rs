//! Set before it is together.

use crate::bench::state::Fitting;
use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Moment;
use crate::rulebase::{Deed, Role};
use crate::source::Level;

/// An adjuster is zeroed, counted again or set while a part that carries it is off.
pub static FINDING: Finding = Finding {
    name: "set before it is together",
    level: Level::Wrong,
    milder: false,
    what: "An adjuster is zeroed, counted again or set while a part that carries it is off.",
    why: "What goes on afterwards moves it, and the number says something else than the metal.",
    example: "set: slow-rebound before press: clicker-knob, with through: [clicker-knob] on its card",
    mend: "move it behind the step that fits the last part that carries it",
    look: Look::Closing(look),
};

fn look(moment: &Moment<'_>, sink: &mut Sink<'_>) {
    let step = moment.step;
    let again = step.read.as_ref().is_some_and(|read| read.role == Role::TravelAgain);
    let restores = step.deed == Deed::Set || step.deed == Deed::Count && again;
    let adjuster = step.about.as_deref().and_then(|id| moment.on.card.adjuster(id));
    let Some(adjuster) = adjuster.filter(|_| restores && moment.clean) else { return };
    for id in adjuster.through.iter().filter(|id| moment.fitting(id) == Fitting::Off) {
        let found = format!("the {} is set while the {} is off", adjuster.name(), moment.on.card.name_of(id));
        sink.raise(step.at.clone(), found);
    }
    if moment.trail.apart.contains(&adjuster.id) {
        sink.raise(step.at.clone(), format!("the {} is set while it is off", adjuster.name()));
    }
}

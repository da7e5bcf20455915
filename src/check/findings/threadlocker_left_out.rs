//! Threadlocker left out.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Moment;
use crate::rulebase::Deed;
use crate::source::Level;

/// A joint whose card asks for threadlocker is tightened without any, or with what was broken by taking it off.
pub static FINDING: Finding = Finding {
    name: "threadlocker left out",
    level: Level::Wrong,
    milder: false,
    what: "A joint whose card asks for threadlocker is tightened without any, or with what was broken by taking it off.",
    why: "The joint loosens by vibration, and its torque says nothing about it.",
    example: "a foot nut with locker: on its card, refitted and tightened with no threadlock: before it",
    mend: "add the threadlock step between cleaning and refitting",
    look: Look::Closing(look),
};

fn look(moment: &Moment<'_>, sink: &mut Sink<'_>) {
    let Some(part) = moment.about().filter(|part| part.locker.is_some()) else { return };
    let known = moment.part(&part.id);
    let wants = moment.step.deed == Deed::Tighten && known.disturbed && moment.clean;
    if wants && (!known.locked || moment.trail.dry.contains(&part.id)) {
        sink.raise(
            moment.step.at.clone(),
            format!("the {} is tightened without its threadlocker", part.name()),
        );
    }
}

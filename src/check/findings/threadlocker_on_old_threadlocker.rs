//! Threadlocker on old threadlocker.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Moment;
use crate::rulebase::Deed;
use crate::source::Level;

/// Threadlocker is put on a joint that came apart and was not cleaned since.
pub static FINDING: Finding = Finding {
    name: "threadlocker on old threadlocker",
    level: Level::Doubtful,
    milder: false,
    what: "Threadlocker is put on a joint that came apart and was not cleaned since.",
    why: "New threadlocker does not hold on the old.",
    example: "threadlock: foot-nut, and no clean: foot-nut since it came off",
    mend: "add the step that cleans both threads, after the part is off",
    look: Look::Closing(look),
};

fn look(moment: &Moment<'_>, sink: &mut Sink<'_>) {
    let Some(part) = moment.about() else { return };
    let known = moment.part(&part.id);
    if moment.step.deed == Deed::Threadlock && moment.clean && known.disturbed && !known.clean {
        sink.raise(
            moment.step.at.clone(),
            format!("the {} is not cleaned before its threadlocker", part.name()),
        );
    }
}

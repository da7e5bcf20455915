//! Single-use part used again.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Moment;
use crate::rulebase::Deed;
use crate::source::Level;

/// A part that is new each time is fitted again.
pub static FINDING: Finding = Finding {
    name: "single-use part used again",
    level: Level::Wrong,
    what: "A part that is new each time is fitted again.",
    why: "A crushed washer, a cut lip or a spent nut leaks or lets go.",
    example: "press: shaft-seal with single use: yes on its card, and no replace: shaft-seal before it",
    mend: "add the step that takes a new one",
    look: Look::Closing(look),
};

fn look(moment: &Moment<'_>, sink: &mut Sink<'_>) {
    let fits = matches!(moment.step.deed, Deed::Refit | Deed::Press | Deed::Tighten);
    let Some(part) = moment.about().filter(|part| fits && moment.clean && part.single_use) else { return };
    if moment.trail.worn.contains(&part.id) {
        sink.raise(
            moment.step.at.clone(),
            format!("the {} is new each time, and the old one goes on again", part.name()),
        );
    }
}

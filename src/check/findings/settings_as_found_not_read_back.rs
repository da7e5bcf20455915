//! Settings as found not read back.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Moment;
use crate::rulebase::{AdjusterKind, Deed};
use crate::source::Level;

/// An adjuster is zeroed, set or taken apart before the settings as found were read back.
pub static FINDING: Finding = Finding {
    name: "settings as found not read back",
    level: Level::Wrong,
    milder: false,
    what: "An adjuster is zeroed, set or taken apart before the settings as found were read back.",
    why: "A count that was heard wrong cannot be counted again once the adjuster has moved.",
    example: "zero: slow-rebound, and no record with reads back: found before it",
    mend: "add `- record: settings as found` with `reads back: found`, before the first adjuster is moved",
    look: Look::Closing(look),
};

fn look(moment: &Moment<'_>, sink: &mut Sink<'_>) {
    let Some(adjuster) = moment.step.about.as_deref().and_then(|id| moment.on.card.adjuster(id)) else {
        return;
    };
    let moves = matches!(moment.step.deed, Deed::Zero | Deed::Set | Deed::Rock | Deed::Remove);
    let gas = matches!(adjuster.kind, AdjusterKind::Charge { .. });
    if moves && !gas && moment.clean && !moment.trail.said_back.contains("found") {
        sink.raise(
            moment.step.at.clone(),
            format!("the {} is moved before the settings as found are read back", adjuster.name()),
        );
    }
}

//! Threadlocker too late.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Moment;
use crate::quantity::Unit;
use crate::rulebase::Deed;
use crate::source::Level;

/// A joint is tightened after the open time of its threadlocker has run out on the way.
pub static FINDING: Finding = Finding {
    name: "threadlocker too late",
    level: Level::Wrong,
    milder: false,
    what: "A joint is tightened after the open time of its threadlocker has run out on the way.",
    why: "Threadlocker that has begun to set gives a false torque and no hold.",
    example: "a wait of 10 minutes between threadlock and tighten, with open: 5 min on the card; or a loop that loosens and tightens again without asking how long it stood",
    mend: "put the wait before the threadlocker, or clean and lock anew once open_left is used up",
    look: Look::Closing(look),
};

fn look(moment: &Moment<'_>, sink: &mut Sink<'_>) {
    let Some((part, locker)) = moment.about().and_then(|part| Some((part, part.locker.as_ref()?))) else {
        return;
    };
    if moment.step.deed != Deed::Tighten || !moment.clean {
        return;
    }
    let open = locker.open.in_unit(Unit::Minute).unwrap_or(f64::MAX);
    let waited = moment.trail.waited.get(&part.id).copied().unwrap_or_default();
    let stood =
        moment.locked.get(&part.id).copied().filter(|_| moment.part(&part.id).locked).unwrap_or_default();
    if f64::from(waited).max(stood) > open {
        sink.raise_for(
            moment.step.at.clone(),
            format!("the {} can be tightened after its threadlocker has set", part.name()),
            format!("at most {} from threadlocker to torque", locker.open.show()),
        );
    }
}

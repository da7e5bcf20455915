//! Moved before it was counted.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Moment;
use crate::rulebase::{AdjusterKind, Deed};
use crate::source::Level;

/// An adjuster is moved before it was counted as found.
pub static FINDING: Finding = Finding {
    name: "moved before it was counted",
    level: Level::Wrong,
    milder: true,
    what: "An adjuster is moved before it was counted as found.",
    why: "The setting that the customer came with is lost.",
    example: "zero: slow-rebound before count: slow-rebound",
    mend: "count it as found first",
    look: Look::Closing(look),
};

fn look(moment: &Moment<'_>, sink: &mut Sink<'_>) {
    let Some(about) = moment.step.about.as_deref().filter(|_| moment.clean) else { return };
    let moves = matches!(
        moment.step.deed,
        Deed::Zero | Deed::Set | Deed::Rock | Deed::Remove | Deed::Press | Deed::Loosen | Deed::Release
    );
    let card = moment.on.card;
    let carried =
        |through: &[String]| moment.step.deed == Deed::Remove && through.iter().any(|part| part == about);
    for adjuster in card.adjusters.iter().filter(|one| one.id == about || carried(&one.through)) {
        let gas = matches!(adjuster.kind, AdjusterKind::Charge { .. });
        let known = moment.before.adjusters.get(&adjuster.id);
        let counted = known.is_some_and(|known| known.found.is_some() || known.found_from_out.is_some());
        if moves && !gas && !counted {
            sink.raise(
                moment.step.at.clone(),
                format!("the {} is moved before it is counted as found", adjuster.name()),
            );
        }
    }
    gas(moment, sink);
}

/// What the gas stood at is a finding, and no setting: a charge says what it has to be.
fn gas(moment: &Moment<'_>, sink: &mut Sink<'_>) {
    let vents = moment.step.deed == Deed::Vent && moment.clean;
    let Some(about) = moment.step.about.as_deref().filter(|_| vents) else { return };
    let Some(adjuster) = moment.on.card.adjuster(about) else { return };
    let found = moment.before.adjusters.get(about).is_some_and(|known| known.found.is_some());
    if !found {
        let text = format!("the {} is let out before it is read as found", adjuster.name());
        sink.doubt(moment.step.at.clone(), text, "`count:` with `as: found`");
    }
}

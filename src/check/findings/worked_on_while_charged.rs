//! Worked on while charged.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Moment;
use crate::quantity::Dimension;
use crate::rulebase::{AdjusterKind, Deed};
use crate::source::Level;

/// Something is heated, drilled, driven or struck while there is gas or a loaded spring in the unit.
pub static FINDING: Finding = Finding {
    name: "worked on while charged",
    level: Level::Wrong,
    milder: false,
    what: "Something is heated, drilled, driven or struck while there is gas or a loaded spring in the unit.",
    why: "Heated or holed, a charge of gas bursts.",
    example: "heat: seal-head before vent: reservoir-charge; or heat: anything on a unit with sealed gas",
    mend: "let the gas out and prove it first; a sealed unit is never heated",
    look: Look::Closing(look),
};

fn look(moment: &Moment<'_>, sink: &mut Sink<'_>) {
    let (card, deed) = (moment.on.card, moment.step.deed);
    if !matches!(deed, Deed::Heat | Deed::Strike | Deed::Drive) {
        return;
    }
    for charge in card.adjusters.iter().filter(|one| matches!(one.kind, AdjusterKind::Charge { .. })) {
        let known = moment.part(&charge.id);
        if !known.safe || known.live {
            sink.raise(
                moment.step.at.clone(),
                format!("`{}` while the {} is not proved out", deed.as_str(), charge.name()),
            );
        }
    }
    let sealed = card.sizes.values().any(|size| size.unit.dimension() == Dimension::Pressure);
    if sealed && deed == Deed::Heat {
        sink.raise(moment.step.at.clone(), "`heat` on a unit that stays charged");
    }
}

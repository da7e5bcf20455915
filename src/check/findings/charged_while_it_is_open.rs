//! Charged while it is open.

use crate::bench::state::Fitting;
use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::over;
use crate::check::walk::Moment;
use crate::rulebase::{AdjusterKind, Deed};
use crate::source::Level;

/// Gas goes in while something that holds it is off or loose.
pub static FINDING: Finding = Finding {
    name: "charged while it is open",
    level: Level::Wrong,
    milder: false,
    what: "Gas goes in while something that holds it is off or loose.",
    why: "What is not fast leaves under pressure.",
    example: "charge: reservoir-charge before refit: cap-ring",
    mend: "move the charge behind the last step that fits or tightens what holds the gas",
    look: Look::Closing(look),
};

fn look(moment: &Moment<'_>, sink: &mut Sink<'_>) {
    let card = moment.on.card;
    let adjuster = moment.step.about.as_deref().and_then(|id| card.adjuster(id));
    let charges = moment.step.deed == Deed::Charge && moment.clean;
    let Some(adjuster) = adjuster.filter(|_| charges) else { return };
    if !matches!(adjuster.kind, AdjusterKind::Charge { .. }) {
        return;
    }
    for part in &card.parts {
        let above = || adjuster.through.iter().any(|id| over(card, id).contains(part.id.as_str()));
        let holds = adjuster.through.contains(&part.id) || above();
        let fitting = moment.fitting(&part.id);
        let fastened = part.torque.is_some() || part.nip.is_some();
        let open = match fitting {
            Fitting::Off | Fitting::Loose => true,
            Fitting::On => fastened,
            _ => false,
        };
        if holds && open {
            let is = if fitting == Fitting::Off { "off" } else { "not tight" };
            sink.raise(moment.step.at.clone(), format!("gas goes in while the {} is {is}", part.name()));
        }
    }
}

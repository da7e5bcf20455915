//! Not charged again.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Finish;
use crate::rulebase::AdjusterKind;
use crate::source::Level;

/// Gas that was let out is not put back by the end of a path.
pub static FINDING: Finding = Finding {
    name: "not charged again",
    level: Level::Wrong,
    milder: false,
    what: "Gas that was let out is not put back by the end of a path.",
    why: "Without gas the oil foams and the damper fades.",
    example: "vent: reservoir-charge, and no charge: reservoir-charge after it",
    mend: "add the step that charges it, after everything that holds the gas is fast",
    look: Look::End(look),
};

fn look(finish: &Finish<'_>, sink: &mut Sink<'_>) {
    for adjuster in &finish.on.card.adjusters {
        let gas = matches!(adjuster.kind, AdjusterKind::Charge { .. });
        let out = finish
            .place
            .parts
            .get(&adjuster.id)
            .is_some_and(|known| (known.vented || known.safe) && !known.live);
        if gas && out {
            sink.raise(
                finish.at(&adjuster.id),
                format!("the {} is out and not charged again", adjuster.name()),
            );
        }
    }
}

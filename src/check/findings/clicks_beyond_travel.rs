//! Clicks beyond travel.

use crate::check::figures::clicks_in;
use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnProcedure;
use crate::rulebase::{AdjusterKind, Step};
use crate::source::Level;

/// A count of clicks or positions that the adjuster does not have.
pub static FINDING: Finding = Finding {
    name: "clicks beyond travel",
    level: Level::Wrong,
    milder: false,
    what: "A count of clicks or positions that the adjuster does not have.",
    why: "The technician turns on against the stop.",
    example: "count: slow-rebound with limit: 0 to 30 clicks, and clicker: 24 clicks on the card",
    mend: "mend the count, or the clicks on the card",
    look: Look::Procedure(look),
};

fn look(on: &OnProcedure<'_>, sink: &mut Sink<'_>) {
    for step in on.steps {
        let Some(adjuster) = step.about.as_deref().and_then(|id| on.card.adjuster(id)) else { continue };
        let most = match adjuster.kind {
            AdjusterKind::Clicker { clicks, .. } => f64::from(clicks),
            AdjusterKind::Ring { last, .. } => f64::from(last),
            _ => continue,
        };
        if let Some(said) = figures(step).into_iter().find(|said| *said > most) {
            sink.raise_for(
                step.at.clone(),
                format!("{said} on the {}", adjuster.name()),
                format!("at most {most}"),
            );
        }
    }
}

fn figures(step: &Step) -> Vec<f64> {
    let limit = step.read.as_ref().and_then(|read| read.limit?.hi);
    let texts = [&step.text, &step.note, &step.amount];
    texts.into_iter().flatten().flat_map(|text| clicks_in(text)).chain(limit).collect()
}

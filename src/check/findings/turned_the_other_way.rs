//! Turned the other way.

use crate::check::finding::{Finding, Look};
use crate::check::language::way_in;
use crate::check::sink::Sink;
use crate::check::subject::OnProcedure;
use crate::rulebase::{Adjuster, AdjusterKind, Deed, Role, Step, UnitCard};
use crate::source::Level;
use crate::workings::adjusters::Way;

/// A step says a way of turning that its card contradicts.
pub static FINDING: Finding = Finding {
    name: "turned the other way",
    level: Level::Wrong,
    milder: false,
    what: "A step says a way of turning that its card contradicts.",
    why: "Turned the wrong way, a count is lost or a thread is stripped; and one of the two is wrong.",
    example: "say: Turn slow rebound anticlockwise until it seats., with closes: clockwise on the card",
    mend: "mend the sentence, or `closes:`, `adds:`, `only:`, `opens:` or the thread on the card",
    look: Look::Procedure(look),
};

fn look(on: &OnProcedure<'_>, sink: &mut Sink<'_>) {
    for step in on.steps {
        let Some((text, said)) = step.text.as_deref().and_then(|text| Some((text, way_in(text)?))) else {
            continue;
        };
        let Some(way) = wanted(on.card, step, text).filter(|way| *way != said) else { continue };
        let place = sink.of_step(step, "say");
        sink.raise_for(
            place,
            format!("`{}` here, and the card says otherwise", said.words()),
            format!("`{}`", way.words()),
        );
    }
}

/// The way that the card gives for what the step does.
fn wanted(card: &UnitCard, step: &Step, text: &str) -> Option<Way> {
    let about = step.about.as_deref()?;
    if let Some(adjuster) = card.adjuster(about) {
        return of_adjuster(adjuster, step, text);
    }
    let part = card.part(about)?;
    let usual = card.handling(about, step.deed).and_then(|handling| handling.way).or(step.way);
    match step.deed {
        Deed::Loosen | Deed::Remove => Some(usual.unwrap_or(part.opens)),
        Deed::Tighten => Some(usual.unwrap_or(part.opens.opposite())),
        _ => None,
    }
}

fn of_adjuster(adjuster: &Adjuster, step: &Step, text: &str) -> Option<Way> {
    let role = step.read.as_ref().map(|read| &read.role);
    let travel = matches!(role, Some(Role::Travel | Role::TravelAgain));
    let whole = format!("{text} {}", step.question.as_deref().unwrap_or_default()).to_lowercase();
    match &adjuster.kind {
        AdjusterKind::Clicker { closes, .. } => match step.deed {
            _ if whole.contains("seats") || whole.contains("full in") => Some(*closes),
            _ if whole.contains("full out") => Some(closes.opposite()),
            Deed::Zero => Some(*closes),
            Deed::Count if travel => Some(closes.opposite()),
            Deed::Count => Some(*closes),
            _ => None,
        },
        AdjusterKind::Ring { only, .. } => *only,
        AdjusterKind::Screw { adds, .. } => match step.deed {
            Deed::Count if travel => Some(*adds),
            // Nought is where nothing is wound on.
            Deed::Count | Deed::Loosen => Some(adds.opposite()),
            Deed::Zero if whole.contains("touch") => Some(*adds),
            Deed::Zero if whole.contains("stop") || whole.contains("free") || whole.contains("loose") => {
                Some(adds.opposite())
            }
            _ => None,
        },
        AdjusterKind::Charge { .. } => None,
    }
}

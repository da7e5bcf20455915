//! Let go before it is safe.

use crate::bench::state::Fitting;
use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::over;
use crate::check::walk::Moment;
use crate::rulebase::{AdjusterKind, Deed, Part};
use crate::source::Level;

/// Something that holds gas or a spring under load is undone before that is proved safe; or the proof can be left out.
pub static FINDING: Finding = Finding {
    name: "let go before it is safe",
    level: Level::Wrong,
    milder: false,
    what: "Something that holds gas or a spring under load is undone before that is proved safe; or the proof can be left out.",
    why: "A part that lets go under load breaks bones.",
    example: "loosen: foot-nut before prove: spring; or the proof stands in a phase that does not say `makes safe: yes`",
    mend: "put the proof before it, in a phase with `makes safe: yes`",
    look: Look::Closing(look),
};

fn look(moment: &Moment<'_>, sink: &mut Sink<'_>) {
    unproved(moment, sink);
    let undoes =
        matches!(moment.step.deed, Deed::Loosen | Deed::Remove | Deed::Strike | Deed::Press | Deed::Drive);
    let Some(part) = moment.about().filter(|part| undoes && is_first(moment, part)) else { return };
    springs(moment, part, sink);
    gas(moment, part, sink);
}

/// Pressing something in lets go only while it is as it came.
fn is_first(moment: &Moment<'_>, part: &Part) -> bool {
    let drives = matches!(moment.step.deed, Deed::Press | Deed::Drive);
    !drives || moment.fitting(&part.id) == Fitting::AsFound
}

fn springs(moment: &Moment<'_>, part: &Part, sink: &mut Sink<'_>) {
    let card = moment.on.card;
    for spring in card.parts.iter().filter(|one| !one.springs.is_empty()) {
        let known = moment.part(&spring.id);
        // One proof stands for all the springs that stand on one another.
        let proved =
            card.parts.iter().filter(|one| !one.springs.is_empty()).any(|one| moment.part(&one.id).safe);
        let itself = spring.id == part.id && !(proved || known.vented);
        let holds = over(card, &spring.id).contains(part.id.as_str()) && (!known.safe || known.live);
        if (itself || holds) && known.fitting == Fitting::AsFound {
            let found = format!("the {} is undone before the {} is proved loose", part.name(), spring.name());
            sink.raise(moment.step.at.clone(), found);
        }
    }
}

fn gas(moment: &Moment<'_>, part: &Part, sink: &mut Sink<'_>) {
    for charge in &moment.on.card.adjusters {
        let AdjusterKind::Charge { .. } = charge.kind else { continue };
        if !holds(moment, &charge.through, part) {
            continue;
        }
        let known = moment.part(&charge.id);
        // The valve is opened to prove the gas out; all else waits for the proof.
        let valve = part.over.is_empty() && part.torque.is_none();
        let safe = if valve { known.vented || known.safe } else { known.safe && !moment.trail.unproved };
        if !safe || known.live {
            let proof = if valve { "let out" } else { "proved out" };
            sink.raise(
                moment.step.at.clone(),
                format!("the {} is undone before the {} is {proof}", part.name(), charge.name()),
            );
        }
    }
}

/// Work on other parts while a spring is held down, or the gas let out, and neither was proved.
fn unproved(moment: &Moment<'_>, sink: &mut Sink<'_>) {
    let works = matches!(moment.step.deed, Deed::Loosen | Deed::Remove | Deed::Refit | Deed::Tighten);
    let Some(part) = moment.about().filter(|_| works && moment.clean) else { return };
    let card = moment.on.card;
    for spring in moment.trail.pressed.iter().filter(|id| **id != part.id) {
        let found =
            format!("the {} while nothing proves that the {} is held", part.name(), card.name_of(spring));
        sink.raise(moment.step.at.clone(), found);
    }
    let safe = moment.on.procedure.phase_of(&moment.step.id).is_some_and(|phase| phase.makes_safe);
    let charges = card.adjusters.iter().filter(|one| matches!(one.kind, AdjusterKind::Charge { .. }));
    for charge in charges.filter(|one| !safe && moment.part(&one.id).vented && !moment.part(&one.id).safe) {
        let found = format!("the {} while nothing proves that the {} is out", part.name(), charge.name());
        sink.raise(moment.step.at.clone(), found);
    }
}

/// What holds the gas: the parts that the card names, or, where it names none, all that something must stand under.
fn holds(moment: &Moment<'_>, through: &[String], part: &Part) -> bool {
    let card = moment.on.card;
    if through.is_empty() {
        return !part.over.is_empty();
    }
    through.iter().any(|id| *id == part.id || over(card, id).contains(part.id.as_str()))
}

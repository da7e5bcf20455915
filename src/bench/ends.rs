//! What is still open at the end of a job: not restored, tightened, proved or cured, and what was skipped.

use super::desk::Desk;
use super::state::{AdjusterState, Closing, Fitting, PartState, Place, Position};
use super::{flow, present};
use crate::quantity::{Unit, figures};
use crate::rulebase::{AdjusterKind, Procedure, Step, UnitCard};

/// One sentence for each open end, of every place of the job.
pub fn open(desk: &Desk<'_>) -> Vec<String> {
    let several = desk.state.progress.places.len() > 1;
    let mut out = Vec::new();
    for (id, place) in &desk.state.progress.places {
        let (Some(card), Some(procedure)) =
            (desk.rules.unit(&place.unit), desk.rules.procedure(&place.procedure, &place.unit))
        else {
            continue;
        };
        let found = of_place(desk, id, place, card, procedure);
        let name = id.replace('-', " ");
        out.extend(found.into_iter().map(|text| if several { format!("{name}: {text}") } else { text }));
    }
    out
}

fn of_place(desk: &Desk<'_>, id: &str, place: &Place, card: &UnitCard, procedure: &Procedure) -> Vec<String> {
    let mut out: Vec<String> = Vec::new();
    out.extend(card.adjusters.iter().filter_map(|adjuster| {
        let known = place.adjusters.get(&adjuster.id)?;
        not_restored(known).then(|| format!("{} is not restored", adjuster.name()))
    }));
    out.extend(place.parts.iter().filter_map(|(part, known)| part_open(card, part, known)));
    out.extend(cures(desk, id, card));
    for (step, closing) in &place.closed {
        let title = procedure.step(step).map(|step| present::title(card, step)).unwrap_or_default();
        match closing {
            Closing::Skipped { .. } => out.push(format!("{title} was left out")),
            Closing::Deviated => out.push(format!("{title} was left out of limits")),
            Closing::Done => {}
        }
    }
    // Guards are judged as if that unit were in hand.
    let mut state = desk.state.clone();
    state.progress.current = Some(id.to_owned());
    let judge = flow::Judge { rules: desk.rules, state: &state, now: desk.now };
    out.extend(
        branches_left(place, procedure).map(|step| format!("{} was not done", present::title(card, step))),
    );
    let steps = judge.ahead(procedure, place).len();
    if steps > 0 {
        let plural = if steps == 1 { "step is" } else { "steps are" };
        out.push(format!("{steps} {plural} not done"));
    }
    out
}

/// Steps that were to follow a failure and were not worked, though what had failed was closed after all. A guarded one
/// may not have applied then: nobody can tell now.
fn branches_left<'a>(place: &'a Place, procedure: &'a Procedure) -> impl Iterator<Item = &'a Step> {
    procedure
        .all_steps()
        .into_iter()
        .filter(|step| place.failed.contains_key(&step.id) && place.closed.contains_key(&step.id))
        .flat_map(|step| &step.fails)
        .filter(|inner| inner.when.is_none() && !place.closed.contains_key(&inner.id))
}

/// It was moved or apart, and stands neither where it was left nor where it was found.
fn not_restored(known: &AdjusterState) -> bool {
    let moved = known.position != Position::Uncounted;
    let as_found = known.found.is_some_and(|found| known.position == Position::At(found));
    moved && known.left_where_it_stands().is_none() && !as_found
}

fn part_open(card: &UnitCard, id: &str, known: &PartState) -> Option<String> {
    let name = card.name_of(id);
    let fastened = card.part(id).is_some_and(|part| part.torque.is_some() || part.nip.is_some());
    match known.fitting {
        Fitting::Off => Some(format!("{name} is off")),
        Fitting::Loose | Fitting::On if fastened => Some(format!("{name} is not tightened")),
        _ if (known.safe || known.vented) && !known.live && is_charge(card, id) => {
            Some(format!("{name} is not charged"))
        }
        _ => None,
    }
}

fn is_charge(card: &UnitCard, id: &str) -> bool {
    card.adjuster(id).is_some_and(|adjuster| matches!(adjuster.kind, AdjusterKind::Charge { .. }))
}

/// A time in half hours, rounded up, as it is said: "twenty three and a half hours".
fn half_hours(minutes: f64) -> String {
    let halves = (minutes / 30.0).ceil();
    let (whole, half) = ((halves / 2.0).floor(), halves % 2.0 > 0.0);
    match (whole, half) {
        (0.0, _) => "half an hour".to_owned(),
        (whole, true) => format!("{} and a half hours", figures::words(whole)),
        (whole, false) => Unit::Hour.say(whole),
    }
}

/// Threadlocker that is not cured yet: until when it may not be handled, or used.
fn cures(desk: &Desk<'_>, id: &str, card: &UnitCard) -> Vec<String> {
    let here = desk.state.record.locked.iter().filter(|((place, _), _)| place == id);
    let mut out = Vec::new();
    for ((_, part), locking) in here {
        let gone = (desk.now - locking.at).num_milliseconds() as f64 / 60_000.0;
        let left = |until: Option<f64>| until.map(|until| until - gone).filter(|left| *left > 0.0);
        let name = card.name_of(part);
        if let Some(minutes) = left(locking.handle) {
            out.push(format!("{name} threadlocker: do not handle for {}", Unit::Minute.say(minutes.ceil())));
        }
        if let Some(minutes) = left(locking.cure) {
            out.push(format!("{name} threadlocker: do not use for {}", half_hours(minutes)));
        }
    }
    out
}

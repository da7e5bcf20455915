//! What each deed does to its part or adjuster, so that an event can carry it.

use crate::act::End;
use crate::event::{Change, Kept, Moved};
use crate::quantity::{Quantity, Unit};
use crate::rulebase::{Adjuster, AdjusterKind, Deed, Locker, Part, Role, Step, UnitCard};

/// What closing the step does, given the value it was closed with.
pub fn effects(card: &UnitCard, step: &Step, kept: Option<&Kept>) -> Vec<Moved> {
    let Some(id) = step.about.as_deref() else { return Vec::new() };
    let mut out = Vec::new();
    if let Some(adjuster) = card.adjuster(id) {
        out.extend(on_adjuster(adjuster, step, kept).map(|change| moved(id, change)));
        if loads_the_spring(adjuster, step, kept) {
            let springs = card.parts.iter().filter(|part| !part.springs.is_empty());
            out.extend(springs.map(|part| moved(&part.id, Change::Live)));
        }
    }
    if let Some(part) = card.part(id) {
        out.extend(on_part(part, step.deed).map(|change| moved(id, change)));
    } else if let Some(AdjusterKind::Charge { .. }) = card.adjuster(id).map(|adjuster| &adjuster.kind)
        && let Some(change) = on_energy(step.deed)
    {
        out.push(moved(id, change));
    }
    if matches!(step.deed, Deed::Remove | Deed::Rock | Deed::Press) {
        let lost = card.adjusters.iter().filter(|adjuster| adjuster.through.iter().any(|part| part == id));
        out.extend(lost.map(|adjuster| moved(&adjuster.id, Change::Lost)));
    }
    out
}

fn moved(about: &str, change: Change) -> Moved {
    Moved { about: about.to_owned(), change }
}

/// Whether the step winds preload on: the spring is under load from then on.
fn loads_the_spring(adjuster: &Adjuster, step: &Step, kept: Option<&Kept>) -> bool {
    let screw = matches!(adjuster.kind, AdjusterKind::Screw { .. });
    screw && step.deed == Deed::Set && kept.and_then(|kept| kept.value).is_some_and(|value| value > 0.0)
}

fn on_adjuster(adjuster: &Adjuster, step: &Step, kept: Option<&Kept>) -> Option<Change> {
    let value = kept.and_then(|kept| kept.value);
    let role = step.read.as_ref().map(|read| &read.role);
    match (step.deed, &adjuster.kind) {
        (Deed::Zero, AdjusterKind::Ring { first, .. }) => Some(Change::At { value: f64::from(*first) }),
        (Deed::Zero, _) => Some(Change::At { value: 0.0 }),
        // Counted in to the stop: it stands full in. A ring is read where it stands.
        (Deed::Count, AdjusterKind::Clicker { .. }) => match role {
            Some(Role::Travel | Role::TravelAgain) => value.map(|value| Change::At { value }),
            // Counted out instead, it ends at the other stop, as far out as its travel.
            _ if kept.is_some_and(|kept| kept.said_from == Some(End::FullOut)) => {
                let travel = kept.and_then(|kept| kept.with_travel);
                Some(travel.map_or(Change::Lost, |value| Change::At { value }))
            }
            _ => Some(Change::At { value: 0.0 }),
        },
        // A perch is counted down to where it just touches, a screw out to its stop: its nought. Its travel ends at the
        // other stop.
        (Deed::Count, AdjusterKind::Screw { .. })
            if matches!(role, Some(Role::Travel | Role::TravelAgain)) =>
        {
            value.map(|value| Change::At { value })
        }
        (Deed::Count, AdjusterKind::Screw { .. }) => Some(Change::At { value: 0.0 }),
        (Deed::Count | Deed::Measure, _) if role == Some(&Role::Found) => {
            value.map(|value| Change::At { value })
        }
        (Deed::Set | Deed::Charge, _) => value.map(|value| Change::At { value }),
        (Deed::Release, AdjusterKind::Charge { .. }) => None,
        (Deed::Remove | Deed::Rock | Deed::Press | Deed::Drive | Deed::Release, _) => Some(Change::Lost),
        _ => None,
    }
}

fn on_part(part: &Part, deed: Deed) -> Option<Change> {
    match deed {
        Deed::Threadlock => part.locker.as_ref().map(locked),
        Deed::Tighten => Some(Change::Tight { torque: part.torque.is_some() }),
        Deed::Look => part.mark.is_some().then_some(Change::MarkSeen),
        // What stores energy is let off; anything else that is released is undone by hand.
        Deed::Release if part.springs.is_empty() => Some(Change::Loose),
        other => on_any(other).or_else(|| on_energy(other)),
    }
}

fn on_any(deed: Deed) -> Option<Change> {
    match deed {
        Deed::Loosen | Deed::Strike => Some(Change::Loose),
        Deed::Remove | Deed::Rock => Some(Change::Off),
        Deed::Refit | Deed::Press => Some(Change::On),
        Deed::Mark => Some(Change::Marked),
        Deed::Clean => Some(Change::Clean),
        Deed::Inspect => Some(Change::Passed),
        Deed::Replace => Some(Change::New),
        Deed::Fill => Some(Change::Filled),
        Deed::Drain => Some(Change::Drained),
        _ => None,
    }
}

/// Gas, springs and whatever else stores energy.
fn on_energy(deed: Deed) -> Option<Change> {
    match deed {
        Deed::Vent | Deed::Release => Some(Change::Vented),
        Deed::Prove => Some(Change::Safe),
        Deed::Charge | Deed::Compress => Some(Change::Live),
        _ => None,
    }
}

fn locked(locker: &Locker) -> Change {
    let minutes = |time: Quantity| time.in_unit(Unit::Minute).ok();
    Change::Locked {
        grade: locker.grade.clone(),
        open: minutes(locker.open).unwrap_or_default(),
        handle: locker.handle.and_then(minutes),
        cure: locker.cure.and_then(minutes),
    }
}

/// The unit an adjuster's settings are kept in.
pub fn unit_of(adjuster: &Adjuster) -> Unit {
    match &adjuster.kind {
        AdjusterKind::Clicker { .. } => Unit::Click,
        AdjusterKind::Ring { .. } => Unit::PositionStep,
        AdjusterKind::Screw { .. } => Unit::Turn,
        AdjusterKind::Charge { limit, .. } => limit.unit,
    }
}

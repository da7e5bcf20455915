//! What the job waits for, from rules and state: hearing and the front ends read it.

use super::desk::{Desk, Moment};
use super::state::State;
use super::{Past, judge, present};
use crate::act::{Act, Waiting, WaitingFor, Want};
use crate::event::{Pending, Utterance};
use crate::quantity::Unit;
use crate::rulebase::{Pack, Step};

/// What the job waits for.
pub fn waiting(rules: &Pack, state: &State, now: Moment, ear: bool) -> Waiting {
    let past = Past::default();
    let utterance = Utterance { id: String::new(), heard: None, understood: Vec::new(), ear };
    at(&Desk::new(rules, &past, state, now, utterance))
}

/// What a job on the desk waits for.
pub fn at(desk: &Desk<'_>) -> Waiting {
    let progress = &desk.state.progress;
    let step = super::entries::notes::current(desk).filter(|_| progress.open);
    let mut waiting = step.as_ref().map(|step| of_step(desk, step)).unwrap_or_default();
    waiting.ear = desk.by_ear();
    if let Some(pending) = &progress.pending {
        of_question(&mut waiting, pending);
    } else if all_worked(desk) {
        waiting.kind = WaitingFor::Nothing;
    }
    waiting
}

/// Whether every step of the place in hand is closed.
fn all_worked(desk: &Desk<'_>) -> bool {
    let (Some(place), Some(cursor)) = (desk.place(), desk.cursor()) else { return false };
    place.closed.contains_key(&cursor) && !place.went_back
}

fn of_step(desk: &Desk<'_>, step: &Step) -> Waiting {
    let kind = match &step.read {
        Some(read) => read.kind,
        None if step.answers_yes_or_no() => WaitingFor::YesOrNo,
        None => WaitingFor::Done,
    };
    Waiting { kind, about: step.about.clone(), want: want(desk, step), ..Waiting::default() }
}

fn want(desk: &Desk<'_>, step: &Step) -> Option<Want> {
    let card = desk.card()?;
    let limit = judge::limit(desk, &card, step)?;
    let nominal = limit.nominal();
    Some(Want { value: nominal.value, unit: Some(nominal.unit.name().to_owned()), from: None })
}

fn of_question(waiting: &mut Waiting, pending: &Pending) {
    waiting.kind = match pending {
        Pending::Value { .. } | Pending::Finish | Pending::Acknowledge { .. } => WaitingFor::YesOrNo,
        Pending::Deviation { reason, .. } | Pending::Skip { reason, .. } => match reason {
            Some(_) => WaitingFor::YesOrNo,
            None => WaitingFor::Text,
        },
        Pending::Switch { .. } | Pending::Start { .. } | Pending::SpringRate { .. } => WaitingFor::Text,
        Pending::Work { unit, .. } => work_kind(unit.as_deref()),
        Pending::Stand { unit, .. } => work_kind(Some(unit)),
        Pending::Between { acts, .. } if acts.len() == 1 => WaitingFor::YesOrNo,
        Pending::Between { acts, .. } if acts.iter().any(|act| act.slots.text.is_some()) => WaitingFor::Text,
        Pending::Between { .. } => waiting.kind,
    };
    if matches!(pending, Pending::Work { .. }) {
        // The answer is the calculation's, not the step's.
        (waiting.about, waiting.want) = (None, None);
    }
    if let Pending::Stand { about, .. } = pending {
        (waiting.about, waiting.want) = (Some(about.clone()), None);
    }
    waiting.asked = asked(pending);
}

/// The entry that answers a calculation's question, by what the input counts.
fn work_kind(unit: Option<&str>) -> WaitingFor {
    use crate::quantity::Dimension as D;
    match unit.and_then(Unit::parse).map(Unit::dimension) {
        Some(D::Torque) => WaitingFor::Torque,
        Some(D::Length) => WaitingFor::Length,
        Some(D::Pressure) => WaitingFor::Pressure,
        Some(D::Temperature) => WaitingFor::Temperature,
        Some(D::Volume) => WaitingFor::Volume,
        Some(D::Mass) => WaitingFor::Mass,
        Some(D::Rate) => WaitingFor::Rate,
        Some(D::Clicks) => WaitingFor::Clicks,
        Some(D::Position) => WaitingFor::Position,
        Some(D::Angle) => WaitingFor::Turns,
        // Nothing that a step waits for is a plain number or a force.
        Some(_) => WaitingFor::Nothing,
        None => WaitingFor::Text,
    }
}

fn asked(pending: &Pending) -> Vec<Act> {
    match pending {
        Pending::Between { acts, .. } => acts.clone(),
        Pending::Start { .. } => vec![Act::new(crate::act::ActName::Start)],
        Pending::Finish => vec![Act::new(crate::act::ActName::Finish)],
        _ => Vec::new(),
    }
}

/// The title of the step in hand, for front ends.
pub fn step_title(rules: &Pack, state: &State, now: Moment) -> Option<String> {
    let past = Past::default();
    let utterance = Utterance { id: String::new(), heard: None, understood: Vec::new(), ear: false };
    let desk = Desk::new(rules, &past, state, now, utterance);
    let step = super::entries::notes::current(&desk)?;
    Some(present::title(&*desk.card()?, &step))
}

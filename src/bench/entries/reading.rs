//! A value reported: which step it is for, what it is in the card's unit, and what comes of it.

use super::ahead::{self, Found};
use super::{closing, notes, want};
use crate::act::{Act, ActName, End, WaitingFor};
use crate::bench::desk::Desk;
use crate::bench::judge::{self, Judged};
use crate::bench::state::Closing;
use crate::bench::{Consequence, Part, Refusal, Value, deeds, pending, present, rate};
use crate::event::{Change, Event, How, Kept, Pending, Verdict};
use crate::quantity::{Quantity, Unit, figures};
use crate::rulebase::{Adjuster, Deed, Procedure, ReadBack, Role, Step, UnitCard};

/// A value was reported.
pub fn reading(desk: &mut Desk<'_>, act: &Act) {
    let (Some(card), Some(procedure)) = (desk.card(), desk.procedure()) else {
        return super::job::none_open(desk);
    };
    let Some(value) = act.slots.value else { return };
    if says_zeroed(desk, &card, act, value) {
        return super::confirm::confirm(desk, &Act::new(ActName::Confirm));
    }
    desk.closed_one = true;
    let unit = act.slots.unit.as_deref().and_then(Unit::parse);
    if notes::current(desk).is_some_and(|step| step.reads_back == Some(ReadBack::Wanted)) {
        return wished(desk, &card, act, unit);
    }
    let Some(step) = target(desk, &card, &procedure, act, unit) else { return };
    if step.read.as_ref().is_some_and(|read| read.kind == WaitingFor::Text) {
        let said = crate::quantity::bench_figures(value).to_string();
        let text = unit.map_or_else(|| said.clone(), |unit| format!("{said} {}", unit.name()));
        return words(desk, &text);
    }
    take(desk, &card, &step, value, unit, act.slots.from);
}

/// A value said where the wishes are asked for is one: of the adjuster named, or of the only one that it fits.
fn wished(desk: &mut Desk<'_>, card: &UnitCard, act: &Act, unit: Option<Unit>) {
    let fits = |adjuster: &&Adjuster| unit.is_some_and(|unit| deeds::unit_of(adjuster).same_dimension(unit));
    let fitting: Vec<&Adjuster> = card.adjusters.iter().filter(fits).collect();
    let about = match (&act.slots.about, fitting.as_slice()) {
        (Some(about), _) => about.clone(),
        (None, [one]) => one.id.clone(),
        (None, _) => {
            let why = "say which adjuster that is for".to_owned();
            return desk.say(Part::Refused(Refusal::NotNow { why }));
        }
    };
    want::want(desk, &Act { act: ActName::Want, slots: act.slots.clone() }.about(about), "customer");
}

/// Whether the value says that the adjuster in hand stands where the step in hand brings it: "it's on zero".
fn says_zeroed(desk: &Desk<'_>, card: &UnitCard, act: &Act, value: f64) -> bool {
    let Some(current) = notes::current(desk).filter(|step| step.deed == Deed::Zero) else { return false };
    let mine = act.slots.about.is_none() || act.slots.about == current.about;
    let stands = Change::At { value };
    mine && deeds::effects(card, &current, None).iter().any(|moved| moved.change == stands)
}

/// The step a value is for: the one in hand, or an open one of the part named.
fn target(
    desk: &mut Desk<'_>,
    card: &UnitCard,
    procedure: &Procedure,
    act: &Act,
    unit: Option<Unit>,
) -> Option<Step> {
    let current = notes::current(desk)?;
    let about = act.slots.about.as_deref();
    let mine = about.is_none() || about == current.about.as_deref();
    if mine && wants_value(&current) && !notes::is_past(desk, &current) {
        return Some(current);
    }
    let meant = about.or(current.about.as_deref());
    let takes = |step: &Step| wants_value(step) && unit.is_none_or(|unit| fits(card, step, unit));
    let late = just_closed(desk, procedure, about, &takes);
    match meant.map(|about| (about, ahead::find(desk, procedure, about, &takes))) {
        Some((_, Found::Step(step))) => Some(*step),
        Some((_, Found::Blocked(_))) if late.is_some() => late,
        Some((about, Found::Blocked(first))) => {
            let name = card.name_of(about).to_owned();
            let first = present::title(card, &first);
            desk.say(Part::Refused(Refusal::NotPast { name, first }));
            None
        }
        _ => late.or_else(|| closed_before(desk, procedure, about, &takes)).or_else(|| {
            aside(desk, card, act, unit);
            None
        }),
    }
}

/// Whether a value was kept for the step: "tight" closed it with none.
fn has_value(desk: &Desk<'_>, step: &Step) -> bool {
    let here = desk.place_id();
    let mut kept = desk.state.record.kept.iter().filter(|entry| entry.place == here && !entry.corrected);
    kept.any(|entry| entry.kept.step.as_deref() == Some(step.id.as_str()))
}

/// The step closed last, where the value fits it and names its part, or names none and the step was closed without one:
/// "tight" and then how tight.
fn just_closed(
    desk: &Desk<'_>,
    procedure: &Procedure,
    about: Option<&str>,
    takes: &dyn Fn(&Step) -> bool,
) -> Option<Step> {
    let step = procedure.step(desk.state.record.last_kept.as_deref()?)?;
    let stands = desk.place()?.closed.get(&step.id) == Some(&Closing::Done);
    let mine = match about {
        Some(about) => step.about.as_deref() == Some(about),
        None => !has_value(desk, step),
    };
    (stands && mine && takes(step)).then(|| step.clone())
}

/// The step of the part named that was closed last and takes the value: it is held against its limits all the same.
fn closed_before(
    desk: &Desk<'_>,
    procedure: &Procedure,
    about: Option<&str>,
    takes: &dyn Fn(&Step) -> bool,
) -> Option<Step> {
    let (place, here) = (desk.place()?, desk.place_id());
    let when = |step: &Step| desk.state.record.closed.get(&(here.clone(), step.id.clone())).copied();
    procedure
        .all_steps()
        .into_iter()
        .filter(|step| about.is_some() && step.about.as_deref() == about && takes(step))
        .filter(|step| place.closed.get(&step.id) == Some(&Closing::Done))
        .max_by_key(|step| when(step))
        .cloned()
}

/// A value that no open step wants is kept with the job, said back, and moves nothing.
fn aside(desk: &mut Desk<'_>, card: &UnitCard, act: &Act, unit: Option<Unit>) {
    let Some(value) = act.slots.value else { return };
    let Some(unit) = unit else {
        let why = "this step takes no figure".to_owned();
        return desk.say(Part::Refused(Refusal::NotNow { why }));
    };
    let kept = Quantity::new(value, unit);
    let about = act.slots.about.clone();
    let role = format!("{:?}", unit.dimension()).to_lowercase();
    let name = about.as_deref().map_or_else(|| role.clone(), |about| card.name_of(about).to_owned());
    desk.emit(Event::Reading(Kept {
        about,
        value: Some(value),
        unit: Some(unit.name().to_owned()),
        ..blank(&role)
    }));
    desk.show_step = false;
    desk.say(Part::SaidBack(Value { name, kept, from: None, said: None, digits: true }));
}

fn wants_value(step: &Step) -> bool {
    step.read.as_ref().is_some_and(|read| {
        !matches!(read.kind, WaitingFor::Done | WaitingFor::YesOrNo | WaitingFor::Tool | WaitingFor::Nothing)
    })
}

fn fits(card: &UnitCard, step: &Step, unit: Unit) -> bool {
    judge::unit(card, step).is_some_and(|own| own.same_dimension(unit))
}

/// An empty record of a value under that role.
pub fn blank(role: &str) -> Kept {
    Kept {
        step: None,
        about: None,
        role: role.to_owned(),
        value: None,
        unit: None,
        text: None,
        said: None,
        said_unit: None,
        said_from: None,
        with_travel: None,
        lo: None,
        hi: None,
        verdict: Verdict::Free,
    }
}

/// Takes a value for a step: converts, judges, keeps, and says what follows.
pub fn take(
    desk: &mut Desk<'_>,
    card: &UnitCard,
    step: &Step,
    value: f64,
    unit: Option<Unit>,
    from: Option<End>,
) {
    match judge::value(desk, card, step, value, unit, from) {
        Judged::Refused(refusal) => desk.say(Part::Refused(refusal)),
        Judged::NeedsTravel(kept) => {
            // The count from full out stands until the travel is known; then it is converted.
            desk.emit(Event::Reading(kept.clone()));
            closing::close(desk, card, step, How::Value, Some(&kept));
            if desk.by_ear() {
                desk.say(Part::SaidBack(from_full_out(card, step, value)));
            }
        }
        Judged::Kept { kept, said_back } if critical(step) && kept.said_unit.is_some() => {
            let question = pending::value_asked(said_back, &kept);
            desk.open(Pending::Value { kept });
            desk.say(Part::Question(question));
        }
        Judged::Kept { kept, said_back } => keep(desk, card, step, kept, Some(said_back)),
    }
}

/// A count from full out as it is said back while it can't be converted.
fn from_full_out(card: &UnitCard, step: &Step, value: f64) -> Value {
    let unit = judge::unit(card, step).unwrap_or(Unit::Click);
    let name = present::name(card, step);
    let kept = Quantity::new(value, unit);
    Value { name, kept, from: Some(End::FullOut), said: None, digits: figures::needs_digits(value) }
}

fn critical(step: &Step) -> bool {
    step.read.as_ref().is_some_and(|read| read.critical)
}

/// Keeps a judged value and closes, fails or holds its step.
pub fn keep(desk: &mut Desk<'_>, card: &UnitCard, step: &Step, kept: Kept, said_back: Option<Value>) {
    let verdict = kept.verdict;
    let repeated = is_repeated(desk, step, &kept);
    desk.emit(Event::Reading(kept.clone()));
    if verdict != Verdict::Out {
        if let Some(said_back) = said_back.filter(|value| desk.by_ear() || value.said.is_some()) {
            desk.say(Part::SaidBack(said_back));
        }
        closing::close(desk, card, step, How::Value, Some(&kept));
        after(desk, card, step, &kept);
        return;
    }
    out_of_limits(desk, card, step, &kept, repeated);
}

/// Whether the count before it at this step was the same and out of limits: counted twice alike, it is a finding.
fn is_repeated(desk: &Desk<'_>, step: &Step, kept: &Kept) -> bool {
    let here = desk.place_id();
    step.read.as_ref().is_some_and(|read| read.recount)
        && desk.place().is_some_and(|place| place.failed.contains_key(&step.id))
        && desk
            .state
            .record
            .kept
            .iter()
            .rev()
            .find(|entry| entry.place == here && entry.kept.step.as_deref() == Some(step.id.as_str()))
            .is_some_and(|entry| entry.kept.value == kept.value)
}

fn out_of_limits(desk: &mut Desk<'_>, card: &UnitCard, step: &Step, kept: &Kept, repeated: bool) {
    let Some((value, limit)) = judge::figures(card, step, kept) else { return };
    let name = present::name(card, step);
    let recount = step.read.as_ref().is_some_and(|read| read.recount);
    let text = format!("{}: {} against {}", present::title(card, step), value.show(), limit.show());
    let finding = Event::Finding { step: Some(step.id.clone()), about: step.about.clone(), text };
    let then = if recount && repeated {
        desk.emit(finding);
        closing::close(desk, card, step, How::Value, Some(kept));
        after(desk, card, step, kept);
        Consequence::Finding
    } else if recount {
        closing::fail(desk, step);
        Consequence::Recount
    } else {
        desk.emit(finding);
        closing::fail(desk, step)
    };
    let then = judge::if_too_tight(card, step, kept, then);
    desk.say(Part::Refused(Refusal::OutOfLimits { name, value, limit, then }));
}

/// What a value just kept settles besides its own step.
fn after(desk: &mut Desk<'_>, card: &UnitCard, step: &Step, kept: &Kept) {
    let Some(about) = kept.about.as_deref() else { return };
    match Role::parse(&kept.role) {
        Role::Travel => convert_waiting(desk, card, about, kept.value),
        Role::Named(role) if role == "rate" => rate::fitted(desk, card, about, kept),
        _ => {}
    }
    fitted(desk, step, &kept.value.map(crate::quantity::figures::words).unwrap_or_default());
}

/// A setting counted from full out before the travel was known is converted now.
fn convert_waiting(desk: &mut Desk<'_>, card: &UnitCard, about: &str, travel: Option<f64>) {
    let Some(travel) = travel else { return };
    let here = desk.place_id();
    let waiting = desk.state.record.kept.iter().rev().find(|entry| {
        entry.place == here
            && !entry.corrected
            && entry.kept.about.as_deref() == Some(about)
            && entry.kept.said_from == Some(End::FullOut)
            && entry.kept.value.is_none()
    });
    let Some(entry) = waiting.cloned() else { return };
    let Some(said) = entry.kept.said else { return };
    let value = travel - said;
    let now = Kept { value: Some(value), with_travel: Some(travel), ..entry.kept };
    desk.emit(Event::Corrected { now, of: entry.event });
    let unit = card.adjuster(about).map_or(Unit::Click, crate::bench::deeds::unit_of);
    desk.say(Part::SaidBack(Value {
        name: card.name_of(about).to_owned(),
        kept: Quantity::new(value, unit),
        from: Some(End::FullIn),
        said: Some((Quantity::new(said, unit), Some(End::FullOut))),
        digits: false,
    }));
}

/// Words reported for the step in hand.
pub fn words(desk: &mut Desk<'_>, text: &str) {
    let (Some(card), Some(step)) = (desk.card(), notes::current(desk)) else { return };
    let Some(read) = &step.read else { return };
    if tells_nothing(desk, text) {
        desk.show_step = true;
        return;
    }
    let role = read.role.as_str().to_owned();
    let kept = Kept {
        step: Some(step.id.clone()),
        about: step.about.clone(),
        text: Some(text.to_owned()),
        ..blank(&role)
    };
    // What the technician has said yes to was said back already.
    if !desk.events.contains(&Event::Settled) {
        super::booked::say_back(desk, &kept);
    }
    desk.emit(Event::Reading(kept));
    closing::close(desk, &card, &step, How::Value, None);
    fitted(desk, &step, text);
}

/// Whether words are no more than a yes or a done, which is no serial, no batch and no name: the step asks again.
pub fn tells_nothing(desk: &Desk<'_>, text: &str) -> bool {
    let words = &desk.rules.talk.words;
    let Some(against) = words.unlike.get("text") else { return false };
    let said = text.to_lowercase();
    let mut said = said.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty());
    said.all(|word| against.iter().any(|own| own == words.means.get(word).map_or(word, String::as_str)))
}

/// A part renewed with its batch or rate said is kept as fitted.
fn fitted(desk: &mut Desk<'_>, step: &Step, text: &str) {
    if let (Deed::Replace, Some(about)) = (step.deed, &step.about) {
        desk.emit(Event::Fitted { about: about.clone(), text: text.to_owned() });
    }
}

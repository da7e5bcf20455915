//! A value held against its step: in the card's unit, from full in, within limits or not.

use super::deeds::unit_of;
use super::desk::Desk;
use super::{Consequence, Refusal, Value, present, restore, view};
use crate::act::{End, WaitingFor};
use crate::event::{Kept, Verdict};
use crate::quantity::{Limit, Quantity, Unit, figures};
use crate::rulebase::{AdjusterKind, Deed, Role, Step, UnitCard};

/// What comes of a value before it is kept.
pub enum Judged {
    /// Not a value for this step.
    Refused(Refusal),
    /// Counted from full out, and the travel is not known yet.
    NeedsTravel(Kept),
    /// In the card's unit, with its verdict.
    Kept {
        /// The value.
        kept: Kept,
        /// The same for saying back.
        said_back: Value,
    },
}

/// Judges a value said for a step.
pub fn value(
    desk: &Desk<'_>,
    card: &UnitCard,
    step: &Step,
    said: f64,
    said_unit: Option<Unit>,
    from: Option<End>,
) -> Judged {
    let Some(own) = unit(card, step) else {
        return Judged::Refused(Refusal::NotNow { why: "this step takes no figure".to_owned() });
    };
    let spoken = Quantity::new(said, said_unit.unwrap_or(own));
    let Ok(converted) = spoken.to(own) else {
        return Judged::Refused(Refusal::WrongKind {
            said: spoken,
            wanted: own.dimension().words().to_owned(),
        });
    };
    let name = present::name(card, step);
    let role = step.read.as_ref().map_or("value", |read| read.role.as_str()).to_owned();
    let mut kept = Kept {
        step: Some(step.id.clone()),
        about: step.about.clone(),
        ..super::entries::reading::blank(&role)
    };
    kept.unit = Some(own.name().to_owned());
    kept.said_unit = said_unit.filter(|unit| *unit != own).map(|unit| unit.name().to_owned());
    kept.said = kept.said_unit.is_some().then_some(said);
    let mut value = converted.value;
    if from == Some(End::FullOut) && counts_from_an_end(card, step) {
        (kept.said, kept.said_from) = (Some(said), from);
        match travel(desk, step) {
            None => return Judged::NeedsTravel(kept),
            Some(travel) => {
                kept.with_travel = Some(travel);
                value = travel - converted.value;
            }
        }
    }
    if let Some(why) = not_a_setting(desk, card, step, value) {
        return Judged::Refused(Refusal::NotASetting { name, value: spoken, why });
    }
    kept.value = Some(value);
    judge_limit(desk, card, step, &mut kept, own);
    let said_back = said_back(card, step, &kept, own, spoken, name);
    Judged::Kept { kept, said_back }
}

fn said_back(card: &UnitCard, step: &Step, kept: &Kept, own: Unit, spoken: Quantity, name: String) -> Value {
    let value = kept.value.unwrap_or_default();
    let setting = counts_from_an_end(card, step) && step.read.as_ref().is_some_and(is_setting);
    Value {
        name,
        kept: Quantity::new(value, own),
        from: setting.then_some(End::FullIn),
        said: kept.said.map(|_| (spoken, kept.said_from)),
        digits: figures::needs_digits(value),
    }
}

fn is_setting(read: &crate::rulebase::Read) -> bool {
    matches!(read.role, Role::Found | Role::Left)
}

/// The unit a step's value is kept in: its own, its limit's, its adjuster's, or that of what it waits for.
pub fn unit(card: &UnitCard, step: &Step) -> Option<Unit> {
    let read = step.read.as_ref()?;
    let kind = of_kind(read.kind)?;
    let own = read.unit.or(read.limit.map(|limit| limit.unit));
    let adjuster = step.about.as_deref().and_then(|id| card.adjuster(id)).map(unit_of);
    Some(own.or(adjuster.filter(|unit| unit.same_dimension(kind))).unwrap_or(kind))
}

fn of_kind(kind: WaitingFor) -> Option<Unit> {
    Some(match kind {
        WaitingFor::Torque => Unit::NewtonMetre,
        WaitingFor::Clicks => Unit::Click,
        WaitingFor::Position => Unit::PositionStep,
        WaitingFor::Turns => Unit::Turn,
        WaitingFor::Length => Unit::Millimetre,
        WaitingFor::Pressure => Unit::Bar,
        WaitingFor::Temperature => Unit::Celsius,
        WaitingFor::Volume => Unit::Millilitre,
        WaitingFor::Mass => Unit::Kilogram,
        WaitingFor::Rate => Unit::NewtonPerMillimetre,
        WaitingFor::Done
        | WaitingFor::YesOrNo
        | WaitingFor::Tool
        | WaitingFor::Text
        | WaitingFor::Nothing => {
            return None;
        }
    })
}

fn counts_from_an_end(card: &UnitCard, step: &Step) -> bool {
    let kind = step.about.as_deref().and_then(|id| card.adjuster(id)).map(|adjuster| &adjuster.kind);
    // A screw is counted from its outer stop, whichever words are used: its nought is full out.
    matches!(kind, Some(AdjusterKind::Clicker { .. }))
}

fn travel(desk: &Desk<'_>, step: &Step) -> Option<f64> {
    let adjuster = desk.place()?.adjusters.get(step.about.as_deref()?)?;
    adjuster.travel_again.or(adjuster.travel)
}

/// Why a value cannot be one of this adjuster's settings.
fn not_a_setting(desk: &Desk<'_>, card: &UnitCard, step: &Step, value: f64) -> Option<String> {
    if value < 0.0 && !matches!(step.read.as_ref()?.kind, WaitingFor::Temperature) {
        return Some("it is below nought".to_owned());
    }
    let adjuster = card.adjuster(step.about.as_deref()?)?;
    let read = step.read.as_ref()?;
    if !matches!(read.kind, WaitingFor::Clicks | WaitingFor::Position) {
        return None;
    }
    if value.fract() != 0.0 {
        return Some("it is not a whole number".to_owned());
    }
    match &adjuster.kind {
        AdjusterKind::Ring { first, last, .. } => {
            let on = (f64::from(*first)..=f64::from(*last)).contains(&value);
            (!on).then(|| format!("the ring has positions {first} to {last}"))
        }
        AdjusterKind::Clicker { clicks, .. } if is_setting(read) => {
            let all = travel(desk, step).unwrap_or(f64::from(*clicks)).max(f64::from(*clicks));
            (value > all).then(|| format!("it has {} clicks", figures::words(all)))
        }
        _ => None,
    }
}

fn judge_limit(desk: &Desk<'_>, card: &UnitCard, step: &Step, kept: &mut Kept, own: Unit) {
    let limit = limit(desk, card, step).and_then(|limit| limit.to(own).ok());
    if let Some(limit) = limit {
        (kept.lo, kept.hi) = (limit.lo, limit.hi);
        let holds = kept.value.is_some_and(|value| limit.holds(Quantity::new(value, own)).unwrap_or(false));
        kept.verdict = if holds { Verdict::Within } else { Verdict::Out };
    }
    if let Some(accept) = &step.accept {
        let good = view::accept(desk, accept, kept.value).unwrap_or(false);
        kept.verdict = match (kept.verdict, good) {
            (Verdict::Out, _) | (_, false) => Verdict::Out,
            (_, true) => Verdict::Within,
        };
    }
}

/// The band a step's value is held to: its own, or for a setting the wanted one.
pub fn limit(desk: &Desk<'_>, card: &UnitCard, step: &Step) -> Option<Limit> {
    let read = step.read.as_ref()?;
    if matches!(step.deed, Deed::Set | Deed::Charge) && read.role == Role::Left {
        return restore::band(desk, card, step.about.as_deref()?).or(read.limit);
    }
    if read.role == Role::TravelAgain {
        let adjuster = desk.place()?.adjusters.get(step.about.as_deref()?)?;
        let unit = card.adjuster(step.about.as_deref()?).map(unit_of)?;
        let band = if unit == Unit::Turn { restore::FLAT } else { 0.0 };
        let again = adjuster.travel.map(|travel| Limit::around(Quantity::new(travel, unit), band));
        return again.or(read.limit);
    }
    read.limit
}

/// What follows a torque out of limits: past the upper end a joint may be spoilt, and what its card says of that comes
/// before it is done again.
pub fn if_too_tight(card: &UnitCard, step: &Step, kept: &Kept, then: Consequence) -> Consequence {
    let over = kept.value.zip(kept.hi).is_some_and(|(value, most)| value > most);
    let part =
        step.about.as_deref().and_then(|id| card.part(id)).filter(|_| over && step.deed == Deed::Tighten);
    match (part.and_then(|part| part.too_tight.clone()), then) {
        (Some(text), Consequence::StaysOpen | Consequence::Stop(_)) => Consequence::TooTight(text),
        (_, then) => then,
    }
}

/// The value and the limits of a kept reading, as quantities.
pub fn figures(card: &UnitCard, step: &Step, kept: &Kept) -> Option<(Quantity, Limit)> {
    let own = unit(card, step)?;
    let value = Quantity::new(kept.value?, own);
    Some((value, Limit { lo: kept.lo, hi: kept.hi, unit: own }))
}

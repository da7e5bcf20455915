//! What the customer wants an adjuster, a spring or a pressure to be.

use super::relative;
use crate::act::{Act, ActName, End};
use crate::bench::deeds::unit_of;
use crate::bench::desk::Desk;
use crate::bench::{Ack, Part, Refusal, Value, pending, settings};
use crate::event::Event;
use crate::quantity::{Quantity, Unit, figures};
use crate::rulebase::{Adjuster, AdjusterKind};

/// Keeps a wish: a number is held against the adjuster; words are kept as they are.
pub fn want(desk: &mut Desk<'_>, act: &Act, whose: &str) {
    let Some(card) = desk.card() else { return super::job::none_open(desk) };
    let about = act.slots.about.clone().or_else(|| super::notes::current(desk).and_then(|step| step.about));
    let Some(about) = about else { return words(desk, act, None, whose) };
    match (card.adjuster(&about), act.slots.value) {
        (Some(adjuster), value) if relative::is(desk, act) => {
            if value.is_none() {
                words(desk, act, Some(about.clone()), whose);
            }
            relative::wish(desk, adjuster, act);
        }
        (Some(adjuster), Some(value)) => number(desk, adjuster, act, value, whose),
        _ => words(desk, act, Some(about), whose),
    }
}

/// A wish that was worked out or chosen, and agreed to.
pub fn agreed(desk: &mut Desk<'_>, act: &Act) {
    let Some(card) = desk.card() else { return };
    let adjuster = act.slots.about.as_deref().and_then(|about| card.adjuster(about));
    match (adjuster, act.slots.value) {
        (Some(adjuster), Some(value)) => number(desk, adjuster, act, value, "customer"),
        _ => words(desk, act, act.slots.about.clone(), "customer"),
    }
}

/// Whether the act answers where an adjuster is to stand; if so its setting is kept as wanted.
pub fn stands_at(desk: &mut Desk<'_>, act: &Act, about: &str) -> bool {
    let mine = act.slots.about.as_deref().is_none_or(|named| named == about);
    let gives = matches!(act.act, ActName::Reading | ActName::Want | ActName::Correct);
    match act.act {
        ActName::Deny => pending::dropped(desk),
        _ if gives && mine && act.slots.value.is_some() && !relative::is(desk, act) => {
            desk.emit(Event::Settled);
            desk.closed_one = true;
            let mut wish = Act { act: ActName::Want, slots: act.slots.clone() }.about(about);
            wish.slots.text = None;
            agreed(desk, &wish);
            desk.show_step = true;
        }
        _ => return false,
    }
    true
}

fn number(desk: &mut Desk<'_>, adjuster: &Adjuster, act: &Act, said: f64, whose: &str) {
    let own = unit_of(adjuster);
    let spoken = Quantity::new(said, act.slots.unit.as_deref().and_then(Unit::parse).unwrap_or(own));
    let name = adjuster.name().to_owned();
    let Ok(converted) = spoken.to(own) else {
        let wanted = own.dimension().words().to_owned();
        return desk.say(Part::Refused(Refusal::WrongKind { said: spoken, wanted }));
    };
    let travel = travel(desk, adjuster);
    let clicker = matches!(adjuster.kind, AdjusterKind::Clicker { .. });
    // A screw's nought is full out: counted from there, the number is the setting.
    let from_out = clicker && act.slots.from == Some(End::FullOut);
    let value = match (from_out, travel) {
        (true, Some(travel)) => travel - converted.value,
        (true, None) => {
            let why = "its travel has not been counted yet".to_owned();
            return desk.say(Part::Refused(Refusal::NotNow { why }));
        }
        (false, _) => converted.value,
    };
    if let Some(why) = impossible(adjuster, value, travel) {
        return desk.say(Part::Refused(Refusal::NotASetting { name, value: spoken, why }));
    }
    if super::outside::questioned(desk, adjuster, act, value) {
        return;
    }
    desk.emit(Event::Wanted {
        about: adjuster.id.clone(),
        value: Some(value),
        unit: Some(own.name().to_owned()),
        said_from: act.slots.from.filter(|_| clicker),
        text: act.slots.text.clone().filter(|text| !holds_figure(text, said)),
        whose: whose.to_owned(),
    });
    let said = from_out.then_some((spoken, act.slots.from));
    let from = clicker.then_some(End::FullIn);
    let kept = Quantity::new(value, own);
    desk.say(Part::Ack(Ack::Wanted(Value { name, kept, from, said, digits: figures::needs_digits(value) })));
}

/// Whether words only say the figure again that is kept beside them.
fn holds_figure(text: &str, said: f64) -> bool {
    let tokens: Vec<&str> = text.split_whitespace().collect();
    let figures =
        (0..tokens.len()).filter_map(|from| figures::read_number(tokens.get(from..)?).into_iter().next());
    figures.into_iter().any(|found| (found.value - said).abs() < 1e-9)
}

/// The travel counted on this unit, or the card's.
fn travel(desk: &Desk<'_>, adjuster: &Adjuster) -> Option<f64> {
    let known = settings::known(desk, &adjuster.id);
    known.travel_again.or(known.travel)
}

/// Why a wish can't be met on this unit.
fn impossible(adjuster: &Adjuster, value: f64, travel: Option<f64>) -> Option<String> {
    if value < 0.0 {
        return Some("it is below nought".to_owned());
    }
    match &adjuster.kind {
        AdjusterKind::Clicker { clicks, .. } => {
            let all = travel.unwrap_or(f64::from(*clicks));
            whole(value).or_else(|| (value > all).then(|| format!("it has {} clicks", figures::words(all))))
        }
        AdjusterKind::Ring { first, last, .. } => whole(value).or_else(|| {
            let on = (f64::from(*first)..=f64::from(*last)).contains(&value);
            (!on).then(|| format!("the ring has positions {first} to {last}"))
        }),
        AdjusterKind::Screw { turns: Some(turns), datum: None, .. } => {
            (value > *turns).then(|| format!("it has {} turns", figures::words(*turns)))
        }
        AdjusterKind::Screw { .. } => None,
        AdjusterKind::Charge { limit, .. } => {
            let over = limit.hi.is_some_and(|hi| value > hi);
            over.then(|| format!("the card gives {} at the most", limit.show()))
        }
    }
}

fn whole(value: f64) -> Option<String> {
    (value.fract() != 0.0).then(|| "it is not a whole number".to_owned())
}

/// What is wanted, without who wants it: "he wants the stiffer spring" is "the stiffer spring".
fn matter(text: &str) -> &str {
    [" wants ", " want ", " would like ", "'d like "]
        .iter()
        .filter_map(|verb| text.split_once(verb))
        .filter(|(who, _)| who.split_whitespace().count() <= 3)
        .map(|(_, what)| what.trim())
        .find(|what| !what.is_empty() && !what.starts_with("to "))
        .unwrap_or(text)
}

fn words(desk: &mut Desk<'_>, act: &Act, about: Option<String>, whose: &str) {
    if desk.place().is_none() {
        return super::job::none_open(desk);
    }
    let text = act.slots.text.as_deref().map(matter).unwrap_or_default().to_owned();
    let value = act.slots.value.map(figures::words);
    let text = match value {
        Some(value) if text.is_empty() => format!("{value} {}", act.slots.unit.clone().unwrap_or_default()),
        _ => text,
    };
    let about = about.unwrap_or_else(|| "unit".to_owned());
    desk.emit(Event::Wanted {
        about,
        value: None,
        unit: None,
        said_from: None,
        text: Some(text.trim().to_owned()),
        whose: whose.to_owned(),
    });
    desk.say(Part::Ack(Ack::WantedWords(text.trim().to_owned())));
}

//! A spring of another rate: asked once whether the turns, the preload force or the ride height stay the same.

use super::desk::Desk;
use super::{Part as Said, Question, deeds, settings};
use crate::act::{Act, ActName, Doubt, Slots};
use crate::event::{Kept, Pending};
use crate::quantity::{Quantity, Unit};
use crate::rulebase::{Adjuster, AdjusterKind, Part, UnitCard};
use crate::workings::springs::combine::Tender;

/// A spring's rate was reported: when it is another than the one that came off, the question is opened.
pub fn fitted(desk: &mut Desk<'_>, card: &UnitCard, about: &str, kept: &Kept) {
    let Some(part) = card.part(about) else { return };
    let on_card = part.springs.first().map(|spring| spring.rate.value);
    let was = reading(desk, about, "rate-found").or(on_card);
    let (Some(was), Some(now)) = (was, kept.value) else { return };
    let asked = desk.place().is_some_and(|place| place.rate_asked);
    let Some(adjuster) = card.adjusters.iter().find(|adjuster| pitch(adjuster).is_some()) else { return };
    if asked || same(was, now) {
        return;
    }
    let options = options(desk, card, part, adjuster, (was, now));
    let acts = options.iter().map(|(name, value)| want(&adjuster.id, name, *value)).collect();
    desk.open(Pending::Between { acts, doubt: Doubt::Meaning, then: Vec::new() });
    desk.say(Said::Question(Question::SpringRate {
        was: Quantity::new(was, Unit::NewtonPerMillimetre),
        now: Quantity::new(now, Unit::NewtonPerMillimetre),
        options,
    }));
}

/// Whether two rates are of the same spring. They are marked rounded, and otherwise in another unit (400 lbf/in is
/// 70.05 N/mm): one in a hundred is no difference (common practice, no source).
fn same(a: f64, b: f64) -> bool {
    (a - b).abs() <= 0.01 * b.abs()
}

/// A value kept at the place in hand.
fn reading(desk: &Desk<'_>, about: &str, role: &str) -> Option<f64> {
    desk.place()?.readings.get(&(about.to_owned(), role.to_owned())).copied()
}

/// The pitch of an adjuster that winds preload on, mm a turn.
fn pitch(adjuster: &Adjuster) -> Option<f64> {
    match &adjuster.kind {
        AdjusterKind::Screw { pitch, .. } => pitch.in_unit(Unit::Millimetre).ok(),
        _ => None,
    }
}

/// An option of the question, as the act that it would be.
fn want(about: &str, name: &str, value: Option<Quantity>) -> Act {
    let slots = Slots {
        about: Some(about.to_owned()),
        value: value.map(|value| value.value),
        unit: value.map(|value| value.unit.name().to_owned()),
        text: Some(name.to_owned()),
        ..Slots::default()
    };
    Act { act: ActName::Want, slots }
}

/// The three ways out, each with the turns of preload it leads to where that can be worked out.
///
/// With preload length p (how far the perch compresses the spring) and rate k: the same turns keep p; the same force
/// keeps the force at that length (k p by Hooke's law); the same ride height under a load W keeps W / k - p, so that
/// p2 = p1 + W / k2 - W / k1. With a tender in series the deflections are those of both, the tender's until it closes.
/// A spring of another free length first takes up the difference.
fn options(
    desk: &Desk<'_>,
    card: &UnitCard,
    part: &Part,
    adjuster: &Adjuster,
    (was, now): (f64, f64),
) -> Vec<(String, Option<Quantity>)> {
    let pitch = pitch(adjuster).filter(|pitch| *pitch > 0.0).unwrap_or(1.0);
    let turns = settings::known(desk, &adjuster.id).target();
    let preload = turns.map(|turns| turns * pitch);
    let load = reading(desk, &part.id, "load");
    let taken_up = longer(part, was, now);
    let (before, after) = (stack(card, part, was), stack(card, part, now));
    let same_force = preload.map(|preload| after.deflection(before.force(preload)));
    let higher = |load| after.deflection(load) - before.deflection(load) - taken_up;
    let same_height = preload.zip(load).map(|(preload, load)| preload + higher(load));
    let quantity = |length: Option<f64>| {
        let turns = (length? / pitch * FLATS).round() / FLATS;
        Some(Quantity::new(turns, deeds::unit_of(adjuster)))
    };
    vec![
        ("same turns".to_owned(), quantity(preload)),
        ("same preload force".to_owned(), quantity(same_force)),
        ("same ride height".to_owned(), quantity(same_height)),
    ]
}

/// The spring of that rate with what stands on it: another spring of the card is a tender in series, until it closes.
fn stack(card: &UnitCard, part: &Part, rate: f64) -> Tender {
    let other = card.parts.iter().filter(|other| other.id != part.id).find_map(|other| other.springs.first());
    let tender = other.and_then(|spring| {
        let length = |length: Quantity| length.in_unit(Unit::Millimetre).ok();
        let travel = length(spring.free)? - spring.block.and_then(length)?;
        Some(Tender { main: rate, tender: spring.rate.in_unit(Unit::NewtonPerMillimetre).ok()?, travel })
    });
    tender.unwrap_or(Tender { main: rate, tender: rate, travel: 0.0 })
}

/// Turns are counted in flats of a sixth (design, section 2).
const FLATS: f64 = 6.0;

/// How much longer the new spring is, free, mm; 0 where the card does not know either.
fn longer(part: &Part, was: f64, now: f64) -> f64 {
    free(part, now).zip(free(part, was)).map_or(0.0, |(now, was)| now - was)
}

fn free(part: &Part, rate: f64) -> Option<f64> {
    let spring = part.springs.iter().find(|spring| same(spring.rate.value, rate))?;
    spring.free.in_unit(Unit::Millimetre).ok()
}

/// The length from the perch to its datum at that many turns: the length measured as found, shorter by the turns
/// wound on since, longer by what a longer spring adds before it touches. None where nothing was measured.
pub fn datum_length(desk: &Desk<'_>, card: &UnitCard, adjuster: &Adjuster, turns: f64) -> Option<Quantity> {
    let measured = reading(desk, &adjuster.id, "datum")?;
    let found = settings::known(desk, &adjuster.id).found?;
    let pitch = pitch(adjuster)?;
    let spring = card.parts.iter().find(|part| !part.springs.is_empty());
    let taken_up = spring.and_then(|part| {
        let was = reading(desk, &part.id, "rate-found")?;
        Some(longer(part, was, reading(desk, &part.id, "rate")?))
    });
    let length = measured + taken_up.unwrap_or_default() - (turns - found) * pitch;
    Some(Quantity::new(length, Unit::Millimetre))
}

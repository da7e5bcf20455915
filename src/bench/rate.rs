//! A spring of another rate: asked once whether the turns, the preload force or the ride height stay the same.

use super::desk::Desk;
use super::{Part, Question, deeds, settings};
use crate::act::{Act, ActName, Doubt, Slots};
use crate::event::{Kept, Pending};
use crate::quantity::{Quantity, Unit};
use crate::rulebase::{Adjuster, AdjusterKind, UnitCard};

/// A spring's rate was reported: when it is another than the one that was on, the question is opened.
pub fn fitted(desk: &mut Desk<'_>, card: &UnitCard, about: &str, kept: &Kept) {
    let Some(part) = card.part(about) else { return };
    let (Some(was), Some(now)) = (part.springs.first().map(|spring| spring.rate.value), kept.value) else {
        return;
    };
    let asked = desk.place().is_some_and(|place| place.rate_asked);
    let Some(adjuster) = card.adjusters.iter().find(|adjuster| screw(adjuster).is_some()) else { return };
    if asked || (was - now).abs() < 1e-9 {
        return;
    }
    let about = adjuster.id.clone();
    let options = options(desk, card, adjuster, was, now);
    let acts = options.iter().map(|(name, value)| want(&about, name, *value)).collect();
    desk.open(Pending::Between { acts, doubt: Doubt::Meaning, then: Vec::new() });
    desk.say(Part::Question(Question::SpringRate {
        was: Quantity::new(was, Unit::NewtonPerMillimetre),
        now: Quantity::new(now, Unit::NewtonPerMillimetre),
        options,
    }));
}

fn screw(adjuster: &Adjuster) -> Option<(f64, bool, bool)> {
    match &adjuster.kind {
        AdjusterKind::Screw { pitch, datum, lengthens, .. } => {
            Some((pitch.in_unit(Unit::Millimetre).ok()?, datum.is_some(), *lengthens))
        }
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

/// The three ways out, each with the setting it leads to where that can be worked out.
///
/// With preload length p (how far the perch compresses the spring), rate k: the same turns keep p; the same force
/// keeps k p; the same ride height under a load W on the spring keeps the length of the spring W / k - p shorter than
/// free, corrected for the two free lengths.
fn options(
    desk: &Desk<'_>,
    card: &UnitCard,
    adjuster: &Adjuster,
    was: f64,
    now: f64,
) -> Vec<(String, Option<Quantity>)> {
    let unit = deeds::unit_of(adjuster);
    let found = settings::known(desk, &adjuster.id).target();
    let preload = preload_now(desk, adjuster);
    let springs = card.parts.iter().flat_map(|part| &part.springs);
    let free = |rate: f64| {
        springs
            .clone()
            .find(|spring| (spring.rate.value - rate).abs() < 1e-9)
            .and_then(|spring| spring.free.in_unit(Unit::Millimetre).ok())
    };
    let longer = match (free(was), free(now)) {
        (Some(was), Some(now)) => now - was,
        _ => 0.0,
    };
    let load = desk.place().and_then(|place| place.readings.get(&("spring".to_owned(), "load".to_owned())));
    let same_force = preload.map(|preload| preload * was / now);
    let same_height = preload.zip(load).map(|(preload, load)| preload + load / now - load / was);
    let setting = |wanted: Option<f64>| {
        let more = wanted? - preload?;
        Some(Quantity::new(setting(adjuster, found?, more, longer), unit))
    };
    vec![
        ("same turns".to_owned(), setting(preload)),
        ("same preload force".to_owned(), setting(same_force)),
        ("same ride height".to_owned(), setting(same_height)),
    ]
}

/// How far the perch compresses the spring as found, mm: counted in turns, times the pitch.
fn preload_now(desk: &Desk<'_>, adjuster: &Adjuster) -> Option<f64> {
    let (pitch, _, _) = screw(adjuster)?;
    let place = desk.place()?;
    let turns = place.readings.get(&(adjuster.id.clone(), "turns".to_owned()));
    turns
        .or_else(|| place.readings.get(&(adjuster.id.clone(), "found".to_owned())))
        .map(|turns| turns * pitch)
}

/// The setting after winding `more` mm of preload on, with a spring that is `longer` mm longer free.
fn setting(adjuster: &Adjuster, found: f64, more: f64, longer: f64) -> f64 {
    match screw(adjuster) {
        Some((_, true, lengthens)) => {
            let moved = more - longer;
            if lengthens { found + moved } else { found - moved }
        }
        Some((pitch, false, _)) => found + (more - longer) / pitch,
        None => found,
    }
}

//! A value in another unit: the value said, or the one that was last said or is in hand.

use super::tell;
use super::words::{Figure, Words, basis_word};
use crate::act::Act;
use crate::bench::desk::Desk;
use crate::bench::{Part, Question, Refusal, judge};
use crate::quantity::{PressureBasis, Quantity, Unit};
use crate::workings::registry::{self, Value};
use std::collections::BTreeMap;

/// Into the unit asked for, or into the other habit's unit of the same kind.
pub fn convert(desk: &mut Desk<'_>, act: &Act, words: &Words) {
    let into = act.slots.into.as_deref().and_then(Unit::parse);
    let into = into.or_else(|| wanted(words));
    let figure = words.figures.iter().find(|figure| figure.unit.is_some()).or_else(|| words.figures.first());
    if let Some(strange) = figure.and_then(|figure| figure.strange.clone()) {
        let why = format!("{strange} is no unit that I know");
        return desk.say(Part::Refused(Refusal::Work { why }));
    }
    let value = match figure {
        Some(Figure { value, unit: Some(unit), .. }) => Some(Quantity::new(*value, *unit)),
        Some(Figure { unit: None, value, .. }) => {
            return ask(
                desk,
                &format!("{} of what, and into what?", crate::quantity::figures::words(*value)),
            );
        }
        None => in_hand(desk, into),
    };
    let Some(value) = value else { return ask(desk, "which value?") };
    let Some(into) = into.or_else(|| other_habit(value.unit)) else { return ask(desk, "into which unit?") };
    done(desk, value, figure.and_then(|figure| figure.basis), into, to_basis(words, figure));
}

/// Whether the words hold one figure with its unit and one unit more, and so can only be a conversion.
#[must_use]
pub fn both(words: &Words) -> bool {
    matches!((words.figures.as_slice(), words.units.as_slice()), ([Figure { unit: Some(_), .. }], [_]))
}

fn ask(desk: &mut Desk<'_>, ask: &str) {
    desk.say(Part::Question(Question::Work { ask: ask.to_owned(), missing: "value".to_owned() }));
}

fn done(
    desk: &mut Desk<'_>,
    value: Quantity,
    from: Option<PressureBasis>,
    into: Unit,
    to: Option<PressureBasis>,
) {
    let to = to.map_or_else(String::new, |basis| format!(" {}", tell::basis(basis)));
    let given = match from {
        Some(basis) => Value::Pressure(value, basis),
        None => Value::Quantity(value),
    };
    let given = BTreeMap::from([
        ("value".to_owned(), given),
        ("to".to_owned(), Value::Text(format!("{}{to}", into.name()))),
    ]);
    match registry::call("convert", &given) {
        Ok(worked) => desk.say(tell::converted(value, &worked)),
        Err(registry::Refusal::WrongDimension { .. }) => {
            let what = |unit: Unit| unit.dimension().words();
            let why = format!(
                "{} is {}, and {} is {}",
                value.show(),
                what(value.unit),
                into.words(2.0),
                what(into)
            );
            desk.say(Part::Refused(Refusal::Work { why }));
        }
        Err(other) => desk.say(Part::Refused(Refusal::Work { why: other.to_string() })),
    }
}

/// The unit wanted: the last that belongs to no figure.
fn wanted(words: &Words) -> Option<Unit> {
    words.units.last().map(|(_, unit)| *unit)
}

/// The basis wanted: a word that stands after the unit wanted.
fn to_basis(words: &Words, figure: Option<&Figure>) -> Option<PressureBasis> {
    let (at, _) = words.units.last()?;
    let after = figure.is_none_or(|figure| figure.end <= *at);
    (at + 1..at + 3).find_map(|place| basis_word(words.at(place))).filter(|_| after)
}

/// "That": the value last worked out or asked for, the one that the step wants, or the one last kept.
fn in_hand(desk: &Desk<'_>, into: Option<Unit>) -> Option<Quantity> {
    let fits = |value: &Quantity| into.is_none_or(|into| into.same_dimension(value.unit));
    let card = desk.card();
    let said = desk.state.record.figure.as_deref().and_then(|text| Quantity::parse(text).ok());
    let step = super::super::super::entries::notes::current(desk);
    let wanted = || Some(judge::limit(desk, card.as_deref()?, step.as_ref()?)?.nominal());
    let torque = || Some(card.as_deref()?.part(step.as_ref()?.about.as_deref()?)?.torque?.nominal());
    let kept = || {
        let kept = &desk.state.record.kept.last()?.kept;
        Some(Quantity::new(kept.value?, Unit::parse(kept.unit.as_deref()?)?))
    };
    let options = [said, wanted(), torque(), kept()];
    let found = options.iter().flatten().find(|value| fits(value)).copied();
    // With none that fits, the first is refused with its reason rather than passed over.
    found.or_else(|| options.iter().flatten().next().copied())
}

/// The unit a technician means by "in proper money": metric for inch, inch for metric.
fn other_habit(unit: Unit) -> Option<Unit> {
    const PAIRS: [(Unit, Unit); 8] = [
        (Unit::NewtonMetre, Unit::PoundFoot),
        (Unit::PoundInch, Unit::NewtonMetre),
        (Unit::Millimetre, Unit::Inch),
        (Unit::Bar, Unit::Psi),
        (Unit::Celsius, Unit::Fahrenheit),
        (Unit::NewtonPerMillimetre, Unit::PoundPerInch),
        (Unit::Kilogram, Unit::Pound),
        (Unit::Newton, Unit::PoundForce),
    ];
    PAIRS.iter().find_map(|(metric, inch)| match unit {
        own if own == *metric => Some(*inch),
        own if own == *inch => Some(*metric),
        _ => None,
    })
}

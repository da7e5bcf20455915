//! A calculation in mid-step: what was said, completed from the unit card and the job.

use crate::act::{Act, Said};
use crate::bench::desk::Desk;
use crate::bench::{Fact, Part};
use crate::quantity::{Quantity, Unit};

/// A calculation.
pub fn work(desk: &mut Desk<'_>, act: &Act) {
    let kind = act.slots.kind.as_deref().unwrap_or_default();
    let values: Vec<Quantity> = act.slots.values.iter().flatten().filter_map(quantity).collect();
    match (kind, values.as_slice()) {
        ("convert", [value, ..]) => convert(desk, *value, act.slots.into.as_deref()),
        _ => desk.say(Part::Unknown { what: format!("how to work that out ({kind})") }),
    }
}

fn quantity(said: &Said) -> Option<Quantity> {
    said.unit.as_deref().and_then(Unit::parse).map(|unit| Quantity::new(said.value, unit))
}

/// Into the unit asked for, or into the other habit's unit of the same kind.
fn convert(desk: &mut Desk<'_>, value: Quantity, into: Option<&str>) {
    let unit = into.and_then(Unit::parse).or_else(|| other_habit(value.unit));
    let Some(converted) = unit.and_then(|unit| value.to(unit).ok()) else {
        return desk.say(Part::Unknown { what: format!("another unit for {}", value.say()) });
    };
    desk.say(Part::Fact(Fact::Worked {
        name: "convert".to_owned(),
        say: format!("{} is {}", value.say(), converted.say()),
        show: vec![format!("{} = {}", value.show(), converted.show())],
    }));
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

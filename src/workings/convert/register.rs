//! The conversions by name.

use super::super::registry::{Done, Given, Input, Kind, Refusal, Working};
use super::{ATMOSPHERE_BAR, nearest_fraction, on_basis, split_basis};
use crate::quantity::{PressureBasis, Quantity, Unit};

/// Adds the conversions.
pub(in crate::workings) fn register(list: &mut Vec<Working>) {
    list.push(
        Working::new("convert", Kind::Convert, "a value in another unit", to_unit)
            .takes(Input::any("value", "value to convert").also(&["v", "x"]))
            .takes(Input::text("to", &[], "unit to convert to").also(&["unit", "into"]))
            .takes(atmosphere())
            .gives("value", Unit::One)
            .tells("fraction")
            .by(
                "value x size of its unit / size of the other; temperatures with their offsets; gauge + atmosphere = absolute",
                "NIST SP 811, appendix B.8 (exact definitions of inch, pound, standard gravity)",
            ),
    );
    list.push(
        Working::new("gauge-to-absolute", Kind::Convert, "a gauge pressure above vacuum", to_absolute)
            .takes(Input::gauge("p", "gauge pressure").also(&["gauge", "pressure"]))
            .takes(atmosphere())
            .gives("absolute", Unit::Bar)
            .by("absolute = gauge + atmosphere", "definition; standard atmosphere ISO 2533"),
    );
    list.push(
        Working::new(
            "absolute-to-gauge",
            Kind::Convert,
            "an absolute pressure as a gauge reads it",
            to_gauge,
        )
        .takes(Input::absolute("p", "absolute pressure").also(&["absolute", "pressure"]))
        .takes(atmosphere())
        .gives("gauge", Unit::Bar)
        .by("gauge = absolute - atmosphere", "definition; standard atmosphere ISO 2533"),
    );
    list.push(
        Working::new("inch-fraction", Kind::Convert, "a length as the nearest 64th of an inch", fraction)
            .takes(Input::of("length", Unit::Inch, "length").also(&["x", "value", "l"]))
            .tells("fraction")
            .gives("inches", Unit::Inch)
            .gives("off", Unit::Millimetre)
            .by("nearest 1/64, in lowest terms", "identity"),
    );
}

fn atmosphere() -> Input {
    Input::of("atmosphere", Unit::Bar, "pressure of the air about, absolute").usually(ATMOSPHERE_BAR)
}

fn to_unit(given: &Given) -> Result<Done, Refusal> {
    let value = Quantity::new(given.n("value")?, given.unit("value"));
    floor(given, value)?;
    let (text, to_basis) = split_basis(given.t("to")?);
    let unit = Unit::parse(text).ok_or_else(|| {
        let near = Unit::nearest(text).map(|unit| format!("; did you mean `{unit}`?")).unwrap_or_default();
        Refusal::unreadable("to", format!("unknown unit `{text}`{near}"))
    })?;
    let wrong = |_| Refusal::WrongDimension { input: "value".to_owned(), found: value.unit, wanted: unit };
    let mut answer = value.to(unit).map_err(wrong)?;
    if let Some(to) = to_basis {
        let from = given.basis("value").unwrap_or(PressureBasis::Gauge);
        answer = on_basis(answer, from, to, given.n("atmosphere")?).map_err(wrong)?;
    }
    let done = Done::of(answer.value, unit);
    let inch = unit == Unit::Inch && answer.value.abs() <= MOST_INCHES;
    Ok(if inch { done.and_text("fraction", fraction_text(answer.value)) } else { done })
}

/// Nothing is colder than absolute zero, and no pressure lies below a vacuum where the value says what it is counted
/// from; a difference of pressures may be below nought.
fn floor(given: &Given, value: Quantity) -> Result<(), Refusal> {
    if value.in_unit(Unit::Kelvin).is_ok_and(|kelvin| kelvin < 0.0) {
        return Err(Refusal::impossible("value", "nothing is colder than absolute zero, -273.15 degC"));
    }
    let air = match given.basis("value") {
        Some(PressureBasis::Gauge) => given.n("atmosphere")?,
        Some(PressureBasis::Absolute) => 0.0,
        None => return Ok(()),
    };
    if value.in_unit(Unit::Bar).is_ok_and(|bar| bar + air < 0.0) {
        return Err(Refusal::impossible("value", "no pressure lies below a vacuum"));
    }
    Ok(())
}

/// Sixty-fourths of more inches than these are nobody's.
const MOST_INCHES: f64 = 1e6;

fn to_absolute(given: &Given) -> Result<Done, Refusal> {
    pressure(given, given.n("p")? + given.n("atmosphere")?)
}

fn to_gauge(given: &Given) -> Result<Done, Refusal> {
    pressure(given, given.n("p")? - given.n("atmosphere")?)
}

/// A pressure in bar, answered in the unit that was given.
fn pressure(given: &Given, bar: f64) -> Result<Done, Refusal> {
    let unit = given.unit("p");
    let value = Unit::Bar.convert(bar, unit).map_err(|_| Refusal::cannot("not a pressure"))?;
    Ok(Done::of(value, unit))
}

fn fraction(given: &Given) -> Result<Done, Refusal> {
    let inches = given.n("length")?;
    if inches > MOST_INCHES {
        return Err(Refusal::impossible("length", "that is too long to be told in sixty-fourths"));
    }
    let (_, _, _, off) = nearest_fraction(inches);
    Ok(Done::text(fraction_text(inches)).and("inches", inches + off, Unit::Inch).and(
        "off",
        off * 25.4,
        Unit::Millimetre,
    ))
}

/// `1 5/8`, `5/8`, `2`.
pub(in crate::workings) fn fraction_text(inches: f64) -> String {
    match nearest_fraction(inches) {
        (whole, 0, ..) => whole.to_string(),
        (0, above, below, _) if inches < 0.0 => format!("-{above}/{below}"),
        (0, above, below, _) => format!("{above}/{below}"),
        (whole, above, below, _) => format!("{whole}-{above}/{below}"),
    }
}

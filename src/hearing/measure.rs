//! Units of measure as people say them, settled by what is waited for where a word means several.

use crate::act::WaitingFor;

/// A unit said: its design name, or a doubt about which.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Measure {
    /// One unit, with a factor that brings the number to it.
    Unit(&'static str),
    /// Said in a unit of which the design's is this many.
    Times(&'static str, u32),
    /// Said in a unit of which this many make the design's.
    Parts(&'static str, u32),
}

/// The longest unit said at the start of the tokens, with the number of tokens it takes.
#[must_use]
pub fn unit_at(tokens: &[&str], waiting: WaitingFor) -> Option<(Measure, usize)> {
    (1..=4.min(tokens.len())).rev().find_map(|len| {
        let said = tokens.get(..len)?.join(" ");
        Some((unit(&said, waiting)?, len))
    })
}

/// Whether a word is one of measure, whatever it measures.
#[must_use]
pub fn is_measure(word: &str) -> bool {
    unit(word, WaitingFor::Nothing).is_some()
}

fn unit(said: &str, waiting: WaitingFor) -> Option<Measure> {
    use Measure::{Parts, Times, Unit};
    use WaitingFor as W;
    Some(match said {
        "nm" | "newton metre" | "newton metres" | "newton meter" | "newton meters" | "n m"
        | "newtonmetre" | "newtonmetres" | "newtonmeter" | "newtonmeters" | "new tons metres"
        | "newton metros" => Unit("N.m"),
        "foot pound" | "foot pounds" | "foot lb" | "foot lbs" | "ft lb" | "ft lbs" | "ftlb" | "ftlbs"
        | "pound feet" | "pounds feet" | "pound foot" | "pounds foot" | "lb ft" | "lbs ft" | "lbft"
        | "lbf ft" | "lbfft" | "feet pounds" | "foot pounders" => Unit("lbf.ft"),
        "inch pound" | "inch pounds" | "in lb" | "in lbs" | "inlb" | "inlbs" | "pound inch"
        | "pounds inch" | "pound inches" | "inch lb" | "inch lbs" | "lb in" | "lbs in" | "lbf in"
        | "lbfin" => Unit("lbf.in"),
        "newton" | "newtons" => match waiting {
            W::Torque => Unit("N.m"),
            W::Rate => Unit("N/mm"),
            _ => Unit("N"),
        },
        "n" => Unit("N"),
        "kilonewton" | "kilonewtons" | "kn" => Times("N", 1000),
        "pounds force" | "pound force" | "lbf" => Unit("lbf"),
        "click" | "clicks" | "clik" | "cliks" | "detent" | "detents" | "notch" | "notches" | "clickers"
        | "clix" => Unit("click"),
        "position" | "positions" | "pos" => Unit("position"),
        "turn" | "turns" | "rev" | "revs" | "revolution" | "revolutions" | "full turn" | "full turns"
        | "whole turn" | "whole turns" | "rotation" | "rotations" => Unit("turn"),
        "flat" | "flats" => Parts("turn", 6),
        "quarter turn" | "quarter turns" => Parts("turn", 4),
        "half turn" | "half turns" => Parts("turn", 2),
        "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" | "mil a metres"
        | "millimetre s" | "milli metre" | "milli metres" | "milli meter" | "milli meters" => Unit("mm"),
        "mil" | "mils" | "mill" | "mills" => match waiting {
            W::Volume => Unit("ml"),
            _ => Unit("mm"),
        },
        "cm" | "centimetre" | "centimetres" | "centimeter" | "centimeters" => Times("mm", 10),
        "micron" | "microns" | "um" => Parts("mm", 1000),
        "in" | "inch" | "inches" => Unit("in"),
        "thou" | "thous" | "thousandth" | "thousandths" | "thousandths of an inch" => Parts("in", 1000),
        "bar" | "bars" => Unit("bar"),
        "psi" | "p s i" | "pounds per square inch" | "pounds a square inch" | "psis" => Unit("psi"),
        "kpa" | "kilopascal" | "kilopascals" | "k p a" => Unit("kPa"),
        "degree celsius" | "degrees celsius" | "celsius" | "degc" | "deg c" | "degree c" | "degrees c"
        | "centigrade" | "degrees centigrade" | "degree centigrade" | "c" => Unit("degC"),
        "degree fahrenheit" | "degrees fahrenheit" | "fahrenheit" | "degf" | "deg f" | "degrees f"
        | "degree f" => Unit("degF"),
        "degree" | "degrees" | "deg" => match waiting {
            W::Temperature => Unit("degC"),
            _ => Unit("deg"),
        },
        "ml" | "millilitre" | "millilitres" | "milliliter" | "milliliters" | "cc" | "ccs" | "c c" | "mls"
        | "m l" | "milli litre" | "milli litres" | "milli liter" | "milli liters" => Unit("ml"),
        "litre" | "litres" | "liter" | "liters" => Times("ml", 1000),
        "kg" | "kgs" | "kilo" | "kilos" | "kilogram" | "kilograms" | "kilogramme" | "kilogrammes" => {
            Unit("kg")
        }
        "gram" | "grams" | "grammes" | "g" => Parts("kg", 1000),
        "pound" | "pounds" | "lb" | "lbs" => match waiting {
            W::Torque => Unit("lbf.ft"),
            W::Rate => Unit("lbf/in"),
            W::Pressure => Unit("psi"),
            _ => Unit("lb"),
        },
        "newton per mm"
        | "newtons per mm"
        | "newtons a mm"
        | "newton per millimetre"
        | "newtons per millimetre"
        | "newton a mil"
        | "newtons a mil"
        | "newtons per mil"
        | "newton per mil"
        | "newton a millimetre"
        | "newtons a millimetre"
        | "newtons per millimeter"
        | "newtons a millimeter"
        | "newton per millimeter"
        | "n per mm"
        | "n mm"
        | "newton mil"
        | "newtons mil" => Unit("N/mm"),
        "pound per inch" | "pounds per inch" | "pounds an inch" | "pound an inch" | "lb per in"
        | "lbs per in" | "lb per inch" | "lbs per inch" | "pound inch rate" | "pounders" | "lb an inch"
        | "lbs an inch" | "lbf per in" => Unit("lbf/in"),
        "kilos per mil"
        | "kilos a mil"
        | "kilos per mm"
        | "kilo per mil"
        | "kilo a mil"
        | "kg per mm"
        | "kilograms per millimetre"
        | "kilos a millimetre"
        | "kilos per millimetre"
        | "kgf per mm"
        | "kilograms a millimetre" => Unit("kgf/mm"),
        "mm per s"
        | "mm per sec"
        | "mm per second"
        | "mm a second"
        | "millimetres per second"
        | "millimetres a second"
        | "mil per second"
        | "mils per second"
        | "mil a second"
        | "mils a second"
        | "millimeters per second"
        | "millimeters a second" => Unit("mm/s"),
        "metres per second" | "metres a second" | "m per s" | "meters per second" | "metre per second"
        | "metre a second" | "meters a second" => Times("mm/s", 1000),
        "inches per second" | "inches a second" | "in per s" | "inch per second" | "inch a second"
        | "ips" => Unit("in/s"),
        "centistokes" | "centistoke" | "cst" | "mm2 per s" => Unit("mm2/s"),
        "hz" | "hertz" | "cycles per second" | "cycles a second" => Unit("Hz"),
        "second" | "seconds" | "sec" | "secs" => Unit("s"),
        "minute" | "minutes" | "min" | "mins" => Unit("min"),
        "hour" | "hours" | "hr" | "hrs" | "h" => Unit("h"),
        _ => return None,
    })
}

/// Whether a unit answers what is waited for.
#[must_use]
pub fn fits(unit: &str, waiting: WaitingFor) -> bool {
    use WaitingFor as W;
    match waiting {
        W::Torque => matches!(unit, "N.m" | "lbf.ft" | "lbf.in"),
        W::Clicks => unit == "click",
        W::Position => matches!(unit, "position" | "click"),
        W::Turns => matches!(unit, "turn" | "mm" | "in"),
        W::Length => matches!(unit, "mm" | "in"),
        W::Pressure => matches!(unit, "bar" | "psi" | "kPa"),
        W::Temperature => matches!(unit, "degC" | "degF"),
        W::Volume => unit == "ml",
        W::Mass => matches!(unit, "kg" | "lb"),
        W::Rate => matches!(unit, "N/mm" | "lbf/in"),
        W::Done | W::YesOrNo | W::Tool | W::Text | W::Nothing => false,
    }
}

/// Whether what is waited for is a number.
#[must_use]
pub fn is_number(waiting: WaitingFor) -> bool {
    use WaitingFor as W;
    !matches!(waiting, W::Done | W::YesOrNo | W::Tool | W::Text | W::Nothing)
}

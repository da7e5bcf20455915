//! Threads, stress areas, property classes and proof loads by name.

use super::super::registry::{Done, Given, Input, Kind, Refusal, Working};
use super::super::thread::Thread;
use super::class::{Class, class, nominal_area, proof_load};
use super::joint::Screw;
use crate::quantity::Unit;

const ISO: &str = "ISO 898-1:2013";

/// Adds threads and classes.
pub(super) fn register(list: &mut Vec<Working>) {
    list.push(
        threaded("stress-area", "stress area of a thread", area)
            .takes(bore().optional())
            .gives("area", Unit::SquareMillimetre)
            .gives("nominal", Unit::SquareMillimetre)
            .gives("diameter", Unit::Millimetre)
            .by(
                "pi/4 ((d2 + d3) / 2)^2; inch pi/4 (D - 0.9743 / n)^2",
                "ISO 898-1:2013, 9.1.6.1; ASME B1.1, FED-STD-H28/2B",
            ),
    );
    list.push(
        threaded("thread-diameters", "pitch, pitch diameter and minor diameters of a thread", diameters)
            .gives("pitch_diameter", Unit::Millimetre)
            .gives("pitch", Unit::Millimetre)
            .gives("nominal", Unit::Millimetre)
            .gives("minor", Unit::Millimetre)
            .gives("root", Unit::Millimetre)
            .by("d2 = d - 0.6495 P, D1 = d - 1.0825 P, d3 = d - 1.2269 P", "ISO 724, ISO 68-1"),
    );
    list.push(
        Working::new(
            "property-class",
            Kind::Joint,
            "strengths of a property class: tensile, yield, proof stress",
            strengths,
        )
        .takes(class_input())
        .takes(Input::of("d", Unit::Millimetre, "nominal diameter").optional())
        .gives("strengths", Unit::Megapascal)
        .gives("tensile", Unit::Megapascal)
        .gives("yield", Unit::Megapascal)
        .gives("proof", Unit::Megapascal)
        .by("table 3", ISO),
    );
    list.push(
        threaded("proof-load", "proof load of a bolt", proof)
            .takes(class_input())
            .gives("proof_load", Unit::Newton)
            .gives("exact", Unit::Newton)
            .gives("tensile_load", Unit::Newton)
            .by("As,nom x Sp,nom; the standard prints it to three figures", ISO),
    );
}

/// A working on a thread by name.
pub(super) fn threaded(
    name: &'static str,
    about: &'static str,
    run: fn(&Given) -> Result<Done, Refusal>,
) -> Working {
    Working::new(name, Kind::Joint, about, run).takes(
        Input::text("thread", &[], "thread, such as M14x1, M8 or 1/4-20 UNC")
            .also(&["size", "screw", "bolt"]),
    )
}

pub(super) fn class_input() -> Input {
    Input::text("class", &[], "property class, such as 8.8").also(&["grade", "property"])
}

pub(super) fn bore() -> Input {
    Input::of("bore", Unit::Millimetre, "bore along the axis").or_zero()
}

/// The thread given.
pub(super) fn thread(given: &Given) -> Result<Thread, Refusal> {
    Thread::parse(given.t("thread")?).map_err(|error| Refusal::unreadable("thread", error.to_string()))
}

/// The screw given: a thread and its bore.
pub(super) fn screw(given: &Given) -> Result<Screw, Refusal> {
    let screw = Screw { thread: thread(given)?, bore: given.maybe("bore").unwrap_or(0.0) };
    if screw.bore >= screw.thread.root_diameter() {
        return Err(Refusal::impossible("bore", "the bore would cut through the thread"));
    }
    Ok(screw)
}

/// The property class given, for a nominal diameter in mm.
pub(super) fn the_class(given: &Given, d: f64) -> Result<Class, Refusal> {
    let text = given.t("class")?;
    // The value may come as a quantity's text ("8.8") or with its limits ("8.8 d>16").
    let (name, beyond) = text.split_once(' ').map_or((text, ""), |(name, rest)| (name, rest));
    let d = if beyond.contains('>') { d.max(17.0) } else { d };
    class(name, d).ok_or_else(|| {
        Refusal::unreadable("class", format!("no property class `{text}` for this size; say 4.6, 4.8, 5.6, 5.8, 6.8, 8.8, 9.8, 10.9 or 12.9"))
    })
}

fn area(given: &Given) -> Result<Done, Refusal> {
    let screw = screw(given)?;
    let nominal = nominal_area(&screw.thread);
    let done = if screw.thread.inch {
        let inches = |area: f64| area / (25.4 * 25.4);
        Done::of(inches(screw.area()), Unit::SquareInch).and("nominal", inches(nominal), Unit::SquareInch)
    } else {
        Done::of(screw.area(), Unit::SquareMillimetre).and("nominal", nominal, Unit::SquareMillimetre)
    };
    Ok(done.and("diameter", screw.thread.stress_diameter(), Unit::Millimetre))
}

fn diameters(given: &Given) -> Result<Done, Refusal> {
    let thread = thread(given)?;
    Ok(Done::of(thread.pitch_diameter(), Unit::Millimetre)
        .and("pitch", thread.pitch, Unit::Millimetre)
        .and("nominal", thread.d, Unit::Millimetre)
        .and("minor", thread.minor_diameter(), Unit::Millimetre)
        .and("root", thread.root_diameter(), Unit::Millimetre))
}

fn strengths(given: &Given) -> Result<Done, Refusal> {
    let found = the_class(given, given.maybe("d").unwrap_or(10.0))?;
    Ok(Done::list(vec![found.tensile, found.yielding, found.proof], Unit::Megapascal)
        .and("tensile", found.tensile, Unit::Megapascal)
        .and("yield", found.yielding, Unit::Megapascal)
        .and("proof", found.proof, Unit::Megapascal))
}

fn proof(given: &Given) -> Result<Done, Refusal> {
    let thread = thread(given)?;
    let found = the_class(given, thread.d)?;
    Ok(Done::of(proof_load(&thread, found), Unit::Newton)
        .and("exact", thread.stress_area() * found.proof, Unit::Newton)
        .and("tensile_load", nominal_area(&thread) * found.tensile, Unit::Newton))
}

//! A spring's lengths by name: solid, free, at a load, and what is left before the coils bind.

use super::super::registry::{Done, Given, Input, Kind, Refusal, Working};
use super::length::{Ends, bind_margin, free, least_gaps, solid};
use super::register_wire::{coil, force, k, length, mean, n, nt, rate_or_wire, wire};
use crate::quantity::Unit;

const ENDS: &[&str] = &["squared-ground", "squared", "plain", "plain-ground", "en-unground"];

/// Adds the lengths.
pub(super) fn register(list: &mut Vec<Working>) {
    list.push(
        Working::new("solid-length", Kind::Spring, "length with every coil touching", solid_length)
            .takes(length("d", "wire diameter (largest)"))
            .takes(nt())
            .takes(Input::text("ends", ENDS, "ends").usually_text("squared-ground"))
            .gives("solid", Unit::Millimetre)
            .by(
                "Nt d ground, (Nt + 1) d not ground, (nt + 1.5) d for EN's bound",
                "Shigley, table 10-1; EN 13906-1:2013, clause 9 (memory)",
            ),
    );
    list.push(
        wire("free-length", "free length from the solid one", free_length)
            .takes(nt().optional())
            .takes(length("solid", "solid length").optional())
            .takes(length("gap", "gap left between two coils at the load").usually(0.0).or_zero())
            .takes(length("deflection", "deflection at the load").also(&["s", "delta"]).optional())
            .takes(force("F", "load").also(&["P", "force", "load"]).optional())
            .takes(k().optional())
            .gives("free", Unit::Millimetre)
            .gives("solid", Unit::Millimetre)
            .gives("gaps", Unit::Millimetre)
            .gives("deflection", Unit::Millimetre)
            .by(
                "L0 = solid + (Nt - 1) gap + F / k; squared and ground ends",
                "V. B. Bhandari, Design of Machine Elements, ch. 10",
            ),
    );
    list.push(
        coil("least-coil-gaps", "least sum of the gaps between the coils at the greatest load", gaps)
            .takes(n())
            .takes(Input::text("load", &["static", "dynamic"], "load").usually_text("static"))
            .gives("gaps", Unit::Millimetre)
            .by(
                "n (0.0015 D^2 / d + 0.1 d), half as much again under dynamic load",
                "EN 13906-1:2013, clause 9 (memory)",
            ),
    );
    list.push(
        Working::new("spring-pitch", Kind::Spring, "pitch of the coils", pitch)
            .takes(length("free", "free length").also(&["free_length", "L0", "l"]))
            .takes(nt())
            .takes(length("d", "wire diameter").optional())
            .gives("pitch", Unit::Millimetre)
            .gives("squared_ground", Unit::Millimetre)
            .by(
                "L0 / (Nt - 1); squared and ground by Shigley (L0 - 2 d) / (Nt - 2)",
                "Bhandari, ch. 10; Shigley, table 10-1",
            ),
    );
    list.push(
        Working::new("spring-length", Kind::Spring, "length of a spring at a load", at_load)
            .takes(length("free", "free length").also(&["free_length", "L0"]))
            .takes(force("F", "load").also(&["P", "force", "load"]).or_zero())
            .takes(k())
            .takes(length("block", "block length").also(&["solid"]).optional())
            .gives("length", Unit::Millimetre)
            .by("L = L0 - F / k", "identity"),
    );
    list.push(
        Working::new("coil-bind", Kind::Spring, "what is left before the coils bind at full stroke", bind)
            .takes(length("free", "free length").also(&["free_length", "L0"]))
            .takes(length("block", "block (solid) length").also(&["solid"]))
            .takes(length("preload", "length it is squeezed at full extension").or_zero())
            .takes(length("stroke", "stroke").also(&["travel"]))
            .takes(length("tender", "travel of a tender that stands on it").usually(0.0).or_zero())
            .takes(k().optional())
            .gives("margin", Unit::Millimetre)
            .tells("verdict")
            .gives("force", Unit::Newton)
            .by("free - preload - stroke - block + travel of the tender", "identity"),
    );
}

fn ends(given: &Given) -> Result<Ends, Refusal> {
    Ok(match given.t("ends")? {
        "squared" => Ends::Squared,
        "plain" => Ends::Plain,
        "plain-ground" => Ends::PlainGround,
        "en-unground" => Ends::EnUnground,
        _ => Ends::SquaredGround,
    })
}

fn solid_length(given: &Given) -> Result<Done, Refusal> {
    Ok(Done::of(solid(given.n("d")?, given.n("Nt")?, ends(given)?), Unit::Millimetre))
}

fn free_length(given: &Given) -> Result<Done, Refusal> {
    let solid = match given.maybe("solid") {
        Some(solid) => solid,
        None => solid(given.n("d")?, given.n("Nt")?, Ends::SquaredGround),
    };
    let deflection = match given.maybe("deflection") {
        Some(deflection) => deflection,
        None => given.n("F")? / rate_or_wire(given)?,
    };
    let gap = given.n("gap")?;
    let coils = if gap > 0.0 { given.n("Nt")? } else { 1.0 };
    Ok(Done::of(free(solid, coils, gap, deflection), Unit::Millimetre)
        .and("solid", solid, Unit::Millimetre)
        .and("gaps", (coils - 1.0).max(0.0) * gap, Unit::Millimetre)
        .and("deflection", deflection, Unit::Millimetre))
}

fn pitch(given: &Given) -> Result<Done, Refusal> {
    let (free, coils) = (given.n("free")?, given.n("Nt")?);
    if coils <= 2.0 {
        return Err(Refusal::impossible("Nt", "a spring with closed ends has more than two coils"));
    }
    let done = Done::of(free / (coils - 1.0), Unit::Millimetre);
    Ok(match given.maybe("d") {
        Some(d) => done.and("squared_ground", (free - 2.0 * d) / (coils - 2.0), Unit::Millimetre),
        None => done,
    })
}

fn at_load(given: &Given) -> Result<Done, Refusal> {
    let length = given.n("free")? - given.n("F")? / given.n("k")?;
    let block = given.maybe("block").unwrap_or(0.0);
    if length < block {
        return Err(Refusal::impossible(
            "F",
            "the load is more than the spring can take before its coils touch",
        ));
    }
    Ok(Done::of(length, Unit::Millimetre))
}

fn bind(given: &Given) -> Result<Done, Refusal> {
    let (free, block, preload) = (given.n("free")?, given.n("block")?, given.n("preload")?);
    if block >= free {
        return Err(Refusal::impossible("block", "the block length is below the free length"));
    }
    let margin = bind_margin(free, block, preload, given.n("stroke")?) + given.n("tender")?;
    let verdict = if margin < 0.0 { "binds before full stroke" } else { "does not bind" };
    let done = Done::of(margin, Unit::Millimetre).and_text("verdict", verdict);
    let done = done
        .caution_if(margin < 0.0, "the coils bind before the stroke ends: less preload, or another spring");
    Ok(match given.maybe("k") {
        Some(rate) => done.and("force", rate * (free - block), Unit::Newton),
        None => done,
    })
}

fn gaps(given: &Given) -> Result<Done, Refusal> {
    let more = if given.t("load")? == "dynamic" { 1.5 } else { 1.0 };
    Ok(Done::of(more * least_gaps(given.n("d")?, mean(given)?, given.n("n")?), Unit::Millimetre))
}

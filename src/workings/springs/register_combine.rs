//! Springs together and preload by name.

use super::super::registry::{Done, Given, Input, Kind, Refusal, Working};
use super::combine::{Tender, nest, series};
use super::preload::{Change, Keep, kept, sag};
use super::rate::{G_STEEL, rate};
use super::stress::{Factor, stress};
use crate::quantity::Unit;

const IDENTITY: &str = "identity";
const RATE: Unit = Unit::NewtonPerMillimetre;

/// Adds springs together, preload and sag.
pub(super) fn register(list: &mut Vec<Working>) {
    list.push(
        Working::new(
            "springs-in-series",
            Kind::Spring,
            "rate of two springs on top of one another",
            in_series,
        )
        .takes(stiffness("k1", "first rate"))
        .takes(stiffness("k2", "second rate"))
        .gives("rate", RATE)
        .by("1/k = 1/k1 + 1/k2", IDENTITY),
    );
    list.push(
        Working::new("springs-in-parallel", Kind::Spring, "rate of two springs side by side", in_parallel)
            .takes(stiffness("k1", "first rate"))
            .takes(stiffness("k2", "second rate"))
            .gives("rate", RATE)
            .by("k = k1 + k2", IDENTITY),
    );
    list.push(nested());
    list.push(
        Working::new(
            "dual-rate",
            Kind::Spring,
            "main spring with a tender: deflection, and where the rate changes",
            dual,
        )
        .takes(stiffness("k_main", "main rate").also(&["main"]))
        .takes(stiffness("k_tender", "tender rate").also(&["tender"]))
        .takes(length("tender_travel", "travel of the tender until it closes").also(&["travel"]))
        .takes(Input::of("F", Unit::Newton, "load").also(&["force", "load"]).optional())
        .takes(length("x", "deflection of both").optional())
        .gives("deflection", Unit::Millimetre)
        .gives("force", Unit::Newton)
        .gives("crossover_load", Unit::Newton)
        .gives("crossover_travel", Unit::Millimetre)
        .gives("first_rate", RATE)
        .gives("second_rate", RATE)
        .by("in series until the tender closes at k_tender x travel, the main spring alone beyond", IDENTITY),
    );
    list.push(
        Working::new(
            "preload-force",
            Kind::Preload,
            "force of a spring squeezed by a length or by turns",
            preload_force,
        )
        .takes(stiffness("k", "spring rate").also(&["rate"]))
        .takes(length("x", "preload length").also(&["preload", "length"]).optional())
        .takes(Input::of("turns", Unit::Turn, "turns of the perch").optional())
        .takes(length("pitch", "pitch: how far the perch moves in a turn").optional())
        .gives("force", Unit::Newton)
        .gives("length", Unit::Millimetre)
        .by("F = k x; x = turns x pitch", IDENTITY),
    );
    list.push(
        Working::new(
            "preload-change",
            Kind::Preload,
            "preload of a new spring: same turns, same force or same ride height",
            change,
        )
        .takes(stiffness("k_old", "old rate").also(&["old"]))
        .takes(stiffness("k_new", "new rate").also(&["new"]))
        .takes(length("x_old", "preload length of the old spring").also(&["preload"]).or_zero())
        .takes(Input::text("keep", &["turns", "force", "ride height"], "what stays the same").also(&["same"]))
        .takes(Input::of("load", Unit::Newton, "static load on the spring").also(&["F"]).optional())
        .takes(length("free_old", "free length of the old spring").optional())
        .takes(length("free_new", "free length of the new spring").optional())
        .takes(length("pitch", "pitch of the perch").optional())
        .gives("preload", Unit::Millimetre)
        .gives("force", Unit::Newton)
        .gives("perch", Unit::Millimetre)
        .gives("turns", Unit::Turn)
        .gives("setting", Unit::Turn)
        .by(
            "same turns: x; same force: k_old x / k_new; same ride height: load / k_new - (load / k_old - x)",
            IDENTITY,
        )
        .mind("a starting point: the wanted setting stands until someone says otherwise"),
    );
    list.push(
        Working::new("sag", Kind::Preload, "how far the unit sinks under its static load", sink)
            .takes(stiffness("k", "spring rate").also(&["rate"]))
            .takes(Input::of("load", Unit::Newton, "static load on the spring").also(&["F"]).or_zero())
            .takes(length("preload", "preload length").also(&["x"]).usually(0.0).or_zero())
            .gives("sag", Unit::Millimetre)
            .by("load / k - preload, not below zero", IDENTITY),
    );
}

fn nested() -> Working {
    let coil = |name, what| length(name, what).optional();
    Working::new(
        "nested-springs",
        Kind::Spring,
        "two springs side by side, the second one shorter or not, under one load",
        nest_of,
    )
    .takes(Input::of("F", Unit::Newton, "load").also(&["P", "force", "load"]))
    .takes(stiffness("k1", "rate of the outer spring").also(&["outer"]).optional())
    .takes(stiffness("k2", "rate of the inner spring").also(&["inner"]).optional())
    .takes(length("gap", "how much shorter the inner spring is").usually(0.0).or_zero())
    .takes(coil("d1", "wire of the outer spring"))
    .takes(coil("D1", "mean diameter of the outer spring"))
    .takes(Input::number("n1", "active coils of the outer spring").also(&["N1"]).optional())
    .takes(coil("d2", "wire of the inner spring"))
    .takes(coil("D2", "mean diameter of the inner spring"))
    .takes(Input::number("n2", "active coils of the inner spring").also(&["N2"]).optional())
    .takes(Input::of("G", Unit::Megapascal, "shear modulus").usually(G_STEEL))
    .gives("deflection", Unit::Millimetre)
    .gives("inner_deflection", Unit::Millimetre)
    .gives("outer_force", Unit::Newton)
    .gives("inner_force", Unit::Newton)
    .gives("outer_stress", Unit::Megapascal)
    .gives("inner_stress", Unit::Megapascal)
    .by(
        "the outer spring alone until the gap is taken up, both beyond; stress with Wahl's factor",
        "Bhandari, ch. 10, examples 10.18, 10.19",
    )
}

fn stiffness(name: &'static str, what: &'static str) -> Input {
    Input::of(name, RATE, what)
}

fn length(name: &'static str, what: &'static str) -> Input {
    Input::of(name, Unit::Millimetre, what)
}

/// A rate in N/mm, answered in the unit that `name` was given in.
fn in_unit_of(given: &Given, name: &str, rate: f64) -> Result<Done, Refusal> {
    let unit = given.unit(name);
    let value = RATE.convert(rate, unit).map_err(|_| Refusal::cannot("not a spring rate"))?;
    Ok(Done::of(value, unit))
}

fn in_series(given: &Given) -> Result<Done, Refusal> {
    in_unit_of(given, "k1", series(given.n("k1")?, given.n("k2")?))
}

fn in_parallel(given: &Given) -> Result<Done, Refusal> {
    in_unit_of(given, "k1", given.n("k1")? + given.n("k2")?)
}

fn nest_of(given: &Given) -> Result<Done, Refusal> {
    let wire = |k: &str, d: &str, mean: &str, n: &str| match given.maybe(k) {
        Some(rate) => Ok(rate),
        None if given.maybe(d).is_none() => Err(given.missing(k)),
        None => Ok(rate(given.n(d)?, given.n(mean)?, given.n(n)?, given.n("G")?)),
    };
    let found =
        nest(given.n("F")?, wire("k1", "d1", "D1", "n1")?, wire("k2", "d2", "D2", "n2")?, given.n("gap")?);
    let mut done = Done::of(found.deflection, Unit::Millimetre)
        .and("inner_deflection", found.inner_deflection, Unit::Millimetre)
        .and("outer_force", found.outer_force, Unit::Newton)
        .and("inner_force", found.inner_force, Unit::Newton);
    if let (Some(d), Some(mean)) = (given.maybe("d1"), given.maybe("D1")) {
        done = done.and("outer_stress", stress(found.outer_force, d, mean, Factor::Wahl), Unit::Megapascal);
    }
    if let (Some(d), Some(mean)) = (given.maybe("d2"), given.maybe("D2")) {
        done = done.and("inner_stress", stress(found.inner_force, d, mean, Factor::Wahl), Unit::Megapascal);
    }
    Ok(done)
}

fn dual(given: &Given) -> Result<Done, Refusal> {
    let pair =
        Tender { main: given.n("k_main")?, tender: given.n("k_tender")?, travel: given.n("tender_travel")? };
    let (force, deflection) = match (given.maybe("F"), given.maybe("x")) {
        (Some(force), _) => (force, pair.deflection(force)),
        (None, Some(x)) => (pair.force(x), x),
        (None, None) => (pair.crossover_load(), pair.crossover_deflection()),
    };
    Ok(Done::of(deflection, Unit::Millimetre)
        .and("force", force, Unit::Newton)
        .and("crossover_load", pair.crossover_load(), Unit::Newton)
        .and("crossover_travel", pair.crossover_deflection(), Unit::Millimetre)
        .and("first_rate", series(pair.main, pair.tender), RATE)
        .and("second_rate", pair.main, RATE))
}

fn preload_force(given: &Given) -> Result<Done, Refusal> {
    let length = match (given.maybe("x"), given.maybe("turns")) {
        (Some(length), _) => length,
        (None, Some(turns)) => turns * given.n("pitch")?,
        (None, None) => return Err(given.missing("x")),
    };
    Ok(Done::of(given.n("k")? * length, Unit::Newton).and("length", length, Unit::Millimetre))
}

fn change(given: &Given) -> Result<Done, Refusal> {
    let keep = match given.t("keep")? {
        "turns" => Keep::Turns,
        "force" => Keep::Force,
        _ => Keep::RideHeight,
    };
    let load = if keep == Keep::RideHeight { given.n("load")? } else { given.maybe("load").unwrap_or(0.0) };
    let old_preload = given.n("x_old")?;
    let change = Change { old_rate: given.n("k_old")?, new_rate: given.n("k_new")?, old_preload, load };
    let preload = kept(change, keep);
    let taller = match (given.maybe("free_old"), given.maybe("free_new")) {
        (Some(old), Some(new)) => new - old,
        _ => 0.0,
    };
    let perch = preload - old_preload - taller;
    let mut done = Done::of(preload, Unit::Millimetre)
        .and("force", preload.max(0.0) * change.new_rate, Unit::Newton)
        .and("perch", perch, Unit::Millimetre);
    if let Some(pitch) = given.maybe("pitch") {
        done = done.and("turns", perch / pitch, Unit::Turn).and("setting", preload / pitch, Unit::Turn);
    }
    Ok(done.caution_if(preload < 0.0, "the spring would be loose at full extension"))
}

fn sink(given: &Given) -> Result<Done, Refusal> {
    let (load, k, preload) = (given.n("load")?, given.n("k")?, given.n("preload")?);
    Ok(Done::of(sag(load, k, preload), Unit::Millimetre)
        .caution_if(load < k * preload, "the preload carries the load: the unit tops out"))
}

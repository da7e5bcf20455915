//! Single springs by name: rate, coils, stress.

use super::super::registry::{Done, Given, Input, Kind, Refusal, Working};
use super::rate::{G_STEEL, active_coils, from_loads, rate, shear_modulus, transverse_shear};
use super::stress::{Factor, force_at, stress, wire_strength};
use crate::quantity::Unit;

const EN: &str = "EN 13906-1:2013";
const FACTORS: &[&str] = &["bergstraesser", "wahl", "none"];
const WIRES: &[&str] = &["music", "oil-tempered", "hard-drawn", "chrome-vanadium", "chrome-silicon"];

/// Adds the single springs.
pub(super) fn register(list: &mut Vec<Working>) {
    list.push(
        wire("spring-rate", "rate of a spring from its wire", |given| plain_rate(given, false))
            .gives("rate", Unit::NewtonPerMillimetre)
            .gives("index", Unit::One)
            .by("k = G d^4 / (8 D^3 n)", EN),
    );
    list.push(
        wire("spring-rate-with-shear", "rate with transverse shear counted", |given| plain_rate(given, true))
            .gives("rate", Unit::NewtonPerMillimetre)
            .gives("index", Unit::One)
            .by(
                "k = G d^4 / (8 D^3 n) x 2 C^2 / (1 + 2 C^2)",
                "Shigley, 9th ed., eq. 10-8; me_toolbox 0.0.18",
            )
            .mind("0.4 to 2 % below the plain formula of EN 13906-1: do not mix the two"),
    );
    list.push(
        Working::new(
            "spring-rate-from-loads",
            Kind::Spring,
            "rate from two loads and the lengths at them",
            two_loads,
        )
        .takes(force("F1", "first load").or_zero())
        .takes(length("L1", "length (or deflection) at the first load").also(&["s1", "x1"]).or_zero())
        .takes(force("F2", "second load").or_zero())
        .takes(length("L2", "length (or deflection) at the second load").also(&["s2", "x2"]).or_zero())
        .gives("rate", Unit::NewtonPerMillimetre)
        .by("k = (F2 - F1) / (L1 - L2)", "identity"),
    );
    list.push(
        coil("active-coils", "active coils that give a rate", coils)
            .takes(k())
            .takes(g())
            .gives("coils", Unit::One)
            .by("n = G d^4 / (8 D^3 k)", EN),
    );
    list.push(
        Working::new("total-coils", Kind::Spring, "total coils from active ones", total)
            .takes(n())
            .takes(Input::text("coiled", &["cold", "hot"], "coiled").usually_text("cold"))
            .gives("coils", Unit::One)
            .by("nt = n + 2 cold coiled, n + 1.5 hot coiled", "EN 13906-1:2013, clause 7 (memory)"),
    );
    list.push(
        Working::new("shear-modulus", Kind::Spring, "shear modulus of a wire", modulus)
            .takes(
                Input::text(
                    "material",
                    &[],
                    "material: en 10270-1, en 10270-2, stainless, titanium, bronze; left out, the first two",
                )
                .optional(),
            )
            .gives("G", Unit::Megapascal)
            .by("table", "EN 13906-1 table of materials (memory)"),
    );
    list.push(
        coil("spring-index", "spring index", |given| Ok(Done::of(mean(given)? / given.n("d")?, Unit::One)))
            .gives("index", Unit::One)
            .by("C = D / d", EN),
    );
    list.push(
        indexed("wahl-factor", "Wahl's correction of the stress", |given| factor_of(given, Factor::Wahl))
            .by("(4C - 1) / (4C - 4) + 0.615 / C", "A. M. Wahl, as in Shigley, 9th ed., eq. 10-5"),
    );
    list.push(
        indexed("bergstraesser-factor", "EN 13906-1's correction of the stress", |given| {
            factor_of(given, Factor::Bergstraesser)
        })
        .by("(4C + 2) / (4C - 3) = (C + 0.5) / (C - 0.75)", EN),
    );
    list.push(
        coil("spring-stress", "shear stress in the wire at a load", wire_stress)
            .takes(force("F", "load").also(&["P", "force", "load"]))
            .takes(Input::text("factor", FACTORS, "correction").usually_text("bergstraesser"))
            .gives("stress", Unit::Megapascal)
            .gives("factor", Unit::One)
            .gives("plain", Unit::Megapascal)
            .by("tau = K 8 F D / (pi d^3)", EN)
            .mind("EN 13906-1's factor and Wahl's differ by about 1 %: the answer says which it used"),
    );
    list.push(
        coil("spring-max-load", "load at which the wire yields, or reaches a stress", max_load)
            .takes(
                Input::of("tau", Unit::Megapascal, "shear stress allowed")
                    .also(&["Ssy", "stress"])
                    .optional(),
            )
            .takes(Input::text("wire", WIRES, "wire").optional())
            .takes(Input::text("factor", FACTORS, "correction").usually_text("bergstraesser"))
            .gives("force", Unit::Newton)
            .gives("stress", Unit::Megapascal)
            .by(
                "F = tau pi d^3 / (8 K D); tau from the wire is 0.45 or 0.50 of A / d^m",
                "Shigley, 9th ed., eq. 10-7, tables 10-4, 10-6 (memory)",
            ),
    );
    list.push(
        Working::new(
            "wire-strength",
            Kind::Spring,
            "tensile strength and torsional yield of a spring wire",
            strength,
        )
        .takes(length("d", "wire diameter"))
        .takes(Input::text("wire", WIRES, "wire").also(&["material"]))
        .gives("tensile", Unit::Megapascal)
        .gives("yield_shear", Unit::Megapascal)
        .by("A / d^m; torsional yield 0.45 or 0.50 of it", "Shigley, 9th ed., tables 10-4, 10-6 (memory)"),
    );
    list.push(
        wire("spring-deflection", "deflection at a load", deflection)
            .takes(force("F", "load").also(&["P", "force", "load"]))
            .takes(k().optional())
            .gives("deflection", Unit::Millimetre)
            .gives("rate", Unit::NewtonPerMillimetre)
            .by("s = F / k", EN),
    );
}

pub(super) fn length(name: &'static str, what: &'static str) -> Input {
    Input::of(name, Unit::Millimetre, what)
}

pub(super) fn force(name: &'static str, what: &'static str) -> Input {
    Input::of(name, Unit::Newton, what)
}

pub(super) fn k() -> Input {
    Input::of("k", Unit::NewtonPerMillimetre, "spring rate").also(&["rate"])
}

pub(super) fn n() -> Input {
    Input::number("n", "number of active coils").also(&["N_active", "Na", "N", "active", "n_active"])
}

pub(super) fn nt() -> Input {
    Input::number("Nt", "total number of coils").also(&["nt", "total"])
}

fn g() -> Input {
    Input::of("G", Unit::Megapascal, "shear modulus").usually(G_STEEL)
}

/// A working on a coil: wire diameter and mean diameter, or the outside or inside one.
pub(super) fn coil(
    name: &'static str,
    about: &'static str,
    run: fn(&Given) -> Result<Done, Refusal>,
) -> Working {
    Working::new(name, Kind::Spring, about, run)
        .takes(length("d", "wire diameter"))
        .takes(length("D", "mean coil diameter").optional())
        .takes(length("OD", "outside coil diameter").optional())
        .takes(length("ID", "inside coil diameter").optional())
}

/// A coil with its active coils and modulus. None is required by itself: [`mean`] and the like ask for what they need.
pub(super) fn wire(
    name: &'static str,
    about: &'static str,
    run: fn(&Given) -> Result<Done, Refusal>,
) -> Working {
    let mut working = coil(name, about, run).takes(n().optional()).takes(g());
    if let Some(d) = working.inputs.first_mut() {
        d.required = false;
    }
    working
}

/// A working on the spring index alone.
fn indexed(name: &'static str, about: &'static str, run: fn(&Given) -> Result<Done, Refusal>) -> Working {
    let mut working = coil(name, about, run)
        .takes(Input::number("C", "spring index D / d").optional())
        .gives("factor", Unit::One);
    if let Some(d) = working.inputs.first_mut() {
        d.required = false;
    }
    working
}

/// The mean diameter, from whichever diameter was given.
pub(super) fn mean(given: &Given) -> Result<f64, Refusal> {
    let d = given.n("d")?;
    let mean = match (given.maybe("D"), given.maybe("OD"), given.maybe("ID")) {
        (Some(mean), ..) => mean,
        (None, Some(outside), _) => outside - d,
        (None, None, Some(inside)) => inside + d,
        (None, None, None) => return Err(given.missing("D")),
    };
    if mean <= d {
        return Err(Refusal::impossible(
            "D",
            "a coil cannot be wound as tight as that: the mean diameter is not above the wire's",
        ));
    }
    Ok(mean)
}

fn index(given: &Given) -> Result<f64, Refusal> {
    match given.maybe("C") {
        Some(index) if index > 1.0 => Ok(index),
        Some(_) => Err(Refusal::impossible("C", "a spring index is above 1")),
        None if given.maybe("d").is_some() => Ok(mean(given)? / given.n("d")?),
        None => Err(given.missing("C")),
    }
}

fn factor(given: &Given) -> Result<Factor, Refusal> {
    Ok(match given.t("factor")? {
        "wahl" => Factor::Wahl,
        "none" => Factor::Plain,
        _ => Factor::Bergstraesser,
    })
}

fn plain_rate(given: &Given, shear: bool) -> Result<Done, Refusal> {
    let (d, mean) = (given.n("d")?, mean(given)?);
    let plain = rate(d, mean, given.n("n")?, given.n("G")?);
    let share = if shear { transverse_shear(mean / d) } else { 1.0 };
    Ok(Done::of(plain * share, Unit::NewtonPerMillimetre).and("index", mean / d, Unit::One))
}

/// The rate that was given, or the one of the wire.
pub(super) fn rate_or_wire(given: &Given) -> Result<f64, Refusal> {
    match given.maybe("k") {
        Some(rate) => Ok(rate),
        None if given.maybe("d").is_none() => Err(given.missing("k")),
        None => Ok(rate(given.n("d")?, mean(given)?, given.n("n")?, given.n("G")?)),
    }
}

fn two_loads(given: &Given) -> Result<Done, Refusal> {
    let found = from_loads(given.n("F1")?, given.n("L1")?, given.n("F2")?, given.n("L2")?);
    let rate = found.filter(|rate| *rate > 0.0);
    let rate =
        rate.ok_or_else(|| Refusal::cannot("two loads at one length, or one load at two, give no rate"))?;
    Ok(Done::of(rate, Unit::NewtonPerMillimetre))
}

fn coils(given: &Given) -> Result<Done, Refusal> {
    Ok(Done::of(active_coils(given.n("d")?, mean(given)?, given.n("k")?, given.n("G")?), Unit::One))
}

fn total(given: &Given) -> Result<Done, Refusal> {
    let more = if given.t("coiled")? == "hot" { 1.5 } else { 2.0 };
    Ok(Done::of(given.n("n")? + more, Unit::One))
}

fn modulus(given: &Given) -> Result<Done, Refusal> {
    let Some(material) = given.maybe_text("material") else {
        let steel = ["en 10270-1", "en 10270-2"].iter().filter_map(|name| shear_modulus(name)).collect();
        return Ok(Done::list(steel, Unit::Megapascal));
    };
    let g = shear_modulus(material).ok_or_else(|| {
        Refusal::unreadable(
            "material",
            format!("no modulus for `{material}`; say en 10270-1, en 10270-2, stainless, titanium or bronze"),
        )
    })?;
    Ok(Done::of(g, Unit::Megapascal))
}

fn factor_of(given: &Given, factor: Factor) -> Result<Done, Refusal> {
    Ok(Done::of(factor.of(index(given)?), Unit::One))
}

fn wire_stress(given: &Given) -> Result<Done, Refusal> {
    let (f, d, mean, factor) = (given.n("F")?, given.n("d")?, mean(given)?, factor(given)?);
    Ok(Done::of(stress(f, d, mean, factor), Unit::Megapascal)
        .and("factor", factor.of(mean / d), Unit::One)
        .and("plain", stress(f, d, mean, Factor::Plain), Unit::Megapascal)
        .by(format!("tau = K 8 F D / (pi d^3), K: {}", given.t("factor")?)))
}

fn max_load(given: &Given) -> Result<Done, Refusal> {
    let (d, mean) = (given.n("d")?, mean(given)?);
    let tau = match (given.maybe("tau"), given.maybe_text("wire")) {
        (Some(tau), _) => tau,
        (None, Some(wire)) => wire_strength(wire, d).ok_or_else(|| given.missing("tau"))?.1,
        (None, None) => return Err(given.missing("tau")),
    };
    Ok(Done::of(force_at(tau, d, mean, factor(given)?), Unit::Newton).and("stress", tau, Unit::Megapascal))
}

fn deflection(given: &Given) -> Result<Done, Refusal> {
    let rate = rate_or_wire(given)?;
    Ok(Done::of(given.n("F")? / rate, Unit::Millimetre).and("rate", rate, Unit::NewtonPerMillimetre))
}

fn strength(given: &Given) -> Result<Done, Refusal> {
    let found = wire_strength(given.t("wire")?, given.n("d")?);
    let (tensile, shear) = found.ok_or_else(|| given.missing("wire"))?;
    Ok(Done::of(tensile, Unit::Megapascal).and("yield_shear", shear, Unit::Megapascal))
}

//! Pairs and the dyno by name.

use super::super::registry::{Done, Given, Input, Kind, Refusal, Working};
use super::compare::{USUAL_LIMIT, share};
use super::dyno::{USUAL_SPEEDS, peak_acceleration, peak_speed, revolutions_for};
use crate::quantity::Unit;

/// Adds pairs and dyno speeds.
pub(in crate::workings) fn register(list: &mut Vec<Working>) {
    list.push(
        Working::new(
            "pair-difference",
            Kind::Pair,
            "left against right in force at one velocity",
            difference,
        )
        .takes(Input::of("left", Unit::Newton, "left force").also(&["first"]).signed())
        .takes(Input::of("right", Unit::Newton, "right force").also(&["second"]).signed())
        .takes(
            Input::of("limit", Unit::Percent, "limit in per cent of the mean")
                .or_zero()
                .usually(100.0 * USUAL_LIMIT),
        )
        .tells("verdict")
        .gives("difference", Unit::Percent)
        .gives("force", Unit::Newton)
        .by("|right - left| / mean of both", "identity; the limit of 5 % is common practice, no source"),
    );
    list.push(
        Working::new("peak-rod-speed", Kind::Pair, "peak rod speed of a crank dyno", peak)
            .takes(stroke())
            .takes(Input::of("rpm", Unit::Rpm, "crank speed").also(&["speed", "n"]))
            .gives("speed", Unit::MillimetrePerSecond)
            .gives("acceleration_g", Unit::One)
            .by("pi x stroke x rpm / 60", "identity for sinusoidal motion"),
    );
    list.push(
        Working::new("rpm-for-speed", Kind::Pair, "crank speed for a peak rod speed", rpm)
            .takes(Input::of("v", Unit::MillimetrePerSecond, "peak rod speed").also(&["speed"]))
            .takes(stroke())
            .gives("rpm", Unit::Rpm)
            .by("60 v / (pi x stroke)", "identity for sinusoidal motion"),
    );
    list.push(
        Working::new(
            "damping-from-force",
            Kind::Pair,
            "damping coefficient from a force at a speed",
            coefficient,
        )
        .takes(Input::of("F", Unit::Newton, "force").also(&["force"]))
        .takes(Input::of("v", Unit::MillimetrePerSecond, "rod speed").also(&["speed"]))
        .takes(Input::of("gas", Unit::Newton, "gas force to take off").signed().usually(0.0))
        .gives("coefficient", Unit::NewtonSecondPerMetre)
        .gives("force", Unit::Newton)
        .by("(F - gas) / v", "definition"),
    );
    list.push(
        Working::new(
            "gas-taken-off",
            Kind::Pair,
            "damping force of a measured one, the gas force taken off",
            gas_off,
        )
        .takes(Input::of("force", Unit::Newton, "force measured, as a size").also(&["F"]))
        .takes(Input::gauge("p", "gas pressure").also(&["pressure"]))
        .takes(Input::of("rod", Unit::Millimetre, "rod diameter").also(&["d"]))
        .takes(Input::text("way", &["bump", "rebound"], "way of the stroke"))
        .gives("force", Unit::Newton)
        .gives("gas", Unit::Newton)
        .by(
            "gauge pressure x rod area, taken from bump and given to rebound: the gas pushes out",
            "definition",
        ),
    );
    super::register_trace::register(list);
    list.push(
        Working::new("dyno-speeds", Kind::Pair, "usual test speeds of a damper dyno", |_| {
            Ok(Done::list(USUAL_SPEEDS.to_vec(), Unit::MetrePerSecond))
        })
        .gives("speeds", Unit::MetrePerSecond)
        .by("table", "common practice, no source (memory)"),
    );
}

fn stroke() -> Input {
    Input::of("stroke", Unit::Millimetre, "stroke of the crank, end to end")
}

fn difference(given: &Given) -> Result<Done, Refusal> {
    let (left, right) = (given.n("left")?, given.n("right")?);
    if left * right < 0.0 {
        return Err(Refusal::cannot("one force pushes and the other pulls: they are not of one velocity"));
    }
    let off = 100.0 * share(left, right).abs();
    let within = off <= given.n("limit")? * (1.0 + 1e-9);
    let verdict = format!("{} ({off:.2} %)", if within { "within" } else { "outside" });
    Ok(Done::text(verdict).and("difference", off, Unit::Percent).and("force", right - left, Unit::Newton))
}

fn peak(given: &Given) -> Result<Done, Refusal> {
    let (stroke, per_second) = (given.n("stroke")?, given.n("rpm")? / 60.0);
    Ok(Done::of(peak_speed(stroke, per_second), Unit::MillimetrePerSecond).and(
        "acceleration_g",
        peak_acceleration(stroke, per_second) / 9.806_65,
        Unit::One,
    ))
}

fn rpm(given: &Given) -> Result<Done, Refusal> {
    Ok(Done::of(60.0 * revolutions_for(given.n("v")?, given.n("stroke")?), Unit::Rpm))
}

fn gas_off(given: &Given) -> Result<Done, Refusal> {
    let rod = given.n("rod")?;
    // bar x mm2 / 10 is N.
    let gas = given.n("p")? * std::f64::consts::FRAC_PI_4 * rod * rod / 10.0;
    let sign = if given.t("way")? == "bump" { -1.0 } else { 1.0 };
    Ok(Done::of(given.n("force")? + sign * gas, Unit::Newton).and("gas", gas, Unit::Newton))
}

fn coefficient(given: &Given) -> Result<Done, Refusal> {
    let force = given.n("F")? - given.n("gas")?;
    Ok(Done::of(force * 1000.0 / given.n("v")?, Unit::NewtonSecondPerMetre).and("force", force, Unit::Newton))
}

//! The gas calculations by name.

use super::super::convert::ATMOSPHERE_BAR;
use super::super::registry::{Done, Given, Input, Kind, Refusal, Working};
use super::reservoir::{gas_volume, rod_volume, shared};
use super::{DIATOMIC, ZERO_C, adiabatic_temperature, compressed, ideal_pressure, nitrogen, rod_force};
use crate::quantity::{PressureBasis, Unit};

const SPAN: &str = "ideal gas law; nitrogen by Span and others, J. Phys. Chem. Ref. Data 29, 1361 (2000)";
const MODELS: &[&str] = &["ideal", "real"];
const PROCESSES: &[&str] = &["isothermal", "adiabatic"];
/// Difference of real from ideal gas above which it is said.
const WORTH_SAYING: f64 = 0.01;

/// Adds the gas.
pub(in crate::workings) fn register(list: &mut Vec<Working>) {
    list.push(
        Working::new(
            "charge-at-temperature",
            Kind::Gas,
            "a charge's pressure at another temperature",
            warmed,
        )
        .takes(Input::gauge("p", "charge pressure").also(&["pressure", "gauge", "p1"]))
        .takes(
            Input::temperature("T1", "temperature at which it was read").also(&["from", "T"]).usually(20.0),
        )
        .takes(Input::temperature("T2", "temperature wanted").also(&["to"]))
        .takes(Input::text("model", MODELS, "gas model").usually_text("ideal"))
        .gives("pressure", Unit::Bar)
        .gives("ideal", Unit::Bar)
        .gives("real", Unit::Bar)
        .gives("absolute", Unit::Bar)
        .by("p_abs / T_abs stays the same in a fixed volume; gauge = absolute - 1.01325 bar", SPAN),
    );
    list.push(
        Working::new(
            "charge-for-hot",
            Kind::Gas,
            "what to charge cold for a wanted pressure hot",
            cold_for_hot,
        )
        .takes(Input::gauge("p", "pressure wanted hot").also(&["hot", "pressure"]))
        .takes(Input::temperature("T_hot", "temperature hot"))
        .takes(Input::temperature("T_cold", "temperature when charging").usually(20.0))
        .takes(Input::text("model", MODELS, "gas model").usually_text("ideal"))
        .gives("pressure", Unit::Bar)
        .gives("ideal", Unit::Bar)
        .gives("real", Unit::Bar)
        .gives("absolute", Unit::Bar)
        .by("p_abs / T_abs stays the same in a fixed volume", SPAN),
    );
    list.push(
        Working::new("gas-compression", Kind::Gas, "pressure of a gas pressed into less volume", pressed)
            .takes(Input::absolute("p", "pressure before").also(&["p0", "pressure"]))
            .takes(Input::number("ratio", "volume before over volume after").also(&["V0_over_V1"]).optional())
            .takes(volume("V0", "volume before").optional())
            .takes(volume("V1", "volume after").optional())
            .takes(Input::text("process", PROCESSES, "process").usually_text("isothermal"))
            .takes(Input::text("model", MODELS, "gas model").usually_text("ideal"))
            .takes(Input::temperature("T", "temperature before").also(&["T0"]).usually(20.0))
            .takes(Input::number("n", "exponent, where neither process fits").also(&["exponent"]).optional())
            .gives("pressure", Unit::Bar)
            .gives("gauge", Unit::Bar)
            .gives("temperature", Unit::Celsius)
            .gives("real", Unit::Bar)
            .by("p V^n on absolute pressure, n 1 isothermal, 1.4 adiabatic", SPAN)
            .mind("the pressure answered is absolute; a gauge shows 1.01325 bar less"),
    );
    list.push(
        Working::new(
            "adiabatic-temperature",
            Kind::Gas,
            "temperature of a gas pressed without heat lost",
            hot,
        )
        .takes(Input::temperature("T", "temperature before").also(&["T0"]).usually(20.0))
        .takes(Input::number("ratio", "volume before over volume after").also(&["V0_over_V1"]))
        .takes(Input::number("n", "exponent").usually(DIATOMIC))
        .gives("temperature", Unit::Celsius)
        .by("T V^(n - 1) stays the same", "ideal gas law"),
    );
    list.push(
        Working::new("rod-force", Kind::Gas, "force of the gas on the rod", force)
            .takes(rod())
            .takes(Input::gauge("p", "gas pressure").also(&["pressure", "gauge"]))
            .gives("force", Unit::Newton)
            .by(
                "gauge pressure x rod area",
                "definition: the air pushes back on the rod, so the gauge pressure counts",
            ),
    );
    list.push(
        Working::new("rod-volume", Kind::Gas, "volume that the rod takes over a stroke", rod_takes)
            .takes(rod())
            .takes(stroke())
            .gives("volume", Unit::Millilitre)
            .by("rod area x stroke", "identity"),
    );
    list.push(rise());
    list.push(
        Working::new("gauge-loss", Kind::Gas, "pressure left once a gauge and its hose are fitted", loss)
            .takes(Input::gauge("p", "charge pressure").also(&["pressure", "gauge"]))
            .takes(volume("V", "gas volume").also(&["V0"]))
            .takes(volume("V_gauge", "volume of gauge and hose").also(&["hose"]))
            .gives("pressure", Unit::Bar)
            .gives("loss", Unit::Bar)
            .gives("before", Unit::Bar)
            .by(
                "the hose begins at the air's pressure: p1 V + p_air V_gauge = p2 (V + V_gauge), absolute",
                "Boyle's law",
            )
            .mind("before: what stood in the unit if this reading was taken with the gauge on"),
    );
    list.push(
        Working::new("compressibility", Kind::Gas, "compressibility factor of nitrogen", z)
            .takes(Input::absolute("p", "pressure").also(&["pressure"]))
            .takes(Input::temperature("T", "temperature").usually(20.0))
            .gives("Z", Unit::One)
            .by("Z = p / (rho R T)", SPAN),
    );
}

fn rise() -> Working {
    Working::new("gas-rise", Kind::Gas, "gas pressure once the rod has gone in", rises)
        .takes(Input::gauge("p", "charge pressure, rod out").also(&["pressure", "gauge"]))
        .takes(volume("V0", "gas volume, rod out").also(&["V"]).optional())
        .takes(Input::of("bore", Unit::Millimetre, "reservoir bore").optional())
        .takes(
            Input::of("depth", Unit::Millimetre, "depth of the floating piston's gas face below the rim")
                .optional(),
        )
        .takes(Input::of("cap", Unit::Millimetre, "depth that the cap takes").or_zero().usually(0.0))
        .takes(rod())
        .takes(stroke())
        .takes(Input::text("process", PROCESSES, "process").usually_text("isothermal"))
        .takes(Input::temperature("T", "temperature").usually(20.0))
        .takes(Input::text("model", MODELS, "gas model").usually_text("ideal"))
        .gives("pressure", Unit::Bar)
        .gives("rise", Unit::Bar)
        .gives("volume", Unit::Millilitre)
        .gives("left", Unit::Millilitre)
        .gives("force", Unit::Newton)
        .by("p_abs (V0 / (V0 - rod area x stroke))^n; gauge again after", SPAN)
}

fn volume(name: &'static str, what: &'static str) -> Input {
    Input::of(name, Unit::Millilitre, what)
}

fn rod() -> Input {
    Input::of("rod", Unit::Millimetre, "rod diameter").also(&["d", "rod_diameter", "shaft"])
}

fn stroke() -> Input {
    Input::of("stroke", Unit::Millimetre, "stroke").also(&["s"])
}

fn kelvin(given: &Given, name: &str) -> Result<f64, Refusal> {
    Ok(given.n(name)? + ZERO_C)
}

/// An absolute pressure in bar, answered in the unit and on the basis that `p` was given.
fn answer(given: &Given, absolute: f64) -> Result<Done, Refusal> {
    let basis = given.basis("p").unwrap_or(PressureBasis::Gauge);
    let bar = if basis == PressureBasis::Gauge { absolute - ATMOSPHERE_BAR } else { absolute };
    Ok(Done::of(in_unit(given, bar)?, given.unit("p")).and(
        "absolute",
        in_unit(given, absolute)?,
        given.unit("p"),
    ))
}

fn in_unit(given: &Given, bar: f64) -> Result<f64, Refusal> {
    Unit::Bar.convert(bar, given.unit("p")).map_err(|_| Refusal::cannot("not a pressure"))
}

/// A real figure that the equation does not cover.
fn beyond() -> Refusal {
    Refusal::cannot(
        "the equation for real nitrogen is used from -73 to 327 degC and to 500 bar: ask for the ideal gas",
    )
}

/// Ideal and real absolute pressure as an answer: the one asked for first, the difference said where it matters.
fn either(given: &Given, ideal: f64, real: Option<f64>) -> Result<Done, Refusal> {
    let wants_real = given.t("model")? == "real";
    let chosen = if wants_real { real.ok_or_else(beyond)? } else { ideal };
    let gauge = |bar: f64| in_unit(given, bar - ATMOSPHERE_BAR);
    let mut done = answer(given, chosen)?.and("ideal", gauge(ideal)?, given.unit("p"));
    if let Some(real) = real {
        let off = (real - ideal) / (ideal - ATMOSPHERE_BAR).abs().max(ATMOSPHERE_BAR);
        let said = format!(
            "on the gauge real nitrogen stands {:.1} % {} the ideal gas here",
            100.0 * off.abs(),
            if off > 0.0 { "above" } else { "below" }
        );
        done = done.and("real", gauge(real)?, given.unit("p")).caution_if(off.abs() > WORTH_SAYING, &said);
    }
    Ok(done.by(if wants_real {
        "density fixed, nitrogen by Span and others"
    } else {
        "p_abs / T_abs stays the same (ideal gas)"
    }))
}

fn absolute_of_p(given: &Given) -> Result<f64, Refusal> {
    Ok(given.n("p")? + ATMOSPHERE_BAR)
}

fn warmed(given: &Given) -> Result<Done, Refusal> {
    let (p, t1, t2) = (absolute_of_p(given)?, kelvin(given, "T1")?, kelvin(given, "T2")?);
    either(given, ideal_pressure(p, t1, t2), nitrogen::heated(p, t1, t2))
}

fn cold_for_hot(given: &Given) -> Result<Done, Refusal> {
    let (p, hot, cold) = (absolute_of_p(given)?, kelvin(given, "T_hot")?, kelvin(given, "T_cold")?);
    either(given, ideal_pressure(p, hot, cold), nitrogen::heated(p, hot, cold))
}

fn ratio(given: &Given) -> Result<f64, Refusal> {
    let ratio = match (given.maybe("ratio"), given.maybe("V0"), given.maybe("V1")) {
        (Some(ratio), ..) => ratio,
        (None, Some(before), Some(after)) => before / after,
        (None, Some(_), None) => return Err(given.missing("V1")),
        _ => return Err(given.missing("ratio")),
    };
    if ratio > 1000.0 { Err(Refusal::impossible("ratio", "no gas is pressed so far")) } else { Ok(ratio) }
}

fn exponent(given: &Given, named: &str) -> Result<f64, Refusal> {
    if let Some(n) = given.maybe("n") {
        return Ok(n);
    }
    Ok(if given.t(named)? == "adiabatic" { DIATOMIC } else { 1.0 })
}

/// Real nitrogen pressed: absolute bar and K.
fn real_pressed(given: &Given, p: f64, t: f64, ratio: f64) -> Result<Option<(f64, f64)>, Refusal> {
    Ok(if given.t("process")? == "adiabatic" {
        nitrogen::adiabatic(p, t, ratio)
    } else {
        nitrogen::isothermal(p, t, ratio).map(|bar| (bar, t))
    })
}

fn pressed(given: &Given) -> Result<Done, Refusal> {
    let (p, t, ratio) = (given.n("p")?, kelvin(given, "T")?, ratio(given)?);
    let n = exponent(given, "process")?;
    let mut found = (compressed(p, ratio, n), adiabatic_temperature(t, ratio, n));
    let real = real_pressed(given, p, t, ratio)?;
    if given.t("model")? == "real" {
        found = real.ok_or_else(beyond)?;
    }
    let mut done = Done::of(in_unit(given, found.0)?, given.unit("p"))
        .and("gauge", in_unit(given, found.0 - ATMOSPHERE_BAR)?, given.unit("p"))
        .and("temperature", found.1 - ZERO_C, Unit::Celsius);
    if let Some((bar, _)) = real {
        done = done.and("real", in_unit(given, bar)?, given.unit("p"));
    }
    Ok(done)
}

fn hot(given: &Given) -> Result<Done, Refusal> {
    let end = adiabatic_temperature(kelvin(given, "T")?, given.n("ratio")?, given.n("n")?);
    Ok(Done::of(end - ZERO_C, Unit::Celsius))
}

fn force(given: &Given) -> Result<Done, Refusal> {
    Ok(Done::of(rod_force(given.n("p")?, given.n("rod")?), Unit::Newton))
}

fn rod_takes(given: &Given) -> Result<Done, Refusal> {
    Ok(Done::of(rod_volume(given.n("rod")?, given.n("stroke")?), Unit::Millilitre))
}

fn rises(given: &Given) -> Result<Done, Refusal> {
    let before = match given.maybe("V0") {
        Some(volume) => volume,
        None => {
            let (bore, depth, cap) = (given.n("bore")?, given.n("depth")?, given.n("cap")?);
            if cap >= depth {
                return Err(Refusal::impossible("cap", "the cap takes all of the depth: there is no gas"));
            }
            gas_volume(bore, depth, cap)
        }
    };
    let (rod, left) = (given.n("rod")?, before - rod_volume(given.n("rod")?, given.n("stroke")?));
    if left <= 0.02 * before {
        return Err(Refusal::impossible(
            "stroke",
            "the rod takes more than the gas has room for: the piston would strike the cap",
        ));
    }
    let (p, t, ratio) = (absolute_of_p(given)?, kelvin(given, "T")?, before / left);
    let ideal = compressed(p, ratio, exponent(given, "process")?);
    let real = real_pressed(given, p, t, ratio)?.map(|(bar, _)| bar);
    let chosen = if given.t("model")? == "real" { real.ok_or_else(beyond)? } else { ideal };
    let off = real.map_or(0.0, |real| real / ideal - 1.0);
    Ok(answer(given, chosen)?
        .and("rise", in_unit(given, chosen - p)?, given.unit("p"))
        .and("volume", before, Unit::Millilitre)
        .and("left", left, Unit::Millilitre)
        .and("force", rod_force(chosen - ATMOSPHERE_BAR, rod), Unit::Newton)
        .caution_if(
            off.abs() > WORTH_SAYING,
            &format!("real nitrogen stands {:.1} % off the ideal gas here", 100.0 * off),
        ))
}

fn loss(given: &Given) -> Result<Done, Refusal> {
    let (p, volume, hose) = (absolute_of_p(given)?, given.n("V")?, given.n("V_gauge")?);
    let after = shared(p, volume, hose, ATMOSPHERE_BAR);
    let before = (p * (volume + hose) - ATMOSPHERE_BAR * hose) / volume;
    Ok(answer(given, after)?.and("loss", in_unit(given, p - after)?, given.unit("p")).and(
        "before",
        in_unit(given, before - ATMOSPHERE_BAR)?,
        given.unit("p"),
    ))
}

fn z(given: &Given) -> Result<Done, Refusal> {
    let z = nitrogen::compressibility(given.n("p")?, kelvin(given, "T")?).ok_or_else(beyond)?;
    Ok(Done::of(z, Unit::One))
}

//! The oil calculations by name.

use super::super::registry::{Done, Given, Input, Kind, Refusal, Working};
use super::blend::{Offset, Rule, blending_number};
use super::index::{grade_of, iso_vg, l_and_h, rounded, viscosity_index};
use super::level::{BETA_OIL, expansion, surface, volume_of};
use super::viscosity::constants;
use crate::quantity::Unit;

const CST: Unit = Unit::Centistokes;
const D341: &str = "ASTM D341";
const D2270: &str = "ASTM D2270";
const RULES: &[&str] = &["refutas", "d7152", "k40", "k100", "k-5"];
const RULE_NOTE: &str = "blending rules differ by a few per cent: mix a little and measure";

/// Adds the oil.
pub(in crate::workings) fn register(list: &mut Vec<Working>) {
    list.push(
        two_points("viscosity-at", "viscosity of an oil at a temperature", at)
            .takes(Input::temperature("T", "temperature wanted").also(&["temperature", "t"]))
            .gives("viscosity", CST)
            .gives("A", Unit::One)
            .gives("B", Unit::One)
            .by("log log(v + 0.7) = A - B log T", D341),
    );
    list.push(
        two_points("viscosity-constants", "constants A and B of an oil", |given| {
            let found = line(given)?;
            Ok(Done::list(vec![found.a, found.b], Unit::One).and("A", found.a, Unit::One).and(
                "B",
                found.b,
                Unit::One,
            ))
        })
        .gives("constants", Unit::One)
        .gives("A", Unit::One)
        .gives("B", Unit::One)
        .by("log log(v + 0.7) = A - B log T", D341),
    );
    list.push(
        Working::new("viscosity-index", Kind::Viscosity, "viscosity index", index)
            .takes(cst("v40", "viscosity at 40 degC"))
            .takes(cst("v100", "viscosity at 100 degC"))
            .gives("index", Unit::One)
            .gives("unrounded", Unit::One)
            .gives("L", CST)
            .gives("H", CST)
            .by(
                "procedure A: 100 (L - U) / (L - H); above 100 procedure B: (10^N - 1) / 0.00715 + 100",
                D2270,
            ),
    );
    list.push(
        Working::new("viscosity-index-limits", Kind::Viscosity, "L and H of the viscosity index", limits)
            .takes(cst("v100", "viscosity at 100 degC"))
            .gives("H", CST)
            .gives("L", CST)
            .by("table 1, straight between its rows", D2270),
    );
    list.push(
        Working::new("blending-number", Kind::Oil, "Refutas' viscosity blending number", vbn)
            .takes(cst("v", "viscosity"))
            .gives("VBN", Unit::One)
            .by(
                "14.534 ln ln(v + 0.8) + 10.975",
                "Refutas; R. E. Maples, Petroleum Refinery Process Economics (2000)",
            ),
    );
    list.push(
        mixing("oil-blend", "viscosity of a mix of two oils", mix)
            .takes(
                Input::number("x1", "share of the first oil, 0 to 1")
                    .also(&["share"])
                    .between(0.0, 1.0)
                    .optional(),
            )
            .takes(
                Input::of("pct1", Unit::Percent, "share of the first oil in per cent")
                    .also(&["percent"])
                    .between(0.0, 100.0)
                    .optional(),
            )
            .gives("viscosity", CST)
            .tells("rule"),
    );
    list.push(
        mixing("oil-blend-share", "share of the first oil for a wanted viscosity", share)
            .takes(cst("target", "viscosity wanted").also(&["v"]))
            .gives("share", Unit::Percent)
            .tells("rule"),
    );
    list.push(
        Working::new("iso-vg", Kind::Viscosity, "limits of an ISO viscosity grade at 40 degC", vg)
            .takes(Input::number("VG", "ISO VG grade").also(&["grade", "vg"]))
            .gives("limits", CST)
            .gives("middle", CST)
            .by("mid-point and 10 % either side", "ISO 3448"),
    );
    list.push(
        Working::new("iso-vg-of", Kind::Viscosity, "ISO viscosity grade of an oil", vg_of)
            .takes(cst("v40", "viscosity at 40 degC").also(&["v"]))
            .gives("VG", Unit::One)
            .by("the grade whose 10 % band holds it", "ISO 3448"),
    );
    list.push(
        Working::new("oil-expansion", Kind::Oil, "how much an oil expands on warming", expand)
            .takes(Input::of("V", Unit::Millilitre, "volume").also(&["volume"]))
            .takes(Input::temperature("T1", "temperature before"))
            .takes(Input::temperature("T2", "temperature after"))
            .takes(Input::of("beta", Unit::PerKelvin, "coefficient of expansion").usually(BETA_OIL))
            .gives("expansion", Unit::Millilitre)
            .gives("volume", Unit::Millilitre)
            .by(
                "V beta (T2 - T1)",
                "Engineering ToolBox, cubical expansion of liquids: mineral oil 0.0007 per kelvin",
            ),
    );
    list.push(
        Working::new(
            "oil-level-to-volume",
            Kind::Oil,
            "oil to add or take for a change of level in a fork leg",
            to_volume,
        )
        .takes(mm("level", "level now, from the top").or_zero())
        .takes(mm("wanted", "level wanted, from the top").or_zero())
        .takes(mm("bore", "bore of the leg"))
        .takes(mm("inside", "diameter of what stands in the oil").also(&["rod"]).or_zero().usually(0.0))
        .gives("volume", Unit::Millilitre)
        .tells("do")
        .by("(level - wanted) x pi/4 (bore^2 - inside^2); above zero: add", "identity"),
    );
    list.push(
        Working::new(
            "oil-for-level",
            Kind::Oil,
            "oil that moves the level in a fork leg by so much",
            |given| Ok(Done::of(volume_of(given.n("level")?, the_surface(given)?), Unit::Millilitre)),
        )
        .takes(mm("level", "change of level").or_zero())
        .takes(mm("bore", "bore of the leg"))
        .takes(mm("inside", "diameter of what stands in the oil").also(&["rod"]).or_zero().usually(0.0))
        .gives("volume", Unit::Millilitre)
        .by("level x pi/4 (bore^2 - inside^2)", "identity"),
    );
    list.push(
        Working::new(
            "oil-volume-to-level",
            Kind::Oil,
            "change of level for a volume in a fork leg",
            to_level,
        )
        .takes(Input::of("V", Unit::Millilitre, "volume added").also(&["volume"]).signed())
        .takes(mm("bore", "bore of the leg"))
        .takes(mm("inside", "diameter of what stands in the oil").also(&["rod"]).or_zero().usually(0.0))
        .gives("rise", Unit::Millimetre)
        .by("V / (pi/4 (bore^2 - inside^2))", "identity"),
    );
    list.push(
        Working::new("dynamic-viscosity", Kind::Viscosity, "dynamic viscosity from kinematic", dynamic)
            .takes(cst("v", "kinematic viscosity"))
            .takes(Input::of("density", Unit::KilogramCubicMetre, "density").also(&["rho"]))
            .gives("viscosity", Unit::MillipascalSecond)
            .by("mu = v rho", "definition"),
    );
}

fn cst(name: &'static str, what: &'static str) -> Input {
    Input::of(name, CST, what)
}

fn mm(name: &'static str, what: &'static str) -> Input {
    Input::of(name, Unit::Millimetre, what)
}

/// A working on two viscosities: at 40 and 100 degC, or at any two temperatures.
fn two_points(name: &'static str, about: &'static str, run: fn(&Given) -> Result<Done, Refusal>) -> Working {
    Working::new(name, Kind::Viscosity, about, run)
        .takes(cst("v40", "viscosity at 40 degC (or at T1)").also(&["v1"]))
        .takes(cst("v100", "viscosity at 100 degC (or at T2)").also(&["v2"]))
        .takes(Input::temperature("T1", "temperature of the first viscosity").usually(40.0))
        .takes(Input::temperature("T2", "temperature of the second viscosity").usually(100.0))
        .takes(Input::number("offset", "zero of the Celsius scale, K").between(270.0, 276.0).usually(273.15))
}

fn mixing(name: &'static str, about: &'static str, run: fn(&Given) -> Result<Done, Refusal>) -> Working {
    Working::new(name, Kind::Oil, about, run)
        .takes(cst("v1", "viscosity of the first oil"))
        .takes(cst("v2", "viscosity of the second oil, at the same temperature"))
        .takes(Input::text("rule", RULES, "blending rule").usually_text("refutas"))
        .by(
            "refutas: 14.534 ln ln(v + 0.8) + 10.975 by mass; d7152: log log(v + 0.7) by volume; k40, k100, k-5: ln ln(v + K), K 4.1, 1.8, 1.9",
            "Maples, Petroleum Refinery Process Economics (2000); ASTM D7152; lubepy 1.0a0",
        )
        .mind(RULE_NOTE)
}

fn line(given: &Given) -> Result<super::viscosity::Constants, Refusal> {
    let zero = given.n("offset")?;
    let (t1, t2) = (given.n("T1")? + zero, given.n("T2")? + zero);
    let found = constants(given.n("v40")?, t1, given.n("v100")?, t2);
    let found = found.ok_or_else(|| {
        Refusal::cannot("the two viscosities need two temperatures, and at least 0.3 mm2/s")
    })?;
    if found.b <= 0.0 {
        return Err(Refusal::cannot(
            "an oil is thicker when colder: these viscosities are the wrong way round",
        ));
    }
    Ok(found)
}

fn at(given: &Given) -> Result<Done, Refusal> {
    let found = line(given)?;
    let t = given.n("T")? + given.n("offset")?;
    let v = found.at(t);
    Ok(Done::of(v, CST)
        .and("A", found.a, Unit::One)
        .and("B", found.b, Unit::One)
        .caution_if(v < 2.0, "below 2 mm2/s the rule is a few per cent off"))
}

fn index(given: &Given) -> Result<Done, Refusal> {
    let (v40, v100) = (given.n("v40")?, given.n("v100")?);
    if v40 <= v100 {
        return Err(Refusal::cannot(
            "an oil is thicker at 40 than at 100 degC: these viscosities are the wrong way round",
        ));
    }
    let Some(found) = viscosity_index(v40, v100) else {
        return Ok(Done::nothing().caution("not defined below 2 mm2/s at 100 degC"));
    };
    let done = Done::of(rounded(found), Unit::One).and("unrounded", found, Unit::One);
    Ok(match l_and_h(v100) {
        Some((l, h)) => done.and("L", l, CST).and("H", h, CST),
        None => done,
    })
}

fn limits(given: &Given) -> Result<Done, Refusal> {
    let found = l_and_h(given.n("v100")?);
    let (l, h) = found.ok_or_else(|| Refusal::impossible("v100", "not defined below 2 mm2/s at 100 degC"))?;
    Ok(Done::of(h, CST).and("L", l, CST))
}

fn vbn(given: &Given) -> Result<Done, Refusal> {
    let number = blending_number(given.n("v")?);
    let number =
        number.ok_or_else(|| Refusal::impossible("v", "below 0.2 mm2/s there is no blending number"))?;
    Ok(Done::of(number, Unit::One))
}

fn rule(given: &Given) -> Result<Rule, Refusal> {
    Ok(match given.t("rule")? {
        "d7152" => Rule::D7152,
        "k40" => Rule::Offset(Offset::At40),
        "k100" => Rule::Offset(Offset::At100),
        "k-5" => Rule::Offset(Offset::Minus5),
        _ => Rule::Refutas,
    })
}

fn mix(given: &Given) -> Result<Done, Refusal> {
    let share = match (given.maybe("x1"), given.maybe("pct1")) {
        (Some(share), _) => share,
        (None, Some(percent)) => percent / 100.0,
        (None, None) => return Err(given.missing("x1")),
    };
    let found = rule(given)?.mix(given.n("v1")?, share, given.n("v2")?);
    let v = found.ok_or_else(|| Refusal::cannot("an oil this thin has no place in the blending rule"))?;
    Ok(Done::of(v, CST).and_text("rule", given.t("rule")?))
}

fn share(given: &Given) -> Result<Done, Refusal> {
    let found = rule(given)?.share(given.n("v1")?, given.n("v2")?, given.n("target")?);
    let share = found.ok_or_else(|| {
        Refusal::impossible("target", "the wanted viscosity does not lie between the two oils")
    })?;
    Ok(Done::of(100.0 * share, Unit::Percent).and_text("rule", given.t("rule")?))
}

fn vg(given: &Given) -> Result<Done, Refusal> {
    let grade = given.n("VG")?;
    let limits =
        iso_vg(grade).ok_or_else(|| Refusal::impossible("VG", format!("ISO 3448 has no grade {grade}")))?;
    let middle = limits.get(1).copied().unwrap_or_default();
    Ok(Done::list(limits.to_vec(), CST).and("middle", middle, CST))
}

fn vg_of(given: &Given) -> Result<Done, Refusal> {
    Ok(match grade_of(given.n("v40")?) {
        Some(grade) => Done::of(grade, Unit::One),
        None => Done::nothing().caution("it lies between two grades"),
    })
}

fn expand(given: &Given) -> Result<Done, Refusal> {
    let volume = given.n("V")?;
    let more = expansion(volume, given.n("beta")?, given.n("T2")? - given.n("T1")?);
    let unit = given.unit("V");
    let to = |ml: f64| Unit::Millilitre.convert(ml, unit).map_err(|_| Refusal::cannot("not a volume"));
    Ok(Done::of(to(more)?, unit).and("volume", to(volume + more)?, unit))
}

fn the_surface(given: &Given) -> Result<f64, Refusal> {
    let (bore, inside) = (given.n("bore")?, given.n("inside")?);
    if inside >= bore {
        return Err(Refusal::impossible("inside", "what stands in the oil is not below the bore"));
    }
    Ok(surface(bore, inside))
}

fn to_volume(given: &Given) -> Result<Done, Refusal> {
    let volume = volume_of(given.n("level")? - given.n("wanted")?, the_surface(given)?);
    Ok(Done::of(volume, Unit::Millilitre).and_text("do", if volume >= 0.0 { "add" } else { "take out" }))
}

fn to_level(given: &Given) -> Result<Done, Refusal> {
    Ok(Done::of(given.n("V")? * 1000.0 / the_surface(given)?, Unit::Millimetre))
}

fn dynamic(given: &Given) -> Result<Done, Refusal> {
    // mm2/s x kg/m3 = 1e-6 Pa.s = 1e-3 mPa.s
    Ok(Done::of(given.n("v")? * given.n("density")? / 1000.0, Unit::MillipascalSecond))
}

//! Hollow shafts by name.

use super::super::registry::{Done, Given, Input, Kind, Refusal, Working};
use super::joint::bearing_diameter;
use super::register_joint::{frictions, the_frictions};
use super::register_thread::thread;
use super::shaft::{Tightened, polar_moment, torsion_modulus};
use crate::quantity::Unit;

/// Adds the shafts.
pub(super) fn register(list: &mut Vec<Working>) {
    list.push(
        hollow("polar-moment", "polar second moment of a hollow circle", |given| {
            let (outside, inside) = section(given)?;
            Ok(Done::of(polar_moment(outside, inside), Unit::MillimetreFourth))
        })
        .gives("polar_moment", Unit::MillimetreFourth)
        .by("pi/32 (D^4 - d^4)", "any strength of materials text"),
    );
    list.push(
        hollow("torsion-modulus", "elastic torsion modulus of a hollow circle", |given| {
            let (outside, inside) = section(given)?;
            Ok(Done::of(torsion_modulus(outside, inside), Unit::CubicMillimetre))
        })
        .gives("torsion_modulus", Unit::CubicMillimetre)
        .by("pi/16 (D^4 - d^4) / D", "any strength of materials text"),
    );
    list.push(
        Working::new(
            "equivalent-stress",
            Kind::Shaft,
            "tension and torsion together, with the margin to proof stress",
            together,
        )
        .takes(Input::of("sigma", Unit::Megapascal, "tensile stress").also(&["tension"]).or_zero())
        .takes(Input::of("tau", Unit::Megapascal, "torsional stress").also(&["torsion"]).or_zero())
        .takes(Input::of("Rp", Unit::Megapascal, "proof stress").also(&["Rp02", "proof", "Sp"]).optional())
        .gives("stress", Unit::Megapascal)
        .gives("margin", Unit::One)
        .by("sqrt(sigma^2 + 3 tau^2)", "von Mises"),
    );
    list.push(
        Working::new(
            "bolt-stress-at-torque",
            Kind::Shaft,
            "tension in a hollow section while its nut is tightened, by nut factor",
            tension_at_torque,
        )
        .takes(Input::text("thread", &[], "thread that the nut turns on"))
        .takes(Input::of("T", Unit::NewtonMetre, "tightening torque").also(&["torque"]))
        .takes(Input::number("K", "nut factor").usually(0.2))
        .takes(
            Input::of("outside", Unit::Millimetre, "outside diameter of the section").also(&["D", "relief"]),
        )
        .takes(Input::of("bore", Unit::Millimetre, "bore of the section").also(&["d"]).or_zero())
        .gives("stress", Unit::Megapascal)
        .gives("preload", Unit::Newton)
        .gives("area", Unit::SquareMillimetre)
        .by(
            "F = T / (K d); F / (pi/4 (D^2 - bore^2)), tension alone",
            "T = K F d; any strength of materials text",
        )
        .mind("tension alone: torsion comes on top while the nut is turned"),
    );
    let margin = Working::new(
        "hollow-shaft-margin",
        Kind::Shaft,
        "stress in a hollow or relieved shaft while its nut is tightened, against proof stress",
        margin,
    )
    .takes(Input::text("thread", &[], "thread that the nut turns on"))
    .takes(Input::of("T", Unit::NewtonMetre, "tightening torque").also(&["torque"]))
    .takes(Input::of("bore", Unit::Millimetre, "bore at the weakest section").also(&["d"]).or_zero())
    .takes(
        Input::of(
            "relief",
            Unit::Millimetre,
            "outside diameter at the weakest section, where a relief or neck is below the thread",
        )
        .also(&["D", "neck", "d0"])
        .optional(),
    )
    .takes(Input::of("Rp", Unit::Megapascal, "proof stress").also(&["Rp02", "proof", "Sp"]));
    list.push(
        frictions(margin)
            .gives("margin", Unit::One)
            .gives("stress", Unit::Megapascal)
            .gives("tension", Unit::Megapascal)
            .gives("torsion", Unit::Megapascal)
            .gives("preload", Unit::Newton)
            .gives("torque_at_proof", Unit::NewtonMetre)
            .tells("verdict")
            .by("F = T / (0.16 P + 0.58 d2 mu_G + D_Km / 2 mu_K); sqrt(sigma^2 + 3 tau^2) on the section, elastic; margin = Rp / stress", "VDI 2230 part 1; von Mises")
            .mind("locker, oil and plating lower the friction: the same torque then pulls harder"),
    );
}

fn hollow(name: &'static str, about: &'static str, run: fn(&Given) -> Result<Done, Refusal>) -> Working {
    Working::new(name, Kind::Shaft, about, run)
        .takes(Input::of("D", Unit::Millimetre, "outside diameter").also(&["d0", "OD"]))
        .takes(Input::of("d", Unit::Millimetre, "inside diameter").also(&["bore", "ID", "di"]).or_zero())
}

fn section(given: &Given) -> Result<(f64, f64), Refusal> {
    let (outside, inside) = (given.n("D")?, given.n("d")?);
    if inside >= outside {
        return Err(Refusal::impossible("d", "the bore is not below the outside diameter"));
    }
    Ok((outside, inside))
}

fn tension_at_torque(given: &Given) -> Result<Done, Refusal> {
    let thread = thread(given)?;
    let (outside, bore) = (given.n("outside")?, given.n("bore")?);
    if bore >= outside {
        return Err(Refusal::impossible("bore", "the bore is not below the outside diameter"));
    }
    let preload = given.n("T")? * 1000.0 / (given.n("K")? * thread.d);
    let area = std::f64::consts::FRAC_PI_4 * (outside * outside - bore * bore);
    Ok(Done::of(preload / area, Unit::Megapascal).and("preload", preload, Unit::Newton).and(
        "area",
        area,
        Unit::SquareMillimetre,
    ))
}

fn together(given: &Given) -> Result<Done, Refusal> {
    let stress = super::shaft::von_mises(given.n("sigma")?, given.n("tau")?);
    let done = Done::of(stress, Unit::Megapascal);
    Ok(match given.maybe("Rp") {
        Some(proof) if stress > 0.0 => done.and("margin", proof / stress, Unit::One),
        _ => done,
    })
}

fn margin(given: &Given) -> Result<Done, Refusal> {
    let thread = thread(given)?;
    let bore = given.n("bore")?;
    let outside = given.maybe("relief").unwrap_or_else(|| thread.stress_diameter());
    if bore >= outside {
        return Err(Refusal::impossible("bore", "the bore is not below the outside diameter"));
    }
    let (mu_thread, mu_head) = the_frictions(given)?;
    let bearing = given.maybe("D_Km").unwrap_or_else(|| bearing_diameter(thread.d));
    let proof = given.n("Rp")?;
    let torque = given.n("T")? * 1000.0;
    let carried = Tightened { thread, outside, bore, mu_thread, mu_head, bearing }.at(torque);
    let margin = proof / carried.together;
    let verdict =
        if margin < 1.0 { "above proof stress: do not tighten to this" } else { "below proof stress" };
    Ok(Done::of(margin, Unit::One)
        .and("stress", carried.together, Unit::Megapascal)
        .and("tension", carried.tension, Unit::Megapascal)
        .and("torsion", carried.torsion, Unit::Megapascal)
        .and("preload", carried.preload, Unit::Newton)
        .and("torque_at_proof", torque / 1000.0 * margin, Unit::NewtonMetre)
        .and_text("verdict", verdict)
        .caution_if(margin < 1.0, "the shaft would yield at this torque"))
}

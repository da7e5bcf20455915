//! Joints by name: preload and its torque.

use super::super::registry::{Done, Given, Input, Kind, Refusal, Working};
use super::class::{nominal_area, nominal_yield};
use super::joint::{PowerScrew, SMALL, Screw, arm, bearing_diameter, by_angle, collar_torque, thread_arm};
use super::register_thread::{bore, class_input, screw, the_class, thread, threaded};
use crate::quantity::Unit;

const VDI: &str = "VDI 2230 part 1";
const NUT: &str = "T = K F d, Shigley, 9th ed., eq. 8-27";
const LOCKED: &str = "a locked, oiled or plated thread has less friction: the same torque makes more preload";

/// Adds the joints.
pub(super) fn register(list: &mut Vec<Working>) {
    list.push(
        vdi("assembly-preload", "preload at a share of yield, tension and torsion together", assembly)
            .gives("preload", Unit::Kilonewton)
            .gives("torque", Unit::NewtonMetre)
            .gives("area", Unit::SquareMillimetre)
            .by("FM = A0 nu Rp0.2 / sqrt(1 + 3 (d2/2 (P / (pi d2) + 1.155 mu) A0 / Wp)^2), Wp = pi (d0^3 - bore^3) / 12", VDI),
    );
    list.push(
        vdi("tightening-torque", "torque that makes that preload", torque_for)
            .gives("torque", Unit::NewtonMetre)
            .gives("preload", Unit::Kilonewton)
            .by("MA = FM (0.16 P + 0.58 d2 mu_G + D_Km / 2 mu_K)", VDI),
    );
    list.push(
        Working::new("minimum-preload", Kind::Joint, "least preload of a tightening method", minimum)
            .takes(newtons("FM_max", "greatest assembly preload").also(&["FM", "F"]))
            .takes(Input::number("alpha_A", "tightening factor").also(&["alpha"]).between(1.0, 10.0))
            .gives("preload", Unit::Newton)
            .by("FM,min = FM,max / alpha_A", VDI),
    );
    list.push(
        friction("preload-from-torque", "preload that a torque makes", preload)
            .takes(torque("T", "tightening torque").also(&["torque"]))
            .gives("preload", Unit::Newton)
            .by(
                "F = T / (K d), or T / (0.16 P + 0.58 d2 mu_G + D_Km / 2 mu_K)",
                "T = K F d, Shigley, 9th ed., eq. 8-27; VDI 2230",
            )
            .mind(LOCKED),
    );
    list.push(
        friction("torque-from-preload", "torque that makes a preload", torque_of)
            .takes(newtons("F", "preload").also(&["preload"]))
            .gives("torque", Unit::NewtonMetre)
            .by(
                "T = K F d, or F (0.16 P + 0.58 d2 mu_G + D_Km / 2 mu_K)",
                "T = K F d, Shigley, 9th ed., eq. 8-27; VDI 2230",
            )
            .mind(LOCKED),
    );
    list.push(
        Working::new(
            "torque-for-proof-share",
            Kind::Joint,
            "torque for a share of the proof load",
            proof_share,
        )
        .takes(Input::text("thread", &[], "thread, such as M12"))
        .takes(class_input().optional())
        .takes(Input::of("F_proof", Unit::Newton, "proof load").also(&["proof_load"]).optional())
        .takes(Input::of("As", Unit::SquareMillimetre, "stress area").optional())
        .takes(Input::of("Sp", Unit::Megapascal, "proof stress").optional())
        .takes(Input::number("share", "share of the proof load").between(0.0, 1.0))
        .takes(Input::number("K", "nut factor").usually(0.2))
        .gives("torque", Unit::NewtonMetre)
        .gives("preload", Unit::Newton)
        .by("T = K d share As Sp", NUT),
    );
    list.push(
        Working::new(
            "preload-target",
            Kind::Joint,
            "usual preload of a joint as a share of the proof load",
            target,
        )
        .takes(Input::text("joint", &["reusable", "permanent"], "joint; left out, both").optional())
        .takes(newtons("F_proof", "proof load").also(&["proof_load"]).optional())
        .gives("share", Unit::One)
        .gives("preload", Unit::Newton)
        .by("0.75 reusable, 0.90 permanent", "Shigley, 9th ed., eq. 8-31"),
    );
    list.push(
        Working::new("bolt-stress", Kind::Joint, "tensile stress at a preload", bolt_stress)
            .takes(newtons("F", "preload").also(&["preload"]))
            .takes(Input::of("As", Unit::SquareMillimetre, "stress area").also(&["area"]).optional())
            .takes(Input::text("thread", &[], "thread").optional())
            .gives("stress", Unit::Megapascal)
            .by("F / As", "definition"),
    );
    list.push(
        Working::new("share-of-proof", Kind::Joint, "preload as a share of the proof load", share_of_proof)
            .takes(newtons("F", "preload").also(&["preload"]))
            .takes(Input::of("As", Unit::SquareMillimetre, "stress area").optional())
            .takes(Input::of("Sp", Unit::Megapascal, "proof stress").optional())
            .takes(Input::text("thread", &[], "thread").optional())
            .takes(class_input().optional())
            .gives("share", Unit::Percent)
            .by("F / (As Sp)", "ISO 898-1:2013"),
    );
    list.push(
        Working::new(
            "angle-tightening",
            Kind::Joint,
            "preload gained by turning a nut further by an angle",
            angle,
        )
        .takes(Input::of("angle", Unit::Degree, "angle turned after snug").also(&["theta"]))
        .takes(Input::of("pitch", Unit::Millimetre, "pitch").also(&["P"]))
        .takes(Input::of("k_bolt", Unit::NewtonPerMillimetre, "stiffness of the bolt"))
        .takes(Input::of("k_joint", Unit::NewtonPerMillimetre, "stiffness of the joint"))
        .gives("preload", Unit::Newton)
        .by("angle / 360 P k_b k_j / (k_b + k_j), elastic", VDI),
    );
    list.push(
        Working::new(
            "friction-effect",
            Kind::Joint,
            "preload of the same torque at another friction",
            effect,
        )
        .takes(Input::text("thread", &[], "thread"))
        .takes(torque("T", "torque").also(&["torque"]))
        .takes(Input::number("mu_before", "friction before, thread and head"))
        .takes(Input::number("mu_after", "friction after, thread and head"))
        .takes(bearing().optional())
        .gives("factor", Unit::One)
        .gives("preload_before", Unit::Newton)
        .gives("preload_after", Unit::Newton)
        .by("ratio of 0.16 P + 0.58 d2 mu + D_Km / 2 mu", VDI)
        .mind(LOCKED),
    );
    list.push(
        Working::new("screw-raising-torque", Kind::Joint, "torque to raise a load on a power screw", raising)
            .takes(newtons("W", "load").also(&["F", "load"]))
            .takes(Input::of("d", Unit::Millimetre, "nominal diameter"))
            .takes(Input::of("p", Unit::Millimetre, "pitch").also(&["pitch", "P"]))
            .takes(Input::number("starts", "number of starts").usually(1.0))
            .takes(Input::number("mu", "friction").or_zero())
            .takes(Input::of("collar_Do", Unit::Millimetre, "outside of the collar").optional())
            .takes(Input::of("collar_Di", Unit::Millimetre, "inside of the collar").or_zero().optional())
            .takes(
                Input::of("half_angle", Unit::Degree, "half angle of the thread: 0 square, 15 trapezoidal")
                    .also(&["theta"])
                    .between(0.0, 45.0)
                    .usually(0.0),
            )
            .gives("torque", Unit::NewtonMillimetre)
            .gives("thread", Unit::NewtonMillimetre)
            .gives("lowering", Unit::NewtonMillimetre)
            .gives("efficiency", Unit::Percent)
            .by(
                "W dm/2 (mu sec + tan alpha) / (1 - mu sec tan alpha) + mu W (Do + Di) / 4",
                "V. B. Bhandari, Design of Machine Elements, example 6.1",
            ),
    );
}

fn newtons(name: &'static str, what: &'static str) -> Input {
    Input::of(name, Unit::Newton, what)
}

fn torque(name: &'static str, what: &'static str) -> Input {
    Input::of(name, Unit::NewtonMetre, what)
}

fn bearing() -> Input {
    Input::of("D_Km", Unit::Millimetre, "effective friction diameter under head or nut").also(&["DKm"])
}

/// Adds the two frictions, each from `mu` where it is not given apart.
pub(super) fn frictions(working: Working) -> Working {
    working
        .takes(Input::number("mu", "friction, thread and head alike").optional())
        .takes(Input::number("mu_G", "friction in the thread").also(&["mu_thread"]).optional())
        .takes(Input::number("mu_K", "friction under head or nut").also(&["mu_head"]).optional())
        .takes(bearing().optional())
}

/// A working by VDI 2230 on a thread, its strength and friction.
fn vdi(name: &'static str, about: &'static str, run: fn(&Given) -> Result<Done, Refusal>) -> Working {
    frictions(threaded(name, about, run))
        .takes(class_input().optional())
        .takes(Input::of("Rp02", Unit::Megapascal, "yield strength").also(&["Rp", "yield"]).optional())
        .takes(
            Input::number("util", "share of yield used")
                .also(&["nu", "share"])
                .between(0.01, 1.0)
                .usually(0.9),
        )
        .takes(bore().optional())
}

/// A working between torque and preload, by nut factor or by friction.
fn friction(name: &'static str, about: &'static str, run: fn(&Given) -> Result<Done, Refusal>) -> Working {
    frictions(Working::new(name, Kind::Joint, about, run))
        .takes(Input::number("K", "nut factor (or give mu)").optional())
        .takes(Input::of("d", Unit::Millimetre, "nominal diameter (or give the thread)").optional())
        .takes(Input::text("thread", &[], "thread").optional())
}

/// Friction in the thread and under the head.
pub(super) fn the_frictions(given: &Given) -> Result<(f64, f64), Refusal> {
    let both = given.maybe("mu");
    let thread = given.maybe("mu_G").or(both).ok_or_else(|| given.missing("mu"))?;
    let head = given.maybe("mu_K").or(both).ok_or_else(|| given.missing("mu"))?;
    for (name, mu) in [("mu_G", thread), ("mu_K", head)] {
        if mu > 1.0 {
            return Err(Refusal::impossible(name, "no bolted joint has a friction above 1"));
        }
    }
    Ok((thread, head))
}

fn preload_of(given: &Given) -> Result<(Screw, f64), Refusal> {
    let screw = screw(given)?;
    let yielding = match given.maybe("Rp02") {
        Some(yielding) => yielding,
        None => {
            let class = the_class(given, screw.thread.d)?.yielding;
            let nominal = (screw.thread.d < SMALL)
                .then(|| nominal_yield(given.t("class").unwrap_or_default()))
                .flatten();
            nominal.unwrap_or(class)
        }
    };
    let (mu, _) = the_frictions(given)?;
    let preload = screw.assembly_preload(mu, yielding, given.n("util")?);
    Ok((screw, preload))
}

fn torque_at(given: &Given, screw: &Screw, preload: f64) -> Result<f64, Refusal> {
    let (mu_thread, mu_head) = the_frictions(given)?;
    let bearing = given.maybe("D_Km").unwrap_or_else(|| bearing_diameter(screw.thread.d));
    Ok(preload * arm(&screw.thread, mu_thread, mu_head, bearing) / 1000.0)
}

fn assembly(given: &Given) -> Result<Done, Refusal> {
    let (screw, preload) = preload_of(given)?;
    Ok(Done::of(preload / 1000.0, Unit::Kilonewton)
        .and("torque", torque_at(given, &screw, preload)?, Unit::NewtonMetre)
        .and("area", screw.area(), Unit::SquareMillimetre))
}

fn torque_for(given: &Given) -> Result<Done, Refusal> {
    let (screw, preload) = preload_of(given)?;
    Ok(Done::of(torque_at(given, &screw, preload)?, Unit::NewtonMetre).and(
        "preload",
        preload / 1000.0,
        Unit::Kilonewton,
    ))
}

fn minimum(given: &Given) -> Result<Done, Refusal> {
    let newtons = given.n("FM_max")? / given.n("alpha_A")?;
    let unit = given.unit("FM_max");
    let value = Unit::Newton.convert(newtons, unit).map_err(|_| Refusal::cannot("not a force"))?;
    Ok(Done::of(value, unit))
}

/// Torque for a newton of preload, mm: K d, or VDI 2230's arm.
fn lever(given: &Given) -> Result<f64, Refusal> {
    let thread = given.maybe_text("thread").map(|_| thread(given)).transpose()?;
    if let Some(factor) = given.maybe("K") {
        let d = given.maybe("d").or(thread.as_ref().map(|thread| thread.d));
        return Ok(factor * d.ok_or_else(|| given.missing("d"))?);
    }
    if given.maybe("mu").or(given.maybe("mu_G")).is_none() {
        return Err(given.missing("K"));
    }
    let thread = thread.ok_or_else(|| given.missing("thread"))?;
    let (mu_thread, mu_head) = the_frictions(given)?;
    let bearing = given.maybe("D_Km").unwrap_or_else(|| bearing_diameter(thread.d));
    Ok(arm(&thread, mu_thread, mu_head, bearing))
}

fn preload(given: &Given) -> Result<Done, Refusal> {
    Ok(Done::of(given.n("T")? * 1000.0 / lever(given)?, Unit::Newton))
}

fn torque_of(given: &Given) -> Result<Done, Refusal> {
    Ok(Done::of(given.n("F")? * lever(given)? / 1000.0, Unit::NewtonMetre))
}

fn proof_share(given: &Given) -> Result<Done, Refusal> {
    let thread = thread(given)?;
    let proof = match (given.maybe("F_proof"), given.maybe("As"), given.maybe("Sp")) {
        (Some(proof), ..) => proof,
        (None, area, stress) => {
            let stress = match stress {
                Some(stress) => stress,
                None => the_class(given, thread.d)?.proof,
            };
            area.unwrap_or_else(|| nominal_area(&thread)) * stress
        }
    };
    let preload = given.n("share")? * proof;
    let torque = given.n("K")? * preload * thread.d / 1000.0;
    Ok(Done::of(torque, Unit::NewtonMetre).and("preload", preload, Unit::Newton))
}

fn target(given: &Given) -> Result<Done, Refusal> {
    let share = match given.maybe_text("joint") {
        Some("reusable") => 0.75,
        Some(_) => 0.90,
        None => return Ok(Done::list(vec![0.75, 0.90], Unit::One)),
    };
    let done = Done::of(share, Unit::One);
    Ok(match given.maybe("F_proof") {
        Some(proof) => done.and("preload", share * proof, Unit::Newton),
        None => done,
    })
}

fn stress_area(given: &Given) -> Result<f64, Refusal> {
    match (given.maybe("As"), given.maybe_text("thread")) {
        (Some(area), _) => Ok(area),
        (None, Some(_)) => Ok(nominal_area(&thread(given)?)),
        (None, None) => Err(given.missing("As")),
    }
}

fn bolt_stress(given: &Given) -> Result<Done, Refusal> {
    Ok(Done::of(given.n("F")? / stress_area(given)?, Unit::Megapascal))
}

fn share_of_proof(given: &Given) -> Result<Done, Refusal> {
    let proof = match given.maybe("Sp") {
        Some(proof) => proof,
        None if given.maybe_text("class").is_none() => return Err(given.missing("Sp")),
        None => the_class(given, thread(given)?.d)?.proof,
    };
    let share = given.n("F")? / (stress_area(given)? * proof) * 100.0;
    Ok(Done::of(share, Unit::Percent)
        .caution_if(share > 100.0, "above the proof load: the bolt would stay stretched"))
}

fn angle(given: &Given) -> Result<Done, Refusal> {
    let gained = by_angle(given.n("angle")?, given.n("pitch")?, given.n("k_bolt")?, given.n("k_joint")?);
    Ok(Done::of(gained, Unit::Newton))
}

fn effect(given: &Given) -> Result<Done, Refusal> {
    let thread = thread(given)?;
    let bearing = given.maybe("D_Km").unwrap_or_else(|| bearing_diameter(thread.d));
    let torque = given.n("T")? * 1000.0;
    let preload = |mu: f64| torque / (thread_arm(&thread, mu) + bearing / 2.0 * mu);
    let (before, after) = (preload(given.n("mu_before")?), preload(given.n("mu_after")?));
    Ok(Done::of(after / before, Unit::One).and("preload_before", before, Unit::Newton).and(
        "preload_after",
        after,
        Unit::Newton,
    ))
}

fn raising(given: &Given) -> Result<Done, Refusal> {
    let (d, pitch) = (given.n("d")?, given.n("p")?);
    if pitch >= d {
        return Err(Refusal::impossible("p", "the pitch is below the diameter"));
    }
    let (load, mu) = (given.n("W")?, given.n("mu")?);
    let screw =
        PowerScrew { load, d, pitch, starts: given.n("starts")?, mu, half_angle: given.n("half_angle")? };
    let collar = given
        .maybe("collar_Do")
        .map_or(0.0, |outside| collar_torque(load, mu, outside, given.maybe("collar_Di").unwrap_or(0.0)));
    if screw.raising() <= 0.0 {
        return Err(Refusal::impossible("mu", "with that friction and lead the screw cannot raise the load"));
    }
    Ok(Done::of(screw.raising() + collar, Unit::NewtonMillimetre)
        .and("thread", screw.raising(), Unit::NewtonMillimetre)
        .and("lowering", screw.lowering() + collar, Unit::NewtonMillimetre)
        .and("efficiency", 100.0 * screw.efficiency(), Unit::Percent))
}

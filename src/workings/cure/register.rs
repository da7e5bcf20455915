//! Threadlocker times and facts by name.

use super::super::registry::{Done, Given, Input, Kind, Refusal, Working};
use super::{Cure, Surface, cure};
use crate::quantity::Unit;

/// Adds cure and locker practice.
pub(in crate::workings) fn register(list: &mut Vec<Working>) {
    list.push(
        Working::new("cure-time", Kind::Cure, "when a threadlocked joint may be handled and used", time)
            .takes(Input::temperature("T", "temperature of the joint").also(&["temperature", "t"]).usually(22.0))
            .takes(Input::text("surface", &[], "surface of the threads (steel, brass, stainless, plated)").usually_text("steel"))
            .gives("use", Unit::Hour)
            .gives("handle", Unit::Minute)
            .by("20 minutes to handle and 24 h to use at 22 degC on steel; twice as long for each 10 K colder; three times on passive surfaces", "common practice, no source")
            .mind("common practice: the product's own sheet goes before it"),
    );
    list.push(
        Working::new("cure-check", Kind::Cure, "whether a threadlocked joint is still open, or ready", check)
            .takes(Input::text("for", &["open", "handle", "use"], "what for").usually_text("use"))
            .takes(Input::of("since", Unit::Minute, "time since the locker went on").or_zero())
            .takes(Input::of("open", Unit::Minute, "open time").optional())
            .takes(
                Input::temperature("T", "temperature of the joint").also(&["temperature", "t"]).usually(22.0),
            )
            .takes(
                Input::text("surface", &[], "surface of the threads (steel, brass, stainless, plated)")
                    .usually_text("steel"),
            )
            .tells("verdict")
            .gives("takes", Unit::Minute)
            .gives("left", Unit::Minute)
            .by(
                "time since against open time, or against the cure at that temperature (see cure-time)",
                "common practice, no source; open time from the card",
            )
            .mind("common practice: the product's own sheet goes before it"),
    );
    list.push(
        Working::new(
            "prevailing-torque-angle",
            Kind::Cure,
            "after what turn the torque left by a locker is measured",
            prevail,
        )
        .takes(Input::text("method", &["iso", "older"], "method").usually_text("iso"))
        .gives("angle", Unit::Degree)
        .gives("older", Unit::Degree)
        .by(
            "measured after half a turn; the older US method averages four quarter turns",
            "ISO 10964, ASTM D5649-15 3.2.3; MIL-S-22473E",
        ),
    );
}

fn times(given: &Given) -> Result<Cure, Refusal> {
    let text = given.t("surface")?;
    let surface = Surface::parse(text).ok_or_else(|| {
        Refusal::unreadable(
            "surface",
            format!("found `{text}`; say steel, brass, stainless, plated, anodised or titanium"),
        )
    })?;
    cure(given.n("T")?, surface).map_err(|error| Refusal::impossible("T", error.to_string()))
}

/// Past its open time a joint is cleaned and done again; before its cure it is left alone.
fn check(given: &Given) -> Result<Done, Refusal> {
    let (since, aim) = (given.n("since")?, given.t("for")?);
    let takes = match aim {
        "open" => given.n("open")?,
        "handle" => times(given)?.handle_min,
        _ => 60.0 * times(given)?.use_h,
    };
    let left = takes - since;
    let verdict = match (aim, left >= 0.0) {
        ("open", true) => "yes: still inside its open time",
        ("open", false) => "no: past its open time, clean it and do it again",
        (_, true) if left > 0.0 => "no: not cured by then, common practice",
        _ => "yes: cured by then, common practice",
    };
    // Minutes for what is watched, hours for what is left overnight.
    let unit = if takes < 120.0 { Unit::Minute } else { Unit::Hour };
    let size = if unit == Unit::Hour { 60.0 } else { 1.0 };
    Ok(Done::text(verdict).and("takes", takes / size, unit).and("left", left / size, unit))
}

fn time(given: &Given) -> Result<Done, Refusal> {
    let times = times(given)?;
    Ok(Done::of(times.use_h, Unit::Hour).and("handle", times.handle_min, Unit::Minute))
}

fn prevail(given: &Given) -> Result<Done, Refusal> {
    let older = vec![90.0, 180.0, 270.0, 360.0];
    Ok(if given.t("method")? == "older" {
        Done::list(older, Unit::Degree)
    } else {
        Done::of(180.0, Unit::Degree).and_list("older", older, Unit::Degree)
    })
}

//! The adjuster calculations by name.

use super::super::registry::{Done, Given, Input, Kind, Refusal, Working};
use super::{Clicker, NoPath, Ring, Screw, Setting, Stop, Travel, Way};
use crate::quantity::Unit;

const WAYS: &[&str] = &["clockwise", "anticlockwise"];
const STOPS: &[&str] = &["full in", "full out"];
const PRACTICE: &str = "common practice, no source";

/// Adds the adjusters.
pub(in crate::workings) fn register(list: &mut Vec<Working>) {
    list.push(
        Working::new(
            "clicks-convention",
            Kind::Convert,
            "a click setting counted from the other stop",
            convention,
        )
        .takes(clicks("count", "clicks counted"))
        .takes(clicks("travel", "clicks from stop to stop on this unit"))
        .takes(Input::text("from", STOPS, "stop that the count is from").usually_text("full out"))
        .gives("count", Unit::Click)
        .tells("from")
        .by("count from one stop = travel - count from the other", PRACTICE),
    );
    list.push(
        Working::new("clicker-path", Kind::Convert, "how to set a clicker from its hard stop", clicker)
            .takes(clicks("wanted", "clicks wanted"))
            .takes(clicks("travel", "clicks from stop to stop on this unit"))
            .takes(
                Input::text("from", STOPS, "stop that the wanted clicks are counted from")
                    .usually_text("full in"),
            )
            .takes(Input::text("closes", WAYS, "way that closes it").usually_text("clockwise"))
            .tells("path")
            .gives("clicks", Unit::Click)
            .tells("way")
            .by("to full in by finger and thumb, then out by count", PRACTICE),
    );
    list.push(
        Working::new("ring-path", Kind::Convert, "how to set a ring, one-way rings the long way round", ring)
            .takes(position("at", "position it stands at"))
            .takes(position("wanted", "position wanted"))
            .takes(position("max", "highest position"))
            .takes(position("min", "lowest position").usually(0.0))
            .takes(Input::text("only", WAYS, "only way it turns").optional())
            .takes(Input::text("rises", WAYS, "way that raises the number").usually_text("clockwise"))
            .tells("path")
            .gives("positions", Unit::PositionStep)
            .tells("way")
            .tells("passes")
            .by("straight, never over the end; a one-way ring on through its last position", PRACTICE),
    );
    list.push(
        Working::new(
            "turns-to-length",
            Kind::Preload,
            "how far a screw moves in so many turns",
            turns_to_length,
        )
        .takes(turns("turns", "turns made"))
        .takes(pitch())
        .takes(rate())
        .gives("length", Unit::Millimetre)
        .gives("force", Unit::Newton)
        .by("length = turns x pitch; force = length x rate", "identity"),
    );
    list.push(
        Working::new(
            "length-to-turns",
            Kind::Preload,
            "the turns that move a screw from one length to another",
            length_to_turns,
        )
        .takes(Input::of("from", Unit::Millimetre, "length measured now").also(&["at"]).or_zero())
        .takes(Input::of("to", Unit::Millimetre, "length wanted").also(&["wanted"]).or_zero())
        .takes(pitch())
        .takes(Input::text("grows", WAYS, "way that makes the length grow").usually_text("clockwise"))
        .gives("turns", Unit::Turn)
        .gives("length", Unit::Millimetre)
        .tells("way")
        .by("turns = (to - from) / pitch", "identity"),
    );
    list.push(
        Working::new("preload-turns", Kind::Preload, "the turns that move a screw by a length", |given| {
            Ok(Done::of(given.n("length")? / given.n("pitch")?, Unit::Turn))
        })
        .takes(Input::of("length", Unit::Millimetre, "length to move").also(&["x"]).or_zero())
        .takes(pitch())
        .gives("turns", Unit::Turn)
        .by("turns = length / pitch", "identity"),
    );
    list.push(
        Working::new("travel-check", Kind::Pair, "a counted travel against the card's", travel)
            .takes(clicks("counted", "clicks counted"))
            .takes(clicks("card", "clicks on the card"))
            .tells("verdict")
            .gives("difference", Unit::Click)
            .by("counted - card", PRACTICE),
    );
}

fn clicks(name: &'static str, what: &'static str) -> Input {
    Input::of(name, Unit::Click, what).or_zero()
}

fn position(name: &'static str, what: &'static str) -> Input {
    Input::of(name, Unit::PositionStep, what).signed()
}

fn turns(name: &'static str, what: &'static str) -> Input {
    Input::of(name, Unit::Turn, what).signed()
}

fn pitch() -> Input {
    Input::of("pitch", Unit::Millimetre, "pitch: how far it moves in a turn").also(&["P"])
}

fn rate() -> Input {
    Input::of("k", Unit::NewtonPerMillimetre, "spring rate").also(&["rate"]).optional()
}

fn way(given: &Given, name: &str) -> Result<Way, Refusal> {
    Ok(if given.t(name)? == "clockwise" { Way::Clockwise } else { Way::Anticlockwise })
}

fn setting(given: &Given, count: &str) -> Result<Setting, Refusal> {
    let from = if given.t("from")? == "full in" { Stop::FullIn } else { Stop::FullOut };
    Ok(Setting { count: given.n(count)?, from })
}

fn refuse(input: &'static str) -> impl Fn(NoPath) -> Refusal {
    move |error| Refusal::impossible(input, error.to_string())
}

fn the_clicker(given: &Given, closes: Way) -> Result<Clicker, Refusal> {
    let travel = super::whole(given.n("travel")?).map_err(refuse("travel"))?;
    if travel > 1000.0 {
        return Err(Refusal::impossible("travel", "no clicker has so many clicks"));
    }
    Ok(Clicker { travel: travel as u32, closes })
}

fn convention(given: &Given) -> Result<Done, Refusal> {
    let count = setting(given, "count")?;
    let other = if count.from == Stop::FullIn { Stop::FullOut } else { Stop::FullIn };
    let found = the_clicker(given, Way::Clockwise)?.counted_from(count, other).map_err(refuse("count"))?;
    Ok(Done::of(found.count, Unit::Click).and_text("from", other.words()))
}

fn clicker(given: &Given) -> Result<Done, Refusal> {
    let closes = way(given, "closes")?;
    let path = the_clicker(given, closes)?.path(setting(given, "wanted")?).map_err(refuse("wanted"))?;
    let text = format!(
        "{} to full in by finger and thumb, then {} {} clicks",
        closes.words(),
        path.then.way.words(),
        path.then.amount
    );
    Ok(Done::text(text).and("clicks", path.then.amount, Unit::Click).and_text("way", path.then.way.words()))
}

fn ring(given: &Given) -> Result<Done, Refusal> {
    let whole = |name: &'static str| -> Result<i32, Refusal> {
        let value = given.n(name)?;
        let sound = value.fract() == 0.0 && value.abs() <= 1000.0;
        if sound {
            Ok(value as i32)
        } else {
            Err(Refusal::impossible(name, "a ring's positions are whole numbers"))
        }
    };
    let only = given.maybe_text("only").map(|_| way(given, "only")).transpose()?;
    let ring = Ring {
        min: whole("min")?,
        max: whole("max")?,
        rises: way(given, "rises")?,
        only,
        wraps: only.is_some(),
    };
    let path = ring.path(Some(given.n("at")?), given.n("wanted")?).map_err(refuse("wanted"))?;
    let passes: Vec<String> = path.passes.iter().map(ToString::to_string).collect();
    let through = if passes.is_empty() { String::new() } else { format!(", through {}", passes.join(", ")) };
    let text = format!("{} {} positions{through}", path.then.way.words(), path.then.amount);
    Ok(Done::text(text)
        .and("positions", path.then.amount, Unit::PositionStep)
        .and_text("way", path.then.way.words())
        .and_text("passes", passes.join(", ")))
}

fn turns_to_length(given: &Given) -> Result<Done, Refusal> {
    let length = given.n("turns")? * given.n("pitch")?;
    let done = Done::of(length, Unit::Millimetre);
    Ok(match given.maybe("k") {
        Some(rate) => done.and("force", length * rate, Unit::Newton),
        None => done,
    })
}

fn length_to_turns(given: &Given) -> Result<Done, Refusal> {
    let screw =
        Screw { pitch: given.n("pitch")?, adds: way(given, "grows")?, adding_lengthens: true, travel: None };
    let path = screw.by_length(given.n("from")?, given.n("to")?).map_err(refuse("to"))?;
    let moved = path.length.map_or(0.0, |length| length.value);
    Ok(Done::of(path.then.amount, Unit::Turn)
        .and("length", moved, Unit::Millimetre)
        .and_text("way", path.then.way.words()))
}

fn travel(given: &Given) -> Result<Done, Refusal> {
    let whole = |name: &'static str| super::whole(given.n(name)?).map_err(refuse(name));
    let (counted, card) = (whole("counted")?, whole("card")?);
    let verdict = Travel::of(counted as u32, card as u32);
    Ok(Done::text(verdict.means()).and("difference", counted - card, Unit::Click))
}

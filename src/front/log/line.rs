//! One event as a line of the log.

use super::Job;
use super::names::figure;
use crate::act::End;
use crate::event::{Envelope, Event, How, Kept, Verdict};

/// What happened, in words; none for what the log does not tell (a question opened, a caution given again).
pub fn told(job: &Job<'_>, envelope: &Envelope) -> Option<String> {
    let place = envelope.place.as_deref().unwrap_or_default();
    let step = |id: &str| job.names.step(job.state, place, id);
    let part = |id: &str| job.names.part(job.state, place, id);
    let text = match &envelope.event {
        Event::JobOpened { number } => format!("job {number} opened"),
        Event::PlaceOpened { unit, procedure, corner, .. } => {
            let corner = corner.map(|corner| format!(", {}", corner.as_str())).unwrap_or_default();
            format!("{unit}{corner}: {procedure}")
        }
        Event::Switched { place } => format!("went to {}", place.replace('-', " ")),
        Event::Cautioned { caution, full: true } => {
            format!("caution given in full: {}", caution.replace('-', " "))
        }
        Event::Acknowledged { cautions } => format!("acknowledged: {}", listed(cautions)),
        Event::StepDone { step: id, how, .. } => format!("{}: {}", closed(*how), step(id)),
        Event::StepFailed { step: id, attempt, .. } => format!("not good (time {attempt}): {}", step(id)),
        Event::Reopened { step: id } => format!("opened again: {}", step(id)),
        Event::Skipped { step: id, reason, critical } => {
            let grave = if *critical { " (critical)" } else { "" };
            format!("LEFT OUT{grave}: {} - {reason}", step(id))
        }
        Event::Deviated { step: id, reason, value, .. } => {
            let at = value.as_ref().map(|kept| format!(" at {}", value_of(kept))).unwrap_or_default();
            format!("DEVIATION{at}: {} - {reason}", step(id))
        }
        Event::Reading(kept) => format!("reading: {}", reading(kept, &part)),
        Event::Corrected { now, .. } => format!("corrected to: {}", reading(now, &part)),
        Event::Finding { text, .. } => format!("FINDING: {text}"),
        Event::ReadBack { which } => format!("read back and confirmed: settings {which}"),
        Event::Wanted { about, value, unit, text, whose, .. } => {
            let what = value
                .map(|value| figure(value, unit.as_deref()))
                .or_else(|| text.clone())
                .unwrap_or_default();
            format!("wanted ({whose}): {} {what}", part(about))
        }
        Event::Fitted { about, text } => format!("fitted: {} {text}", part(about)),
        Event::Noted { text } => format!("note: {text}"),
        Event::Troubled { text, about } => {
            let about = about.as_deref().map(|id| format!("{}: ", part(id))).unwrap_or_default();
            format!("TROUBLE: {about}{text}")
        }
        Event::Stuck { about, rung } => format!("will not move: {}, advice {rung} given", part(about)),
        Event::Paused => "paused".to_owned(),
        Event::Resumed => "gone on".to_owned(),
        Event::TakenUp => "taken up again".to_owned(),
        Event::TimerStarted { what, seconds, .. } => {
            format!("timer: {what}, {}", super::times::spoken(seconds / 60.0))
        }
        Event::TimerTold { .. } => "timer ended".to_owned(),
        Event::By { who } if who.is_empty() => "nobody has said who is working".to_owned(),
        Event::By { who } => format!("{who} is working"),
        Event::Answered { said, .. } => {
            let asked = envelope.utterance.heard.as_deref().unwrap_or("asked");
            format!("question: {asked} - {said}")
        }
        Event::TakenBack { .. } => "taken back: what is struck out above".to_owned(),
        Event::JobClosed { open } if open.is_empty() => "job closed".to_owned(),
        Event::JobClosed { open } => format!("job closed with this open: {}", open.join("; ")),
        Event::Cautioned { .. } | Event::Shown { .. } | Event::Opened { .. } | Event::Settled => return None,
    };
    Some(text)
}

fn listed(ids: &[String]) -> String {
    ids.iter().map(|id| id.replace('-', " ")).collect::<Vec<_>>().join(", ")
}

fn closed(how: How) -> &'static str {
    match how {
        How::Confirmed | How::Value => "done",
        How::Accepted => "good",
        How::Ahead => "done, said ahead",
        How::Passed => "done in passing",
    }
}

/// A reading with its limits, and what was said where it was something else.
fn reading(kept: &Kept, part: &impl Fn(&str) -> String) -> String {
    let name = kept.about.as_deref().map(|id| format!("{} ", part(id))).unwrap_or_default();
    let (role, value) = (kept.role.replace('-', " "), value_of(kept));
    // Words that begin with what they are of do not need it said before them.
    let own = kept.text.is_some() && value.to_lowercase().starts_with(&format!("{role} "));
    let role = if own { String::new() } else { format!("{role} ") };
    format!("{name}{role}{value}{}{}", said(kept), limits(kept))
}

/// The value, or the words.
pub fn value_of(kept: &Kept) -> String {
    let words = || kept.text.clone().unwrap_or_default();
    kept.value.map_or_else(words, |value| figure(value, kept.unit.as_deref()))
}

fn said(kept: &Kept) -> String {
    let Some(said) = kept.said else { return String::new() };
    let from = match kept.said_from {
        Some(End::FullOut) => " from full out",
        Some(End::FullIn) | None => "",
    };
    let travel = kept.with_travel.map(|travel| format!(", by a travel of {travel}")).unwrap_or_default();
    let unit = kept.said_unit.as_deref().or(kept.unit.as_deref());
    format!(" (said: {}{from}{travel})", figure(said, unit))
}

fn limits(kept: &Kept) -> String {
    let unit = kept.unit.as_deref();
    let band = match (kept.lo, kept.hi) {
        (Some(lo), Some(hi)) if lo == hi => format!(" [{}", figure(lo, unit)),
        (Some(lo), Some(hi)) => format!(" [{} to {}", figure(lo, unit), figure(hi, unit)),
        (Some(lo), None) => format!(" [at least {}", figure(lo, unit)),
        (None, Some(hi)) => format!(" [at most {}", figure(hi, unit)),
        (None, None) => return String::new(),
    };
    match kept.verdict {
        Verdict::Out => format!("{band}: OUT]"),
        Verdict::Within | Verdict::Free => format!("{band}]"),
    }
}

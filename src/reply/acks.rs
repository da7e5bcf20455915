//! Short acknowledgements.

use super::figure::quantity;
use super::piece::{Context, Piece};
use super::sentence::{capital, clause, inside, list, sentence};
use super::value;
use crate::bench::{Ack, Value};

/// A short acknowledgement.
pub(super) fn ack(ack: &Ack, context: &Context<'_>) -> Piece {
    match ack {
        // The next step said is itself the sign that this one was heard as done.
        Ack::Done(names) if names.is_empty() && !context.last => Piece::default(),
        Ack::Corrected(kept) => led("Corrected", kept),
        Ack::Wanted(kept) => led("Wanted", kept),
        other => Piece::both(&words(other)),
    }
}

/// A value after a word.
fn led(word: &str, kept: &Value) -> Piece {
    let show = sentence(&format!("{word}: {}", value::shown(kept)));
    Piece::two(&sentence(&format!("{word}, {}", value::said(kept))), show)
}

/// Acknowledgements with the same words for eye and ear.
fn words(ack: &Ack) -> String {
    match ack {
        Ack::Done(names) if names.is_empty() => "Done.".to_owned(),
        Ack::Done(names) => format!("Done: {}.", list(names, "and")),
        Ack::Stays => "Not done, then. The step stays open.".to_owned(),
        Ack::Noted => "Noted.".to_owned(),
        Ack::Troubled => "The trouble is written down.".to_owned(),
        Ack::Skipped(name) => format!("{}, left out.", capital(clause(name))),
        Ack::Deviated(name) => format!("{}, left as a deviation.", capital(clause(name))),
        Ack::TakenBack { what, metal } => taken_back(what, metal),
        Ack::NothingToTakeBack => "There is nothing to take back.".to_owned(),
        Ack::Paused => "Stopped for now. Nothing is lost.".to_owned(),
        Ack::GoingOn { number, corner, last, again } => {
            let place = corner.as_ref().map(|corner| format!(", {corner}")).unwrap_or_default();
            going_on(&format!("job {number}{place}"), last.as_deref(), again)
        }
        Ack::TimerSet { what, lasts } => format!("Timer set, {}: {}.", quantity(*lasts), inside(what)),
        Ack::By(name) => format!("Working now: {}.", clause(name)),
        Ack::WantedWords(text) => format!("Wanted: {}.", inside(text)),
        Ack::Fitted(text) => format!("New part kept: {}.", inside(text)),
        Ack::ReadBack(which) => format!("{} confirmed.", super::settings::heading(*which)),
        Ack::Started { number, unit, corner, procedure } => {
            let corner = corner.as_deref().map(|corner| format!(", {corner}")).unwrap_or_default();
            format!("Job {number} is open: {}{corner}, {}.", clause(unit), clause(procedure))
        }
        Ack::Switched(place) => format!("Now on {}.", clause(place)),
        Ack::Closed { number } => format!("Job {number} is closed."),
        Ack::Dropped => "Question dropped.".to_owned(),
        Ack::Understood => "Understood.".to_owned(),
        Ack::Already(what) => format!("Already kept: {}.", inside(what)),
        Ack::Corrected(kept) | Ack::Wanted(kept) => value::shown(kept),
    }
}

/// The record went back, the metal did not.
fn taken_back(what: &str, metal: &[String]) -> String {
    let head = format!("Taken back: {}. The record went back, not the metal.", inside(what));
    let still: Vec<String> = metal.iter().map(|state| sentence(state)).collect();
    format!("{head} {}", still.join(" "))
}

fn going_on(place: &str, last: Option<&str>, again: &[String]) -> String {
    let last = last.map(|last| format!(" Last kept: {}.", inside(last))).unwrap_or_default();
    let again = list(again, "and");
    let again = if again.is_empty() { again } else { format!(" To be done again: {again}.") };
    format!("Going on with {place}.{last}{again}")
}

//! What is refused, why, and what follows.

use super::figure::{band, quantity};
use super::piece::{Piece, Weight};
use super::sentence::{capital, clause, inside, question, sentence};
use super::step::wanted as entry;
use crate::act::WaitingFor;
use crate::bench::{Consequence, Refusal};
use crate::quantity::{Limit, Quantity};

/// A value or request refused.
pub(super) fn refusal(refusal: &Refusal, waits: WaitingFor) -> Piece {
    match refusal {
        Refusal::OutOfLimits { name, value, limit, then } => out_of_limits(name, *value, limit, then),
        Refusal::NeedsValue { asks } => {
            let kind = match waits {
                WaitingFor::YesOrNo => "yes or no",
                waits => entry(waits).unwrap_or("a value"),
            };
            Piece::both(&format!("This step closes on {kind}.")).asking(Weight::Closing, &question(asks))
        }
        other => Piece::both(&words(other)),
    }
}

fn words(refusal: &Refusal) -> String {
    match refusal {
        Refusal::WrongKind { said, wanted } => {
            format!("{} will not do here, this step wants {}.", capital(&quantity(*said)), inside(wanted))
        }
        Refusal::NotASetting { name, value, why } => {
            format!("{}: {} is no setting of it. {}", capital(name), quantity(*value), sentence(why))
        }
        Refusal::NeverSkipped { name } => {
            format!("{} is never left out. It makes the unit safe.", capital(clause(name)))
        }
        Refusal::NotPast { name, first } => {
            format!("{} must wait. First: {}.", capital(clause(name)), inside(first))
        }
        Refusal::NotGranted { what } => not_granted(what).to_owned(),
        Refusal::Work { why } => format!("I cannot work that out: {}.", inside(why)),
        Refusal::NotNow { why } => format!("Not now: {}.", inside(why)),
        Refusal::OutOfLimits { .. } | Refusal::NeedsValue { .. } => String::new(),
    }
}

/// What this bench never grants, in one plain sentence each.
fn not_granted(what: &str) -> &'static str {
    match what {
        "cautions" => "Cautions cannot be switched off.",
        "everything" => "Steps are closed one by one.",
        "records" => "Records are not wiped.",
        _ => "That is not something this bench grants.",
    }
}

fn out_of_limits(name: &str, value: Quantity, limit: &Limit, then: &Consequence) -> Piece {
    let off = limit.off_by(value);
    let side = match off {
        Ok(Some(off)) if off < 0.0 => "is too low",
        Ok(Some(_)) => "is too high",
        Ok(None) | Err(_) => "is not accepted",
    };
    let head = format!("{}: {} {side}.", capital(name), quantity(value));
    // What a rule of the pack refuses, inside its band, has no band to tell.
    let bounded = matches!(off, Ok(Some(_))) && (limit.lo.is_some() || limit.hi.is_some());
    let head = if bounded { format!("{head} The limit is {}.", band(limit)) } else { head };
    Piece::both(&format!("{head} {}", follows(then)))
}

fn follows(then: &Consequence) -> String {
    match then {
        Consequence::Recount => "Count it again.".to_owned(),
        Consequence::Finding => "It is kept as a finding.".to_owned(),
        Consequence::StaysOpen => "The step stays open. Do it again, or leave it and say why.".to_owned(),
        Consequence::Branch => "Some steps follow, then it is asked again.".to_owned(),
        Consequence::Stop(why) => format!("Stop here. {}", sentence(why)),
        Consequence::TooTight(text) => format!("{} Until then the step stays open.", sentence(text)),
    }
}

//! A line that an ear heard in several ways, or is not sure of: what changes the job must be the same in all of them.

use super::{Line, Session, plain, typed};
use crate::act::{Act, Doubt, Heard, Outcome};
use crate::hearing;

/// An ear less sure than this is asked again before the job changes.
const SURE_ENOUGH: f64 = 0.5;
/// Alternatives looked at; the rest are the ear's guesses at noise.
const ALTERNATIVES: usize = 5;

impl Session {
    /// What is made of a line with all that the ear says of it.
    pub(super) fn listen(&self, line: &Line) -> Heard {
        let first = self.listen_to(&line.words());
        let others = line.or.iter().take(ALTERNATIVES).map(|said| self.listen_to(&plain(said)));
        let heard = typed::answer(others.fold(first, weigh), &line.words(), &self.waiting);
        match line.sure {
            Some(sure) => doubt(heard, sure),
            None => heard,
        }
    }

    fn listen_to(&self, words: &str) -> Heard {
        let unit = self.state.place().map(|place| place.unit.as_str());
        self.rules.ear().hear(&hearing::Line { said: words, unit, waiting: &self.waiting })
    }
}

/// Weighs one more way of hearing against what stands so far.
fn weigh(stands: Heard, other: Heard) -> Heard {
    match (stands.outcome, other.outcome) {
        (_, Outcome::Decline | Outcome::Ask) => stands,
        (Outcome::Decline, Outcome::Take) if changes(&other.acts) => {
            Heard::ask(other.acts, Doubt::Meaning, other.sure)
        }
        (Outcome::Decline, Outcome::Take) => other,
        (Outcome::Take, Outcome::Take) if stands.acts != other.acts && changes(&stands.acts) => {
            between(stands, other)
        }
        _ => stands,
    }
}

/// Two takings that are not the same: asked back when each is one act, and the first stands otherwise for a question
/// to be asked about it.
fn between(stands: Heard, other: Heard) -> Heard {
    let sure = stands.sure.min(other.sure);
    let doubt = match (stands.acts.as_slice(), other.acts.as_slice()) {
        ([one], [two]) if one.act == two.act && one.slots.value != two.slots.value => Doubt::Number,
        _ => Doubt::Meaning,
    };
    let mut acts = stands.acts;
    acts.extend(other.acts);
    Heard::ask(acts, doubt, sure)
}

/// An unsure ear does not change the job.
fn doubt(heard: Heard, sure: f64) -> Heard {
    if heard.outcome == Outcome::Take && sure < SURE_ENOUGH && changes(&heard.acts) {
        return Heard::ask(heard.acts, Doubt::Meaning, sure.max(0.0));
    }
    Heard { sure: heard.sure.min(sure.clamp(0.0, 1.0)), ..heard }
}

fn changes(acts: &[Act]) -> bool {
    acts.iter().any(|act| !act.act.is_question())
}

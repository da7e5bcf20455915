//! Lines that hearing left or doubted, and that call for a calculation all the same.

use super::words::{self, Words};
use super::{fill, pick};
use crate::act::{Act, ActName, Heard, Outcome};
use crate::event::Pending;
use crate::rulebase::talk::Works;
use crate::workings::registry::Kind;

/// From here on hearing is sure of a question.
const SURE: f64 = 0.9;

/// A line that hearing left, doubted or took for another question, and whose words call for a calculation by name: the
/// question that it is. Nothing that changes the job is ever made of such a line, and no line that does is touched,
/// unless nothing is kept anyway (`asking`: the line was asked one-shot, so it can only be a question).
#[must_use]
pub fn instead(
    works: &Works,
    open: Option<&Pending>,
    said: &str,
    heard: &Heard,
    asking: bool,
) -> Option<Heard> {
    if let Some(answer) = open.and_then(|open| to_open(works, open, said, heard)) {
        return Some(answer);
    }
    let known = matches!(heard.acts.as_slice(), [only] if only.act == ActName::AskWork);
    let questions = heard.acts.iter().all(|act| act.act.is_question() && act.act != ActName::Help);
    let open = match heard.outcome {
        // A question that hearing is sure of stays what it is.
        Outcome::Take => !known && (asking || questions && heard.sure < SURE),
        Outcome::Ask | Outcome::Decline => heard.refused.is_none(),
    };
    // A doubt between entries is left to its question unless the line itself asks something.
    let bare =
        heard.outcome == Outcome::Decline || (heard.outcome == Outcome::Ask && heard.between.is_empty());
    let words = Words::of(said);
    if !open || !(bare || asking || asks(&words)) {
        return None;
    }
    if converts(&words) {
        let mut act = Act::new(ActName::AskWork);
        act.slots.kind = Some(Kind::Convert.name().to_owned());
        act.slots.values = Some(words.figures.iter().map(words::as_said).collect());
        return Some(Heard::take(vec![act], heard.sure));
    }
    let picked = pick::pick(works, None, &words)?;
    let placed = picked.said.values.len();
    let called = picked.cue >= 2 || (picked.cue == 1 && placed >= 3);
    let fits = picked.said.left_over.len() <= placed.max(1);
    (called && fits && picked.strength() >= 3).then(|| Heard::take(vec![act(&picked, &words)], heard.sure))
}

/// The answer to a calculation's open question, where hearing doubts it or takes it for a reading of the step: a line of
/// little more than one figure that the missing input can be.
fn to_open(works: &Works, open: &Pending, said: &str, heard: &Heard) -> Option<Heard> {
    let Pending::Work { ask, missing, .. } = open else { return None };
    let own = |act: &Act| match act.act {
        ActName::Reading => act.slots.about.is_none(),
        ActName::Note | ActName::AskWork => true,
        _ => false,
    };
    let free = heard.refused.is_none() && (heard.outcome != Outcome::Take || heard.acts.iter().all(own));
    let asking = works.find(ask)?;
    let words = Words::of(said);
    let [figure] = words.figures.as_slice() else { return None };
    let others = words.tokens.iter().filter(|word| !word.is_empty()).count() + figure.start;
    let short = others.saturating_sub(figure.end) <= SHORT;
    let mut act = Act::new(ActName::AskWork);
    let fits = fill::suits(asking, asking.working()?, missing, figure);
    if !free || !short || !fits || asks(&words) {
        return None;
    }
    act.slots.kind = Some(asking.working()?.kind.name().to_owned());
    act.slots.values = Some(vec![words::as_said(figure)]);
    Some(Heard::take(vec![act], heard.sure))
}

/// How many words an answer may hold beside its figure ("it's about ... long").
const SHORT: usize = 4;

/// Whether a line asks for a figure in another unit ("what's thirty joules in foot pounds", "convert thirty two").
fn converts(words: &Words) -> bool {
    let asked =
        words.at(0) == "convert" || words.find("how many").is_some() || words.find("what is").is_some();
    let [figure] = words.figures.as_slice() else { return false };
    let [(at, _)] = words.units.as_slice() else { return words.at(0) == "convert" };
    let led =
        at.checked_sub(1).is_some_and(|before| matches!(words.at(before), "in" | "to" | "into" | "many"));
    asked && led && figure.unit.is_some()
}

fn act(picked: &pick::Picked<'_>, words: &Words) -> Act {
    let mut act = Act::new(ActName::AskWork);
    act.slots.kind = Some(picked.working.kind.name().to_owned());
    act.slots.values = Some(words.figures.iter().map(words::as_said).collect());
    act
}

/// Whether a line asks something.
fn asks(words: &Words) -> bool {
    const ASKING: [&str; 19] = [
        "what", "how", "which", "where", "when", "will", "can", "does", "is", "give", "tell", "work", "mix",
        "would", "do", "am", "convert", "should", "still",
    ];
    words.tokens.iter().any(|word| ASKING.contains(&word.as_str()) || word.starts_with("what"))
}

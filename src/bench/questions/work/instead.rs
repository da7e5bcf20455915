//! Lines that hearing left or doubted, and that call for a calculation all the same.

use super::words::{self, Words};
use super::{fill, pick};
use crate::act::{Act, ActName, Heard, Outcome};
use crate::event::Pending;
use crate::rulebase::talk::Works;
use crate::workings::registry::Kind;

/// From here on hearing is sure of a question.
const SURE: f64 = 0.9;

/// From here on the words alone name a calculation: cue words, and figures that have their place.
const PLAIN: usize = 5;

/// A line that hearing left, doubted or took for another question, and whose words call for a calculation by name: the
/// question that it is. Nothing that changes the job is ever made of such a line. A line that does change it is touched
/// where hearing is not sure, the line itself asks, and every figure in it is an input of the calculation it names: those
/// figures are the question's and no wishes or readings. One-shot (`asking`) a line can only be a question.
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
    let words = Words::of(said);
    let line = Line { heard, words: &words, asking };
    if !line.open() {
        return None;
    }
    // What is never done is told even where nothing else of the question is understood.
    if (asking || asks(&words)) && super::never(works, &words).is_some() {
        return Some(Heard::take(vec![Act::new(ActName::AskWork)], heard.sure));
    }
    let picked = pick::pick(works, None, &words);
    if !line.calls(picked.as_ref()) {
        return None;
    }
    if !line.settled() && !line.entry() && converts(&words) {
        return Some(Heard::take(vec![of_kind(Kind::Convert, &words)], heard.sure));
    }
    let picked = picked.filter(fits)?;
    Some(Heard::take(vec![of_kind(picked.working.kind, &words)], heard.sure))
}

/// A line with what hearing made of it.
struct Line<'a> {
    heard: &'a Heard,
    words: &'a Words,
    asking: bool,
}

impl Line<'_> {
    /// Whether hearing left any doubt: a question or an entry that it is sure of stays what it is.
    fn open(&self) -> bool {
        let known = matches!(self.heard.acts.as_slice(), [only] if only.act == ActName::AskWork);
        match self.heard.outcome {
            Outcome::Take => !known && (self.asking || self.questions() || self.heard.sure < SURE),
            Outcome::Ask | Outcome::Decline => self.heard.refused.is_none(),
        }
    }

    fn questions(&self) -> bool {
        self.heard.acts.iter().all(|act| act.act.is_question() && act.act != ActName::Help)
    }

    /// Whether hearing took it for something that changes the job.
    fn entry(&self) -> bool {
        self.heard.outcome == Outcome::Take && !self.asking && !self.questions()
    }

    /// Whether hearing is sure of another question.
    fn settled(&self) -> bool {
        self.heard.outcome == Outcome::Take && self.heard.sure >= SURE && !self.asking
    }

    /// Whether the words call for the calculation strongly enough for what hearing made of the line.
    fn calls(&self, picked: Option<&pick::Picked<'_>>) -> bool {
        // So many words that name a calculation, and so many figures that find their place in it, leave no doubt.
        let plain = picked.is_some_and(|one| one.strength() >= PLAIN && one.said.values.len() >= 2);
        if self.entry() {
            return picked.is_some_and(|picked| is_all(picked, self.words));
        }
        if self.settled() {
            return plain;
        }
        // A doubt between entries is left to its question unless the line itself asks something.
        let bare = match self.heard.outcome {
            Outcome::Decline => true,
            Outcome::Ask => self.heard.between.is_empty(),
            Outcome::Take => false,
        };
        bare || self.asking || plain || picked.is_some_and(names) || asks(self.words)
    }
}

/// Whether cue words and figures are enough of a calculation, and no more figures are left over than fit.
fn fits(picked: &pick::Picked<'_>) -> bool {
    let placed = picked.said.values.len();
    let called = picked.cue >= 2 || (picked.cue == 1 && placed >= 3);
    called && picked.said.left_over.len() <= placed.max(1) && picked.strength() >= 3
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

/// What a figure to convert may be of.
const MEASURED: [&str; 8] = ["torque", "oil", "gas", "preload", "load", "force", "pressure", "travel"];

/// Whether a line asks for a figure in another unit ("what's thirty joules in foot pounds", "convert thirty two").
fn converts(words: &Words) -> bool {
    let asked =
        words.at(0) == "convert" || words.find("how many").is_some() || words.find("what is").is_some();
    let [figure] = words.figures.as_slice() else { return false };
    let [(at, _)] = words.units.as_slice() else { return words.at(0) == "convert" };
    let led =
        at.checked_sub(1).is_some_and(|before| matches!(words.at(before), "in" | "to" | "into" | "many"));
    // "In an ounce of flour" is the kitchen's.
    let of = words.at(figure.end.max(at + 1)) == "of";
    asked && led && figure.unit.is_some() && (!of || MEASURED.contains(&words.at(figure.end.max(at + 1) + 1)))
}

fn of_kind(kind: Kind, words: &Words) -> Act {
    let mut act = Act::new(ActName::AskWork);
    act.slots.kind = Some(kind.name().to_owned());
    act.slots.values = Some(words.figures.iter().map(words::as_said).collect());
    act
}

/// Whether a line names a calculation, and all its figures, two or more, are inputs of it: a line without a word that
/// asks ("viscosity index for seventy three at forty and nine at a hundred").
fn names(picked: &pick::Picked<'_>) -> bool {
    picked.cue >= 2 && picked.said.values.len() >= 2 && picked.said.left_over.is_empty()
}

/// Whether a line is this calculation's question and nothing else: it asks, three of its words or more name it, and
/// none of its figures is left over.
fn is_all(picked: &pick::Picked<'_>, words: &Words) -> bool {
    let figures = !words.figures.is_empty() && picked.said.left_over.is_empty();
    picked.cue >= 3 && figures && asks_itself(words)
}

/// Whether a clause of the line is a question: "how many is that", "will it do", "still alright".
fn asks_itself(words: &Words) -> bool {
    let starts = |at: usize| at == 0 || matches!(words.at(at - 1), "" | "and" | "so" | "but");
    (0..words.tokens.len()).any(|at| match words.at(at) {
        "what" | "how" | "which" => true,
        "where" | "will" | "can" | "does" | "is" | "am" | "would" | "should" | "do" | "still" => starts(at),
        _ => false,
    })
}

/// Whether a line asks something.
fn asks(words: &Words) -> bool {
    const ASKING: [&str; 19] = [
        "what", "how", "which", "where", "when", "will", "can", "does", "is", "give", "tell", "work", "mix",
        "would", "do", "am", "convert", "should", "still",
    ];
    words.tokens.iter().any(|word| ASKING.contains(&word.as_str()) || word.starts_with("what"))
}

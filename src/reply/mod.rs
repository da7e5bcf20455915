//! An answer as `say` (for the ear) and `show` (for the screen): the only place with the sentences of answers.
//!
//! Both carry the same figures. Where a sentence is the same for eye and ear it is written once, with its figures
//! as the screen has them, and [`speakable`] turns it into words.

mod acks;
mod caution;
mod facts;
mod figure;
mod lists;
mod piece;
mod questions;
mod refusals;
mod restore;
mod sentence;
mod settings;
mod speakable;
mod step;
mod table;
mod value;

pub use speakable::speakable;

use crate::act::{Waiting, WaitingFor};
use crate::bench::{Answer, Part};
use piece::{Context, Piece};

/// An answer rendered.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Reply {
    /// For the ear: ASCII letters, commas, full stops, question marks, apostrophes and single spaces.
    pub say: String,
    /// For the screen: plain text of one or more lines, without colour codes.
    pub show: String,
}

/// Renders an answer; `waiting` is what the job waits for once the answer is given.
#[must_use]
pub fn reply(answer: &Answer, waiting: &Waiting) -> Reply {
    let pieces: Vec<Piece> = answer
        .parts
        .iter()
        .enumerate()
        .map(|(place, part)| render(part, &context(answer, place, waiting.kind)))
        .collect();
    piece::join(&pieces)
}

/// What a part may know of those around it.
fn context(answer: &Answer, place: usize, waits: WaitingFor) -> Context<'_> {
    Context { last: place + 1 == answer.parts.len(), next: answer.parts.get(place + 1), waits }
}

fn render(part: &Part, context: &Context<'_>) -> Piece {
    match part {
        Part::Caution(card) => caution::caution(card),
        Part::Step(card) => step::step(card, context),
        Part::SaidBack(value) => value::said_back(value),
        Part::Refused(refusal) => refusals::refusal(refusal, context.waits),
        Part::Ack(ack) => acks::ack(ack, context),
        Part::Question(question) => questions::question(question),
        Part::Fact(fact) => facts::fact(fact),
        Part::Restore(card) => restore::restore(card),
        Part::Settings(card) => settings::settings(card),
        Part::Remaining { steps, next } => lists::remaining(*steps, next),
        Part::OpenEnds { items } => lists::open_ends(items),
        Part::Sentence(text) => Piece::both(text),
        Part::Unknown { what } => lists::unknown(what),
        Part::TimerEnded { what } => Piece::both(&format!("Time is up: {}.", sentence::inside(what))),
    }
}

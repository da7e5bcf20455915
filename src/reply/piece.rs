//! One part rendered, and how pieces make a reply.

use super::sentence::sentence;
use super::{Reply, speakable};
use crate::act::WaitingFor;
use crate::bench::Part;

/// What a part may know of those around it.
pub(super) struct Context<'a> {
    /// Whether it is the last part.
    pub last: bool,
    /// The part after it.
    pub next: Option<&'a Part>,
    /// What the job waits for.
    pub waits: WaitingFor,
}

/// A question at the end of a piece; the graver one is asked when there are two.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Weight {
    /// A step's or a list's own.
    Closing,
    /// One that must be settled first.
    Acknowledgement,
}

/// One part rendered: what it says, shows, and asks.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct Piece {
    /// For the ear, without what it asks.
    pub say: String,
    /// For the screen, without what it asks.
    pub show: String,
    /// What it asks, said at the end of the whole reply.
    pub asks: Option<(Weight, Reply)>,
}

impl Piece {
    /// The same words for eye and ear, figures as the screen has them.
    pub fn both(text: &str) -> Self {
        let text = sentence(text);
        Self { say: ear(&text), show: text, asks: None }
    }

    /// Two forms of one thing.
    pub fn two(say: &str, show: impl Into<String>) -> Self {
        Self { say: ear(say), show: show.into(), asks: None }
    }

    /// Asks at the end, in the same words for eye and ear.
    #[must_use]
    pub fn asking(self, weight: Weight, text: &str) -> Self {
        self.asking_two(weight, text, sentence(text))
    }

    /// Asks at the end, in two forms.
    #[must_use]
    pub fn asking_two(mut self, weight: Weight, say: &str, show: String) -> Self {
        self.asks = Some((weight, Reply { say: ear(say), show }));
        self
    }
}

/// A text for the ear: in the spoken set, as whole sentences.
pub(super) fn ear(text: &str) -> String {
    sentence(&speakable(text))
}

/// Pieces as one reply. It asks one thing, at its end: an acknowledgement if any is wanted, else what was asked last.
pub(super) fn join(pieces: &[Piece]) -> Reply {
    let mut say: Vec<&str> = pieces.iter().map(|piece| piece.say.as_str()).collect();
    let mut show: Vec<&str> = pieces.iter().map(|piece| piece.show.as_str()).collect();
    let asks = pieces.iter().filter_map(|piece| piece.asks.as_ref()).max_by_key(|(weight, _)| *weight);
    if let Some((_, asks)) = asks {
        say.push(&asks.say);
        show.push(&asks.show);
    }
    Reply { say: joined(say, " "), show: plain(&joined(show, "\n")) }
}

fn joined(mut texts: Vec<&str>, by: &str) -> String {
    texts.retain(|text| !text.trim().is_empty());
    texts.join(by)
}

/// Without control codes and marks that turn the direction of writing: names and notes may bring them.
fn plain(text: &str) -> String {
    text.chars().filter(|c| *c == '\n' || !(c.is_control() || turns_writing(*c))).collect()
}

fn turns_writing(c: char) -> bool {
    matches!(c, '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

//! A caution: the signal word first (ANSI Z535.6), its words, then its acknowledgement when it waits for one.

use super::piece::{Piece, Weight};
use super::sentence::{capital, sentence};
use crate::bench::CautionCard;

/// What is asked of a caution that waits.
pub(super) const UNDERSTOOD: &str = "Understood, yes or no?";

/// A caution before its step.
pub(super) fn caution(card: &CautionCard) -> Piece {
    let word = card.signal.word();
    let text = sentence(&card.text);
    let piece = Piece::two(&format!("{}. {text}", capital(word)), format!("{}: {text}", word.to_uppercase()));
    if card.acknowledge { piece.asking(Weight::Acknowledgement, UNDERSTOOD) } else { piece }
}

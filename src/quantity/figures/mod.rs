//! Spoken figures: out (words, digit by digit, sound-alikes) and in (number words to values, with their doubt).

mod read;
mod say;
mod turns;
mod words_in;

pub use read::{Form, Kind, Reading, read_all, read_number};
pub use say::{digits, needs_digits, sounds_like, words};
pub use turns::{flats, turns};

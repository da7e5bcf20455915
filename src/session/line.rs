//! One line as it comes in: words, how sure the ear was, what else it may have heard, and when.

use super::Moment;

/// A line said or typed.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Line {
    /// The words.
    pub said: String,
    /// How sure the ear is of them, from 0 to 1, when it knows.
    pub sure: Option<f64>,
    /// What it may have heard instead, the likeliest first.
    pub or: Vec<String>,
    /// When it was said, when the line tells.
    pub at: Option<Moment>,
}

/// The longest line that is listened to, in bytes: nobody says more in one breath.
pub const LONGEST: usize = 4096;

impl Line {
    /// A line of words alone.
    pub fn new(said: impl Into<String>) -> Self {
        Self { said: said.into(), ..Self::default() }
    }

    /// The words with control codes and doubled blanks gone.
    pub fn words(&self) -> String {
        plain(&self.said)
    }
}

/// A text fit for a screen: no control codes (a blank each), no direction marks, no doubled blanks.
pub fn plain(text: &str) -> String {
    let safe: String = text.chars().map(|c| if unfit(c) { ' ' } else { c }).collect();
    safe.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Control codes, and the marks that turn the direction of a text or hide in it.
fn unfit(c: char) -> bool {
    c.is_control()
        || matches!(c, '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{feff}')
}

//! Guards: what makes a line less than a plain statement.

use super::parsed::Parsed;

/// What stands in a stretch of a line that would make taking it for done wrong.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Guard {
    /// It denies something.
    pub denies: bool,
    /// It doubts, hedges or is half way.
    pub hedges: bool,
    /// It says what another said, or what would be.
    pub reports: bool,
    /// It asks.
    pub asks: bool,
    /// It is about something else than the unit.
    pub elsewhere: bool,
}

/// The guards of a stretch.
#[must_use]
pub fn guard(line: &Parsed<'_>, from: usize, to: usize) -> Guard {
    let words = &line.talk.words;
    let mut out = Guard::default();
    for token in line.tokens.get(from..to).unwrap_or_default() {
        out.denies |= words.denials.contains(&token.text);
        out.hedges |= words.hedges.contains(&token.text);
        out.reports |= words.reported.contains(&token.text);
        out.elsewhere |= line.talk.elsewhere.contains(&super::stem::stem(&token.text));
        out.asks |= token.mark == super::token::Mark::Question;
    }
    out
}

impl Guard {
    /// Whether anything stands against it.
    #[must_use]
    pub fn any(self) -> bool {
        self.denies || self.hedges || self.reports || self.asks
    }
}

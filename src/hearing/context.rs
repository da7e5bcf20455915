//! What the job waits for makes some acts likelier and others less so, whatever the words.

use super::class::Class;
use super::measure;
use super::mention::{Mention, What};
use super::token::{Mark, Token};
use crate::act::{ActName, WaitingFor};

/// What a clause has in it, as far as it matters to what is waited for.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Facts {
    waiting: Option<WaitingFor>,
    /// A number that answers what is waited for.
    fits: bool,
    /// Any number.
    number: bool,
    part: bool,
    tool: bool,
    /// It begins like a question, or ends as one.
    asks: bool,
}

/// Words that a question begins with.
const ASKING: [&str; 22] = [
    "what", "which", "how", "why", "where", "when", "who", "whose", "is", "are", "was", "do", "does", "did",
    "can", "could", "should", "will", "would", "any", "has", "may",
];

impl Facts {
    /// The facts of a clause.
    pub(super) fn of(
        tokens: &[Token],
        mentions: &[Mention],
        from: usize,
        to: usize,
        waiting: WaitingFor,
    ) -> Self {
        let inside = || mentions.iter().filter(|mention| mention.start >= from && mention.end <= to);
        let first = tokens.get(from).map_or("", |token| token.text.as_str());
        let last = to.checked_sub(1).and_then(|at| tokens.get(at));
        Self {
            waiting: Some(waiting),
            fits: measure::is_number(waiting)
                && inside().any(|mention| {
                    mention
                        .spoken()
                        .is_some_and(|spoken| spoken.unit.is_none_or(|unit| measure::fits(unit, waiting)))
                }),
            number: inside().any(|mention| mention.spoken().is_some()),
            part: inside().any(|mention| matches!(mention.what, What::Part(_))),
            tool: inside().any(|mention| matches!(mention.what, What::Tool(_))),
            asks: ASKING.contains(&first) || last.is_some_and(|token| token.mark == Mark::Question),
        }
    }

    /// How many times likelier a class is here than its words alone say.
    pub(super) fn lean(&self, class: &Class) -> f32 {
        use WaitingFor as W;
        let Some(waiting) = self.waiting else { return 1.0 };
        let name = class.name();
        if measure::is_number(waiting) && self.fits && !self.asks {
            return match name {
                Some(ActName::Reading) => 8.0,
                Some(ActName::Correct) => 4.0,
                Some(ActName::AskWork | ActName::AskSwap) => 0.25,
                None if *class == Class::Decline => 0.5,
                _ => 1.0,
            };
        }
        if self.asks && self.tool && self.number && !matches!(waiting, W::Tool) {
            return match name {
                Some(ActName::AskSwap) => 3.0,
                Some(ActName::AskTool) => 0.3,
                _ => 1.0,
            };
        }
        match (waiting, name) {
            (_, Some(ActName::Reading | ActName::Confirm | ActName::Trouble | ActName::Correct))
                if self.asks =>
            {
                0.3
            }
            (_, Some(name)) if self.asks && name.is_question() => 1.5,
            (W::Done, Some(ActName::Reading)) if !self.part => 0.4,
            (W::Done, Some(ActName::Confirm)) if !self.number && !self.asks => 1.5,
            (W::YesOrNo, Some(ActName::Confirm | ActName::Deny)) if !self.asks => 4.0,
            (W::Tool, Some(ActName::Confirm | ActName::AskSwap)) if self.tool => 2.0,
            (W::Nothing, Some(ActName::Start | ActName::Want | ActName::Switch)) => 2.0,
            (W::Nothing, Some(ActName::Confirm | ActName::Deny)) => 0.6,
            (W::Text, Some(ActName::Note)) => 2.0,
            _ => 1.0,
        }
    }
}

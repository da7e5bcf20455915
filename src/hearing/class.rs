//! What a grammar's tag stands for: an act with fixed slots, or a verdict of hearing.

use crate::act::{Act, ActName, Which};

/// A tag, read.
#[derive(Debug, Clone, PartialEq)]
#[expect(clippy::large_enum_variant, reason = "a pack has a few dozen classes, each once")]
pub enum Class {
    /// An act with the slots that the tag fixes.
    Act(Act),
    /// Chatter, another topic, noise.
    Decline,
    /// Hedged, reported or half said: ask.
    Ask,
    /// Talk beside the matter: dropped when the rest of the line is clear.
    Aside,
    /// Never granted, by name.
    Refuse(String),
}

impl Class {
    /// Reads a tag.
    ///
    /// # Errors
    /// The word that is no act, slot or verdict.
    pub fn parse(tag: &str) -> Result<Self, String> {
        let mut words = tag.split_whitespace();
        let name = words.next().unwrap_or_default();
        match name {
            "decline" => return Ok(Self::Decline),
            "ask" => return Ok(Self::Ask),
            "aside" => return Ok(Self::Aside),
            "refuse" => return Ok(Self::Refuse(words.next().unwrap_or("everything").to_owned())),
            _ => {}
        }
        let mut act = Act::new(ActName::parse(name).ok_or_else(|| name.to_owned())?);
        for word in words {
            let (slot, value) = word.split_once('=').ok_or_else(|| word.to_owned())?;
            match slot {
                "which" => act.slots.which = Some(which(value).ok_or_else(|| word.to_owned())?),
                "when" => act.slots.when = Some(which(value).ok_or_else(|| word.to_owned())?),
                "kind" => act.slots.kind = Some(value.to_owned()),
                "procedure" => act.slots.procedure = Some(value.to_owned()),
                "about" => act.slots.about = Some(value.to_owned()),
                _ => return Err(word.to_owned()),
            }
        }
        Ok(Self::Act(act))
    }

    /// The act, if it is one.
    #[must_use]
    pub fn act(&self) -> Option<&Act> {
        match self {
            Self::Act(act) => Some(act),
            _ => None,
        }
    }

    /// The name of the act.
    #[must_use]
    pub fn name(&self) -> Option<ActName> {
        self.act().map(|act| act.act)
    }

    /// Whether it is a question, which moves nothing.
    #[must_use]
    pub fn is_question(&self) -> bool {
        self.name().is_some_and(ActName::is_question)
    }
}

fn which(word: &str) -> Option<Which> {
    Some(match word {
        "found" => Which::Found,
        "now" => Which::Now,
        "left" => Which::Left,
        "last" => Which::Last,
        "wanted" => Which::Wanted,
        "next" => Which::Next,
        "all" => Which::All,
        "job" => Which::Job,
        "step" => Which::Step,
        "cure" => Which::Cure,
        _ => return None,
    })
}

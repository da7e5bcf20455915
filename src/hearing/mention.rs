//! What a line mentions: parts, numbers with their units, corners, times, tools, units and procedures.

use crate::act::Corner;
use crate::quantity::figures::Kind;
use std::collections::BTreeSet;

/// A stretch of tokens that names something.
#[derive(Debug, Clone, PartialEq)]
pub struct Mention {
    /// First token.
    pub start: usize,
    /// One past the last.
    pub end: usize,
    /// What it names.
    pub what: What,
}

/// What is named.
#[derive(Debug, Clone, PartialEq)]
pub enum What {
    /// Things of the unit in hand; several when the name fits several.
    Part(BTreeSet<String>),
    /// A thing that this unit does not have.
    Foreign(String),
    /// A number, with its unit if one was said.
    Number(Spoken),
    /// A corner; none when the name means two sides.
    Corner(Option<Corner>),
    /// A tool by a plain name.
    Tool(String),
    /// A unit card.
    Unit(String),
    /// A procedure.
    Procedure(String),
}

/// A number as said.
#[derive(Debug, Clone, PartialEq)]
pub struct Spoken {
    /// The number, in `unit` where one was said.
    pub value: f64,
    /// Design name of the unit said.
    pub unit: Option<&'static str>,
    /// The words of the unit, as said ("mils").
    pub unit_said: Option<String>,
    /// How sure the number is.
    pub kind: Kind,
    /// What it may mean.
    pub candidates: Vec<f64>,
    /// Whether a word of it was mended by sound.
    pub mended: bool,
    /// How many words it took.
    pub len: usize,
    /// As figures or a fraction of an inch, for a tool's size ("13/16").
    pub size: String,
}

impl Mention {
    /// The slot of the grammars that it fills.
    #[must_use]
    pub fn slot(&self) -> &'static str {
        match &self.what {
            What::Part(_) | What::Foreign(_) => "<part>",
            What::Number(spoken) => match spoken.unit {
                Some("s" | "min" | "h") => "<duration>",
                Some(_) => "<quantity>",
                None => "<number>",
            },
            What::Corner(_) => "<corner>",
            What::Tool(_) => "<tool>",
            What::Unit(_) => "<unit>",
            What::Procedure(_) => "<procedure>",
        }
    }

    /// The number, if it is one.
    #[must_use]
    pub fn spoken(&self) -> Option<&Spoken> {
        match &self.what {
            What::Number(spoken) => Some(spoken),
            _ => None,
        }
    }
}

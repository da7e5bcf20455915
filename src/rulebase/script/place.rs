//! An expression of a YAML file, and where a place inside it stands in that file.

use crate::source::Place;
use crate::source::yaml::{Span, Style};
use rhai::Position;
use std::sync::Arc;

/// What an expression is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// Whether a step applies: yes or no.
    Guard,
    /// Whether the reading `value` is acceptable: yes or no.
    Accept,
}

/// An expression as it stands in a file.
#[derive(Debug, Clone)]
pub struct Expression {
    /// Its text.
    pub text: String,
    /// What it is for.
    pub kind: Kind,
    /// The file.
    pub file: Arc<str>,
    /// Where its value stands.
    pub span: Span,
    /// How it is written.
    pub style: Style,
    /// Indent of a block's first line, in characters.
    pub indent: u32,
    /// The unit card whose procedure holds it.
    pub unit: String,
    /// The procedure that holds it.
    pub procedure: String,
}

impl Expression {
    /// The whole expression's place.
    pub fn place(&self) -> Place {
        self.span.place(&self.file)
    }

    /// The place of a position inside it, where the way it is written lets it be told.
    pub fn place_at(&self, at: Position) -> Place {
        let number = |n: Option<usize>| n.and_then(|n| u32::try_from(n).ok());
        let (Some(line), Some(column)) = (number(at.line()), number(at.position())) else {
            return self.place();
        };
        let (first, from) = self.span.start;
        match self.style {
            Style::Plain if self.span.end.0 == first => {
                Place::new(Arc::clone(&self.file), first, from + column - 1)
            }
            Style::Quoted if self.span.end.0 == first => {
                Place::new(Arc::clone(&self.file), first, from + column)
            }
            Style::Literal => Place::new(Arc::clone(&self.file), first + line - 1, self.indent + column),
            _ => self.place(),
        }
    }
}

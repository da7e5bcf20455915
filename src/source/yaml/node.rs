//! The tree that YAML is read into.

use crate::source::Place;
use std::sync::Arc;

/// From where to where; lines and columns from 1, the end exclusive.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Span {
    /// Line and column of the first character.
    pub start: (u32, u32),
    /// Line and column just after the last.
    pub end: (u32, u32),
}

impl Span {
    /// The span in its file.
    pub fn place(self, file: &Arc<str>) -> Place {
        let place = Place::new(Arc::clone(file), self.start.0, self.start.1);
        if self.end > self.start { place.to(self.end.0, self.end.1) } else { place }
    }
}

/// A key of a map.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Key {
    /// The key.
    pub text: String,
    /// Where it stands.
    pub span: Span,
}

/// How a text was written: places inside it can be told for some ways only.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Style {
    /// Without quotes.
    Plain,
    /// In quotes of either kind.
    Quoted,
    /// A `|` block.
    Literal,
    /// A `>` block.
    Folded,
}

/// What a value is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Kind {
    /// Nothing after the colon, or `~`.
    Empty,
    /// A text.
    Text(String, Style),
    /// A list.
    List(Vec<Node>),
    /// A map, in the order of the file.
    Map(Vec<(Key, Node)>),
}

/// A value with its place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Node {
    /// What it is.
    pub kind: Kind,
    /// Where it stands.
    pub span: Span,
}

impl Node {
    /// The text, when it is one.
    pub fn text(&self) -> Option<&str> {
        match &self.kind {
            Kind::Text(text, _) => Some(text),
            _ => None,
        }
    }

    /// The items, when it is a list.
    pub fn list(&self) -> Option<&[Node]> {
        match &self.kind {
            Kind::List(items) => Some(items),
            _ => None,
        }
    }

    /// The entries, when it is a map.
    pub fn map(&self) -> Option<&[(Key, Node)]> {
        match &self.kind {
            Kind::Map(entries) => Some(entries),
            _ => None,
        }
    }

    /// The value of a key, when it is a map that has it.
    pub fn get(&self, key: &str) -> Option<&Node> {
        self.map()?.iter().find(|(known, _)| known.text == key).map(|(_, node)| node)
    }

    /// What it is, in words ("a list of 3").
    pub fn words(&self) -> String {
        match &self.kind {
            Kind::Empty => "nothing".to_owned(),
            Kind::Text(text, _) => format!("`{}`", short(text)),
            Kind::List(items) => format!("a list of {}", items.len()),
            Kind::Map(entries) => match entries.first() {
                Some((key, _)) => format!("a map with `{}`", short(&key.text)),
                None => "an empty map".to_owned(),
            },
        }
    }

    /// The span of the value at a path of keys and list numbers ("parts/foot-nut/torque", "phases/strip/2/else/0").
    /// Where the path goes no further, the last value that is there.
    pub fn span_at(&self, path: &str) -> Span {
        let mut here = self;
        for step in path.split('/').filter(|step| !step.is_empty()) {
            let next = match &here.kind {
                Kind::Map(_) => here.get(step),
                Kind::List(items) => step.parse::<usize>().ok().and_then(|at| items.get(at)),
                _ => None,
            };
            match next {
                Some(next) => here = next,
                None => break,
            }
        }
        here.span
    }
}

/// A text cut to what a message can show.
pub(crate) fn short(text: &str) -> String {
    let line = text.lines().next().unwrap_or_default();
    if line.chars().count() > 60 || line.len() < text.trim_end().len() {
        line.chars().take(60).chain("...".chars()).collect()
    } else {
        line.to_owned()
    }
}

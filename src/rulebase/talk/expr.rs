//! What a grammar rule says may be said.

/// Slots that the program or the unit card fills.
pub const BUILT_IN: [&str; 12] = [
    "number",
    "quantity",
    "part",
    "tool",
    "duration",
    "corner",
    "unit",
    "procedure",
    "text",
    "name",
    "NULL",
    "VOID",
];

/// An expansion of the grammar format.
#[derive(Debug, Clone, PartialEq)]
pub enum Expr {
    /// One word, in lower case.
    Word(String),
    /// Another rule, or a slot of the program.
    Name(String),
    /// One after the other.
    Seq(Vec<Expr>),
    /// One of several.
    Alt(Vec<Expr>),
    /// May be left out.
    Opt(Box<Expr>),
    /// Any number of times, or at least once.
    Repeat(Box<Expr>, bool),
}

impl Expr {
    /// The names used in it.
    pub fn names(&self) -> Vec<&str> {
        match self {
            Self::Word(_) => Vec::new(),
            Self::Name(name) => vec![name],
            Self::Seq(parts) | Self::Alt(parts) => parts.iter().flat_map(Self::names).collect(),
            Self::Opt(part) | Self::Repeat(part, _) => part.names(),
        }
    }

    /// The words used in it, without those of the rules it names.
    pub fn words(&self) -> Vec<&str> {
        match self {
            Self::Word(word) => vec![word],
            Self::Name(_) => Vec::new(),
            Self::Seq(parts) | Self::Alt(parts) => parts.iter().flat_map(Self::words).collect(),
            Self::Opt(part) | Self::Repeat(part, _) => part.words(),
        }
    }
}

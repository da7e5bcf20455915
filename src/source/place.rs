//! A place in a text: file, line and column.

use serde::{Serialize, Serializer, ser::SerializeStruct};
use std::fmt;
use std::sync::Arc;

/// Where something stands. Lines and columns count from 1, columns in characters.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Place {
    /// The file, as the pack names it ("units/birch-44.yaml").
    pub file: Arc<str>,
    /// Line, from 1; 0 when the file as a whole is meant.
    pub line: u32,
    /// Column in characters, from 1.
    pub column: u32,
    /// Line and column just after the last character, where the end is known.
    pub end: Option<(u32, u32)>,
}

impl Place {
    /// The file as a whole.
    pub fn file(file: impl Into<Arc<str>>) -> Self {
        Self { file: file.into(), line: 0, column: 0, end: None }
    }

    /// A line and column of a file.
    pub fn new(file: impl Into<Arc<str>>, line: u32, column: u32) -> Self {
        Self { file: file.into(), line, column, end: None }
    }

    /// The same place with its end (exclusive).
    #[must_use]
    pub fn to(mut self, line: u32, column: u32) -> Self {
        self.end = Some((line, column));
        self
    }
}

/// No place at all: what was not read from a file.
impl Default for Place {
    fn default() -> Self {
        Self::file("")
    }
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.line {
            0 => f.write_str(&self.file),
            line => write!(f, "{}:{line}:{}", self.file, self.column),
        }
    }
}

impl Serialize for Place {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut out = serializer.serialize_struct("Place", 3)?;
        out.serialize_field("file", &*self.file)?;
        out.serialize_field("line", &self.line)?;
        out.serialize_field("column", &self.column)?;
        out.end()
    }
}

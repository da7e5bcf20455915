//! What a pack's YAML may hold: each kind of entry is a table of fields. The reader, the messages for unknown fields and
//! whatever describes the format to an author all come from these tables.

use crate::quantity::Dimension;

/// What a field's value must be.
#[derive(Debug, Clone, Copy)]
pub enum Shape {
    /// A text.
    Text,
    /// One text or a list of texts.
    Texts,
    /// `yes` or `no`.
    Flag,
    /// A whole number from 1.
    Whole,
    /// `clockwise` or `anticlockwise`.
    Way,
    /// A number with a unit of this dimension.
    Quantity(Dimension),
    /// A number with its band, or a bound, with a unit of this dimension.
    Limit(Dimension),
    /// A metric thread ("M14 x 1").
    Thread,
    /// A figure that its kind of entry reads by itself; the text is an example.
    Figure(&'static str),
    /// A Rhai expression.
    Script,
    /// An entry with fields of its own.
    Entry(&'static Form),
    /// A list of entries.
    Entries(&'static Form),
    /// Entries by name.
    Named(&'static Form),
    /// Quantities of any dimension by name.
    Sizes,
    /// Limits of any dimension by name.
    Limits,
    /// Texts by name.
    Words,
}

/// One field.
#[derive(Debug)]
pub struct Field {
    /// The key in the file.
    pub name: &'static str,
    /// What its value must be.
    pub shape: Shape,
    /// Whether an entry is wrong without it.
    pub needed: bool,
    /// What it says.
    pub what: &'static str,
}

/// One kind of entry.
#[derive(Debug)]
pub struct Form {
    /// What such an entry is called in a message ("a part").
    pub name: &'static str,
    /// Its fields.
    pub fields: &'static [Field],
    /// Whether one of the words of `Deed` stands for a field.
    pub takes_deed: bool,
}

impl Form {
    /// The field of that name.
    pub fn field(&self, name: &str) -> Option<&'static Field> {
        self.fields.iter().find(|field| field.name == name)
    }
}

/// A field that may be left out.
pub(super) const fn may(name: &'static str, shape: Shape, what: &'static str) -> Field {
    Field { name, shape, needed: false, what }
}

/// A field that must be there.
pub(super) const fn must(name: &'static str, shape: Shape, what: &'static str) -> Field {
    Field { name, shape, needed: true, what }
}

//! YAML as a tree in which every key and value knows its place.
//!
//! A pack's YAML is a small, safe part of the language: maps, lists and texts. Nothing is read as a number, a truth
//! value or a date here (`no`, `on` and `010` stay texts): the form that a value is read into says what it must be.
//! Anchors, aliases, tags, several documents, doubled keys, `.nan` and `.inf` are refused; depth and size are capped.

mod guard;
mod node;
mod scan;

pub use node::{Key, Kind, Node, Span, Style};
pub use scan::parse;

/// The largest file that is read, in bytes.
pub const MOST_BYTES: usize = 1 << 20;
/// The deepest nesting that is read.
pub const MOST_DEEP: usize = 24;
/// The most keys and values in one file.
pub const MOST_NODES: usize = 100_000;

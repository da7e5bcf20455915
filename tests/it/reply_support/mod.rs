//! Answers of every kind from one seed, and the figures of a text, read by a reader of its own (nothing of the crate's).

pub mod each;
pub mod figures;
pub mod generate;

//! Words to acts. No state of its own, no guessing: take, ask (between which acts), decline.
//!
//! The way of a line: `token` cuts it into words, `phrases` and `lexicon` put dialect and misheard words right,
//! `spot` finds what it mentions, `clauses` cuts it into acts by the talk grammars (`automaton`) and the model
//! fitted to their examples (`model`), `slots` fills each act, `decide` weighs the cost of being wrong.

mod automaton;
mod class;
mod clauses;
mod compile;
mod compile_words;
mod costs;
mod decide;
mod ear;
mod features;
mod guard;
mod judge;
mod judge_place;
mod judge_value;
mod lexicon;
mod measure;
mod mention;
mod merge;
mod model;
mod names;
mod pack;
mod parsed;
mod phrases;
mod sample;
mod slots;
mod sound;
mod spot;
mod spot_corner;
mod spot_number;
mod spot_part;
mod stem;
mod token;
mod vocabulary;
mod why;

pub mod demo;

pub use class::Class;
pub use ear::{Ear, Line, Stock};
pub use pack::stock;
pub use vocabulary::{Sort, Thing, Vocabulary};
pub use why::Why;

//! Texts that are loaded and the problems found in them: places, problems kept as data, one renderer, the YAML guard.

mod nearest;
mod place;
mod problem;
mod render;
pub mod yaml;

pub use nearest::nearest;
pub use place::Place;
pub use problem::{Level, Problem};
pub use render::render;

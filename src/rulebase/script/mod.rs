//! Rhai for what YAML cannot say: whether a step applies (`when`), whether a reading is acceptable (`accept`).
//!
//! A script sees a read-only [`View`] of job and unit through the functions of [`FUNCTIONS`], and nothing else: no files,
//! no network, no clock, no sleep. Operations, depth, sizes and time are bounded. Every expression is compiled and tried
//! on made-up views as the pack loads, so that a slip is found there, with file and line; what fails later is a
//! [`ScriptFault`], and the job goes on.

mod dry;
mod engine;
mod fault;
mod functions;
mod place;
mod scan;
mod scripts;
mod view;
mod work;

pub use fault::{FaultKind, ScriptFault};
pub use functions::{Arg, FUNCTIONS, Function};
pub use place::{Expression, Kind};
pub use scripts::Scripts;
pub use view::{AdjusterView, PartView, View};

pub(super) use dry::{Made, library};

//! Pair and trace: left against right in force, force over velocity as a dyno writes it, and its rod speed.

pub mod compare;
pub mod dyno;
pub mod plot;
pub mod trace;

pub(super) mod register;
mod register_trace;

pub use trace::{Trace, TraceError};

//! The calculations of the job, one family a folder. Pure: no state, no pack, no clock.
//!
//! Each family has its formulas as plain functions on stated units, and a `register` file that gives them names,
//! inputs, sources and cautions; [`registry`] calls them by name.

pub mod adjusters;
pub mod convert;
pub mod cure;
pub mod gas;
pub mod hex;
pub mod oil;
pub mod pair;
pub mod registry;
pub mod springs;
pub mod thread;
pub mod torque;

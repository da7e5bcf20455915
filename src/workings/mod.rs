//! The calculations of the job, one family a file or folder. Pure: no state, no pack, no clock.

pub mod adjusters;
pub mod convert;
pub mod cure;
pub mod hex;
pub mod thread;
pub mod torque;

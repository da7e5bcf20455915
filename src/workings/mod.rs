//! The calculations of the job, one family a file. Pure: no state, no pack, no clock.

pub mod adjusters;

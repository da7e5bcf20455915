//! Entries: the acts that change the job, one subject a file.

pub mod ahead;
pub mod begun;
pub mod booked;
pub mod closing;
pub mod confirm;
pub mod correct;
pub mod course;
pub mod job;
pub mod notes;
pub mod outside;
pub mod reading;
pub mod relative;
pub mod resume;
pub mod said;
pub mod skip;
pub mod undo;
pub mod want;

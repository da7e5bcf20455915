//! The walk: every path of a procedure on the bench's own `decide` and `apply`, without a copy of their logic.
//!
//! The main path answers everything rightly. From each of its states each way of leaving it is tried once (no, out of
//! limits, too late, another value, left out, back, taken back, ahead, taken up again), and followed by right answers
//! until it comes back to a state seen before or to the end; the steps of a loop are left in their turn, so that pairs
//! within one loop are met. Ways on which harm can come are tried first, for the work is bounded. Two states are the same when they differ in nothing that the steps to come
//! can tell. That, and not the product of all answers, is what makes the work linear in the steps.

mod answer;
mod candidates;
mod deviate;
mod digest;
mod explore;
mod guards;
mod hand;
mod seen;
mod trail;

pub use seen::{Finish, Moment, Seen};

pub(super) use explore::walk;

//! Sparehand: a voice-ready bench assistant over a local rules engine.
//!
//! The modules stand in one order, and each imports only from those before it
//! (`tests/it/architecture.rs` proves it):
//! source, quantity, workings, act, rulebase, hearing, event, bench, check, reply, book, session, front.

pub mod act;
pub mod bench;
pub mod book;
pub mod check;
pub mod event;
pub mod front;
pub mod hearing;
pub mod quantity;
pub mod reply;
pub mod rulebase;
pub mod session;
pub mod source;
pub mod workings;

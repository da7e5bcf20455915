//! What the book keeps: events in their envelope, versioned, and read back from every released version.

mod envelope;
mod kind;
mod pending;
mod upcast;

pub use envelope::{Envelope, EventId, JobId, Utterance, UtteranceId, VERSION};
pub use kind::{Change, Event, How, Kept, Moved, Verdict};
pub use pending::{Pending, Rule};
pub use upcast::{Unreadable, read};

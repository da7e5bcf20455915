//! What a book holds, counted by reading all of it.

use std::fmt;

/// What was read.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Survey {
    /// Jobs that read whole.
    pub jobs: usize,
    /// Their events.
    pub events: usize,
    /// Packs that read whole.
    pub packs: usize,
}

impl fmt::Display for Survey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let jobs = if self.jobs == 1 { "job" } else { "jobs" };
        let events = if self.events == 1 { "event" } else { "events" };
        write!(f, "{} {jobs} with {} {events}", self.jobs, self.events)
    }
}

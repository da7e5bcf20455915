//! Ids, handed in: `UUIDv7` (RFC 9562), from the system or from a seed.

use super::Moment;
use uuid::{Builder, Uuid};

/// Where ids come from. Each is new, and later ones sort after earlier ones.
pub trait Ids: Send {
    /// The next id, made at `now`.
    fn next(&mut self, now: Moment) -> String;
}

/// Ids from the system's clock and randomness.
#[derive(Debug, Clone, Copy, Default)]
pub struct SystemIds;

impl Ids for SystemIds {
    #[expect(clippy::disallowed_methods, reason = "the one place that makes ids")]
    fn next(&mut self, _now: Moment) -> String {
        Uuid::now_v7().to_string()
    }
}

/// Ids that are the same for the same seed and the same times: for tests and transcripts.
#[derive(Debug, Clone)]
pub struct SeededIds {
    seed: u64,
    count: u64,
}

impl SeededIds {
    /// Ids of this seed.
    pub fn new(seed: u64) -> Self {
        Self { seed, count: 0 }
    }
}

impl Ids for SeededIds {
    fn next(&mut self, now: Moment) -> String {
        self.count += 1;
        let mut bytes = [0; 10];
        // The count leads, so that ids of one millisecond sort by it.
        let count = self.count.to_be_bytes();
        let seed = self.seed.to_be_bytes();
        for (to, from) in bytes.iter_mut().zip(count.iter().skip(2).chain(seed.iter().skip(4))) {
            *to = *from;
        }
        let millis = u64::try_from(now.timestamp_millis()).unwrap_or(0);
        Builder::from_unix_timestamp_millis(millis, &bytes).into_uuid().to_string()
    }
}

//! The chain of sums: each event's sum covers its text and the sum before it, so that a change, a loss or
//! another order anywhere in a job shows.

use sha2::{Digest, Sha256};

/// A SHA-256 sum (FIPS 180-4).
pub(super) type Sum = [u8; 32];

/// Where a job's chain begins.
pub(super) fn first(job: &str) -> Sum {
    Sha256::digest(job.as_bytes()).into()
}

/// The sum of an event's text that follows `before`.
pub(super) fn next(before: &Sum, body: &str) -> Sum {
    Sha256::new().chain_update(before).chain_update(body.as_bytes()).finalize().into()
}

/// The sum of a text by itself.
pub(super) fn of(text: &str) -> Sum {
    Sha256::digest(text.as_bytes()).into()
}

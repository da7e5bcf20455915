//! Whether the events of an utterance continue what the book has.

use super::BookError;
use crate::event::Envelope;
use std::collections::BTreeMap;
use std::path::Path;

/// Where a job stands in the book: the sequence and the utterance of its last event.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Head {
    /// Sequence of the last event.
    pub sequence: u64,
    /// Its utterance.
    pub utterance: String,
}

/// Checks that the events are one utterance's, new, and continue their jobs' sequences.
///
/// `head` tells where a job stands; none for a job that is not in the book.
pub(super) fn check(
    book: &Path,
    events: &[Envelope],
    mut head: impl FnMut(&str) -> Result<Option<Head>, BookError>,
) -> Result<(), BookError> {
    let clash = |what: String| BookError::Clash { book: book.to_path_buf(), what };
    let mut expected: BTreeMap<&str, u64> = BTreeMap::new();
    let Some(utterance) = events.first().map(|e| e.utterance.id.as_str()) else { return Ok(()) };
    for event in events {
        if event.utterance.id != utterance {
            return Err(clash(format!(
                "events of utterances {utterance} and {} came together",
                event.utterance.id
            )));
        }
        let next = match expected.get(event.job.as_str()) {
            Some(next) => *next,
            None => match head(&event.job)? {
                Some(head) if head.utterance == utterance => {
                    return Err(clash(format!("utterance {utterance} is kept already")));
                }
                head => head.map_or(1, |h| h.sequence.saturating_add(1)),
            },
        };
        if event.sequence != next {
            return Err(clash(format!("event {} of job {}, {next} expected", event.sequence, event.job)));
        }
        expected.insert(&event.job, next.saturating_add(1));
    }
    Ok(())
}

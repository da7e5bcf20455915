//! An event as the text that is kept, checked to read back as the event that it was.

use super::BookError;
use crate::event::{self, Envelope, Unreadable};
use std::path::Path;

/// The text of an event.
///
/// What would come out other than it went in (a number that is none, say) is refused here, while somebody can
/// still say it again, and not found when the job is next read.
pub(super) fn of(book: &Path, event: &Envelope) -> Result<String, BookError> {
    let clash = |what: String| BookError::Clash { book: book.to_path_buf(), what };
    let text = serde_json::to_string(event)
        .map_err(|e| clash(format!("event {} cannot be written down: {e}", event.id)))?;
    match event::read(&text) {
        Ok(again) if again == *event => Ok(text),
        Err(Unreadable::Newer { .. }) => Ok(text),
        _ => Err(clash(format!("event {} would not read as it was written: {text}", event.id))),
    }
}

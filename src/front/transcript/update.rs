//! Rewrites the answers of a transcript, and nothing else of it.

use super::{Kind, Outcome, Transcript};

/// The text with the answers of this run in the place of those written.
pub fn updated(transcript: &Transcript, outcome: &Outcome) -> String {
    let mut lines: Vec<String> = Vec::new();
    for item in &transcript.items {
        if matches!(item.kind, Kind::Spoken(_) | Kind::Shown(_)) {
            continue;
        }
        lines.push(item.raw.trim_end().to_owned());
        if does_something(&item.kind) {
            lines.extend(outcome.written(item.line, transcript.head.answers).unwrap_or_default());
        }
    }
    let mut text = lines.join("\n");
    text.push('\n');
    text
}

/// Whether a line brings an answer.
pub(super) fn does_something(kind: &Kind) -> bool {
    matches!(kind, Kind::Said(_) | Kind::At(_) | Kind::Kill | Kind::Reopen)
}

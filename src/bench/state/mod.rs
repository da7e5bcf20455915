//! The state of a job: the fold of its events and of nothing else. This folder imports only `event` and `act`.

mod apply;
mod effect;
mod place;
mod progress;
mod record;

pub use apply::apply;
pub use place::{AdjusterState, Closing, Fitting, PartState, Place, Position};
pub use progress::Progress;
pub use record::{Entry, Record, RunningTimer};

use crate::event::Envelope;
use std::sync::Arc;

/// The state of one job.
#[derive(Debug, Clone, Default)]
pub struct State {
    /// Where the job stands: comparable, without times or texts.
    pub progress: Progress,
    /// Times, texts and the log.
    pub record: Record,
    /// The events folded, in order, those taken back among them.
    pub events: Vec<Arc<Envelope>>,
    /// The utterances taken back.
    pub struck: Vec<String>,
}

impl State {
    /// The state after all these events.
    pub fn of<'a>(events: impl IntoIterator<Item = &'a Envelope>) -> Self {
        let mut state = Self::default();
        for event in events {
            apply(&mut state, event);
        }
        state
    }

    /// The place in hand.
    pub fn place(&self) -> Option<&Place> {
        self.progress.current.as_ref().and_then(|id| self.progress.places.get(id))
    }

    /// The last event that changed the job in the last utterance at this place that still stands.
    pub fn last_standing(&self) -> Option<&Envelope> {
        let here = self.progress.current.as_deref();
        self.events
            .iter()
            .rev()
            .find(|kept| {
                kept.event.changes_job()
                    && kept.place.as_deref() == here
                    && !self.struck.contains(&kept.utterance.id)
            })
            .map(AsRef::as_ref)
    }
}

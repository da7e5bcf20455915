//! The desk: a scratch copy of the job on which the acts of one line are worked in order.

use super::state::{Place, State, apply};
use super::{Answer, Part, Past};
use crate::event::{Envelope, Event, Pending, Utterance, VERSION};
use crate::rulebase::{Pack, Procedure, UnitCard};
use chrono::{DateTime, FixedOffset};
use std::sync::Arc;

/// A time with its offset.
pub type Moment = DateTime<FixedOffset>;

/// The scratch copy.
pub struct Desk<'a> {
    /// The pack the job is pinned to.
    pub rules: &'a Pack,
    /// What the book knows besides this job.
    pub past: &'a Past,
    /// The job as it stands after the events so far.
    pub state: State,
    /// Now.
    pub now: Moment,
    /// The utterance in hand.
    pub utterance: Utterance,
    /// Events so far.
    pub events: Vec<Event>,
    /// Parts of the answer so far.
    pub parts: Vec<Part>,
    /// Whether the step in hand is to be said at the end.
    pub show_step: bool,
    /// Whether this line has closed or answered something: a bare "done" after it is part of it.
    pub closed_one: bool,
    /// The step that was in hand as the line came.
    pub began_at: Option<String>,
    /// Whether this line has acknowledged the cautions of the step in hand: they were just said.
    pub acknowledged: bool,
    /// A step that "done" did not close, and what it asks: said unless the same line brings the value.
    pub needs: Option<(String, String)>,
}

impl<'a> Desk<'a> {
    /// A desk with the job as it stands.
    pub fn new(rules: &'a Pack, past: &'a Past, state: &State, now: Moment, utterance: Utterance) -> Self {
        let state = state.clone();
        let began_at = state.place().and_then(|place| place.cursor.clone());
        Self {
            rules,
            past,
            state,
            now,
            utterance,
            events: Vec::new(),
            parts: Vec::new(),
            show_step: false,
            closed_one: false,
            acknowledged: false,
            began_at,
            needs: None,
        }
    }

    /// Keeps an event, and folds it into the scratch copy as the real one will be.
    pub fn emit(&mut self, event: Event) {
        let progress = &self.state.progress;
        let envelope = Envelope {
            id: format!("scratch-{}", self.events.len()),
            bench: String::new(),
            job: String::new(),
            sequence: 0,
            utterance: self.utterance.clone(),
            version: VERSION,
            at: self.now,
            by: None,
            place: progress.current.clone(),
            step: self.place().and_then(|place| place.cursor.clone()),
            pack: String::new(),
            event: event.clone(),
        };
        apply(&mut self.state, &envelope);
        self.show_step |= event.changes_job();
        self.events.push(event);
    }

    /// Opens a question that needs a second utterance.
    pub fn open(&mut self, pending: Pending) {
        self.emit(Event::Opened { pending });
    }

    /// Adds to the answer.
    pub fn say(&mut self, part: Part) {
        self.parts.push(part);
    }

    /// The place in hand.
    pub fn place(&self) -> Option<&Place> {
        self.state.place()
    }

    /// The id of the place in hand.
    pub fn place_id(&self) -> String {
        self.state.progress.current.clone().unwrap_or_default()
    }

    /// The unit card of the unit in hand.
    pub fn card(&self) -> Option<Arc<UnitCard>> {
        self.rules.unit(&self.place()?.unit).cloned()
    }

    /// The procedure in hand.
    pub fn procedure(&self) -> Option<Arc<Procedure>> {
        let place = self.place()?;
        self.rules.procedure(&place.procedure, &place.unit).cloned()
    }

    /// The id of the step in hand.
    pub fn cursor(&self) -> Option<String> {
        self.place()?.cursor.clone()
    }

    /// The answer made so far.
    pub fn answer(&mut self) -> Answer {
        Answer { parts: std::mem::take(&mut self.parts) }
    }

    /// Whether the line came by ear.
    pub fn by_ear(&self) -> bool {
        self.utterance.ear
    }
}

//! Times, texts and what the log tells.

use crate::event::Kept;
use chrono::{DateTime, FixedOffset};
use std::collections::BTreeMap;

/// A time with its offset.
pub type Moment = DateTime<FixedOffset>;

/// Times and texts of a job.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Record {
    /// When it was opened.
    pub opened: Option<Moment>,
    /// When something was last kept.
    pub last: Option<Moment>,
    /// When the step in hand was first shown, by place and step.
    pub shown: BTreeMap<(String, String), Moment>,
    /// When a step was closed, by place and step.
    pub closed: BTreeMap<(String, String), Moment>,
    /// When threadlocker went on, by place and part, with its open, handling and cure times in minutes.
    pub locked: BTreeMap<(String, String), Locking>,
    /// Values kept, by place: the one that stands, with the event that brought it.
    pub kept: Vec<Entry>,
    /// Words kept by place and role ("complaint").
    pub texts: BTreeMap<(String, String), String>,
    /// Findings by place.
    pub findings: Vec<(String, Option<String>, String)>,
    /// Deviations and skips by place: step and reason.
    pub reasons: Vec<(String, String, String)>,
    /// Notes and troubles by place.
    pub notes: Vec<(String, String)>,
    /// Wanted in words, by place and what it is about.
    pub wanted_words: BTreeMap<(String, String), String>,
    /// Parts fitted, by place.
    pub fitted: Vec<(String, String, String)>,
    /// Timers.
    pub timers: BTreeMap<u32, RunningTimer>,
    /// The figure last worked out, with its unit.
    pub figure: Option<String>,
    /// The last thing kept, in the words of the record.
    pub last_kept: Option<String>,
}

/// Threadlocker on a joint.
#[derive(Debug, Clone, PartialEq)]
pub struct Locking {
    /// When it went on.
    pub at: Moment,
    /// Grade.
    pub grade: String,
    /// Open time, minutes.
    pub open: f64,
    /// Until it may be handled, minutes.
    pub handle: Option<f64>,
    /// Until it may be used, minutes.
    pub cure: Option<f64>,
}

/// A value kept.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// The event that brought it.
    pub event: String,
    /// The utterance.
    pub utterance: String,
    /// The place.
    pub place: String,
    /// When.
    pub at: Moment,
    /// The value.
    pub kept: Kept,
    /// Whether a later value corrected it.
    pub corrected: bool,
}

/// A timer.
#[derive(Debug, Clone, PartialEq)]
pub struct RunningTimer {
    /// What for.
    pub what: String,
    /// The place in hand as it was started: two units may wait for the same thing.
    pub place: Option<String>,
    /// The step in hand as it was started.
    pub step: Option<String>,
    /// When it ends.
    pub ends: Moment,
    /// Whether its end was told.
    pub told: bool,
}

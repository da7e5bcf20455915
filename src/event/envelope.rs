//! The envelope of an event: who, when, where, from which words, under which pack.

use super::Event;
use crate::act::Act;
use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};

/// The version of event that this program writes.
pub const VERSION: u32 = 1;

/// Globally unique id of an event (UUIDv7 from an injected source).
pub type EventId = String;
/// Globally unique id of an utterance: its events are one transaction.
pub type UtteranceId = String;
/// Globally unique id of a job; its spoken name is a short number.
pub type JobId = String;

/// What an utterance was, kept once with each of its events.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Utterance {
    /// Its id.
    pub id: UtteranceId,
    /// The words as they came; none for a tick, and none for a declined line.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub heard: Option<String>,
    /// What was understood.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub understood: Vec<Act>,
    /// Whether it came by ear; typed otherwise.
    #[serde(default)]
    pub ear: bool,
}

/// An event with everything the record must know about it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Envelope {
    /// Globally unique id.
    pub id: EventId,
    /// The bench that wrote it.
    pub bench: String,
    /// The job it belongs to.
    pub job: JobId,
    /// Its number within the job, from 1.
    pub sequence: u64,
    /// The utterance it came from.
    pub utterance: Utterance,
    /// Version of the event's form.
    pub version: u32,
    /// When, with the offset that the bench's clock had.
    pub at: DateTime<FixedOffset>,
    /// Who was working, where it was said.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub by: Option<String>,
    /// The place (one unit of one job) in hand.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub place: Option<String>,
    /// The step shown when it was said.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub step: Option<String>,
    /// Hash of the pack that the job is pinned to.
    pub pack: String,
    /// What happened.
    pub event: Event,
}

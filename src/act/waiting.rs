//! What the job waits for: the bench fills it, hearing reads it.

use super::{Act, End};
use serde::{Deserialize, Serialize};

/// The kind of entry that would close the step.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[expect(missing_docs, reason = "the names are the design's")]
pub enum WaitingFor {
    Done,
    YesOrNo,
    Torque,
    Clicks,
    Position,
    Turns,
    Length,
    Pressure,
    Temperature,
    Volume,
    Mass,
    Rate,
    Tool,
    Text,
    #[default]
    Nothing,
}

/// What the job waits for, and what would be plausible.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Waiting {
    /// The kind of entry.
    #[serde(rename = "waiting_for")]
    pub kind: WaitingFor,
    /// The part in hand.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub about: Option<String>,
    /// The value that would be expected, when there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub want: Option<Want>,
    /// The acts of the open question, when one is open.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub asked: Vec<Act>,
    /// Whether the line comes by ear; typed otherwise.
    pub ear: bool,
}

/// A value with its unit and end, as a limit or a wanted setting.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Want {
    /// The number.
    pub value: f64,
    /// Its unit.
    #[serde(default)]
    pub unit: Option<String>,
    /// Counted from.
    #[serde(default)]
    pub from: Option<End>,
}

//! The few events that jobs are found by. All others are opaque to the book.

use super::PlaceLine;
use crate::event::{Envelope, Event, Kept};

/// The role of a reading that names the unit.
const SERIAL: &str = "serial";

/// What an event marks.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Mark {
    /// The job was opened under a number.
    Opened(u32),
    /// A unit was put on the bench.
    Place {
        /// The place's id.
        id: String,
        /// What is known of it.
        line: PlaceLine,
    },
    /// The serial of the unit at the event's place, as it was given.
    Serial(String),
    /// The job was closed.
    Closed,
    /// The events of this utterance do not stand any more.
    TakenBack(String),
}

impl Mark {
    /// The mark of an event, if it is one of those that mark something.
    pub(super) fn of(envelope: &Envelope) -> Option<Self> {
        match &envelope.event {
            Event::JobOpened { number } => Some(Self::Opened(*number)),
            Event::PlaceOpened { place, unit, procedure, corner } => Some(Self::Place {
                id: place.clone(),
                line: PlaceLine {
                    unit: Some(unit.clone()),
                    procedure: Some(procedure.clone()),
                    corner: corner.map(|c| c.as_str().to_owned()),
                    serial: None,
                },
            }),
            Event::Reading(kept) | Event::Corrected { now: kept, .. } => serial(kept).map(Self::Serial),
            Event::JobClosed { .. } => Some(Self::Closed),
            Event::TakenBack { utterance } => Some(Self::TakenBack(utterance.clone())),
            _ => None,
        }
    }

    /// Its name in an index.
    pub(super) fn name(&self) -> &'static str {
        match self {
            Self::Opened(_) => "opened",
            Self::Place { .. } => "place",
            Self::Serial(_) => SERIAL,
            Self::Closed => "closed",
            Self::TakenBack(_) => "taken-back",
        }
    }

    /// What it is looked up by.
    pub(super) fn value(&self) -> String {
        match self {
            Self::Opened(number) => number.to_string(),
            Self::Place { id, .. } => id.clone(),
            Self::Serial(serial) => plain(serial),
            Self::Closed => String::new(),
            Self::TakenBack(utterance) => utterance.clone(),
        }
    }
}

/// The serial that a reading gives: its words, or the whole number that it is.
fn serial(kept: &Kept) -> Option<String> {
    if kept.role != SERIAL {
        return None;
    }
    kept.text.clone().or_else(|| kept.value.map(|v| format!("{v}")))
}

/// A serial as it is compared: letters and digits alone, in capitals (a space or a dash is not said).
pub(super) fn plain(serial: &str) -> String {
    serial.chars().filter(|c| c.is_alphanumeric()).flat_map(char::to_uppercase).collect()
}

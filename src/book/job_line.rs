//! One line about a job: what a list of jobs shows, and what finding one goes by.

use super::mark::Mark;
use crate::event::{Envelope, JobId};
use chrono::{DateTime, FixedOffset};
use std::collections::{BTreeMap, BTreeSet};

/// Which jobs are wanted.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Query {
    /// All of them.
    All,
    /// The one of this id.
    Job(JobId),
    /// The one of this spoken number.
    Number(u32),
    /// Those that this bench opened and that are not closed.
    OpenAt(String),
    /// Those that had the unit of this serial on the bench.
    Serial(String),
    /// The last one closed that had the unit of this serial on the bench.
    LastFinished(String),
}

/// A unit of a job.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct PlaceLine {
    /// Unit card.
    pub unit: Option<String>,
    /// Procedure.
    pub procedure: Option<String>,
    /// Corner, as spoken.
    pub corner: Option<String>,
    /// Serial, once it is known.
    pub serial: Option<String>,
}

/// What is known of a job without folding it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct JobLine {
    /// Its id.
    pub job: JobId,
    /// Its spoken number; 0 when its opening is not in the book.
    pub number: u32,
    /// The bench that opened it.
    pub bench: String,
    /// When its first event was.
    pub opened: DateTime<FixedOffset>,
    /// When its last event was.
    pub last: DateTime<FixedOffset>,
    /// When it was closed, if that stands.
    pub closed: Option<DateTime<FixedOffset>>,
    /// How many events it has.
    pub events: u64,
    /// Hash of the pack of its last event.
    pub pack: String,
    /// Its places by id.
    pub places: BTreeMap<String, PlaceLine>,
}

impl JobLine {
    /// Folds the marked events of a job (others do no harm), given its first and its last event.
    pub(super) fn fold(first: &Envelope, marked: &[Envelope], last: &Envelope) -> Self {
        let marks: Vec<(&Envelope, Mark)> = marked.iter().filter_map(|e| Some((e, Mark::of(e)?))).collect();
        let back: BTreeSet<&str> = marks
            .iter()
            .filter_map(|(_, m)| if let Mark::TakenBack(u) = m { Some(u.as_str()) } else { None })
            .collect();
        let mut line = Self::of(first, last);
        for (event, mark) in &marks {
            if !back.contains(event.utterance.id.as_str()) {
                line.take(event, mark);
            }
        }
        line
    }

    fn of(first: &Envelope, last: &Envelope) -> Self {
        Self {
            job: first.job.clone(),
            number: 0,
            bench: first.bench.clone(),
            opened: first.at,
            last: last.at,
            closed: None,
            events: last.sequence,
            pack: last.pack.clone(),
            places: BTreeMap::new(),
        }
    }

    fn take(&mut self, event: &Envelope, mark: &Mark) {
        match mark {
            Mark::Opened(number) => self.number = *number,
            Mark::Place { id, line } => {
                self.places.insert(id.clone(), line.clone());
            }
            Mark::Serial(serial) => {
                let place = event.place.clone().unwrap_or_default();
                self.places.entry(place).or_default().serial = Some(serial.clone());
            }
            Mark::Closed => self.closed = Some(event.at),
            Mark::TakenBack(_) => {}
        }
    }

    /// Whether the unit of this serial (as [`super::mark::plain`] writes it) was on the bench.
    pub(super) fn has(&self, serial: &str) -> bool {
        self.places.values().any(|p| p.serial.as_deref().is_some_and(|s| super::mark::plain(s) == serial))
    }

    /// Keeps the last one closed.
    pub(super) fn last_closed(lines: Vec<Self>) -> Vec<Self> {
        lines
            .into_iter()
            .filter(|l| l.closed.is_some())
            .max_by_key(|l| (l.closed, l.number))
            .into_iter()
            .collect()
    }
}

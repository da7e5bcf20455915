//! The time, handed in: the system's, or the one that the lines themselves carry.

use chrono::{DateTime, FixedOffset};
use std::sync::{Arc, Mutex, PoisonError};

/// A time with its offset.
pub type Moment = DateTime<FixedOffset>;

/// Where the time comes from.
pub trait Clock: Send {
    /// The time now.
    fn now(&self) -> Moment;

    /// Sets the time, where a line may; the system's clock takes no notice.
    fn set(&mut self, _at: Moment) {}

    /// Whether time goes on by itself, so that timers can run out between lines.
    fn runs(&self) -> bool {
        false
    }
}

/// The system's clock with the offset of its place.
#[derive(Debug, Clone, Copy, Default)]
pub struct SystemClock;

impl Clock for SystemClock {
    #[expect(clippy::disallowed_methods, reason = "the one place that asks the system for the time")]
    fn now(&self) -> Moment {
        chrono::Local::now().fixed_offset()
    }

    fn runs(&self) -> bool {
        true
    }
}

/// A clock that stands still until it is set. Clones share the time.
#[derive(Debug, Clone)]
pub struct LinesClock {
    now: Arc<Mutex<Moment>>,
}

impl LinesClock {
    /// A clock that stands at `start`.
    pub fn at(start: Moment) -> Self {
        Self { now: Arc::new(Mutex::new(start)) }
    }

    /// A clock that stands at the start of 2000 (UTC), for lines of which the first brings the time.
    pub fn unset() -> Self {
        Self::at(DateTime::from_timestamp(946_684_800, 0).unwrap_or_default().fixed_offset())
    }
}

impl Clock for LinesClock {
    fn now(&self) -> Moment {
        *self.now.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn set(&mut self, at: Moment) {
        *self.now.lock().unwrap_or_else(PoisonError::into_inner) = at;
    }
}

/// A time as a line gives it: RFC 3339, with or without its offset (UTC then), `T` or a space between.
pub fn read_time(text: &str) -> Option<Moment> {
    let text = text.trim();
    let spaced = text.replacen(' ', "T", 1);
    DateTime::parse_from_rfc3339(text)
        .or_else(|_| DateTime::parse_from_rfc3339(&spaced))
        .ok()
        .or_else(|| without_offset(&spaced))
}

fn without_offset(text: &str) -> Option<Moment> {
    let forms = ["%Y-%m-%dT%H:%M:%S%.f", "%Y-%m-%dT%H:%M"];
    let naive = forms.iter().find_map(|form| chrono::NaiveDateTime::parse_from_str(text, form).ok())?;
    Some(naive.and_utc().fixed_offset())
}

//! What the book's tests share: events made by hand, and a folder of their own.

use chrono::{DateTime, FixedOffset};
use sparehand::book::{Access, Book, SqliteBook};
use sparehand::event::{Envelope, Event, Kept, Utterance, VERSION, Verdict};
use std::path::PathBuf;

/// A folder that goes with the test, and where a book would stand in it.
pub struct Shelf {
    _folder: tempfile::TempDir,
    pub path: PathBuf,
}

pub fn shelf() -> Shelf {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("jobs.book");
    Shelf { _folder: folder, path }
}

impl Shelf {
    pub fn write(&self) -> SqliteBook {
        SqliteBook::open(&self.path, Access::Write, "bench-1").unwrap()
    }

    pub fn read(&self) -> SqliteBook {
        SqliteBook::open(&self.path, Access::Read, "").unwrap()
    }

    /// A file that goes with the book.
    pub fn beside(&self, ending: &str) -> PathBuf {
        PathBuf::from(format!("{}{ending}", self.path.display()))
    }
}

pub fn at(seconds: i64) -> DateTime<FixedOffset> {
    let offset = FixedOffset::east_opt(3600).unwrap();
    DateTime::from_timestamp(1_780_000_000 + seconds, 123_456_000).unwrap().with_timezone(&offset)
}

/// One event of a job: its id, utterance and time follow from its sequence.
pub fn event(job: &str, sequence: u64, event: Event) -> Envelope {
    Envelope {
        id: format!("{job}-e{sequence}"),
        bench: "bench-1".into(),
        job: job.into(),
        sequence,
        utterance: Utterance {
            id: format!("{job}-u{sequence}"),
            heard: Some(format!("line {sequence}")),
            understood: Vec::new(),
            ear: false,
        },
        version: VERSION,
        at: at(i64::try_from(sequence).unwrap()),
        by: Some("Ada".into()),
        place: Some("front-left".into()),
        step: None,
        pack: "pack-1".into(),
        event,
    }
}

/// The same event as another utterance's.
pub fn said_with(mut event: Envelope, utterance: &str) -> Envelope {
    event.utterance.id = utterance.into();
    event
}

pub fn opened(job: &str, number: u32) -> Envelope {
    event(job, 1, Event::JobOpened { number })
}

pub fn note(job: &str, sequence: u64) -> Envelope {
    event(job, sequence, Event::Noted { text: format!("note {sequence}") })
}

pub fn closed(job: &str, sequence: u64) -> Envelope {
    event(job, sequence, Event::JobClosed { open: Vec::new() })
}

pub fn back(job: &str, sequence: u64, utterance: &str) -> Envelope {
    event(job, sequence, Event::TakenBack { utterance: utterance.into() })
}

pub fn place(job: &str, sequence: u64) -> Envelope {
    let place = Event::PlaceOpened {
        place: "front-left".into(),
        unit: "birch-44".into(),
        procedure: "re-spring".into(),
        corner: None,
    };
    event(job, sequence, place)
}

/// A value reported in words, in the role given.
pub fn kept(role: &str, text: &str) -> Kept {
    Kept {
        step: None,
        about: None,
        role: role.into(),
        value: None,
        unit: None,
        text: Some(text.into()),
        said: None,
        said_unit: None,
        said_from: None,
        with_travel: None,
        lo: None,
        hi: None,
        verdict: Verdict::Free,
    }
}

pub fn serial(job: &str, sequence: u64, serial: &str) -> Envelope {
    event(job, sequence, Event::Reading(kept("serial", serial)))
}

/// A job of so many events, each an utterance's.
pub fn job(name: &str, number: u32, events: u64) -> Vec<Envelope> {
    let notes = (2..=events).map(|n| note(name, n));
    std::iter::once(opened(name, number)).chain(notes).collect()
}

pub fn keep(book: &mut dyn Book, events: &[Envelope]) {
    for event in events {
        book.append(std::slice::from_ref(event)).unwrap();
    }
}

/// A book as a killed console leaves it: its last lines are in its log only.
pub fn killed(events: &[Envelope]) -> Shelf {
    let (from, to) = (shelf(), shelf());
    let mut book = from.write();
    keep(&mut book, events);
    std::fs::copy(&from.path, &to.path).unwrap();
    std::fs::copy(from.beside("-wal"), to.beside("-wal")).unwrap();
    to
}

/// A book as a console that was closed leaves it.
pub fn settled(events: &[Envelope]) -> Shelf {
    let shelf = shelf();
    keep(&mut shelf.write(), events);
    shelf
}

//! One durable append of an utterance against one bare write and sync of the same disk, taken in turns.
//!
//! `cargo bench --bench append [-- FOLDER [COUNT]]`; the folder (the build's own unless given) says which disk.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::indexing_slicing, clippy::panic)]
#![allow(clippy::disallowed_methods, reason = "a measurement reads the clock")]

#[path = "../it/book_kit.rs"]
#[allow(dead_code)]
mod book_kit;

use book_kit::{event, kept, said_with};
use sparehand::book::{Access, Book, SqliteBook, Sync};
use sparehand::event::{Change, Envelope, Event, How, Moved};
use std::fs::{File, OpenOptions};
use std::io::Write;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

fn main() {
    let given: Vec<String> = std::env::args().skip(1).filter(|a| !a.starts_with("--")).collect();
    let folder = given.first().map_or_else(|| PathBuf::from(env!("CARGO_TARGET_TMPDIR")), PathBuf::from);
    let count = given.get(1).map_or(1000, |n| n.parse().expect("COUNT is a whole number"));
    let folder = tempfile::tempdir_in(folder).unwrap();
    let mut times = Times::default();
    let mut bench = Bench::new(folder.path());
    for n in 0..count {
        times.bare.push(timed(|| bench.bare()));
        times.append.push(timed(|| bench.append(n)));
        times.unsynced.push(timed(|| bench.unsynced(n)));
    }
    times.print();
    opening(folder.path());
}

/// Three writers on one disk.
struct Bench {
    file: File,
    book: SqliteBook,
    unsynced: SqliteBook,
}

impl Bench {
    fn new(folder: &Path) -> Self {
        let file = OpenOptions::new().create(true).append(true).open(folder.join("bare")).unwrap();
        let open =
            |name: &str, sync| SqliteBook::open_with(&folder.join(name), Access::Write, "b", sync).unwrap();
        Self { file, book: open("synced", Sync::Full), unsynced: open("unsynced", Sync::Off) }
    }

    /// As many bytes as the events' text has, at the end of a file, and a sync of its data.
    fn bare(&mut self) {
        self.file.write_all(&[b'x'; 1500]).unwrap();
        self.file.sync_data().unwrap();
    }

    fn append(&mut self, n: u64) {
        self.book.append(&utterance(n)).unwrap();
    }

    fn unsynced(&mut self, n: u64) {
        self.unsynced.append(&utterance(n)).unwrap();
    }
}

/// What "thirty two" makes at a torque step: a reading, the step done, the next one shown. Sixty to a job.
fn utterance(n: u64) -> [Envelope; 3] {
    let step = || "rebuild/tighten-foot-nut".to_owned();
    let moved = vec![Moved { about: "foot-nut".into(), change: Change::Tight { torque: true } }];
    let events = [
        Event::Reading(kept("torque", "thirty two")),
        Event::StepDone { step: step(), how: How::Value, moved },
        Event::Shown { step: step(), back: false },
    ];
    let (job, first) = (format!("job-{}", n / 60), (n % 60) * 3 + 1);
    let mut sequence = first;
    events.map(|e| {
        sequence += 1;
        said_with(event(&job, sequence - 1, e), &format!("{job}-u{first}"))
    })
}

fn timed(act: impl FnOnce()) -> Duration {
    let start = Instant::now();
    act();
    start.elapsed()
}

#[derive(Default)]
struct Times {
    bare: Vec<Duration>,
    append: Vec<Duration>,
    unsynced: Vec<Duration>,
}

impl Times {
    fn print(mut self) {
        println!("{:<28} {:>9} {:>9}   ({} of each, in turns)", "", "p50 ms", "p99 ms", self.bare.len());
        let bare = line("bare write and fdatasync", &mut self.bare);
        let append = line("durable append, 3 events", &mut self.append);
        line("the same with sync off", &mut self.unsynced);
        println!(
            "{:<28} {:>9.2} {:>9.2}   (goal 1.2)",
            "append / bare",
            append[0] / bare[0],
            append[1] / bare[1]
        );
    }
}

/// Prints and gives the middle and the 99th of a hundred, in milliseconds.
fn line(name: &str, times: &mut [Duration]) -> [f64; 2] {
    times.sort();
    let at = [50, 99].map(|p| times[(times.len() * p / 100).min(times.len() - 1)].as_secs_f64() * 1e3);
    println!("{name:<28} {:>9.3} {:>9.3}", at[0], at[1]);
    at
}

/// Opening a book for writing, by its size.
fn opening(folder: &Path) {
    println!("\n{:<28} {:>9} {:>9}", "opening for writing", "MiB", "ms");
    for utterances in [60, 1_000, 3_000, 10_000] {
        let path = folder.join(format!("sized-{utterances}"));
        let mut book = SqliteBook::open_with(&path, Access::Write, "b", Sync::Off).unwrap();
        (0..utterances).for_each(|n| book.append(&utterance(n)).unwrap());
        drop(book);
        let open = || timed(|| drop(SqliteBook::open(&path, Access::Write, "b").unwrap()));
        let best = (0..5).map(|_| open()).min().unwrap();
        let size = std::fs::metadata(&path).unwrap().len() as f64 / f64::from(1 << 20);
        println!("{:<28} {size:>9.2} {:>9.2}", format!("{utterances} utterances"), best.as_secs_f64() * 1e3);
    }
}

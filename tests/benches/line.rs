//! Line to reply without the disk: 10,000 lines of whole jobs against a book in memory, by stage.
//!
//! `cargo bench --bench line`. The lines are those of simulated technicians, who work whole jobs; each is then taken
//! through the stages of `session` one by one, and through a session as a whole.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    clippy::string_slice
)]
#![allow(clippy::disallowed_methods, reason = "a measurement reads the clock")]
#![allow(missing_docs, dead_code, unused_imports)]

#[path = "../it/technician/mod.rs"]
mod technician;

use sparehand::act::{Outcome, Waiting};
use sparehand::bench::state::{State, apply};
use sparehand::bench::{Input, Past, decide};
use sparehand::book::{Book, MemoryBook};
use sparehand::event::{Envelope, Event, Utterance, VERSION};
use sparehand::front::answer_json;
use sparehand::hearing;
use sparehand::reply::reply;
use sparehand::rulebase::Pack;
use sparehand::session::{Clock, Line, LinesClock, Rules, SeededIds, Session, Setup, Turn, read_time};
use std::sync::Arc;
use std::time::{Duration, Instant};
use technician::{Bench, Manner, Technician};

const LINES: usize = 10_000;
const BEGIN: &str = "start a re-spring on the birch 44, front left";

fn main() {
    let rules = Rules::new(Arc::new(Pack::built_in().unwrap()));
    // It is fitted once a process, before anybody speaks.
    rules.ear();
    let mut whole = Vec::new();
    let mut stages: [(&str, Vec<Duration>); 6] =
        ["hear", "decide", "word", "append", "apply", "hear to apply"].map(|name| (name, Vec::new()));
    let mut jobs = 0;
    for seed in 0.. {
        if whole.len() >= LINES {
            break;
        }
        let said = work(&rules, seed, &mut whole);
        by_stage(&rules, &said, &mut stages);
        jobs += 1;
    }
    println!("{} lines of {jobs} jobs, by ear and typed", whole.len());
    println!("{:<16} {:>10} {:>10} {:>10}", "stage", "p50", "p99", "most");
    row("line to reply", &mut whole);
    for (name, times) in &mut stages {
        row(name, times);
    }
}

fn row(name: &str, times: &mut [Duration]) {
    times.sort();
    let at = |share: f64| times[((times.len() - 1) as f64 * share) as usize];
    let micros = |time: Duration| format!("{:.0} us", time.as_secs_f64() * 1e6);
    println!("{name:<16} {:>10} {:>10} {:>10}", micros(at(0.5)), micros(at(0.99)), micros(at(1.0)));
}

/// A session as a whole, timed from the line to the reply.
struct Timed<'a> {
    session: Session,
    clock: LinesClock,
    times: &'a mut Vec<Duration>,
    opened: Turn,
}

impl Bench for Timed<'_> {
    fn opened(&mut self) -> serde_json::Value {
        answer_json(None, &self.opened)
    }

    fn say(&mut self, line: &str) -> Vec<serde_json::Value> {
        self.clock.set(self.clock.now() + chrono::Duration::seconds(30));
        let line = Line::new(line);
        let begun = Instant::now();
        let turns = self.session.line(&line);
        self.times.push(begun.elapsed());
        turns.iter().map(|turn| answer_json(Some(&line.said), turn)).collect()
    }

    fn reopen(&mut self) -> serde_json::Value {
        answer_json(None, &self.opened)
    }
}

fn work(rules: &Rules, seed: u64, times: &mut Vec<Duration>) -> Vec<String> {
    let ear = seed % 2 == 1;
    let clock = LinesClock::at(read_time("2026-03-02T08:00:00Z").unwrap());
    let (session, opened) = Session::open(Setup {
        rules: rules.clone(),
        book: Box::new(MemoryBook::new("bench")),
        clock: Box::new(clock.clone()),
        ids: Box::new(SeededIds::new(seed)),
        ear,
        by: None,
        job: None,
    })
    .unwrap();
    let mut technician = Technician::new(seed, Manner { ear, out: 5, other_unit: 10, between: 20 });
    // A job that comes to a stand is measured up to there.
    let _ = technician.work(&mut Timed { session, clock, times, opened }, BEGIN);
    technician.said
}

/// The same lines through the stages one by one.
fn by_stage(rules: &Rules, said: &[String], stages: &mut [(&str, Vec<Duration>); 6]) {
    let (pack, ear) = (rules.pack(), rules.ear());
    let mut now = read_time("2026-03-02T08:00:00Z").unwrap();
    let (mut state, mut book, mut waiting) = (State::default(), MemoryBook::new("bench"), Waiting::default());
    let past = Past { next_number: 1, last: None };
    let mut sequence = 0;
    for (count, words) in said.iter().enumerate() {
        now += chrono::Duration::seconds(30);
        let unit = state.place().map(|place| place.unit.clone());
        let mut clock = Stopwatch::new();
        let heard = ear.hear(&hearing::Line { said: words, unit: unit.as_deref(), waiting: &waiting });
        stages[0].1.push(clock.lap());
        let keep = heard.outcome != Outcome::Decline;
        let utterance = Utterance {
            id: format!("u{count}"),
            heard: keep.then(|| words.clone()),
            understood: heard.acts.clone(),
            ear: false,
        };
        let decision =
            decide(pack, &past, &state, &Input::Heard { utterance: utterance.clone(), heard }, now);
        stages[1].1.push(clock.lap());
        let worded = reply(&decision.answer, &decision.waiting);
        std::hint::black_box(&worded);
        stages[2].1.push(clock.lap());
        let envelopes = wrap(&decision.events, &utterance, &state, now, &mut sequence);
        book.append(&envelopes).unwrap();
        stages[3].1.push(clock.lap());
        for envelope in &envelopes {
            apply(&mut state, envelope);
        }
        stages[4].1.push(clock.lap());
        stages[5].1.push(clock.begun.elapsed());
        waiting = decision.waiting;
    }
}

struct Stopwatch {
    begun: Instant,
    last: Instant,
}

impl Stopwatch {
    fn new() -> Self {
        let now = Instant::now();
        Self { begun: now, last: now }
    }

    fn lap(&mut self) -> Duration {
        let now = Instant::now();
        let lap = now - self.last;
        self.last = now;
        lap
    }
}

fn wrap(
    events: &[Event],
    utterance: &Utterance,
    state: &State,
    at: chrono::DateTime<chrono::FixedOffset>,
    sequence: &mut u64,
) -> Vec<Envelope> {
    let mut place = state.progress.current.clone();
    let step = state.place().and_then(|place| place.cursor.clone());
    let wrap = |event: &Event| {
        *sequence += 1;
        if let Event::PlaceOpened { place: opened, .. } = event {
            place = Some(opened.clone());
        }
        Envelope {
            id: format!("e{sequence}"),
            bench: "bench".to_owned(),
            job: "job".to_owned(),
            sequence: *sequence,
            utterance: utterance.clone(),
            version: VERSION,
            at,
            by: None,
            place: place.clone(),
            step: step.clone(),
            pack: "pack".to_owned(),
            event: event.clone(),
        }
    };
    events.iter().map(wrap).collect()
}

//! Simulated technicians work whole jobs, typed and by ear; every figure of every log is then recomputed from the lines
//! that went in, by a checker that imports nothing of the program.

use super::checker;
use super::harness::{Call, RULES, START, folder};
use super::technician::{Bench, Manner, Process, Technician};
use serde_json::Value;
use sparehand::book::{Book, MemoryBook, Query};
use sparehand::front::{answer_json, log_of};
use sparehand::session::{Clock, Line, LinesClock, SeededIds, Session, Setup, Turn, read_time};
use std::collections::BTreeMap;

const BEGIN: &str = "start a re-spring on the birch 44, front left";

/// The bench as a library, on a book in memory; each line takes half a minute.
struct Library {
    session: Option<Session>,
    clock: LinesClock,
    openings: u64,
    ear: bool,
    first: Value,
}

impl Library {
    fn new(ear: bool) -> Self {
        let clock = LinesClock::at(read_time(START).unwrap());
        let mut bench = Self { session: None, clock, openings: 0, ear, first: Value::Null };
        bench.first = bench.open(Box::new(MemoryBook::new("test")));
        bench
    }

    fn open(&mut self, book: Box<dyn Book + Send>) -> Value {
        self.openings += 1;
        let (session, turn) = Session::open(Setup {
            rules: RULES.clone(),
            book,
            clock: Box::new(self.clock.clone()),
            ids: Box::new(SeededIds::new(self.openings)),
            ear: self.ear,
            by: None,
            job: None,
        })
        .unwrap();
        self.session = Some(session);
        answered(None, &turn)
    }
}

fn answered(line: Option<&str>, turn: &Turn) -> Value {
    assert!(turn.fault.is_none(), "{line:?}: {:?}", turn.fault);
    answer_json(line, turn)
}

impl Bench for Library {
    fn opened(&mut self) -> Value {
        self.first.clone()
    }

    fn say(&mut self, line: &str) -> Vec<Value> {
        self.clock.set(self.clock.now() + chrono::Duration::seconds(30));
        let turns = self.session.as_mut().unwrap().line(&Line::new(line));
        turns.iter().map(|turn| answered(Some(line), turn)).collect()
    }

    fn reopen(&mut self) -> Value {
        let book = self.session.take().unwrap().into_book();
        self.open(book)
    }
}

/// What happened in a job, each kind with how often.
pub type Happened = BTreeMap<String, usize>;

/// One job by one technician: what happened, or what is wrong with it.
pub fn job(begin: &str, seed: u64, manner: Manner) -> Result<Happened, String> {
    let mut bench = Library::new(manner.ear);
    let mut technician = Technician::new(seed, manner);
    technician.work(&mut bench, begin).map_err(|what| format!("seed {seed}, {manner:?}: {what}"))?;
    let book = bench.session.take().unwrap().into_book();
    let line = book.find(&Query::All).unwrap().remove(0);
    let log = log_of(book.as_ref(), &line).unwrap();
    let wrong = checker::check(&technician.said, &log);
    if wrong.is_empty() {
        return Ok(happened(&technician, &log));
    }
    Err(format!("seed {seed}: {}", wrong.join("\n")))
}

fn happened(technician: &Technician, log: &Value) -> Happened {
    let mut counts = Happened::from([("line".to_owned(), technician.said.len())]);
    let mut count = |what: &str| *counts.entry(what.to_owned()).or_default() += 1;
    for line in log["lines"].as_array().unwrap() {
        count(line["kind"].as_str().unwrap());
        if line["how"] == "ahead" {
            count("ahead");
        }
        if line["verdict"] == "out" {
            count("out of limits");
        }
        if line["said_unit"].is_string() {
            count("other unit");
        }
    }
    counts
}

/// How the technician of that seed goes about it.
pub fn manner(seed: u64) -> Manner {
    let ear = seed % 2 == 1;
    match seed % 5 {
        0 => Manner { ear, out: 0, other_unit: 0, between: 0 },
        1 => Manner { ear, out: 15, other_unit: 0, between: 0 },
        2 => Manner { ear, out: 0, other_unit: 60, between: 0 },
        3 => Manner { ear, out: 0, other_unit: 0, between: 30 },
        _ => Manner { ear, out: 10, other_unit: 20, between: 20 },
    }
}

#[test]
fn a_hundred_technicians_finish_their_jobs_and_every_figure_holds() {
    let came: Vec<_> = (0..100).map(|seed| job(BEGIN, seed, manner(seed))).collect();
    let failed: Vec<&String> = came.iter().filter_map(|one| one.as_ref().err()).collect();
    assert!(failed.is_empty(), "{} of {} failed; the first:\n{}", failed.len(), came.len(), failed[0]);
    let mut all = Happened::new();
    for (what, times) in came.into_iter().flatten().flatten() {
        *all.entry(what).or_default() += times;
    }
    println!("100 jobs: {all:?}");
    // A technician that does nothing out of the ordinary would prove little.
    for what in [
        "out of limits",
        "other unit",
        "ahead",
        "answered",
        "taken-back",
        "paused",
        "resumed",
        "taken-up",
        "wanted",
        "deviated",
        "step-failed",
        "finding",
        "noted",
    ] {
        assert!(all.get(what).is_some_and(|times| *times > 0), "no {what} in {all:?}");
    }
}

#[test]
fn the_program_itself_is_worked_through_its_pipe() {
    for seed in [4, 9] {
        let home = folder();
        let mut bench =
            Process::start(env!("CARGO_BIN_EXE_sparehand"), home.path().to_owned(), manner(seed).ear);
        let mut technician = Technician::new(seed, manner(seed));
        technician.work(&mut bench, BEGIN).unwrap();
        bench.end();
        let log = Call::within(&home, &["log", "1", "--json", "--book", "book.sqlite"])
            .run()
            .code(0)
            .json()
            .remove(0);
        assert_eq!(checker::check(&technician.said, &log), Vec::<String>::new());
        assert!(log["closed"].is_string());
    }
}

#[test]
#[ignore = "for looking at one job: SEED=28 cargo test one_job -- --ignored --nocapture"]
fn one_job() {
    let seed = std::env::var("SEED").unwrap().parse().unwrap();
    let mut bench = Library::new(manner(seed).ear);
    let mut technician = Technician::new(seed, manner(seed));
    let begin = std::env::var("BEGIN").unwrap_or_else(|_| BEGIN.to_owned());
    let ended = technician.work(&mut bench, &begin);
    for line in &technician.heard {
        println!("{line}");
    }
    println!("{ended:?}");
}

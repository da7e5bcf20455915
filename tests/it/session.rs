//! The session: which job is taken up, under which rules, in whose name; and what it does when something fails.

use super::harness::{Bench, PACK, RULES, START};
use sparehand::book::{Book, BookError, Customer, Files, JobLine, MemoryBook, Query, Survey};
use sparehand::event::Envelope;
use sparehand::rulebase::Pack;
use sparehand::session::{Fault, Line, LinesClock, Rules, SeededIds, Session, Setup, guarded, read_time};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicU8, Ordering};

const BEGIN: &str = "start a re-spring on the birch 44, front left";
const ANOTHER: &str = "start a re-spring on the birch 44, front right";

fn setup(book: Box<dyn Book + Send>, seed: u64) -> Setup {
    Setup {
        rules: RULES.clone(),
        book,
        clock: Box::new(LinesClock::at(read_time(START).unwrap())),
        ids: Box::new(SeededIds::new(seed)),
        ear: false,
        by: None,
        job: None,
    }
}

/// A book with two open jobs, as two benches' worth of work would leave it.
fn two_open() -> Box<dyn Book + Send> {
    // While it is hidden, the second session does not see the first one's job, and so begins another.
    let hidden = Arc::new(AtomicBool::new(true));
    let inner = MemoryBook::new("test");
    let mut book: Box<dyn Book + Send> = Box::new(Hidden { inner, hidden: Arc::clone(&hidden) });
    for seed in [1, 2] {
        let (mut session, _) = Session::open(setup(book, seed)).unwrap();
        assert!(session.line(&Line::new(BEGIN))[0].fault.is_none());
        book = session.into_book();
    }
    hidden.store(false, Ordering::SeqCst);
    book
}

#[test]
fn several_open_jobs_are_asked_about_and_the_number_says_which() {
    let (mut session, turn) = Session::open(setup(two_open(), 9)).unwrap();
    assert!(turn.reply.say.contains("front left"), "{}", turn.reply.say);
    assert!(turn.events.is_empty());
    let turn = session.line(&Line::new("which way")).remove(0);
    assert!(turn.reply.say.contains("front left") && turn.events.is_empty());
    let turn = session.line(&Line::new("job two")).remove(0);
    assert_eq!(session.state().progress.number, 2, "{}", turn.reply.say);
    assert_eq!(turn.step.as_deref(), Some("book-in/record-customer"));
}

#[test]
fn a_job_named_by_the_call_is_taken_up() {
    let (session, _) = Session::open(Setup { job: Some(1), ..setup(two_open(), 9) }).unwrap();
    assert_eq!(session.state().progress.number, 1);
    let missing = Session::open(Setup { job: Some(7), ..setup(two_open(), 9) }).err().unwrap();
    assert_eq!(missing.exit_code(), 2);
}

#[test]
fn a_new_job_may_be_started_while_several_are_asked_about() {
    let (mut session, _) = Session::open(setup(two_open(), 9)).unwrap();
    session.line(&Line::new(ANOTHER));
    assert_eq!(session.state().progress.number, 3);
}

fn edited() -> Rules {
    let mut files = PACK.files().clone();
    let step = "Say whose strut it is.";
    for text in files.values_mut() {
        *text = text.replace(step, "Say who owns this strut.");
    }
    let pack = Pack::from_files(files).unwrap();
    assert_ne!(pack.hash(), PACK.hash());
    Rules::new(Arc::new(pack))
}

#[test]
fn a_job_keeps_the_pack_it_began_with_and_a_newer_one_is_offered() {
    let bench = Bench::typed().say(&[BEGIN]).hears("Say whose strut it is");
    let before = bench.session.state().progress.clone();
    let bench = bench.reopened(&edited()).hears("newer rules").hears("Say whose strut it is");
    assert_eq!(bench.session.state().progress, before);
    assert_eq!(bench.session.pack().hash(), PACK.hash());
    let pinned = bench.last[0].events.iter().all(|event| event.pack == PACK.hash());
    assert!(pinned, "what is kept rests on the pinned pack");
    bench.reopened(&RULES).say(&["say that again"]).hears("Say whose strut it is");
}

#[test]
fn the_name_of_the_call_stands_in_the_record_until_another_is_said() {
    let (mut session, _) =
        Session::open(Setup { by: Some("Ann".to_owned()), ..setup(Box::new(MemoryBook::new("test")), 1) })
            .unwrap();
    let turn = session.line(&Line::new(BEGIN)).remove(0);
    assert!(turn.events.iter().all(|event| event.by.as_deref() == Some("Ann")));
    assert_eq!(session.state().progress.person, "Ann");
    // The next session is another's.
    let (session, turn) =
        Session::open(Setup { by: Some("Ben".to_owned()), ..setup(session.into_book(), 2) }).unwrap();
    assert!(turn.events.iter().all(|event| event.by.as_deref() == Some("Ben")), "{:?}", turn.events);
    assert_eq!(session.state().progress.person, "Ben");
}

const BOOKED_IN: [&str; 8] = [
    BEGIN,
    "Plover team",
    "saloon 17",
    "B44 0071",
    "it knocks",
    "120 hours",
    "none",
    "70 newtons per millimetre",
];

#[test]
fn a_timer_is_told_once() {
    let bench = Bench::typed().say(&BOOKED_IN).say(&["start a timer for ten minutes"]).after(9);
    assert!(bench.last.is_empty());
    let bench = bench.after(1).hears("time is up").after(5);
    assert!(bench.last.is_empty(), "told once");
}

#[test]
fn values_by_ear_are_said_back_and_typed_ones_are_not() {
    let typed = Bench::typed().say(&BOOKED_IN).say(&["fourteen clicks"]);
    assert!(!typed.said().contains("ourteen"), "{}", typed.said());
    Bench::typed().say(&BOOKED_IN).by_ear().say(&["fourteen clicks"]).hears("fourteen");
}

#[test]
fn every_event_says_where_it_belongs() {
    let bench = Bench::typed().say(&[BEGIN, "Plover team"]);
    let turn = &bench.last[0];
    assert!(turn.events.iter().all(|event| event.place.as_deref() == Some("front-left")));
    assert_eq!(turn.events[0].step.as_deref(), Some("book-in/record-customer"));
    let job = bench.session.job().unwrap().to_owned();
    let events = bench.session.into_book().since(&job, 0).unwrap();
    let numbers: Vec<u64> = events.iter().map(|event| event.sequence).collect();
    assert_eq!(numbers, (1..=events.len() as u64).collect::<Vec<_>>());
}

#[test]
fn a_fault_within_a_line_leaves_nothing_and_the_bench_goes_on() {
    let trouble = Arc::new(AtomicU8::new(0));
    let book = Troubled { inner: MemoryBook::new("test"), trouble: Arc::clone(&trouble) };
    let (mut session, _) = Session::open(setup(Box::new(book), 1)).unwrap();
    session.line(&Line::new(BEGIN));
    let before = (session.state().progress.clone(), session.state().events.len(), session.waiting().clone());
    for (kind, code) in [(PANIC, 4), (FULL, 3)] {
        trouble.store(kind, Ordering::SeqCst);
        let turn = session.line(&Line::new("Plover team")).remove(0);
        assert_eq!(turn.fault.as_ref().map(Fault::exit_code), Some(code));
        assert!(turn.events.is_empty() && turn.reply.say.contains("Not kept"), "{}", turn.reply.say);
        let after =
            (session.state().progress.clone(), session.state().events.len(), session.waiting().clone());
        assert_eq!(after, before);
    }
    trouble.store(0, Ordering::SeqCst);
    let turn = session.line(&Line::new("Plover team")).remove(0);
    assert!(turn.fault.is_none() && !turn.events.is_empty());
}

#[test]
fn a_fault_is_caught_with_its_words() {
    let caught = guarded(|| -> () { panic!("so") }).unwrap_err();
    assert!(caught.contains("so"), "{caught}");
    assert_eq!(guarded(|| 5), Ok(5));
}

const PANIC: u8 = 1;
const FULL: u8 = 2;

/// A book that fails when it is told to.
struct Troubled {
    inner: MemoryBook,
    trouble: Arc<AtomicU8>,
}

/// A book whose open jobs are not seen while it is hidden.
struct Hidden {
    inner: MemoryBook,
    hidden: Arc<AtomicBool>,
}

macro_rules! handed_on {
    () => {
        fn bench(&self) -> &str {
            self.inner.bench()
        }
        fn since(&self, job: &str, sequence: u64) -> Result<Vec<Envelope>, BookError> {
            self.inner.since(job, sequence)
        }
        fn next_job_number(&self) -> Result<u32, BookError> {
            self.inner.next_job_number()
        }
        fn keep_pack(&mut self, hash: &str, files: &Files) -> Result<(), BookError> {
            self.inner.keep_pack(hash, files)
        }
        fn pack(&self, hash: &str) -> Result<Option<Files>, BookError> {
            self.inner.pack(hash)
        }
        fn put_customer(&mut self, customer: &Customer) -> Result<(), BookError> {
            self.inner.put_customer(customer)
        }
        fn customer(&self, id: &str) -> Result<Option<Customer>, BookError> {
            self.inner.customer(id)
        }
        fn customers(&self) -> Result<Vec<Customer>, BookError> {
            self.inner.customers()
        }
        fn forget_customer(&mut self, id: &str) -> Result<bool, BookError> {
            self.inner.forget_customer(id)
        }
        fn verify(&self) -> Result<Survey, BookError> {
            self.inner.verify()
        }
    };
}

impl Book for Troubled {
    handed_on!();

    fn append(&mut self, events: &[Envelope]) -> Result<(), BookError> {
        match self.trouble.load(Ordering::SeqCst) {
            PANIC => panic!("a fault of ours"),
            FULL => Err(BookError::Full { book: "test".into() }),
            _ => self.inner.append(events),
        }
    }

    fn find(&self, query: &Query) -> Result<Vec<JobLine>, BookError> {
        self.inner.find(query)
    }
}

impl Book for Hidden {
    handed_on!();

    fn append(&mut self, events: &[Envelope]) -> Result<(), BookError> {
        self.inner.append(events)
    }

    fn find(&self, query: &Query) -> Result<Vec<JobLine>, BookError> {
        let hidden = self.hidden.load(Ordering::SeqCst);
        if hidden && matches!(query, Query::OpenAt(_)) { Ok(Vec::new()) } else { self.inner.find(query) }
    }
}

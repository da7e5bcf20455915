//! Damage is told from an end cut short, never read as truth, and never written over.

use crate::book_kit::{Shelf, event, job, keep, killed, said_with, settled, shelf};
use sparehand::book::{Access, Book, BookError, Customer, MemoryBook, Query, SqliteBook};
use sparehand::event::{Envelope, Event};
use std::fs;
use std::path::Path;

/// What a book tells of itself, or why not.
#[derive(Debug, PartialEq)]
struct Told {
    events: Vec<Vec<Envelope>>,
    customers: Vec<Customer>,
    torn: bool,
}

fn tell(path: &Path) -> Result<Told, BookError> {
    let book = SqliteBook::open(path, Access::Write, "other")?;
    book.verify()?;
    let jobs = book.find(&Query::All)?;
    let events = jobs.iter().map(|j| book.since(&j.job, 0)).collect::<Result<_, _>>()?;
    Ok(Told { events, customers: book.customers()?, torn: book.torn() })
}

fn flip(path: &Path, at: usize, bit: u8) {
    let mut bytes = fs::read(path).unwrap();
    bytes[at] ^= 1 << bit;
    fs::write(path, bytes).unwrap();
}

fn cut(path: &Path, length: u64) {
    fs::OpenOptions::new().write(true).open(path).unwrap().set_len(length).unwrap();
}

/// A copy of a book and its log.
fn copy(of: &Shelf) -> Shelf {
    let copy = shelf();
    fs::copy(&of.path, &copy.path).unwrap();
    if of.beside("-wal").exists() {
        fs::copy(of.beside("-wal"), copy.beside("-wal")).unwrap();
    }
    copy
}

fn with_customer() -> Shelf {
    let shelf = settled(&[job("a", 1, 12), job("b", 2, 5)].concat());
    let details = [("phone".to_owned(), "012".to_owned())].into();
    shelf.write().put_customer(&Customer { id: "c".into(), name: "Plover".into(), details }).unwrap();
    shelf
}

/// Whether a refusal says damage in one of the ways that damage can look.
fn is_damage(error: &BookError) -> bool {
    matches!(error, BookError::Damaged { .. } | BookError::NotABook { .. } | BookError::Newer { .. })
}

#[test]
fn a_flipped_bit_in_the_book_is_refused_or_changes_nothing() {
    let whole = with_customer();
    let told = tell(&whole.path).unwrap();
    let size = fs::metadata(&whole.path).unwrap().len() as usize;
    let (mut refused, mut harmless) = (0, 0);
    for at in (0..100).chain((100..size).step_by(211)) {
        let hurt = copy(&whole);
        flip(&hurt.path, at, (at % 8) as u8);
        let before = fs::read(&hurt.path).unwrap();
        match tell(&hurt.path) {
            Ok(same) => {
                assert_eq!(same, told, "byte {at}");
                harmless += 1;
            }
            Err(error) => {
                assert!(is_damage(&error), "byte {at}: {error}");
                assert!(fs::read(&hurt.path).unwrap() == before, "byte {at}: it was written to");
                refused += 1;
            }
        }
    }
    // Most of a small book is unused room; there damage does no harm.
    assert!(refused > 20 && harmless > 20, "{refused} refused, {harmless} harmless");
}

#[test]
fn a_flipped_bit_in_the_log_is_refused_or_costs_at_most_the_last_line_and_says_so() {
    let events = job("a", 1, 8);
    let whole = killed(&events);
    let size = fs::metadata(whole.beside("-wal")).unwrap().len() as usize;
    let (mut refused, mut torn) = (0, 0);
    for at in (0..60).chain((60..size).step_by(509)) {
        let hurt = copy(&whole);
        flip(&hurt.beside("-wal"), at, (at % 8) as u8);
        match tell(&hurt.path) {
            Ok(told) if told.torn => {
                assert_eq!(told.events, [&events[..7]], "byte {at}");
                torn += 1;
            }
            Ok(told) => assert_eq!(told.events, [&events[..]], "byte {at}"),
            Err(error) => {
                assert!(matches!(error, BookError::Damaged { .. }), "byte {at}: {error}");
                refused += 1;
            }
        }
    }
    assert!(refused > 20 && torn > 2, "{refused} refused, {torn} torn");
}

#[test]
fn a_log_cut_short_keeps_every_line_before_the_cut() {
    let events = job("a", 1, 6);
    let whole = killed(&events);
    let size = fs::metadata(whole.beside("-wal")).unwrap().len();
    let mut lengths = Vec::new();
    for length in (0..size).step_by(1021) {
        let hurt = copy(&whole);
        cut(&hurt.beside("-wal"), length);
        let told = tell(&hurt.path).unwrap();
        let kept = told.events.first().map_or(0, Vec::len);
        assert_eq!(told.events.concat(), events[..kept], "cut at {length}");
        lengths.push(kept);
    }
    assert!(lengths.is_sorted() && lengths.first() == Some(&0) && lengths.last() >= Some(&5), "{lengths:?}");
}

#[test]
fn a_book_cut_short_is_refused_and_left_as_it_is() {
    let whole = with_customer();
    let size = fs::metadata(&whole.path).unwrap().len();
    for length in (0..size).step_by(997) {
        let hurt = copy(&whole);
        cut(&hurt.path, length);
        let before = fs::read(&hurt.path).unwrap();
        let error = tell(&hurt.path).unwrap_err();
        assert!(is_damage(&error), "cut at {length}: {error}");
        assert!(fs::read(&hurt.path).unwrap() == before, "cut at {length}: it was written to");
    }
}

#[test]
fn a_log_whose_book_is_gone_is_not_taken_for_a_new_book() {
    let shelf = killed(&job("a", 1, 3));
    fs::remove_file(&shelf.path).unwrap();
    let error = SqliteBook::open(&shelf.path, Access::Write, "b").unwrap_err();
    assert!(matches!(error, BookError::Damaged { .. }), "{error}");
    assert!(!shelf.path.exists());
}

#[test]
fn a_killed_consoles_book_reads_whole() {
    let events = job("a", 1, 6);
    let told = tell(&killed(&events).path).unwrap();
    assert_eq!((told.events, told.torn), (vec![events], false));
}

#[test]
fn a_book_too_large_to_be_checked_at_each_opening_is_still_not_read_past_its_end() {
    let shelf = shelf();
    let mut book = shelf.write();
    let text = "long ".repeat(2000);
    let long = (2..=700).map(|n| said_with(event("a", n, Event::Noted { text: text.clone() }), "u"));
    book.append(&[vec![said_with(crate::book_kit::opened("a", 1), "u")], long.collect()].concat()).unwrap();
    drop(book);
    let size = fs::metadata(&shelf.path).unwrap().len();
    assert!(size > 6 << 20, "{size}");
    cut(&shelf.path, size - 4096);
    let error = tell(&shelf.path).unwrap_err();
    assert!(matches!(error, BookError::Damaged { .. }), "{error}");
}

/// Changes a settled book by hand, as no program of ours would.
fn change(path: &Path, sql: &str) {
    rusqlite::Connection::open(path).unwrap().execute_batch(sql).unwrap();
}

#[test]
fn a_record_that_was_changed_lost_or_moved_is_told_with_its_place_and_what_still_reads() {
    let cases = [
        (
            "UPDATE event SET body = replace(body, 'note 3', 'note 8') WHERE job = 'a'",
            "event 3 of job a is not as",
        ),
        ("DELETE FROM event WHERE job = 'a' AND sequence = 3", "event 4 of job a stands alone"),
        ("DELETE FROM event WHERE job = 'a' AND sequence = 12", "event 12 of job a is missing"),
        ("DELETE FROM event WHERE job = 'a' AND sequence = 1", "event 2 of job a stands alone"),
        ("DELETE FROM event WHERE job = 'a'", "event 1 of job a is missing"),
        ("DELETE FROM head WHERE job = 'a'", "job a has events and no head"),
        (
            "UPDATE event SET sequence = 99 WHERE job = 'a' AND sequence = 3;
             UPDATE event SET sequence = 3 WHERE job = 'a' AND sequence = 4;
             UPDATE event SET sequence = 4 WHERE job = 'a' AND sequence = 99",
            "event 3 of job a is not as",
        ),
        ("UPDATE head SET sum = zeroblob(32) WHERE job = 'a'", "is not the one that the job ended with"),
        ("UPDATE event SET mark = NULL WHERE job = 'a' AND sequence = 1", "listed as what it is not"),
        ("UPDATE head SET maybe_open = 0 WHERE job = 'a'", "the head of job a differs"),
    ];
    for (sql, place) in cases {
        let shelf = with_customer();
        change(&shelf.path, sql);
        let error = shelf.read().verify().unwrap_err();
        let BookError::Damaged { place: found, reads: Some(reads), .. } = &error else {
            panic!("{sql}: {error}")
        };
        assert!(found.contains(place), "{sql}: {found}");
        assert_eq!((reads.jobs, reads.events), (1, 5), "{sql}");
        assert_eq!(shelf.read().since("b", 0).unwrap().len(), 5, "{sql}: the other job reads");
    }
}

#[test]
fn a_gap_is_found_from_wherever_a_job_is_read() {
    let shelf = with_customer();
    change(&shelf.path, "DELETE FROM event WHERE job = 'a' AND sequence = 6");
    let book = shelf.read();
    for from in 0..=6 {
        assert!(matches!(book.since("a", from), Err(BookError::Damaged { .. })), "since {from}");
    }
    assert_eq!(book.since("a", 7).unwrap().len(), 5);
}

#[test]
fn a_customers_record_and_a_pack_that_were_changed_are_told() {
    let shelf = with_customer();
    shelf.write().keep_pack("h", &[("a".to_owned(), "b".to_owned())].into()).unwrap();
    change(
        &shelf.path,
        "UPDATE customer SET body = replace(body, '012', '013'); UPDATE pack SET files = '{}'",
    );
    let book = shelf.read();
    assert!(book.customer("c").unwrap_err().to_string().contains("customer c is not as it was written"));
    assert!(book.pack("h").unwrap_err().to_string().contains("pack h is not as it was written"));
}

#[test]
fn a_forgotten_customer_is_nowhere_in_the_files() {
    let shelf = shelf();
    let mut book = shelf.write();
    keep(&mut book, &job("a", 1, 3));
    let details = [("phone".to_owned(), "0123-unmistakable".to_owned())].into();
    book.put_customer(&Customer { id: "c".into(), name: "Plover".into(), details }).unwrap();
    let holds = || {
        let log = fs::read(shelf.beside("-wal")).unwrap();
        let all = [fs::read(&shelf.path).unwrap(), log].concat();
        all.windows(17).any(|w| w == b"0123-unmistakable")
    };
    assert!(holds());
    book.forget_customer("c").unwrap();
    assert!(!holds());
}

#[test]
fn the_book_in_memory_counts_too() {
    let mut book = MemoryBook::new("b");
    keep(&mut book, &job("a", 1, 3));
    assert_eq!(book.verify().unwrap().to_string(), "1 job with 3 events");
}

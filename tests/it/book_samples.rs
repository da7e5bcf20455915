//! Books as each released form wrote them, read for ever. `tests/books/vN/` holds the file and what is in it.

use crate::book_kit::{back, closed, event, keep, kept, note, opened, place, said_with, serial, shelf};
use sparehand::book::{Access, Book, Customer, Files, Query, SqliteBook, export, import};
use sparehand::event::{Change, Event, How, Kept, Moved, Verdict};
use std::fs;
use std::path::{Path, PathBuf};

fn samples() -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/books");
    let mut all: Vec<PathBuf> = fs::read_dir(folder).unwrap().map(|e| e.unwrap().path()).collect();
    all.sort();
    all
}

/// A sample, copied so that reading cannot touch it.
fn copied(sample: &Path) -> crate::book_kit::Shelf {
    let shelf = shelf();
    fs::copy(sample.join("jobs.book"), &shelf.path).unwrap();
    shelf
}

#[test]
fn there_is_a_sample_of_every_released_form() {
    let names: Vec<String> =
        samples().iter().map(|s| s.file_name().unwrap().to_string_lossy().into_owned()).collect();
    let released: Vec<String> = (1..=sparehand::event::VERSION).map(|n| format!("v{n}")).collect();
    assert_eq!(names, released);
}

/// Both are read as the present form: the book by its rows, the lines beside it one by one.
#[test]
fn every_released_book_verifies_and_holds_the_events_that_are_written_down_beside_it() {
    for sample in samples() {
        let shelf = copied(&sample);
        let book = shelf.read();
        let lines = fs::read(sample.join("export.jsonl")).unwrap();
        let beside = import(&mut lines.as_slice()).unwrap();
        let jobs = book.find(&Query::All).unwrap();
        let events: Vec<_> = jobs.iter().flat_map(|j| book.since(&j.job, 0).unwrap()).collect();
        assert_eq!(events, beside.utterances.concat(), "{}", sample.display());
        assert_eq!(book.verify().unwrap().events, events.len());
        for (hash, files) in beside.packs {
            assert_eq!(book.pack(&hash).unwrap(), Some(files));
        }
    }
}

#[test]
fn a_released_book_is_gone_on_with() {
    for sample in samples() {
        let shelf = copied(&sample);
        let mut book = SqliteBook::open(&shelf.path, Access::Write, "other").unwrap();
        let open = book.find(&Query::OpenAt(book.bench().to_owned())).unwrap().remove(0);
        keep(&mut book, &[note(&open.job, open.events + 1)]);
        book.verify().unwrap();
    }
}

#[test]
fn the_first_form_holds_what_its_maker_remembers() {
    let shelf = copied(&samples()[0]);
    let book = shelf.read();
    let last = book.find(&Query::LastFinished("TL 0417".into())).unwrap().remove(0);
    assert_eq!((last.number, last.closed.is_some()), (1, true));
    assert_eq!(book.customer("customer-1").unwrap().unwrap().name, "Plover team");
    assert_eq!(book.pack("pack-1").unwrap().unwrap()["pack.yaml"], "name: demo\nformat: 1\n");
}

/// Every kind of thing that form 1 can say.
fn form_1(path: &Path) {
    let mut book = SqliteBook::open(path, Access::Write, "bench-1").unwrap();
    let torque = Kept {
        step: Some("rebuild/tighten-foot-nut".into()),
        about: Some("foot-nut".into()),
        value: Some(32.5),
        unit: Some("N.m".into()),
        text: None,
        lo: Some(30.0),
        hi: Some(34.0),
        verdict: Verdict::Within,
        ..kept("torque", "")
    };
    let moved = Moved { about: "foot-nut".into(), change: Change::Tight { torque: true } };
    let done =
        Event::StepDone { step: "rebuild/tighten-foot-nut".into(), how: How::Value, moved: vec![moved] };
    keep(&mut book, &[opened("a", 1), place("a", 2), serial("a", 3, "TL 0417")]);
    book.append(&[
        said_with(event("a", 4, Event::Reading(torque)), "a-u4"),
        said_with(event("a", 5, done), "a-u4"),
    ])
    .unwrap();
    keep(&mut book, &[note("a", 6), back("a", 7, "a-u6"), closed("a", 8), opened("b", 2), note("b", 2)]);
    book.keep_pack("pack-1", &Files::from([("pack.yaml".into(), "name: demo\nformat: 1\n".into())])).unwrap();
    book.put_customer(&Customer { id: "customer-1".into(), name: "Plover team".into(), details: [].into() })
        .unwrap();
}

#[test]
#[ignore = "writes the sample of the present form: run by hand, once, before a form is released"]
fn write_the_present_form() {
    let folder =
        Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("tests/books/v{}", sparehand::event::VERSION));
    let shelf = shelf();
    form_1(&shelf.path);
    fs::create_dir_all(&folder).unwrap();
    fs::copy(&shelf.path, folder.join("jobs.book")).unwrap();
    let mut out = Vec::new();
    export(&shelf.read(), &mut out).unwrap();
    fs::write(folder.join("export.jsonl"), out).unwrap();
}

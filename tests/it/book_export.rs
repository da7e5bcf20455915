//! The open form: what goes out comes in again, and what is not whole is told by its line.

use crate::book_kit::{job, keep, said_with, shelf};
use sparehand::book::{Book, Files, MemoryBook, export, import};

fn book() -> MemoryBook {
    let mut book = MemoryBook::new("bench-1");
    keep(&mut book, &[job("a", 1, 4), job("b", 2, 2)].concat());
    let both = [said_with(crate::book_kit::note("a", 5), "u"), said_with(crate::book_kit::note("a", 6), "u")];
    book.append(&both).unwrap();
    book.keep_pack("pack-1", &Files::from([("pack.yaml".to_owned(), "name: demo\n".to_owned())])).unwrap();
    book
}

fn exported(book: &dyn Book) -> String {
    let mut out = Vec::new();
    export(book, &mut out).unwrap();
    String::from_utf8(out).unwrap()
}

#[test]
fn an_export_appended_to_an_empty_book_gives_the_same_book() {
    let text = exported(&book());
    let read = import(&mut text.as_bytes()).unwrap();
    let shelf = shelf();
    let mut again = shelf.write();
    read.packs.iter().try_for_each(|(hash, files)| again.keep_pack(hash, files)).unwrap();
    read.utterances.iter().try_for_each(|events| again.append(events)).unwrap();
    assert_eq!(read.bench, "bench-1");
    assert_eq!(exported(&again), text);
    assert_eq!(again.verify().unwrap().events, 8);
}

#[test]
fn every_line_of_an_export_is_json_and_an_event_is_as_it_was_kept() {
    let text = exported(&book());
    let lines: Vec<serde_json::Value> = text.lines().map(|l| serde_json::from_str(l).unwrap()).collect();
    assert_eq!(lines[0], serde_json::json!({"export": 1, "bench": "bench-1"}));
    assert_eq!(lines[1]["files"]["pack.yaml"], "name: demo\n");
    assert_eq!(lines[2]["event"]["kind"], "job-opened");
    assert_eq!(lines.last().unwrap()["end"], 10);
}

#[test]
fn an_export_that_was_cut_changed_or_reordered_is_refused_with_its_line() {
    let text = exported(&book());
    let lines: Vec<&str> = text.lines().collect();
    let with = |change: &dyn Fn(&mut Vec<&str>)| {
        let mut lines = lines.clone();
        change(&mut lines);
        lines.join("\n")
    };
    let changed = text.replace("note 3", "note 4");
    let cases = [
        (with(&|l| l.truncate(6)), "line 7 of the export: the end is missing"),
        (
            with(&|l| {
                l.remove(0);
            }),
            "line 1 of the export: an export begins with its head",
        ),
        (
            with(&|l| {
                l.remove(3);
            }),
            "line 4 of the export: event 3 of job a, 2 expected",
        ),
        (with(&|l| l.swap(3, 4)), "line 4 of the export: event 3 of job a, 2 expected"),
        (
            with(&|l| {
                l.remove(l.len() - 2);
            }),
            "9 lines before the end, and it says 10",
        ),
        (with(&|l| l.push("{}")), "line 12 of the export: there is more after the end"),
        (with(&|l| l[4] = "{"), "line 5 of the export: event cannot be read"),
        (with(&|l| l[0] = r#"{"export":9,"bench":"b"}"#), "of form 9, and this program reads up to form 1"),
        (changed, "their sum differs"),
        (String::new(), "line 1 of the export: the end is missing"),
    ];
    for (text, said) in cases {
        let error = import(&mut text.as_bytes()).unwrap_err().to_string();
        assert!(error.contains(said), "{error}\nexpected: {said}");
    }
}

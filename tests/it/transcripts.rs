//! Every transcript under `transcripts-demo/` runs, says what is written, holds its `must` lines, and gives its state back
//! from the reopened book.

use super::harness::{RULES, data};
use sparehand::front::transcript::{Kind, Must, Transcript, run, updated};
use std::fs;

#[test]
fn demo_transcripts_hold() {
    let mut broken = Vec::new();
    for entry in fs::read_dir(data("transcripts-demo")).into_iter().flatten() {
        let path = entry.unwrap().path();
        if path.extension().is_none_or(|ext| ext != "txt") {
            continue;
        }
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        let transcript = Transcript::parse(&name, &fs::read_to_string(&path).unwrap()).unwrap();
        let outcome = run(&transcript, &RULES).unwrap();
        if !outcome.holds() {
            broken.push(outcome.report(&name));
        }
    }
    assert!(broken.is_empty(), "{}", broken.join("\n"));
}

const TEXT: &str = "\
# A comment.
clock: 2026-03-02 08:00 +01:00
lines: by ear
answers: both

> start a re-spring on the birch 44, front left
< old
must: front left; 44
must not: rear
must keep: nothing
at +5 min
at 09:30
kill
reopen
";

#[test]
fn a_transcript_is_read_line_by_line() {
    let read = Transcript::parse("t", TEXT).unwrap();
    assert!(read.head.ear);
    assert_eq!(read.head.clock.to_rfc3339(), "2026-03-02T08:00:00+01:00");
    let kinds: Vec<&Kind> =
        read.items.iter().map(|item| &item.kind).filter(|kind| **kind != Kind::Quiet).collect();
    assert_eq!(kinds.len(), 9);
    assert_eq!(kinds[0], &Kind::Said("start a re-spring on the birch 44, front left".to_owned()));
    assert_eq!(kinds[2], &Kind::Must(Must::Hold(vec!["front left".to_owned(), "44".to_owned()])));
    let Kind::At(at) = kinds[6] else { panic!("{kinds:?}") };
    assert_eq!(at.to_rfc3339(), "2026-03-02T09:30:00+01:00");
}

#[test]
fn what_is_no_line_of_a_transcript_is_named_with_its_place() {
    let problems = Transcript::parse("t", "clock: soon\nsay what\nat noon\n").unwrap_err();
    let places: Vec<u32> = problems.iter().map(|problem| problem.place.line).collect();
    assert_eq!(places, [1, 2, 3, 1]);
}

#[test]
fn musts_are_whole_words() {
    // "14" is not in "140", nor "clockwise" in "anticlockwise".
    let text = "clock: 2026-03-02 08:00 +00:00\n> note 140 anticlockwise\nmust: 14\nmust: clockwise\n";
    let read = Transcript::parse("t", text).unwrap();
    let outcome = run(&read, &RULES).unwrap();
    assert_eq!(outcome.broken.len(), 2, "{}", outcome.report("t"));
}

#[test]
fn updating_twice_changes_nothing_more() {
    let read = Transcript::parse("t", TEXT).unwrap();
    let once = updated(&read, &run(&read, &RULES).unwrap());
    let again = Transcript::parse("t", &once).unwrap();
    let outcome = run(&again, &RULES).unwrap();
    assert!(outcome.differs.is_empty(), "{}", outcome.report("t"));
    assert_eq!(updated(&again, &outcome), once);
    assert!(once.contains("must not: rear\n") && once.contains("# A comment.\n"));
}

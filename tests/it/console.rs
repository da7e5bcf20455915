//! The console fed from a pipe: both sides of the conversation are printed. What only a terminal shows is held by
//! `scripts/terminal-check`.

use super::harness::{Call, folder, sparehand};

const BEGIN: &str = "start a re-spring on the birch 44, front left";

#[test]
fn it_echoes_what_it_heard_and_shows_the_answer() {
    let came = sparehand(&[]).lines(&[BEGIN, "", "  Plover \x07 team "]).run().code(0);
    let lines: Vec<&str> = came.stdout.lines().filter(|line| line.starts_with('>')).collect();
    assert_eq!(lines, [format!("> {BEGIN}").as_str(), "> Plover team"], "control codes are not echoed");
    let begun = came.stdout.split(&format!("> {BEGIN}\n")).nth(1).unwrap();
    assert!(begun.contains("Say whose strut it is."), "{begun}");
}

#[test]
fn the_end_of_its_input_leaves_the_job_open() {
    let home = folder();
    Call::within(&home, &["--book", "b"]).lines(&[BEGIN]).run().code(0);
    Call::within(&home, &["--book", "b"]).lines(&[]).run().code(0).holds("Say whose strut it is.");
    Call::within(&home, &["jobs", "--book", "b"]).run().code(0).holds("open");
}

#[test]
fn a_line_too_long_is_said_and_the_rest_go_on() {
    let long = "x".repeat(20_000);
    sparehand(&[]).lines(&[&long, BEGIN]).run().code(2).holds("shorter").holds("Say whose strut it is.");
}

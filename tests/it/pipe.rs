//! `pipe`: its JSON, its clock, its notices, and what it does with input that is no line.

use super::harness::{Call, folder, sparehand};
use serde_json::{Value, json};

const BEGIN: &str = "start a re-spring on the birch 44, front left";
/// Up to a step that waits for a count: what is said on the steps before is taken down as it is said.
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
const KEYS: [&str; 12] =
    ["in", "heard", "outcome", "acts", "say", "show", "waiting_for", "about", "place", "step", "events", ""];

#[test]
fn each_line_gets_one_object_with_the_fields_of_the_design() {
    let came =
        sparehand(&["pipe", "--json", "--typed"]).lines(&[BEGIN, "Plover team", "which way"]).run().code(0);
    let said = came.json();
    let of_lines: Vec<&Value> = said.iter().filter(|object| !object["in"].is_null()).collect();
    assert_eq!(
        of_lines.iter().map(|object| object["in"].as_str().unwrap()).collect::<Vec<_>>(),
        [BEGIN, "Plover team", "which way"]
    );
    for object in &said {
        for key in KEYS.iter().filter(|key| !key.is_empty()) {
            assert!(object.get(key).is_some(), "no {key} in {object}");
        }
    }
    assert_eq!(of_lines[0]["outcome"], "take");
    assert_eq!(of_lines[0]["acts"][0]["act"], "start");
    assert!(!of_lines[0]["events"].as_array().unwrap().is_empty());
    let kinds =
        |at: usize| of_lines[at]["events"].as_array().unwrap().iter().map(|event| event["kind"].clone());
    assert!(kinds(1).any(|kind| kind == "step-done"));
    assert!(kinds(2).all(|kind| kind == "answered"), "a question moves nothing");
}

#[test]
fn nothing_of_chatter_is_kept() {
    let home = folder();
    let lines: Vec<&str> = BOOKED_IN.into_iter().chain(["the zebra crossing was shut all sunday"]).collect();
    let came =
        Call::within(&home, &["pipe", "--json", "--typed", "--book", "b"]).lines(&lines).run().code(0).json();
    assert_eq!(came.last().unwrap()["outcome"], "decline");
    assert_eq!(came.last().unwrap()["events"], json!([]));
    let book = std::fs::read(home.path().join("b")).unwrap();
    let log = std::fs::read(home.path().join("b-wal")).unwrap_or_default();
    assert!(!String::from_utf8_lossy(&[book, log].concat()).contains("zebra"));
}

#[test]
fn the_end_of_the_input_leaves_the_job_open_and_the_next_run_takes_it_up() {
    let home = folder();
    let args = ["pipe", "--json", "--typed", "--book", "b"];
    let first = Call::within(&home, &args).lines(&[BEGIN]).run().code(0).json();
    let again = Call::within(&home, &args).lines(&[]).run().code(0).json();
    assert_eq!(again.len(), 1);
    assert!(again[0]["in"].is_null());
    for key in ["place", "step", "waiting_for", "about"] {
        assert_eq!(again[0][key], first.last().unwrap()[key], "{key}");
    }
    Call::within(&home, &["jobs", "--book", "b"]).run().code(0).holds("open");
}

#[test]
fn the_clock_of_the_lines_is_the_clock_of_the_record() {
    let home = folder();
    let args = ["pipe", "--json", "--typed", "--clock", "lines", "--book", "b"];
    let begin = json!({"said": BEGIN, "at": "2026-03-02T09:00:00+01:00"}).to_string();
    let note = json!({"said": "note it knocks", "at": "2026-03-02T09:30:00+01:00"}).to_string();
    Call::within(&home, &args).lines(&[&begin, &note]).run().code(0);
    let log = Call::within(&home, &["log", "1", "--json", "--book", "b"]).run().code(0).json();
    assert_eq!(log[0]["opened"], "2026-03-02T09:00:00+01:00");
    assert_eq!(log[0]["minutes"], 30.0);
    Call::within(&home, &["log", "1", "--book", "b"]).run().code(0).holds("09:30:00  ").holds("it knocks");
}

#[test]
fn a_timer_is_told_unasked_before_the_next_line_and_once() {
    let args = ["pipe", "--json", "--typed", "--clock", "lines"];
    let line = |said: &str, at: &str| json!({"said": said, "at": format!("2026-03-02T{at}:00Z")}).to_string();
    let begin = BOOKED_IN.map(|said| line(said, "08:00"));
    let rest = [
        line("start a timer for ten minutes", "08:01"),
        line("note it knocks", "08:05"),
        line("note it leaks", "08:12"),
        line("note it squeaks", "08:20"),
    ];
    let lines = [&begin[..], &rest].concat();
    let lines: Vec<&str> = lines.iter().map(String::as_str).collect();
    let came = sparehand(&args).lines(&lines).run().code(0).json();
    let order: Vec<&str> = came
        .iter()
        .skip(1 + BOOKED_IN.len())
        .map(|object| object["in"].as_str().unwrap_or("(unasked)"))
        .collect();
    assert_eq!(
        order,
        ["start a timer for ten minutes", "note it knocks", "(unasked)", "note it leaks", "note it squeaks"]
    );
}

#[test]
fn a_timer_is_told_while_nobody_speaks() {
    // The system's clock: a timer of one second, and an input that stays open longer.
    use std::io::{BufRead, BufReader, Write};
    use std::process::{Command, Stdio};
    let home = folder();
    let mut child = Command::new(env!("CARGO_BIN_EXE_sparehand"))
        .args(["pipe", "--json", "--typed", "--book", "b"])
        .current_dir(home.path())
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let mut input = child.stdin.take().unwrap();
    writeln!(input, "{}\nstart a timer for one second", BOOKED_IN.join("\n")).unwrap();
    let out = BufReader::new(child.stdout.take().unwrap());
    let (to, from) = std::sync::mpsc::channel();
    std::thread::spawn(move || out.lines().map_while(Result::ok).all(|line| to.send(line).is_ok()));
    let read = || {
        let line = from.recv_timeout(std::time::Duration::from_secs(20)).expect("told within 20 s");
        serde_json::from_str::<Value>(&line).unwrap()
    };
    while read()["in"] != "start a timer for one second" {}
    let told = read();
    assert!(told["in"].is_null(), "{told}");
    assert_eq!(told["events"][0]["kind"], "timer-told");
    drop(input);
    assert!(child.wait().unwrap().success());
}

/// What comes of the last line, on a step that waits for a count of clicks.
fn at_the_clicks(line: &Value) -> Value {
    let line = line.to_string();
    let lines: Vec<&str> = BOOKED_IN.into_iter().chain([line.as_str()]).collect();
    sparehand(&["pipe", "--json", "--typed"]).lines(&lines).run().code(0).json().pop().unwrap()
}

#[test]
fn an_unsure_ear_does_not_change_the_job() {
    assert_eq!(at_the_clicks(&json!({"said": "fourteen clicks", "sure": 0.95}))["outcome"], "take");
    let unsure = at_the_clicks(&json!({"said": "fourteen clicks", "sure": 0.1}));
    assert_eq!(unsure["outcome"], "ask");
    assert!(unsure["events"].as_array().unwrap().iter().all(|event| event["kind"] == "opened"), "{unsure}");
    // A question changes nothing, and is answered all the same.
    assert_eq!(at_the_clicks(&json!({"said": "which way", "sure": 0.1}))["outcome"], "take");
}

#[test]
fn two_ways_of_hearing_a_change_are_asked_back() {
    let asked = at_the_clicks(&json!({"said": "fourteen clicks", "sure": 0.9, "or": ["four clicks"]}));
    assert_eq!(asked["outcome"], "ask");
    let values: Vec<&Value> =
        asked["between"].as_array().unwrap().iter().map(|act| &act["slots"]["value"]).collect();
    assert_eq!(values, [14.0, 4.0]);
    assert!(asked["say"].as_str().unwrap().contains("fourteen"), "{}", asked["say"]);
    // The same heard twice is one.
    let same = at_the_clicks(&json!({"said": "fourteen clicks", "or": [{"said": "14 clicks"}, "um"]}));
    assert_eq!(same["outcome"], "take");
}

#[test]
fn a_line_of_json_that_is_none_is_said_and_the_rest_go_on() {
    let came = sparehand(&["pipe", "--json"]).lines(&["{\"said\": 3}", "{", "help"]).run().code(2);
    assert_eq!(came.json().last().unwrap()["in"], "help");
    assert_eq!(came.json().last().unwrap()["outcome"], "take");
}

#[test]
fn off_a_terminal_there_are_no_escape_codes() {
    for args in [&["pipe"][..], &[], &["pipe", "--json"]] {
        let came = sparehand(args).lines(&[BEGIN, "help", "what can go wrong", "which way"]).run().code(0);
        assert!(!came.stdout.contains('\x1b'), "{}", came.stdout);
    }
}

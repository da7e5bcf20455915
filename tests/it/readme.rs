//! The README holds: its excerpt stands in the demo transcript, its commands run, and what it says can be said is heard.

use super::harness::{data, folder};
use serde_json::{Value, json};
use std::fs;
use std::io::Write;
use std::path::Path;
use std::process::{Command, Stdio};

fn readme() -> String {
    fs::read_to_string(data("README.md")).unwrap()
}

/// The lines of every fenced block of that kind.
fn fenced(kind: &str) -> Vec<Vec<String>> {
    let text = readme();
    let opens = format!("```{kind}\n");
    let blocks: Vec<&str> =
        text.split(&opens).skip(1).map(|rest| rest.split("```").next().unwrap()).collect();
    blocks.iter().map(|block| block.lines().map(str::to_owned).collect()).collect()
}

#[test]
fn the_excerpt_is_of_the_demo_job() {
    let transcript = fs::read_to_string(data("transcripts-demo/whole-job.txt")).unwrap();
    let blocks = fenced("text");
    let excerpt: Vec<&String> =
        blocks.first().unwrap().iter().filter(|line| !line.is_empty() && line.as_str() != "...").collect();
    assert!(excerpt.len() >= 10, "an excerpt of {} lines", excerpt.len());
    let mut lines = transcript.lines();
    for wanted in excerpt {
        assert!(lines.any(|line| line == wanted), "not in the transcript, or not in this order: {wanted}");
    }
}

#[test]
fn the_job_stands_in_one_paragraph_at_the_top() {
    let text = readme();
    let first = text.split("\n\n").nth(1).unwrap();
    assert!(first.contains("from booking in to hand-over"), "{first}");
    assert!(!first.starts_with('#') && first.split_whitespace().count() < 150, "{first}");
}

#[test]
fn the_commands_run() {
    let (home, program) = (folder(), Path::new(env!("CARGO_BIN_EXE_sparehand")));
    let path =
        format!("{}:{}", program.parent().unwrap().display(), std::env::var("PATH").unwrap_or_default());
    let commands: Vec<String> = fenced("sh").concat();
    assert!(commands.len() >= 5, "{commands:?}");
    for command in commands.iter().filter(|line| !line.trim().is_empty()) {
        let came = Command::new("sh")
            .args(["-c", command])
            .current_dir(home.path())
            .env_clear()
            .env("PATH", &path)
            .env("HOME", home.path())
            .stdin(Stdio::null())
            .output()
            .unwrap();
        let said = String::from_utf8_lossy(&came.stderr);
        assert!(came.status.success(), "{command}: {:?}\n{said}", came.status);
        assert!(!came.stdout.is_empty() || command.contains("pack copy"), "{command} prints nothing");
    }
}

/// Where a line may be said: what is waited for, and the part in hand.
const MOMENTS: [(&str, &str); 7] = [
    ("done", "foot-nut"),
    ("yes_or_no", "foot-nut"),
    ("torque", "foot-nut"),
    ("clicks", "slow-rebound"),
    ("turns", "preload"),
    ("text", "shaft-seal"),
    ("nothing", ""),
];

#[test]
fn what_can_be_said_is_heard() {
    let text = readme();
    let table = text.split("## What you can say").nth(1).unwrap().split("\n## ").next().unwrap();
    let said: Vec<&str> = table.split('"').skip(1).step_by(2).collect();
    assert!(said.len() > 30, "{said:?}");
    for phrase in &said {
        let phrase = phrase.replace("...", "the boot is torn");
        let heard = hear(&phrase);
        assert!(heard.iter().any(|heard| heard["outcome"] == "take"), "{phrase}: {heard:?}");
    }
}

/// What a line is taken for at each of the moments.
fn hear(phrase: &str) -> Vec<Value> {
    let mut child = Command::new(env!("CARGO_BIN_EXE_sparehand"))
        .arg("hear")
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let mut input = child.stdin.take().unwrap();
    for (waits, about) in MOMENTS {
        let line = json!({"said": phrase, "unit": "birch-44", "waiting_for": waits, "about": about});
        writeln!(input, "{line}").unwrap();
    }
    drop(input);
    let came = child.wait_with_output().unwrap();
    String::from_utf8_lossy(&came.stdout).lines().map(|line| serde_json::from_str(line).unwrap()).collect()
}

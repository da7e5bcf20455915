//! The real program as a bench: `pipe --json --clock lines`, one line at a time.

use super::Bench;
use serde_json::{Value, json};
use std::io::{BufRead, BufReader, Write};
use std::path::PathBuf;
use std::process::{Child, ChildStdin, Command, Stdio};
use std::sync::mpsc::{Receiver, channel};
use std::time::Duration;

/// The program with its pipes.
pub struct Process {
    program: PathBuf,
    folder: PathBuf,
    ear: bool,
    running: Option<(Child, ChildStdin, Receiver<String>)>,
    first: Value,
    minutes: i64,
}

/// How long an answer may take before the test gives up on it.
const PATIENCE: Duration = Duration::from_secs(30);

impl Process {
    /// Starts it on a book in that folder.
    pub fn start(program: &str, folder: PathBuf, ear: bool) -> Self {
        let (program, first) = (PathBuf::from(program), Value::Null);
        let mut process = Self { program, folder, ear, running: None, first, minutes: 0 };
        process.first = process.open();
        process
    }

    fn open(&mut self) -> Value {
        let mut command = Command::new(&self.program);
        command.args(["pipe", "--json", "--clock", "lines", "--book"]).arg(self.folder.join("book.sqlite"));
        if !self.ear {
            command.arg("--typed");
        }
        command.stdin(Stdio::piped()).stdout(Stdio::piped());
        let mut child = command.spawn().unwrap();
        let input = child.stdin.take().unwrap();
        let output = BufReader::new(child.stdout.take().unwrap());
        let (to, from) = channel();
        std::thread::spawn(move || output.lines().map_while(Result::ok).all(|line| to.send(line).is_ok()));
        self.running = Some((child, input, from));
        self.read()
    }

    fn read(&self) -> Value {
        let (_, _, from) = self.running.as_ref().unwrap();
        serde_json::from_str(&from.recv_timeout(PATIENCE).expect("an answer")).unwrap()
    }

    /// Ends the input; the program ends in peace.
    pub fn end(&mut self) {
        let (mut child, input, _) = self.running.take().unwrap();
        drop(input);
        assert!(child.wait().unwrap().success());
    }
}

impl Bench for Process {
    fn opened(&mut self) -> Value {
        self.first.clone()
    }

    fn say(&mut self, line: &str) -> Vec<Value> {
        self.minutes += 1;
        let start = chrono::DateTime::parse_from_rfc3339("2026-03-02T08:00:00+00:00").unwrap();
        let at = start + chrono::Duration::minutes(self.minutes);
        let sent = json!({"said": line, "at": at.to_rfc3339()});
        let (_, input, _) = self.running.as_mut().unwrap();
        writeln!(input, "{sent}").unwrap();
        let mut answers = vec![self.read()];
        while answers.last().unwrap()["in"].is_null() {
            answers.push(self.read());
        }
        answers
    }

    fn reopen(&mut self) -> Value {
        self.end();
        self.open()
    }
}

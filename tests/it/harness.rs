//! The harness: a folder of its own, the real program with a pinned clock, exact output; and the bench as a library
//! on a book in memory, for most cases.

use sparehand::book::{Book, MemoryBook};
use sparehand::rulebase::Pack;
use sparehand::session::{Clock, Line, LinesClock, Rules, SeededIds, Session, Setup, Turn, read_time};
use std::io::{Read, Write};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::{Arc, LazyLock};
use std::thread;
use std::time::{Duration, Instant};
use tempfile::TempDir;

/// The built-in rules, loaded once.
pub static PACK: LazyLock<Arc<Pack>> =
    LazyLock::new(|| Arc::new(Pack::built_in().expect("the built-in pack")));

/// The same with one ear for all.
pub static RULES: LazyLock<Rules> = LazyLock::new(|| Rules::new(Arc::clone(&PACK)));

/// When every test begins, unless it says otherwise.
pub const START: &str = "2026-03-02T08:00:00+00:00";

/// A call of the real program, in a folder of its own.
pub struct Call {
    folder: Arc<TempDir>,
    args: Vec<String>,
    stdin: Vec<u8>,
    /// Address space in KiB, when it is bounded.
    memory: Option<u64>,
    close_output: bool,
    env: Vec<(String, String)>,
}

/// What came of a call.
pub struct Came {
    pub code: i32,
    pub stdout: String,
    pub stderr: String,
    pub took: Duration,
}

/// A call in a new folder.
pub fn sparehand(args: &[&str]) -> Call {
    Call::within(&Arc::new(TempDir::new().unwrap()), args)
}

impl Call {
    /// A call in a folder that others use too.
    pub fn within(folder: &Arc<TempDir>, args: &[&str]) -> Self {
        let args = args.iter().map(|arg| (*arg).to_owned()).collect();
        let (stdin, env) = (Vec::new(), Vec::new());
        Self { folder: Arc::clone(folder), args, stdin, memory: None, close_output: false, env }
    }

    /// Lines to standard input.
    pub fn lines(mut self, lines: &[&str]) -> Self {
        for line in lines {
            self.stdin.extend_from_slice(line.as_bytes());
            self.stdin.push(b'\n');
        }
        self
    }

    /// Bytes to standard input.
    pub fn bytes(mut self, bytes: Vec<u8>) -> Self {
        self.stdin = bytes;
        self
    }

    /// Bounds the address space, in MiB.
    pub fn memory(mut self, mib: u64) -> Self {
        self.memory = Some(mib * 1024);
        self
    }

    /// Closes its output after the first byte.
    pub fn output_closed(mut self) -> Self {
        self.close_output = true;
        self
    }

    /// Sets a variable of the environment.
    pub fn env(mut self, name: &str, value: &str) -> Self {
        self.env.push((name.to_owned(), value.to_owned()));
        self
    }

    fn command(&self) -> Command {
        let program = env!("CARGO_BIN_EXE_sparehand");
        let mut command = match self.memory {
            Some(kib) => {
                let mut shell = Command::new("sh");
                shell.args(["-c", &format!("ulimit -v {kib}; exec \"$0\" \"$@\""), program]);
                shell
            }
            None => Command::new(program),
        };
        let home = self.folder.path();
        command.args(&self.args).current_dir(home).env_clear();
        command.env("PATH", std::env::var_os("PATH").unwrap_or_default());
        command
            .env("HOME", home)
            .env("XDG_DATA_HOME", home.join("data"))
            .env("XDG_STATE_HOME", home.join("state"));
        command.envs(self.env.iter().map(|(name, value)| (name, value)));
        command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped());
        command
    }

    /// Runs it. A call that hangs is killed after a minute, and the test fails.
    pub fn run(self) -> Came {
        let begun = Instant::now();
        let mut child = self.command().spawn().unwrap();
        let mut input = child.stdin.take().unwrap();
        let bytes = self.stdin.clone();
        // A program that ends early closes its input: what is left unread does not matter.
        let feeder = thread::spawn(move || drop(input.write_all(&bytes)));
        let mut output = child.stdout.take().unwrap();
        let close = self.close_output;
        let reader = thread::spawn(move || read_all(&mut output, close));
        let mut errors = child.stderr.take().unwrap();
        let complaints = thread::spawn(move || read_all(&mut errors, false));
        let status = loop {
            if let Some(status) = child.try_wait().unwrap() {
                break status;
            }
            if begun.elapsed() > Duration::from_secs(60) {
                child.kill().unwrap();
                panic!("`sparehand {}` does not end", self.args.join(" "));
            }
            thread::sleep(Duration::from_millis(2));
        };
        let took = begun.elapsed();
        feeder.join().unwrap();
        let (stdout, stderr) = (reader.join().unwrap(), complaints.join().unwrap());
        Came { code: status.code().unwrap_or(-1), stdout, stderr, took }
    }
}

fn read_all(from: &mut impl Read, close: bool) -> String {
    let mut bytes = Vec::new();
    if close {
        let mut first = [0];
        let _ = from.read(&mut first);
    } else {
        from.read_to_end(&mut bytes).unwrap();
    }
    String::from_utf8_lossy(&bytes).into_owned()
}

impl Came {
    /// It ended with this code, and without a fault of ours on standard error.
    #[track_caller]
    pub fn code(self, code: i32) -> Self {
        assert_eq!(self.code, code, "\nstdout:\n{}\nstderr:\n{}", self.stdout, self.stderr);
        assert!(!self.stderr.contains("panicked"), "{}", self.stderr);
        self
    }

    /// Its output is this, to the byte.
    #[track_caller]
    pub fn stdout(self, text: &str) -> Self {
        assert_eq!(self.stdout, text, "\nstderr:\n{}", self.stderr);
        self
    }

    /// Its output holds this.
    #[track_caller]
    pub fn holds(self, text: &str) -> Self {
        assert!(self.stdout.contains(text), "no `{text}` in\n{}\nstderr:\n{}", self.stdout, self.stderr);
        self
    }

    /// Its standard error holds this.
    #[track_caller]
    pub fn complains(self, text: &str) -> Self {
        assert!(self.stderr.contains(text), "no `{text}` in\n{}", self.stderr);
        self
    }

    /// Its output as JSON, one value a line.
    #[track_caller]
    pub fn json(&self) -> Vec<serde_json::Value> {
        self.stdout
            .lines()
            .map(|line| serde_json::from_str(line).unwrap_or_else(|e| panic!("{e}: {line}")))
            .collect()
    }
}

/// A folder that several calls share.
pub fn folder() -> Arc<TempDir> {
    Arc::new(TempDir::new().unwrap())
}

/// Where test data lies.
pub fn data(under: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(under)
}

/// The bench as a library, on a book in memory, its clock pinned.
pub struct Bench {
    pub session: Session,
    clock: LinesClock,
    opened: u64,
    ear: bool,
    pub last: Vec<Turn>,
}

impl Bench {
    /// A bench that is typed at.
    pub fn typed() -> Self {
        Self::new(false)
    }

    /// The same bench, reopened by somebody who speaks.
    pub fn by_ear(mut self) -> Self {
        self.ear = true;
        self.reopened(&RULES)
    }

    fn new(ear: bool) -> Self {
        let clock = LinesClock::at(read_time(START).unwrap());
        let (session, turn) = open(Box::new(MemoryBook::new("test")), &clock, 1, ear, &RULES);
        Self { session, clock, opened: 1, ear, last: vec![turn] }
    }

    /// Says lines, one after the other.
    pub fn say(mut self, lines: &[&str]) -> Self {
        for line in lines {
            self.clock.set(self.clock.now() + chrono::Duration::seconds(10));
            self.last = self.session.line(&Line::new(*line));
        }
        self
    }

    /// Lets time pass.
    pub fn after(mut self, minutes: i64) -> Self {
        self.clock.set(self.clock.now() + chrono::Duration::minutes(minutes));
        self.last = self.session.tick().into_iter().collect();
        self
    }

    /// Drops the bench where it stands and opens it anew on the same book, under these rules.
    pub fn reopened(self, rules: &Rules) -> Self {
        let opened = self.opened + 1;
        let (session, turn) = open(self.session.into_book(), &self.clock, opened, self.ear, rules);
        Self { session, clock: self.clock, opened, ear: self.ear, last: vec![turn] }
    }

    /// The last answer, spoken.
    pub fn said(&self) -> String {
        self.last.iter().map(|turn| turn.reply.say.as_str()).collect::<Vec<_>>().join("\n")
    }

    /// The last answer, shown.
    pub fn shown(&self) -> String {
        self.last.iter().map(|turn| turn.reply.show.as_str()).collect::<Vec<_>>().join("\n")
    }

    /// The last answer holds this, spoken or shown.
    #[track_caller]
    pub fn hears(self, text: &str) -> Self {
        let both = format!("{}\n{}", self.said(), self.shown());
        assert!(both.to_lowercase().contains(&text.to_lowercase()), "no `{text}` in\n{both}");
        self
    }
}

fn open(
    book: Box<dyn Book + Send>,
    clock: &LinesClock,
    seed: u64,
    ear: bool,
    rules: &Rules,
) -> (Session, Turn) {
    Session::open(Setup {
        rules: rules.clone(),
        book,
        clock: Box::new(clock.clone()),
        ids: Box::new(SeededIds::new(seed)),
        ear,
        by: None,
        job: None,
    })
    .unwrap()
}

//! Hostile input: each folder under `tests/hostile/` is a case, answered within 2 seconds and 200 MB, with the exit code
//! of the table, no fault of ours on standard error, and a book that verifies afterwards.
//!
//! A case has a file `case` of lines `key: value`:
//!   args: ...        the call, split at blanks; `{case}` is the case's folder, `{book}` the book
//!   stdin: NAME      a file of the case fed to it; or `make: ...` for what is too large to keep:
//!   make: N BYTES    the escaped bytes, N times (`\n`, `\t`, `\xNN`, `\\`)
//!   setup: LINE      a line said before, in an earlier run on the same book (may stand several times)
//!   cut: N           the book is cut to N bytes before the call; `cut: half` to half of it
//!   edit: FILE | FROM | TO     `{pack}` is then the built-in pack with this edited (first place; several times)
//!   append: FILE N BYTES       the same with the escaped bytes added N times at a file's end (made when not there)
//!   output: closed   nobody reads its output after the first byte
//!   code: N          the exit code expected (several, between blanks, where both are right)
//!   says: TEXT       stands in its output (may stand several times)
//!   complains: TEXT  stands in its standard error
//!   unverified: yes  the book is damaged on purpose, and is not verified afterwards

use super::harness::{Call, Came, PACK, data, folder};
use sparehand::book::{Access, Book, SqliteBook};
use std::fs;
use std::path::Path;
use std::sync::Arc;
use std::time::Duration;
use tempfile::TempDir;

/// What a case may take; a build without optimisation is given more, for it is not what anybody works with.
const SECONDS: Duration = Duration::from_secs(if cfg!(debug_assertions) { 8 } else { 2 });
const MEMORY_MIB: u64 = 200;

struct Case {
    name: String,
    fields: Vec<(String, String)>,
}

impl Case {
    fn read(folder: &Path) -> Self {
        let name = folder.file_name().unwrap().to_string_lossy().into_owned();
        let text = fs::read_to_string(folder.join("case")).unwrap_or_else(|e| panic!("{name}: {e}"));
        let lines = text.lines().filter(|line| !line.trim().is_empty() && !line.starts_with('#'));
        let fields = lines.map(|line| {
            let (key, value) = line.split_once(':').unwrap_or_else(|| panic!("{name}: `{line}` is no field"));
            (key.trim().to_owned(), value.trim().to_owned())
        });
        Self { fields: fields.collect(), name }
    }

    fn all(&self, key: &str) -> Vec<&str> {
        self.fields.iter().filter(|(name, _)| name == key).map(|(_, value)| value.as_str()).collect()
    }

    fn one(&self, key: &str) -> Option<&str> {
        self.all(key).first().copied()
    }

    fn input(&self, folder: &Path) -> Vec<u8> {
        if let Some(name) = self.one("stdin") {
            return fs::read(folder.join(name)).unwrap();
        }
        let mut bytes = Vec::new();
        for made in self.all("make") {
            let (times, what) = made.split_once(' ').unwrap();
            bytes.extend(unescaped(what).repeat(times.parse().unwrap()));
        }
        bytes
    }
}

fn unescaped(text: &str) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut chars = text.chars();
    while let Some(c) = chars.next() {
        let next = if c == '\\' { chars.next() } else { None };
        match next {
            Some('n') => bytes.push(b'\n'),
            Some('t') => bytes.push(b'\t'),
            Some('x') => {
                let hex: String = chars.by_ref().take(2).collect();
                bytes.push(u8::from_str_radix(&hex, 16).unwrap());
            }
            Some(other) => bytes.extend(other.to_string().bytes()),
            None => bytes.extend(c.to_string().bytes()),
        }
    }
    bytes
}

/// The built-in pack, edited as the case says.
fn pack(case: &Case, home: &Path) -> String {
    let folder = home.join("pack");
    let (edits, appends) = (case.all("edit"), case.all("append"));
    if !edits.is_empty() || !appends.is_empty() {
        PACK.write_to(&folder).unwrap();
    }
    for edit in edits {
        let parts: Vec<&str> = edit.split(" | ").collect();
        let path = folder.join(parts[0]);
        let text = fs::read_to_string(&path).unwrap();
        assert!(text.contains(parts[1]), "{}: no `{}` in {}", case.name, parts[1], parts[0]);
        fs::write(&path, text.replacen(parts[1], parts[2], 1)).unwrap();
    }
    for append in appends {
        let mut parts = append.splitn(3, ' ');
        let path = folder.join(parts.next().unwrap());
        let times: usize = parts.next().unwrap().parse().unwrap();
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        let mut bytes = fs::read(&path).unwrap_or_default();
        bytes.extend(unescaped(parts.next().unwrap()).repeat(times));
        fs::write(&path, bytes).unwrap();
    }
    folder.to_str().unwrap().to_owned()
}

fn run(case: &Case, at: &Path, home: &Arc<TempDir>) -> Came {
    let book = home.path().join("book.sqlite");
    let setup = case.all("setup");
    if !setup.is_empty() {
        let args = ["pipe", "--typed", "--book", book.to_str().unwrap()];
        Call::within(home, &args).lines(&setup).run().code(0);
    }
    if let Some(cut) = case.one("cut") {
        let bytes = fs::read(&book).unwrap();
        let left = if cut == "half" { bytes.len() / 2 } else { cut.parse().unwrap() };
        fs::write(&book, &bytes[..left]).unwrap();
    }
    let args = case.one("args").unwrap_or("pipe --typed --book {book}");
    let args = args.replace("{pack}", &pack(case, home.path()));
    let args = args.replace("{case}", at.to_str().unwrap()).replace("{book}", book.to_str().unwrap());
    let args: Vec<&str> = args.split_whitespace().collect();
    let mut call = Call::within(home, &args).bytes(case.input(at)).memory(MEMORY_MIB);
    if case.one("output") == Some("closed") {
        call = call.output_closed();
    }
    call.run()
}

fn judge(case: &Case, came: &Came, home: &Path) {
    let name = &case.name;
    let told = format!("{name}:\nstdout:\n{:.2000}\nstderr:\n{:.2000}", came.stdout, came.stderr);
    assert!(came.took < SECONDS, "{name} took {:?}", came.took);
    let codes: Vec<i32> =
        case.one("code").unwrap_or("0").split(' ').map(|code| code.parse().unwrap()).collect();
    assert!(codes.contains(&came.code), "code {} of {told}", came.code);
    for sign in ["panicked", "RUST_BACKTRACE", "overflowed its stack", "memory allocation"] {
        assert!(!came.stderr.contains(sign), "`{sign}` in {told}");
    }
    let raw = |text: &str| text.chars().any(|c| c.is_control() && c != '\n' && c != '\t');
    assert!(!raw(&came.stdout) && !raw(&came.stderr), "control codes in {told:?}");
    case.all("says").iter().for_each(|text| assert!(came.stdout.contains(text), "no `{text}` in {told}"));
    case.all("complains")
        .iter()
        .for_each(|text| assert!(came.stderr.contains(text), "no `{text}` in {told}"));
    let book = home.join("book.sqlite");
    if book.exists() && case.one("unverified").is_none() {
        SqliteBook::open(&book, Access::Read, "").unwrap().verify().unwrap();
    }
}

#[test]
fn every_case_is_answered() {
    let mut cases: Vec<_> =
        fs::read_dir(data("tests/hostile")).unwrap().map(|entry| entry.unwrap().path()).collect();
    cases.sort();
    assert!(cases.len() >= 10, "{} cases", cases.len());
    for at in cases {
        let case = Case::read(&at);
        let home = folder();
        judge(&case, &run(&case, &at, &home), home.path());
    }
}

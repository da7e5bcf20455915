//! What is found at the book's place, and who may write there.

use crate::book_kit::{job, keep, settled, shelf};
use sparehand::book::{Access, Book, BookError, Query, SqliteBook};
use std::fs;
use std::path::Path;
use std::process::{Command, Stdio};

fn open(path: &Path, access: Access) -> BookError {
    SqliteBook::open(path, access, "bench-1").expect_err("it opened")
}

#[test]
fn a_new_book_knows_its_bench_and_keeps_it() {
    let shelf = shelf();
    assert_eq!(shelf.write().bench(), "bench-1");
    assert_eq!(SqliteBook::open(&shelf.path, Access::Write, "bench-2").unwrap().bench(), "bench-1");
}

#[test]
fn there_is_nothing_to_read_before_a_book_is_made() {
    let shelf = shelf();
    assert!(matches!(open(&shelf.path, Access::Read), BookError::Missing { .. }));
    assert_eq!(fs::read_dir(shelf.path.parent().unwrap()).unwrap().count(), 0, "reading made something");
}

#[test]
fn a_book_half_made_by_a_killed_console_is_made_anew() {
    let shelf = shelf();
    for ending in [".part", ".part-journal", ".part-wal"] {
        fs::write(shelf.beside(ending), "half").unwrap();
    }
    keep(&mut shelf.write(), &job("a", 1, 2));
    assert_eq!(shelf.read().since("a", 0).unwrap().len(), 2);
}

#[test]
fn another_file_is_not_a_book_and_is_left_as_it_is() {
    let text = b"Dear diary, this is longer than a hundred bytes, or so it should be, so that nobody can say it was \
        refused for its length.".to_vec();
    let database = {
        let shelf = shelf();
        rusqlite::Connection::open(&shelf.path).unwrap().execute_batch("CREATE TABLE t (a)").unwrap();
        fs::read(&shelf.path).unwrap()
    };
    for bytes in [text, b"x".to_vec(), database] {
        let shelf = shelf();
        fs::write(&shelf.path, &bytes).unwrap();
        for access in [Access::Read, Access::Write] {
            let error = open(&shelf.path, access);
            assert!(matches!(error, BookError::NotABook { .. }), "{error}");
            assert_eq!(fs::read(&shelf.path).unwrap(), bytes);
            assert!(!shelf.beside(".lock").exists());
        }
    }
}

#[test]
fn a_folder_is_not_a_book() {
    let shelf = shelf();
    fs::create_dir(&shelf.path).unwrap();
    assert!(matches!(open(&shelf.path, Access::Write), BookError::NotABook { .. }));
}

#[test]
fn a_folder_that_is_not_there_is_named() {
    let shelf = shelf();
    let error = open(&shelf.path.join("x").join("jobs.book"), Access::Write);
    assert!(matches!(error, BookError::Io { .. }), "{error}");
}

#[test]
fn a_newer_book_is_refused_and_left_as_it_is() {
    let shelf = settled(&job("a", 1, 2));
    rusqlite::Connection::open(&shelf.path).unwrap().pragma_update(None, "user_version", 2).unwrap();
    let before = fs::read(&shelf.path).unwrap();
    for access in [Access::Read, Access::Write] {
        let error = open(&shelf.path, access);
        assert!(matches!(error, BookError::Newer { found: 2, reads: 1, .. }), "{error}");
    }
    assert_eq!(fs::read(&shelf.path).unwrap(), before);
}

#[test]
fn an_event_of_a_newer_form_is_told_as_newer_and_not_as_damage() {
    let shelf = shelf();
    let mut events = job("a", 1, 2);
    events[1].version = 99;
    keep(&mut shelf.write(), &events);
    let error = shelf.read().since("a", 0).unwrap_err();
    assert!(matches!(error, BookError::Newer { found: 99, .. }), "{error}");
}

#[test]
fn a_second_console_is_told_who_holds_the_book_and_may_read_along() {
    let shelf = shelf();
    let mut first = shelf.write();
    keep(&mut first, &job("a", 1, 2));
    let held = open(&shelf.path, Access::Write);
    assert!(matches!(held, BookError::Held { by: Some(pid), .. } if pid == std::process::id()), "{held}");
    let mut second = shelf.read();
    assert_eq!(second.since("a", 0).unwrap().len(), 2);
    keep(&mut first, &[crate::book_kit::note("a", 3)]);
    assert_eq!(second.since("a", 0).unwrap().len(), 3, "it sees what the first has kept since");
    let refused = second.append(&job("b", 2, 1)).unwrap_err();
    assert!(matches!(refused, BookError::ReadOnly { .. }), "{refused}");
    drop(first);
    keep(&mut shelf.write(), &job("b", 2, 1));
}

/// Runs the rest of a test in another process of this same binary.
fn other(test: &str, book: &Path, wrap: &[&str]) -> Command {
    let exe = std::env::current_exe().unwrap();
    let mut words: Vec<&str> = wrap.to_vec();
    words.push(exe.to_str().unwrap());
    let mut command = Command::new(words[0]);
    command.args(&words[1..]).args(["--exact", test, "--ignored", "--nocapture"]);
    command.env("BOOK_OF_THE_TEST", book).stdin(Stdio::piped()).stdout(Stdio::piped());
    command
}

#[expect(clippy::disallowed_methods, reason = "what one process of a test tells another")]
fn book_of_the_test() -> std::path::PathBuf {
    std::env::var_os("BOOK_OF_THE_TEST").expect("only run by another test").into()
}

#[test]
fn the_hold_dies_with_a_killed_console_and_its_lines_stay() {
    let shelf = shelf();
    let mut child = other("book_open::holds", &shelf.path, &[]).spawn().unwrap();
    let pid = child.id();
    let mut seen = String::new();
    let mut lines = std::io::BufReader::new(child.stdout.take().unwrap());
    while !seen.contains("holding") {
        assert!(std::io::BufRead::read_line(&mut lines, &mut seen).unwrap() > 0, "{seen}");
    }
    let held = open(&shelf.path, Access::Write);
    assert!(matches!(held, BookError::Held { by: Some(by), .. } if by == pid), "{held}");
    child.kill().unwrap();
    child.wait().unwrap();
    assert_eq!(shelf.write().since("a", 0).unwrap().len(), 3);
}

#[test]
#[ignore = "the other process of `the_hold_dies_with_a_killed_console_and_its_lines_stay`"]
fn holds() {
    let mut book = SqliteBook::open(&book_of_the_test(), Access::Write, "b").unwrap();
    keep(&mut book, &job("a", 1, 3));
    println!("holding");
    let _ = std::io::stdin().read_line(&mut String::new());
    std::thread::sleep(std::time::Duration::from_secs(60));
}

/// Whether a test can have a file system of its own here (user namespaces, or root).
fn own_disk(setup: &str, test: &str, book: &Path) -> Option<(bool, String)> {
    let able = Command::new("unshare").args(["-rm", "mount", "-t", "tmpfs", "none", "/mnt"]).output();
    if !able.is_ok_and(|o| o.status.success()) {
        println!("not run: no leave to mount here");
        return None;
    }
    let folder = book.parent().unwrap().to_str().unwrap();
    let script = format!("{} && exec \"$@\"", setup.replace("DIR", folder));
    let out = other(test, book, &["unshare", "-rm", "sh", "-c", &script, "sh"]).output().unwrap();
    Some((out.status.success(), String::from_utf8_lossy(&[out.stdout, out.stderr].concat()).into_owned()))
}

#[test]
fn a_full_disk_is_told_and_costs_nothing_that_was_kept() {
    let setup = "mount -t tmpfs -o size=400k none DIR";
    if let Some((good, said)) = own_disk(setup, "book_open::fills", &shelf().path) {
        assert!(good, "{said}");
    }
}

#[test]
#[ignore = "the other process of `a_full_disk_is_told_and_costs_nothing_that_was_kept`"]
fn fills() {
    let path = book_of_the_test();
    let mut book = SqliteBook::open(&path, Access::Write, "b").unwrap();
    let events = job("a", 1, 2000);
    let kept = events.iter().position(|e| {
        let Err(error) = book.append(std::slice::from_ref(e)) else { return false };
        assert!(matches!(error, BookError::Full { .. }), "{error}");
        true
    });
    let kept = kept.expect("the disk never filled");
    assert!(kept > 5, "{kept}");
    assert_eq!(book.since("a", 0).unwrap(), events[..kept], "what was kept reads on a full disk");
    // A further try fails alike; where there is room again, the same book goes on.
    assert!(matches!(book.append(&events[kept..=kept]), Err(BookError::Full { .. })));
    drop(book);
    let mut room = Command::new("mount");
    assert!(room.args(["-o", "remount,size=2m"]).arg(path.parent().unwrap()).status().unwrap().success());
    let mut book = SqliteBook::open(&path, Access::Write, "b").unwrap();
    book.append(&events[kept..=kept]).unwrap();
    assert_eq!(book.since("a", 0).unwrap(), events[..=kept]);
    book.verify().unwrap();
}

#[test]
fn where_nothing_may_be_written_a_book_can_be_read() {
    let shelf = settled(&job("a", 1, 4));
    let setup = "mount --bind DIR DIR && mount -o remount,bind,ro DIR";
    if let Some((good, said)) = own_disk(setup, "book_open::read_only", &shelf.path) {
        assert!(good, "{said}");
    }
}

#[test]
#[ignore = "the other process of `where_nothing_may_be_written_a_book_can_be_read`"]
fn read_only() {
    let path = book_of_the_test();
    let error = open(&path, Access::Write);
    assert!(matches!(error, BookError::ReadOnly { .. }), "{error}");
    let book = SqliteBook::open(&path, Access::Read, "").unwrap();
    assert_eq!(book.since("a", 0).unwrap().len(), 4);
    assert_eq!(book.find(&Query::Number(1)).unwrap().len(), 1);
}

#[test]
fn every_refusal_names_the_file_and_the_mend_and_prints_no_control_codes() {
    let shelf = shelf();
    let path = shelf.path.with_file_name("a\u{1b}[31mb.book");
    fs::write(&path, "").unwrap();
    let said = open(&path, Access::Write).to_string();
    assert!(said.contains("\\u{1b}[31mb.book") && said.contains("\n  mend: "), "{said}");
    assert!(!said.contains('\u{1b}'), "{said:?}");
}

#[test]
fn a_books_own_path_may_hold_anything_that_a_path_can() {
    let shelf = settled(&job("a", 1, 2));
    let odd = shelf.path.with_file_name("50% off? #1 'quoted' \u{e9}.book");
    fs::rename(&shelf.path, &odd).unwrap();
    assert_eq!(SqliteBook::open(&odd, Access::Read, "").unwrap().since("a", 0).unwrap().len(), 2);
    SqliteBook::open(&odd, Access::Write, "").unwrap().append(&[crate::book_kit::note("a", 3)]).unwrap();
}

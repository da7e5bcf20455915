//! What the commands open: the rules, the book, the bench.

use super::Cli;
use crate::book::{Access, Book, SqliteBook, Sync};
use crate::rulebase::Pack;
use crate::session::{
    Clock, Fault, Ids, Rules, Session, Setup, SystemClock, SystemIds, Turn, book_path, make_room_for,
};
use crate::source::Problem;
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use std::sync::Arc;

/// The rules of the call: a folder, or those built in.
///
/// # Errors
/// What is wrong with the pack.
pub fn rules(cli: &Cli) -> Result<Arc<Pack>, Fault> {
    let pack = match &cli.place.rules {
        Some(folder) => pack(folder)?,
        None => Pack::built_in()?,
    };
    Ok(Arc::new(pack))
}

/// The rules of a folder.
///
/// # Errors
/// What is wrong with the pack, with the texts that it is in.
pub fn pack(folder: &Path) -> Result<Pack, Fault> {
    Pack::load(folder).map_err(|problems| Fault::Text { texts: texts(folder, &problems), problems })
}

/// The texts that problems are in, to be drawn with them.
fn texts(folder: &Path, problems: &[Problem]) -> BTreeMap<String, String> {
    let files: BTreeSet<&str> = problems.iter().map(|problem| problem.place.file.as_ref()).collect();
    let read = files.into_iter().filter_map(|file| Some((file.to_owned(), short(&folder.join(file))?)));
    read.collect()
}

/// A file's text, unless it is longer than anything a pack may hold.
fn short(file: &Path) -> Option<String> {
    let fits = std::fs::metadata(file).is_ok_and(|about| about.len() <= 1 << 20);
    if fits { std::fs::read_to_string(file).ok() } else { None }
}

/// The book, to be gone on in.
///
/// # Errors
/// Why it cannot be.
pub fn book(cli: &Cli) -> Result<SqliteBook, Fault> {
    let path = book_path(cli.place.book.as_deref())?;
    make_room_for(&path)?;
    let bench = SystemIds.next(SystemClock.now());
    Ok(SqliteBook::open_with(&path, Access::Write, &bench, sync())?)
}

/// Whether the book waits for the disk. It always does; a debug build can be told not to, so that the check for it
/// can be seen to fail.
fn sync() -> Sync {
    if cfg!(debug_assertions) && crate::session::unsynced() { Sync::Off } else { Sync::Full }
}

/// The book, to be looked at; none when there is none yet.
///
/// # Errors
/// Why it cannot be read.
pub fn book_to_read(cli: &Cli) -> Result<Option<SqliteBook>, Fault> {
    let path = book_path(cli.place.book.as_deref())?;
    match SqliteBook::open(&path, Access::Read, "") {
        Ok(book) => Ok(Some(book)),
        Err(crate::book::BookError::Missing { .. }) => Ok(None),
        Err(error) => Err(error.into()),
    }
}

/// Opens the bench on a book. With `warm` the ear is fitted meanwhile: a person takes a moment to begin, a pipe does not, and
/// another thread asks for much address space.
///
/// # Errors
/// As [`Session::open`].
pub fn bench(
    cli: &Cli,
    book: Box<dyn Book + Send>,
    clock: Box<dyn Clock>,
    ear: bool,
    warm: bool,
) -> Result<(Session, Turn), Fault> {
    let rules = Rules::new(rules(cli)?);
    if warm {
        rules.warm();
    }
    Session::open(Setup {
        rules,
        book,
        clock,
        ids: Box::new(SystemIds),
        ear,
        by: cli.place.by.clone(),
        job: cli.place.job,
    })
}

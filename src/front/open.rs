//! What the commands open: the rules, the book, the bench.

use super::Cli;
use crate::book::{Access, Book, SqliteBook};
use crate::rulebase::Pack;
use crate::session::{Clock, Fault, Ids, Session, Setup, SystemClock, SystemIds, Turn, book_path, make_room_for};
use std::sync::Arc;

/// The rules of the call: a folder, or those built in.
///
/// # Errors
/// What is wrong with the pack.
pub fn rules(cli: &Cli) -> Result<Arc<Pack>, Fault> {
    let pack = match &cli.place.rules {
        Some(folder) => Pack::load(folder)?,
        None => Pack::built_in()?,
    };
    Ok(Arc::new(pack))
}

/// The book, to be gone on in.
///
/// # Errors
/// Why it cannot be.
pub fn book(cli: &Cli) -> Result<SqliteBook, Fault> {
    let path = book_path(cli.place.book.as_deref())?;
    make_room_for(&path)?;
    let bench = SystemIds.next(SystemClock.now());
    Ok(SqliteBook::open(&path, Access::Write, &bench)?)
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

/// Opens the bench on a book.
///
/// # Errors
/// As [`Session::open`].
pub fn bench(
    cli: &Cli,
    book: Box<dyn Book + Send>,
    clock: Box<dyn Clock>,
    ear: bool,
) -> Result<(Session, Turn), Fault> {
    Session::open(Setup {
        pack: rules(cli)?,
        book,
        clock,
        ids: Box::new(SystemIds),
        ear,
        by: cli.place.by.clone(),
        job: cli.place.job,
    })
}

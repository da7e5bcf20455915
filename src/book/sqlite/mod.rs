//! The book as one SQLite file: write-ahead log, synchronous FULL, one writer.

mod door;
mod fault;
mod read;
mod schema;
mod sequence;
mod verify;
mod wal;
mod write;

use super::lock::Lock;
use super::{Book, BookError, Customer, Files, JobLine, Query, Survey};
use crate::event::Envelope;
use rusqlite::{Connection, Transaction, TransactionBehavior};
use std::path::{Path, PathBuf};

/// What a book is opened for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Access {
    /// To go on in it: takes the hold, makes the book where there is none.
    Write,
    /// To look at it: changes nothing, and goes beside a console that holds it.
    Read,
}

/// Whether an append waits for the disk.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Sync {
    /// It is on the disk when `append` returns.
    #[default]
    Full,
    /// It is not. Loses lines when the power goes: there only to show that the check for it can fail.
    Off,
}

/// A book in a file.
#[derive(Debug)]
pub struct SqliteBook {
    path: PathBuf,
    bench: String,
    connection: Connection,
    torn: bool,
    /// Let go of after the connection: fields drop in this order.
    lock: Option<Lock>,
}

impl SqliteBook {
    /// Opens the book at `path`; for [`Access::Write`] makes it where there is none, as `bench`'s.
    ///
    /// # Errors
    /// [`BookError`] by kind; whatever was found is left as it was.
    pub fn open(path: &Path, access: Access, bench: &str) -> Result<Self, BookError> {
        Self::open_with(path, access, bench, Sync::Full)
    }

    /// As [`SqliteBook::open`], with a say in whether appends wait for the disk.
    ///
    /// # Errors
    /// As [`SqliteBook::open`].
    pub fn open_with(path: &Path, access: Access, bench: &str, sync: Sync) -> Result<Self, BookError> {
        // Looked at twice: another program's file gets no lock beside it, and a book may come up meanwhile.
        door::look(path)?;
        let lock = if access == Access::Write { Some(Lock::take(path)?) } else { None };
        if !door::look(path)? {
            match access {
                Access::Write => schema::make(path, bench)?,
                Access::Read => return Err(BookError::Missing { book: path.to_path_buf() }),
            }
        }
        let torn = door::is_torn(path, lock.is_some())?;
        let connection = door::connect(path, access, sync)?;
        schema::settle(path, &connection, access)?;
        let bench = read::bench(path, &connection)?;
        Ok(Self { path: path.to_path_buf(), bench, connection, torn, lock })
    }

    /// Whether a write was found cut short at the book's end, as when the power goes in the middle of one: the
    /// line it belonged to was never answered and is not in the book.
    pub fn torn(&self) -> bool {
        self.torn
    }

    /// Where it stands.
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// One view of the book for several statements.
    fn view<T>(&self, read: impl FnOnce(&Connection) -> Result<T, BookError>) -> Result<T, BookError> {
        let view = Transaction::new_unchecked(&self.connection, TransactionBehavior::Deferred)
            .map_err(|e| fault::sort(&self.path, &e))?;
        read(&view)
    }

    /// A change of the book: all of it, or none.
    fn change<T>(
        &mut self,
        write: impl FnOnce(&Path, &Connection) -> Result<T, BookError>,
    ) -> Result<T, BookError> {
        let Self { path, connection, .. } = self;
        let sort = |e: rusqlite::Error| fault::sort(path, &e);
        let change = connection.transaction_with_behavior(TransactionBehavior::Immediate).map_err(sort)?;
        let done = write(path, &change)?;
        change.commit().map_err(sort)?;
        Ok(done)
    }
}

impl Book for SqliteBook {
    fn bench(&self) -> &str {
        &self.bench
    }

    fn append(&mut self, events: &[Envelope]) -> Result<(), BookError> {
        if events.is_empty() {
            return Ok(());
        }
        self.change(|path, c| write::append(path, c, events))
    }

    fn since(&self, job: &str, sequence: u64) -> Result<Vec<Envelope>, BookError> {
        self.view(|c| read::since(&self.path, c, job, sequence))
    }

    fn find(&self, query: &Query) -> Result<Vec<JobLine>, BookError> {
        self.view(|c| read::find(&self.path, c, query))
    }

    fn next_job_number(&self) -> Result<u32, BookError> {
        read::next_job_number(&self.path, &self.connection)
    }

    fn keep_pack(&mut self, hash: &str, files: &Files) -> Result<(), BookError> {
        self.change(|path, c| write::pack(path, c, hash, files))
    }

    fn pack(&self, hash: &str) -> Result<Option<Files>, BookError> {
        read::pack(&self.path, &self.connection, hash)
    }

    fn put_customer(&mut self, customer: &Customer) -> Result<(), BookError> {
        self.change(|path, c| write::customer(path, c, customer))
    }

    fn customer(&self, id: &str) -> Result<Option<Customer>, BookError> {
        read::customer(&self.path, &self.connection, id)
    }

    fn customers(&self) -> Result<Vec<Customer>, BookError> {
        read::customers(&self.path, &self.connection)
    }

    fn forget_customer(&mut self, id: &str) -> Result<bool, BookError> {
        let there = self.change(|path, c| write::forget(path, c, id))?;
        write::settle(&self.path, &self.connection)?;
        Ok(there)
    }

    fn verify(&self) -> Result<Survey, BookError> {
        self.view(|c| verify::verify(&self.path, c, self.lock.is_some()))
    }
}

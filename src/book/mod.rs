//! The book: the durable record of all jobs. It keeps events in their envelopes and does not know what a job means.
//!
//! Everything above uses the trait [`Book`]; what is SQLite's stays in `sqlite/`.

mod body;
mod chain;
mod customer;
mod error;
mod export;
mod job_line;
mod lock;
mod mark;
mod memory;
mod order;
mod sqlite;
mod survey;

pub use customer::Customer;
pub use error::BookError;
pub use export::{ExportError, ImportError, Imported, export, import};
pub use job_line::{JobLine, PlaceLine, Query};
pub use memory::MemoryBook;
pub use sqlite::{Access, SqliteBook, Sync};
pub use survey::Survey;

use crate::event::Envelope;
use std::collections::BTreeMap;

/// The files of a pack: path within the pack to text.
pub type Files = BTreeMap<String, String>;

/// A record of jobs.
///
/// Every method fails with a [`BookError`] that names the book, and none of them leaves half a change behind.
pub trait Book {
    /// The bench that this book was made on.
    fn bench(&self) -> &str;

    /// Keeps the events of one utterance: all of them, durably, when it returns; none when it fails.
    /// Sequences continue each job's own from 1; an empty slice is fine and does nothing.
    ///
    /// # Errors
    /// [`BookError::Clash`] for events that do not continue their jobs; [`BookError::Full`],
    /// [`BookError::ReadOnly`], [`BookError::Io`] when they cannot be kept.
    fn append(&mut self, events: &[Envelope]) -> Result<(), BookError>;

    /// The events of a job after `sequence` (0 for all of them), in order; none for an unknown job.
    ///
    /// # Errors
    /// [`BookError::Damaged`] when one is missing or is not as it was written.
    fn since(&self, job: &str, sequence: u64) -> Result<Vec<Envelope>, BookError>;

    /// The jobs that a query names, by their opening.
    ///
    /// # Errors
    /// [`BookError::Damaged`] when one cannot be read.
    fn find(&self, query: &Query) -> Result<Vec<JobLine>, BookError>;

    /// The next free spoken number of a job, from 1; a number is never given again.
    ///
    /// # Errors
    /// [`BookError`] when the book cannot be read.
    fn next_job_number(&self) -> Result<u32, BookError>;

    /// Keeps a pack's files under their hash; one that is there already stays as it is.
    ///
    /// # Errors
    /// As [`Book::append`].
    fn keep_pack(&mut self, hash: &str, files: &Files) -> Result<(), BookError>;

    /// The files kept under a hash.
    ///
    /// # Errors
    /// [`BookError::Damaged`] when they are not as they were written.
    fn pack(&self, hash: &str) -> Result<Option<Files>, BookError>;

    /// Keeps a customer's record, in place of an earlier one of the same id.
    ///
    /// # Errors
    /// As [`Book::append`].
    fn put_customer(&mut self, customer: &Customer) -> Result<(), BookError>;

    /// A customer's record; none when it was never there, or is forgotten.
    ///
    /// # Errors
    /// [`BookError`] when the book cannot be read.
    fn customer(&self, id: &str) -> Result<Option<Customer>, BookError>;

    /// All customers, by id.
    ///
    /// # Errors
    /// [`BookError`] when the book cannot be read.
    fn customers(&self) -> Result<Vec<Customer>, BookError>;

    /// Removes a customer's record, so that nothing of it is left in the book; events keep their reference.
    /// Says whether there was one.
    ///
    /// # Errors
    /// As [`Book::append`].
    fn forget_customer(&mut self, id: &str) -> Result<bool, BookError>;

    /// Reads everything, and says what there is.
    ///
    /// # Errors
    /// [`BookError::Damaged`] with the first place that is not as it was written, and what still reads.
    fn verify(&self) -> Result<Survey, BookError>;
}

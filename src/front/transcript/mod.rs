//! Transcripts: a conversation with a pinned clock in one readable text, that runs.
//!
//! ```text
//! # Anything after a hash is for the reader.
//! clock: 2026-03-02 08:00 +00:00
//! lines: by ear                    (or: typed)
//! answers: said                    (or: shown, or: both)
//! by: Ann                          (may be left out)
//!
//! > start a re-spring on the Birch 44, front left
//! < Job one. Birch forty four, front left.
//! | Job 1: Birch 44, front left, re-spring
//! must: 44; front left
//! must not: rear
//! must wait: text
//! must keep: job-opened, place-opened
//! at 08:05
//! at +5 min
//! kill
//! reopen
//! ```
//!
//! `>` is a line said. `<` is what was spoken in answer, `|` what was shown: both are written by
//! `sparehand replay FILE --update`. `must:` lines are written by hand, are never rewritten, and fail on their own:
//! each piece between semicolons stands in the answer before them, spoken or shown, as whole words.
//! `must not:` is the contrary; `must wait:` names what the job waits for afterwards, with the part in hand if wanted;
//! `must keep:` the kinds of event that were kept, in order, or `nothing`.
//! `at` moves the clock and tells the timers that ran out; `kill` drops the bench where it stands and opens it anew,
//! `reopen` ends the input in good order first. After the last line the book is reopened, and the state it gives is
//! compared with the one that the bench had.

mod difference;
mod must;
mod parse;
mod run;
mod update;

pub use difference::{Broken, Outcome};
pub use must::{Must, word};
pub use parse::{Answers, Head, Item, Kind, Transcript};
pub use run::run;
pub use update::updated;

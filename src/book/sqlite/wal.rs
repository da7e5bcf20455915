//! Whether the log beside the book is whole, cut short at its end, or damaged in its middle.
//!
//! SQLite reads its log up to the first frame whose checksum fails and takes that for the end. A write that
//! the power cut short looks so; but so does a bit that flipped in the middle, and then lines that were
//! answered would be dropped without a word. What tells them apart: with synchronous FULL a transaction is
//! written only after the one before it was synced. So when a whole transaction stands behind a bad frame's own,
//! that frame had been written well once. The format is <https://www.sqlite.org/fileformat2.html>, section 4.

use crate::book::BookError;
use std::fs::File;
use std::io::{BufReader, Read};
use std::path::Path;

/// Bytes of the log's head.
const HEAD: usize = 32;
/// Bytes of a frame's head.
const FRAME: usize = 24;

/// A frame's marks: what it says and what its bytes sum to.
struct Frame {
    /// Whether it carries the log's present salt; older frames may stand behind.
    fresh: bool,
    /// Whether it closes a transaction.
    commits: bool,
    /// Whether its bytes give its checksum, going on from the one before it.
    good: bool,
}

/// Checks the log of a book; says whether it ends in a write cut short.
pub(super) fn check(book: &Path, log: &Path) -> Result<bool, BookError> {
    let Ok(file) = File::open(log) else { return Ok(false) };
    let mut input = BufReader::new(file);
    let head = take(&mut input, HEAD);
    if head.is_empty() {
        return Ok(false);
    }
    let Some(kind) = Kind::of(&head) else {
        // A head is written before any frame: without one there can be none.
        return if take(&mut input, 1).is_empty() { Ok(true) } else { Err(middle(book, "the head")) };
    };
    let frames = kind.frames(&mut input, number(&head, 24), number(&head, 28));
    judge(book, &frames)
}

/// A bad frame is the end, unless a whole transaction stands behind the one that it is in.
fn judge(book: &Path, frames: &[Frame]) -> Result<bool, BookError> {
    let end = frames.iter().position(|f| !(f.good && f.fresh)).unwrap_or(frames.len());
    let (whole, behind) = frames.split_at(end);
    let own_end = behind.first().is_some_and(|f| f.fresh && f.commits);
    let commits = behind.iter().skip(1).filter(|f| f.good && f.fresh && f.commits).count();
    if commits > usize::from(!own_end) {
        return Err(middle(book, &format!("frame {} of {}", end + 1, frames.len())));
    }
    Ok(whole.last().is_some_and(|f| !f.commits) || behind.iter().any(|f| f.fresh))
}

fn middle(book: &Path, place: &str) -> BookError {
    let what = "of its log (`-wal`) is not as it was written, and lines kept after it would be lost";
    BookError::damaged(book, format!("{place} {what}"))
}

/// How a log is to be read.
struct Kind {
    big: bool,
    page: usize,
    salt: (u32, u32),
}

impl Kind {
    /// From a head that gives its own checksum.
    fn of(head: &[u8]) -> Option<Self> {
        let big = match number(head, 0) {
            0x377f_0682 => false,
            0x377f_0683 => true,
            _ => return None,
        };
        let page = usize::try_from(number(head, 8)).ok().filter(|p| (512..=65536).contains(p))?;
        let kind = Self { big, page, salt: (number(head, 16), number(head, 20)) };
        let stored = (number(head, 24), number(head, 28));
        (head.len() == HEAD && kind.sum((0, 0), head.get(..24)?) == stored).then_some(kind)
    }

    /// All frames; a last one that is not all there is bad.
    fn frames(&self, input: &mut impl Read, one: u32, two: u32) -> Vec<Frame> {
        let mut before = (one, two);
        let mut frames = Vec::new();
        loop {
            let bytes = take(input, FRAME + self.page);
            if bytes.is_empty() {
                return frames;
            }
            let (head, page) = bytes.split_at(FRAME.min(bytes.len()));
            let stored = (number(head, 16), number(head, 20));
            let sum = self.sum(self.sum(before, head.get(..8).unwrap_or_default()), page);
            frames.push(Frame {
                fresh: (number(head, 8), number(head, 12)) == self.salt,
                commits: number(head, 4) != 0,
                good: page.len() == self.page && sum == stored,
            });
            before = stored;
        }
    }

    /// The log's checksum: two running sums over pairs of words.
    fn sum(&self, (mut one, mut two): (u32, u32), bytes: &[u8]) -> (u32, u32) {
        let word = |b: [u8; 4]| if self.big { u32::from_be_bytes(b) } else { u32::from_le_bytes(b) };
        let (words, _) = bytes.as_chunks::<4>();
        for pair in words.chunks_exact(2) {
            if let [a, b] = pair {
                one = one.wrapping_add(word(*a)).wrapping_add(two);
                two = two.wrapping_add(word(*b)).wrapping_add(one);
            }
        }
        (one, two)
    }
}

/// The big-endian number at a place; 0 beyond the end.
fn number(bytes: &[u8], at: usize) -> u32 {
    bytes.get(at..at + 4).and_then(|b| b.try_into().ok()).map_or(0, u32::from_be_bytes)
}

/// Up to so many bytes.
fn take(input: &mut impl Read, count: usize) -> Vec<u8> {
    let mut bytes = Vec::with_capacity(count);
    // A log that cannot be read any further ends there; SQLite will say why.
    let _ = input.by_ref().take(count as u64).read_to_end(&mut bytes);
    bytes
}

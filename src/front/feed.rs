//! Lines from standard input, read in a thread of their own so that timers can be told meanwhile.
//!
//! A line is bytes up to a newline. It may be of any length and any bytes: only its beginning is kept.

use crate::session::LONGEST;
use std::io::{self, BufRead, Read};
use std::sync::mpsc::{Receiver, SyncSender, sync_channel};
use std::thread;

/// What came in.
#[derive(Debug)]
pub enum Fed {
    /// A line, as text; bytes that are none are shown as the replacement sign.
    Line(String),
    /// A line longer than anybody says.
    TooLong,
    /// Reading failed.
    Failed(io::Error),
}

/// Lines waiting ahead: enough to keep the bench busy, few enough that memory stays small.
const AHEAD: usize = 16;
/// A JSON line carries alternatives besides the words.
const CAP: usize = 4 * LONGEST;

/// Starts reading standard input. The channel ends with the input.
pub fn stdin() -> Receiver<Fed> {
    let (to, from) = sync_channel(AHEAD);
    thread::spawn(move || read(&mut io::stdin().lock(), &to));
    from
}

fn read(input: &mut impl BufRead, to: &SyncSender<Fed>) {
    loop {
        let fed = match one(input) {
            Ok(None) => return,
            Ok(Some(fed)) => fed,
            Err(error) => Fed::Failed(error),
        };
        let last = matches!(fed, Fed::Failed(_));
        // Nobody listens any more when the bench has ended.
        if to.send(fed).is_err() || last {
            return;
        }
    }
}

/// The next line; none at the end of the input.
fn one(input: &mut impl BufRead) -> io::Result<Option<Fed>> {
    let mut bytes = Vec::new();
    let took = input.by_ref().take(CAP as u64).read_until(b'\n', &mut bytes)?;
    if took == 0 {
        return Ok(None);
    }
    if took == CAP && bytes.last() != Some(&b'\n') {
        skip_rest(input)?;
        return Ok(Some(Fed::TooLong));
    }
    Ok(Some(Fed::Line(String::from_utf8_lossy(&bytes).trim_end_matches(['\n', '\r']).to_owned())))
}

/// Passes over the rest of a line without keeping it.
fn skip_rest(input: &mut impl BufRead) -> io::Result<()> {
    loop {
        let buffer = input.fill_buf()?;
        if buffer.is_empty() {
            return Ok(());
        }
        match buffer.iter().position(|byte| *byte == b'\n') {
            Some(end) => {
                input.consume(end + 1);
                return Ok(());
            }
            None => {
                let all = buffer.len();
                input.consume(all);
            }
        }
    }
}

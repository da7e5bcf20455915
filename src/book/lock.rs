//! One console holds the book, by a lock of the operating system that dies with the process.

use super::BookError;
use std::fs::{File, OpenOptions, TryLockError};
use std::io::{Read, Seek, SeekFrom, Write};
use std::path::{Path, PathBuf};

/// The hold on a book; dropping it lets go.
#[derive(Debug)]
pub(super) struct Lock {
    file: File,
}

impl Lock {
    /// Takes the hold, and leaves this process's number for whoever comes second.
    ///
    /// The file itself stays when the hold goes: removing it would let two consoles each lock another file.
    pub(super) fn take(book: &Path) -> Result<Self, BookError> {
        let path = beside(book, ".lock");
        let system = |e: &std::io::Error| BookError::system(book, "its lock file", e);
        let mut file = OpenOptions::new()
            .create(true)
            .truncate(false)
            .read(true)
            .write(true)
            .open(path)
            .map_err(|e| system(&e))?;
        match patient(&file) {
            Ok(()) => {}
            Err(TryLockError::WouldBlock) => {
                return Err(BookError::Held { book: book.to_path_buf(), by: holder(&mut file) });
            }
            Err(TryLockError::Error(e)) => return Err(system(&e)),
        }
        // The number is a courtesy: the hold stands without it, on a full disk too.
        let pid = format!("{}\n", std::process::id());
        let _ = file.set_len(0).and_then(|()| file.write_all(pid.as_bytes()));
        Ok(Self { file })
    }

    /// Whether a console holds the book now.
    pub(super) fn is_held(book: &Path) -> bool {
        File::open(beside(book, ".lock"))
            .is_ok_and(|file| matches!(file.try_lock_shared(), Err(TryLockError::WouldBlock)))
    }
}

impl Drop for Lock {
    fn drop(&mut self) {
        // The lock would go with the file anyway; a number of nobody is not to stay behind.
        let _ = self.file.set_len(0);
    }
}

/// Tries for a moment: a reader that looks whether the book is held touches the lock in passing.
fn patient(file: &File) -> Result<(), TryLockError> {
    for _ in 0..3 {
        match file.try_lock() {
            Err(TryLockError::WouldBlock) => std::thread::sleep(std::time::Duration::from_millis(20)),
            done => return done,
        }
    }
    file.try_lock()
}

/// The number that the holder left, if it had time to.
fn holder(file: &mut File) -> Option<u32> {
    let mut text = String::new();
    file.seek(SeekFrom::Start(0)).ok()?;
    file.take(20).read_to_string(&mut text).ok()?;
    text.trim().parse().ok()
}

/// The path of a file that goes with the book.
pub(super) fn beside(book: &Path, ending: &str) -> PathBuf {
    let mut name = book.as_os_str().to_owned();
    name.push(ending);
    PathBuf::from(name)
}

//! Folders and the environment: where the book lies, and a scratch folder for what is to leave nothing behind.

use super::Fault;
use std::path::{Path, PathBuf};

/// The book's file: the one named, or the one in the user's data folder (XDG Base Directory Specification).
///
/// # Errors
/// A call that cannot be served, when there is neither a data folder nor a home.
pub fn book_path(named: Option<&Path>) -> Result<PathBuf, Fault> {
    if let Some(path) = named {
        return Ok(path.to_path_buf());
    }
    let data = absolute("XDG_DATA_HOME").or_else(|| absolute("HOME").map(|home| home.join(".local/share")));
    data.map(|folder| folder.join("sparehand").join("book.sqlite")).ok_or_else(|| {
        Fault::call("there is no home folder to keep the book in", "name its file with --book")
    })
}

/// The file of the console's history, beside other state of the user.
pub fn history_path() -> Option<PathBuf> {
    let state = absolute("XDG_STATE_HOME").or_else(|| absolute("HOME").map(|home| home.join(".local/state")));
    state.map(|folder| folder.join("sparehand").join("history"))
}

/// Makes the folder that a file is to lie in.
///
/// # Errors
/// A failure of the disk, with what the system said.
pub fn make_room_for(file: &Path) -> Result<(), Fault> {
    let Some(folder) = file.parent().filter(|folder| !folder.as_os_str().is_empty()) else { return Ok(()) };
    std::fs::create_dir_all(folder).map_err(|error| {
        Fault::disk(
            format!("the folder `{}` cannot be made: {error}", super::plain(&folder.display().to_string())),
            "give leave to write there, or name another book with --book",
        )
    })
}

/// A new scratch folder, removed when it goes.
#[derive(Debug)]
pub struct Scratch {
    folder: PathBuf,
}

impl Scratch {
    /// Makes one under the system's folder for such.
    ///
    /// # Errors
    /// A failure of the disk, with what the system said.
    #[expect(clippy::disallowed_methods, reason = "folders come from session")]
    pub fn new() -> Result<Self, Fault> {
        let name = format!("sparehand-{}", uuid::Uuid::now_v7());
        let folder = std::env::temp_dir().join(name);
        std::fs::create_dir(&folder).map_err(|error| {
            Fault::disk(
                format!("no scratch folder can be made: {error}"),
                "make room, or set TMPDIR to a folder that can be written",
            )
        })?;
        Ok(Self { folder })
    }

    /// Where it is.
    pub fn path(&self) -> &Path {
        &self.folder
    }
}

impl Drop for Scratch {
    fn drop(&mut self) {
        // What cannot be removed stays; there is nobody left to tell.
        let _ = std::fs::remove_dir_all(&self.folder);
    }
}

/// Whether `NO_COLOR` asks for none (set and not empty, as no-color.org has it).
#[expect(clippy::disallowed_methods, reason = "the environment is read in session and front only")]
pub fn no_color() -> bool {
    std::env::var_os("NO_COLOR").is_some_and(|value| !value.is_empty())
}

/// Whether a check asks for a book that does not wait for the disk.
#[expect(clippy::disallowed_methods, reason = "the environment is read in session and front only")]
pub fn unsynced() -> bool {
    std::env::var_os("SPAREHAND_BOOK_SYNC").is_some_and(|value| value == "off")
}

/// A folder from the environment; a relative path is ignored, as the specification wants.
#[expect(clippy::disallowed_methods, reason = "the environment is read in session and front only")]
fn absolute(name: &str) -> Option<PathBuf> {
    std::env::var_os(name).map(PathBuf::from).filter(|path| path.is_absolute())
}

//! Packs on disk and in the program: a folder read within caps, the built-in pack, a pack written out for editing.

use super::Pack;
use crate::source::yaml::MOST_BYTES;
use crate::source::{Place, Problem};
use include_dir::{Dir, include_dir};
use std::collections::BTreeMap;
use std::path::Path;
use std::{fs, io};

/// The pack under `rules/`, built in.
static RULES: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/rules");

/// The most bytes of a whole pack.
const MOST_IN_ALL: u64 = 64 << 20;
/// The most files of a pack.
const MOST_FILES: usize = 20_000;
/// The deepest folder in a pack.
const MOST_FOLDERS: usize = 4;

impl Pack {
    /// The pack that is built in.
    ///
    /// # Errors
    /// As [`Pack::from_files`]; a test keeps it from having any.
    pub fn built_in() -> Result<Self, Vec<Problem>> {
        let mut files = BTreeMap::new();
        gather(&RULES, &mut files);
        Self::from_files(files)
    }

    /// Reads the pack of a folder; one without talk is lent that of the built-in pack. Files and folders whose names begin with `.` are passed over, and `*~`.
    ///
    /// # Errors
    /// As [`Pack::from_files`], and what cannot be read.
    pub fn load(folder: &Path) -> Result<Self, Vec<Problem>> {
        let mut walk = Walk { files: BTreeMap::new(), bytes: 0, problems: Vec::new() };
        walk.folder(folder, "", 0);
        if !walk.problems.is_empty() {
            return Err(walk.problems);
        }
        let mut files = walk.files;
        let lends = files.contains_key("pack.yaml") && !files.keys().any(|path| path.starts_with("talk/"));
        if lends {
            let mut own = BTreeMap::new();
            gather(&RULES, &mut own);
            files.extend(own.into_iter().filter(|(path, _)| path.starts_with("talk/")));
        }
        Ok(Self { talk_is_lent: lends, ..Self::from_files(files)? })
    }

    /// Writes the pack's files under a folder, which is made when it is not there.
    ///
    /// # Errors
    /// The disk's; a file that is already there is left alone and named.
    pub fn write_to(&self, folder: &Path) -> io::Result<()> {
        if let Some(there) = self.files().keys().map(|path| folder.join(path)).find(|path| path.exists()) {
            let text = format!("`{}` is already there", there.display());
            return Err(io::Error::new(io::ErrorKind::AlreadyExists, text));
        }
        for (path, text) in self.files() {
            let path = folder.join(path);
            if let Some(parent) = path.parent() {
                fs::create_dir_all(parent)?;
            }
            fs::write(path, text)?;
        }
        Ok(())
    }
}

fn gather(dir: &Dir<'_>, files: &mut BTreeMap<String, String>) {
    for file in dir.files() {
        if let Some(text) = file.contents_utf8() {
            files.insert(file.path().to_string_lossy().replace('\\', "/"), text.to_owned());
        }
    }
    for dir in dir.dirs() {
        gather(dir, files);
    }
}

/// A folder that is being read.
struct Walk {
    files: BTreeMap<String, String>,
    bytes: u64,
    problems: Vec<Problem>,
}

impl Walk {
    fn wrong(&mut self, path: &str, found: String, mend: &str) {
        let place = Place::file(if path.is_empty() { "." } else { path });
        self.problems.push(Problem::wrong(place, found).mend(mend));
    }

    fn folder(&mut self, folder: &Path, under: &str, deep: usize) {
        if deep > MOST_FOLDERS {
            self.wrong(under, "folders are nested too deep".to_owned(), "move its files up");
            return;
        }
        let entries = match fs::read_dir(folder).and_then(|entries| entries.collect::<Result<Vec<_>, _>>()) {
            Ok(entries) => entries,
            Err(error) => {
                let found = format!("the folder `{}` cannot be read: {error}", folder.display());
                self.wrong(under, found, "give the folder of a pack");
                return;
            }
        };
        for entry in entries {
            let name = entry.file_name().to_string_lossy().into_owned();
            if name.starts_with('.') || name.ends_with('~') {
                continue;
            }
            let path = if under.is_empty() { name } else { format!("{under}/{name}") };
            self.entry(&entry.path(), &path, deep);
        }
    }

    fn entry(&mut self, at: &Path, path: &str, deep: usize) {
        match fs::metadata(at) {
            Ok(about) if about.is_dir() => self.folder(at, path, deep + 1),
            Ok(about) if about.is_file() => self.file(at, path, about.len()),
            Ok(_) => self.wrong(path, "this is neither a file nor a folder".to_owned(), "take it out"),
            Err(error) => {
                self.wrong(path, format!("this cannot be read: {error}"), "look at its permissions")
            }
        }
    }

    fn file(&mut self, at: &Path, path: &str, bytes: u64) {
        self.bytes = self.bytes.saturating_add(bytes);
        if bytes > MOST_BYTES as u64 {
            let found = format!("this file has {bytes} bytes; at most {MOST_BYTES} are read");
            return self.wrong(path, found, "split it into several files");
        }
        if self.bytes > MOST_IN_ALL || self.files.len() >= MOST_FILES {
            if self.problems.is_empty() {
                let found = format!("a pack has at most {MOST_FILES} files and {MOST_IN_ALL} bytes");
                self.wrong("", found, "split the pack");
            }
            return;
        }
        match fs::read(at).map(String::from_utf8) {
            Ok(Ok(text)) => {
                self.files.insert(path.to_owned(), text);
            }
            Ok(Err(_)) => self.wrong(path, "this file is not UTF-8".to_owned(), "save it as UTF-8"),
            Err(error) => {
                self.wrong(path, format!("this cannot be read: {error}"), "look at its permissions")
            }
        }
    }
}

//! A pack: one folder of rules, checked for form as it loads, then read-only.

use super::script::Scripts;
use super::talk::Talk;
use super::{Caution, Procedure, Tool, UnitCard, load};
use crate::source::{Place, Problem, yaml};
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::sync::Arc;

/// One folder of rules.
#[derive(Debug, Clone)]
pub struct Pack {
    /// Its name.
    pub name: String,
    /// The form of its files.
    pub format: u32,
    /// Unit cards, by id.
    pub units: BTreeMap<String, Arc<UnitCard>>,
    /// Procedures, by procedure and unit.
    pub procedures: BTreeMap<(String, String), Arc<Procedure>>,
    /// Cautions, by id.
    pub cautions: BTreeMap<String, Caution>,
    /// The tool crib.
    pub tools: Vec<Tool>,
    /// What may be said: grammars and word lists.
    pub talk: Arc<Talk>,
    /// Whether that is the built-in pack's, because it has none of its own.
    pub talk_is_lent: bool,
    /// Its expressions and functions, compiled.
    pub(super) scripts: Arc<Scripts>,
    /// Every file, by path.
    pub(super) files: BTreeMap<String, String>,
}

impl Pack {
    /// Reads a pack from its files' texts by path ("units/birch-44.yaml").
    ///
    /// # Errors
    /// Every problem of the pack, each with its place, what is accepted and how to mend it.
    pub fn from_files(files: BTreeMap<String, String>) -> Result<Self, Vec<Problem>> {
        load::read(files)
    }

    /// Every file's text, by path.
    pub fn files(&self) -> &BTreeMap<String, String> {
        &self.files
    }

    /// SHA-256 over the paths and texts, in order, in hexadecimal: the same files make the same pack.
    pub fn hash(&self) -> String {
        let mut hash = Sha256::new();
        for (path, text) in &self.files {
            for part in [path, text] {
                // The length first, so that no two different packs run together into the same bytes.
                hash.update((part.len() as u64).to_be_bytes());
                hash.update(part.as_bytes());
            }
        }
        hash.finalize().iter().fold(String::new(), |mut out, byte| {
            let _ = write!(out, "{byte:02x}");
            out
        })
    }

    /// The unit card of that id.
    pub fn unit(&self, id: &str) -> Option<&Arc<UnitCard>> {
        self.units.get(id)
    }

    /// The procedure of that id for that unit.
    pub fn procedure(&self, id: &str, unit: &str) -> Option<&Arc<Procedure>> {
        self.procedures.get(&(id.to_owned(), unit.to_owned()))
    }

    /// Every procedure, in the order of their ids, then of their units.
    pub fn procedures_list(&self) -> Vec<Arc<Procedure>> {
        self.procedures.values().cloned().collect()
    }

    /// The caution of that id.
    pub fn caution(&self, id: &str) -> Option<&Caution> {
        self.cautions.get(id)
    }

    /// The expressions and functions of the pack, compiled.
    pub fn scripts(&self) -> &Scripts {
        &self.scripts
    }

    /// Where a value stands in a YAML file, by its path of keys and list numbers ("parts/foot-nut/torque"); the nearest
    /// value above it when the path goes too far, the file as a whole when there is no such file.
    pub fn place_of(&self, file: &str, path: &str) -> Place {
        let name: Arc<str> = file.into();
        let root = self.files.get(file).and_then(|text| yaml::parse(&name, text).ok());
        root.map_or_else(|| Place::file(Arc::clone(&name)), |root| root.span_at(path).place(&name))
    }
}

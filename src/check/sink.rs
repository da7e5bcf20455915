//! Where findings are put as they are raised.

use super::finding::Finding;
use super::report::Found;
use crate::rulebase::{Pack, Step};
use crate::source::yaml::{self, Node};
use crate::source::{Level, Place, Problem};
use std::sync::Arc;

/// Takes what a finding raises, and knows places in the pack's files.
pub struct Sink<'a> {
    pack: &'a Pack,
    finding: &'static Finding,
    found: Vec<Found>,
    /// The file read last: findings come file by file.
    tree: Option<(Arc<str>, Node)>,
}

impl<'a> Sink<'a> {
    /// An empty sink.
    pub(super) fn new(pack: &'a Pack, finding: &'static Finding) -> Self {
        Self { pack, finding, found: Vec::new(), tree: None }
    }

    /// What is raised from here on is this finding.
    pub(super) fn takes(&mut self, finding: &'static Finding) {
        self.finding = finding;
    }

    /// Everything raised.
    pub(super) fn into_found(self) -> Vec<Found> {
        self.found
    }

    /// Raises the finding at its own level, with its own mend.
    pub fn raise(&mut self, place: Place, found: impl Into<String>) {
        self.raise_at(self.finding.level, place, found, None);
    }

    /// Raises it with what would be right there.
    pub fn raise_for(&mut self, place: Place, found: impl Into<String>, expected: impl Into<String>) {
        self.raise_at(self.finding.level, place, found, Some(expected.into()));
    }

    /// Raises a milder case of it.
    pub fn doubt(&mut self, place: Place, found: impl Into<String>, expected: impl Into<String>) {
        debug_assert!(self.finding.milder, "{} has no milder case", self.finding.name);
        self.raise_at(Level::Doubtful, place, found, Some(expected.into()));
    }

    fn raise_at(&mut self, level: Level, place: Place, found: impl Into<String>, expected: Option<String>) {
        let problem =
            Problem { place, level, found: found.into(), expected, mend: Some(self.finding.mend.to_owned()) };
        self.found.push(Found { finding: self.finding, problem });
    }

    /// The place of a field of a card ("parts/foot-nut/torque"); the nearest value above it where it is not written.
    pub fn field(&mut self, at: &Place, path: &str) -> Place {
        let file = Arc::clone(&at.file);
        self.tree(&file).map_or_else(|| at.clone(), |tree| tree.span_at(path).place(&file))
    }

    /// The place of a field of a step; the step's own where it is not written.
    pub fn of_step(&mut self, step: &Step, field: &str) -> Place {
        let file = Arc::clone(&step.at.file);
        let found = self
            .tree(&file)
            .and_then(|tree| entry(tree, (step.at.line, step.at.column)))
            .and_then(|map| map.get(field));
        found.map_or_else(|| step.at.clone(), |node| node.span.place(&file))
    }

    /// Words in a line of a file that is no YAML; the line's beginning where they do not stand in it.
    pub fn in_line(&self, file: &str, line: usize, words: &str) -> Place {
        let number = u32::try_from(line).unwrap_or(0);
        let text = self.pack.files().get(file).and_then(|text| text.lines().nth(line.saturating_sub(1)));
        let before = text.and_then(|text| text.split_once(words)).map(|(before, _)| before.chars().count());
        let place = Place::new(file, number, 1);
        let Some(column) = before.and_then(|before| u32::try_from(before + 1).ok()) else { return place };
        let length = u32::try_from(words.chars().count()).unwrap_or(1);
        Place::new(file, number, column).to(number, column + length)
    }

    fn tree(&mut self, file: &Arc<str>) -> Option<&Node> {
        if self.tree.as_ref().is_none_or(|(known, _)| known != file) {
            let text = self.pack.files().get(file.as_ref())?;
            self.tree = Some((Arc::clone(file), yaml::parse(file, text).ok()?));
        }
        self.tree.as_ref().map(|(_, tree)| tree)
    }
}

/// The map that has a value beginning there: the step whose deed stands at that place.
fn entry(node: &Node, at: (u32, u32)) -> Option<&Node> {
    if let Some(entries) = node.map() {
        if entries.iter().any(|(_, value)| value.span.start == at && value.text().is_some()) {
            return Some(node);
        }
        return entries.iter().find_map(|(_, value)| entry(value, at));
    }
    node.list()?.iter().find_map(|item| entry(item, at))
}

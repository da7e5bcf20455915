//! Files to a pack: every file is read, every problem is reported in one go.

mod adjuster;
mod card;
mod derive;
mod fields;
mod form;
mod names;
mod part;
mod procedure;
mod report;
mod shop;
mod step;
mod values;
mod world;

pub use form::{Field, Form, Shape};

use super::script::{self, Expression, Made, Scripts};
use super::talk::Talk;
use super::{Caution, Pack, Procedure, Tool, UnitCard};
use crate::source::yaml::{self, Node};
use crate::source::{Place, Problem, nearest};
use report::{Found, Report};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;
use world::World;

/// The forms of the files of a pack: the file or folder, and the form of what it holds. Cautions and tools stand by name.
pub fn forms() -> [(&'static str, &'static Form); 5] {
    [
        ("pack.yaml", &shop::PACK),
        ("cautions.yaml", &shop::CAUTION),
        ("tools.yaml", &shop::TOOL),
        ("units/", &card::CARD),
        ("procedures/", &procedure::PROCEDURE),
    ]
}

/// Reads the files of a pack.
///
/// # Errors
/// Every problem of every file, in the order of files and lines.
pub(super) fn read(files: BTreeMap<String, String>) -> Result<Pack, Vec<Problem>> {
    let mut load = Load { files: &files, problems: Vec::new(), expressions: Vec::new() };
    let mut pack = load.everything();
    let mut problems = load.problems;
    if problems.is_empty() {
        pack.files = files;
        return Ok(pack);
    }
    problems.sort();
    problems.dedup();
    Err(problems)
}

type Units = BTreeMap<String, Arc<UnitCard>>;
type Procedures = BTreeMap<(String, String), Arc<Procedure>>;

struct Load<'a> {
    files: &'a BTreeMap<String, String>,
    problems: Vec<Problem>,
    expressions: Vec<Expression>,
}

impl Load<'_> {
    fn everything(&mut self) -> Pack {
        self.strangers();
        let name = self.one("pack.yaml", shop::pack).flatten();
        let cautions = self.one("cautions.yaml", shop::cautions).unwrap_or_default();
        let tools = self.one("tools.yaml", shop::tools).unwrap_or_default();
        let units = self.units(&cautions, &tools);
        let procedures = self.procedures(&units, &cautions, &tools);
        let scripts = self.scripts(&units, &procedures);
        let talk = self.talk();
        Pack {
            name: name.unwrap_or_default(),
            format: 1,
            units,
            procedures,
            cautions,
            tools,
            talk: Arc::new(talk),
            talk_is_lent: false,
            scripts: Arc::new(scripts),
            files: BTreeMap::new(),
        }
    }

    fn folder(&self, folder: &str) -> BTreeMap<String, String> {
        let within = self.files.iter().filter(|(path, _)| path.starts_with(folder));
        within.map(|(path, text)| (path.clone(), text.clone())).collect()
    }

    /// Reads the talk grammars and word lists.
    fn talk(&mut self) -> Talk {
        let texts = self.folder("talk/");
        // The guarded reader first: what it refuses (depth, size, doubled keys) never reaches the other.
        let refused: Vec<Problem> = texts
            .iter()
            .filter(|(path, _)| path.ends_with(".yaml"))
            .filter_map(|(path, text)| yaml::parse(&Arc::from(path.as_str()), text).err())
            .flatten()
            .collect();
        if !refused.is_empty() {
            self.problems.extend(refused);
            return Talk::default();
        }
        let files = texts.iter().map(|(path, text)| (path.as_str(), text.as_str()));
        Talk::load(files).unwrap_or_else(|problems| {
            self.problems.extend(problems.into_iter().map(|problem| {
                let place = Place::new(problem.file, problem.line as u32, problem.column as u32);
                Problem::wrong(place, problem.message).mend(problem.mend)
            }));
            Talk::default()
        })
    }

    /// Compiles scripts and expressions, and tries each on made-up views.
    fn scripts(&mut self, units: &Units, procedures: &Procedures) -> Scripts {
        let texts = self.folder("scripts/");
        let (scripts, problems) = Scripts::compile(&texts, &self.expressions);
        if !problems.is_empty() {
            self.problems.extend(problems);
            return scripts;
        }
        let views =
            procedures.values().filter_map(|one| Some(Made::up(Arc::clone(units.get(&one.unit)?), one)));
        let views: Vec<Made<'_>> = views.collect();
        let files = texts.iter().filter(|(path, _)| path.ends_with(".rhai"));
        let problems: Vec<Problem> =
            files.flat_map(|(path, text)| script::library(&scripts, path, text, &views)).collect();
        if !problems.is_empty() {
            self.problems.extend(problems);
            return scripts;
        }
        let mut seen: BTreeSet<(&str, &str, &str)> = BTreeSet::new();
        for expression in &self.expressions {
            let key = (expression.procedure.clone(), expression.unit.clone());
            let fresh = seen.insert((&expression.text, &expression.procedure, &expression.unit));
            if let (true, Some(procedure), Some(card)) =
                (fresh, procedures.get(&key), units.get(&expression.unit))
            {
                self.problems.extend(Made::up(Arc::clone(card), procedure).try_out(&scripts, expression));
            }
        }
        scripts
    }

    /// Files that a pack has no use for, and one that it must have.
    fn strangers(&mut self) {
        if !self.files.contains_key("pack.yaml") {
            let problem = Problem::wrong(Place::file("pack.yaml"), "there is no `pack.yaml`")
                .expected("`name:` and `format: 1` in it")
                .mend("add it; without it a folder is no pack");
            self.problems.push(problem);
        }
        let strange = self.files.keys().filter(|path| !is_known(path));
        let strange = strange.map(|path| {
            let mend = match nearest(path, ["pack.yaml", "cautions.yaml", "tools.yaml"]) {
                Some(near) => format!("name it `{near}` if that is what it is"),
                None => "move it out of the pack, or into the folder that it belongs to".to_owned(),
            };
            let expected = "`pack.yaml`, `cautions.yaml`, `tools.yaml`, `units/*.yaml`, `procedures/*.yaml`, `talk/*.jsgf`, `talk/*.yaml`, `scripts/*.rhai` or `*.md`";
            Problem::wrong(Place::file(path.as_str()), format!("a pack has no file `{path}`")).expected(expected).mend(mend)
        });
        self.problems.extend(strange);
    }

    /// Reads one file of the pack's root, when it is there.
    fn one<T>(&mut self, path: &str, read: impl Fn(&Node, &Report) -> T) -> Option<T> {
        let root = self.tree(path)?;
        let report = Report::new(path.into());
        let out = read(&root, &report);
        self.problems.extend(report.into_problems());
        Some(out)
    }

    fn tree(&mut self, path: &str) -> Option<Node> {
        let text = self.files.get(path)?;
        yaml::parse(&path.into(), text).map_err(|problems| self.problems.extend(problems)).ok()
    }

    fn yaml_in(&self, folder: &str) -> Vec<String> {
        let paths = self.files.keys().filter(|path| path.starts_with(folder) && path.ends_with(".yaml"));
        paths.cloned().collect()
    }

    fn units(&mut self, cautions: &BTreeMap<String, Caution>, tools: &[Tool]) -> Units {
        let mut units: Units = BTreeMap::new();
        for path in self.yaml_in("units/") {
            let Some(root) = self.tree(&path) else { continue };
            let report = Report::new(path.as_str().into());
            if let Some(card) = card::read(&root, &report) {
                let none = BTreeMap::new();
                names::check(&card, &root, &report, &World { units: &none, cautions, tools, card: None });
                if let Some(other) = units.get(&card.id) {
                    report.add(twice(&format!("the unit card `{}`", card.id), &card.at, &other.at));
                }
                units.insert(card.id.clone(), Arc::new(card));
            }
            self.problems.extend(report.into_problems());
        }
        units
    }

    fn procedures(
        &mut self,
        units: &Units,
        cautions: &BTreeMap<String, Caution>,
        tools: &[Tool],
    ) -> Procedures {
        let mut procedures: Procedures = BTreeMap::new();
        let world = World { units, cautions, tools, card: None };
        for path in self.yaml_in("procedures/") {
            let (Some(root), Some(text)) = (self.tree(&path), self.files.get(&path)) else { continue };
            let report = Report::new(path.as_str().into());
            if let Some(procedure) = procedure::read(&root, &report, &world) {
                self.expressions.extend(placed(&path, text, &procedure, report.take_expressions()));
                let key = (procedure.id.clone(), procedure.unit.clone());
                if let Some(other) = procedures.get(&key) {
                    report.add(twice(
                        &format!("the procedure `{}` for `{}`", key.0, key.1),
                        &procedure.at,
                        &other.at,
                    ));
                }
                procedures.insert(key, Arc::new(procedure));
            }
            self.problems.extend(report.into_problems());
        }
        procedures
    }
}

/// The expressions of a procedure with what tells their places.
fn placed(path: &str, text: &str, procedure: &Procedure, found: Vec<Found>) -> Vec<Expression> {
    let file: Arc<str> = path.into();
    let expression = |found: Found| {
        // A block's span begins at its first line, at the column of the indicator.
        let first = text.lines().nth(found.span.start.0.saturating_sub(1) as usize).unwrap_or_default();
        let indent = first.chars().take_while(|letter| *letter == ' ').count();
        Expression {
            text: found.text,
            kind: found.kind,
            file: Arc::clone(&file),
            span: found.span,
            style: found.style,
            indent: u32::try_from(indent).unwrap_or_default(),
            unit: procedure.unit.clone(),
            procedure: procedure.id.clone(),
        }
    };
    found.into_iter().map(expression).collect()
}

fn twice(what: &str, at: &Place, first: &Place) -> Problem {
    Problem::wrong(at.clone(), format!("{what} stands twice"))
        .expected(format!("each once; the first is at {first}"))
        .mend("give one of them its own id, or take it out")
}

fn is_known(path: &str) -> bool {
    let ends = |endings: &[&str]| endings.iter().any(|ending| path.ends_with(ending));
    match path.split_once('/') {
        None => matches!(path, "pack.yaml" | "cautions.yaml" | "tools.yaml") || ends(&[".md"]),
        Some(("units" | "procedures", _)) => ends(&[".yaml", ".md"]),
        Some(("talk", _)) => ends(&[".jsgf", ".yaml", ".md", ".txt", ".tsv"]),
        Some(("scripts", _)) => ends(&[".rhai", ".md"]),
        _ => false,
    }
}

/// Words to an id: lower case, joined by `-`.
pub(super) fn slug(words: &str) -> String {
    let mut out = String::new();
    for c in words.chars().flat_map(char::to_lowercase) {
        match c {
            c if c.is_alphanumeric() => out.push(c),
            _ if !out.is_empty() && !out.ends_with('-') => out.push('-'),
            _ => {}
        }
    }
    out.trim_end_matches('-').to_owned()
}

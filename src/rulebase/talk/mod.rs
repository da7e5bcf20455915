//! The pack's talk: grammars in the open speech-grammar format (JSGF) and the word lists beside them.

mod error;
mod expr;
mod jsgf;
mod lexer;
mod words;
mod works;

pub use error::TalkError;
pub use expr::Expr;
pub use jsgf::parse_grammar;
pub use words::Words;
pub use works::{Asking, Found, Most, Never, Works};

use std::collections::BTreeMap;

/// One rule of a grammar.
#[derive(Debug, Clone, PartialEq)]
pub struct TalkRule {
    /// The file it stands in.
    pub file: String,
    /// Its line there, from 1.
    pub line: usize,
    /// Its name, without the grammar's.
    pub name: String,
    /// Whether it is a thing to say (public), or a piece of one.
    pub public: bool,
    /// What may be said.
    pub body: Expr,
    /// The tag of a public rule: an act with fixed slots, or a verdict of hearing.
    pub tag: Option<String>,
    /// `@example` lines of the comment before it, each with its line.
    pub examples: Vec<(usize, String)>,
}

/// All talk of a pack.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Talk {
    /// The rules of every grammar, in the order of files and lines.
    pub rules: Vec<TalkRule>,
    /// The word lists.
    pub words: Words,
    /// How calculations are asked for.
    pub works: Works,
}

impl Talk {
    /// The talk of files given as (name, text): `*.jsgf`, `words.yaml` and `works.yaml`; other names are passed over.
    ///
    /// # Errors
    /// Every problem found, each with its file, line and a way to mend it.
    pub fn load<'a>(files: impl IntoIterator<Item = (&'a str, &'a str)>) -> Result<Self, Vec<TalkError>> {
        let mut talk = Self::default();
        let mut problems = Vec::new();
        for (name, text) in files {
            if name.ends_with(".jsgf") {
                match parse_grammar(name, text) {
                    Ok(rules) => talk.rules.extend(rules),
                    Err(problem) => problems.push(problem),
                }
            } else if name.ends_with("words.yaml") {
                match Words::parse(name, text) {
                    Ok(words) => talk.words = words,
                    Err(problem) => problems.push(problem),
                }
            } else if name.ends_with("works.yaml") {
                match Works::parse(name, text) {
                    Ok(works) => talk.works = works,
                    Err(problem) => problems.push(problem),
                }
            }
        }
        problems.extend(talk.unknown_names());
        if problems.is_empty() { Ok(talk) } else { Err(problems) }
    }

    /// Rules by name; a later rule of the same name is reported by `unknown_names`.
    pub fn by_name(&self) -> BTreeMap<&str, &TalkRule> {
        self.rules.iter().map(|rule| (rule.name.as_str(), rule)).collect()
    }

    /// Names that are used and not defined, or defined twice.
    fn unknown_names(&self) -> Vec<TalkError> {
        let known = self.by_name();
        let mut problems = Vec::new();
        for rule in &self.rules {
            let at = |message: String, mend: &str| TalkError::new(&rule.file, rule.line, 1, message, mend);
            if known.get(rule.name.as_str()).is_some_and(|other| !std::ptr::eq(*other, rule)) {
                problems
                    .push(at(format!("`<{}>` is defined twice", rule.name), "give one of them another name"));
            }
            for name in rule.body.names() {
                if !known.contains_key(name) && !expr::BUILT_IN.contains(&name) {
                    problems.push(at(
                        format!("`<{name}>` is used and defined nowhere"),
                        "define it, or use one of the program's slots (`<part>`, `<number>`, `<text>`, ...)",
                    ));
                }
            }
            if rule.public && rule.tag.is_none() {
                problems.push(at(format!("`<{}>` has no tag", rule.name), "end it with a tag: `{confirm}`"));
            }
        }
        problems.extend(self.loops());
        problems
    }

    /// Rules that use themselves: the automaton is finite.
    fn loops(&self) -> Vec<TalkError> {
        let known = self.by_name();
        let mut problems = Vec::new();
        for rule in &self.rules {
            let mut seen = std::collections::BTreeSet::new();
            let mut todo: Vec<&str> = rule.body.names();
            while let Some(name) = todo.pop() {
                if name == rule.name {
                    let message = format!("`<{}>` uses itself", rule.name);
                    problems.push(TalkError::new(
                        &rule.file,
                        rule.line,
                        1,
                        message,
                        "use `*` or `+` to repeat",
                    ));
                    break;
                }
                if seen.insert(name)
                    && let Some(next) = known.get(name)
                {
                    todo.extend(next.body.names());
                }
            }
        }
        problems
    }
}

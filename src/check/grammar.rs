//! Whether a rule of the talk says a line word for word: no ear, no tolerance.

use crate::rulebase::talk::{Expr, Talk, TalkRule};
use std::collections::{BTreeMap, BTreeSet};

/// How deep rules may name rules; those that go round are cut off there.
const DEPTH: usize = 24;

/// The rules of a pack's talk by name.
pub struct Grammar<'a> {
    rules: BTreeMap<&'a str, &'a TalkRule>,
}

/// The words of a line as the grammar writes them.
pub fn plain(line: &str) -> Vec<String> {
    let line = line.to_lowercase().replace(['.', ',', '?', '!', ';', ':'], " ");
    line.split_whitespace().map(str::to_owned).collect()
}

/// A rule's name without that of its grammar.
pub fn last(name: &str) -> &str {
    name.rsplit('.').next().unwrap_or(name)
}

/// What a rule says in so many words: those of its alternatives that are nothing but words.
pub fn literals(expr: &Expr) -> Vec<String> {
    let word = |part: &Expr| if let Expr::Word(word) = part { Some(word.clone()) } else { None };
    match expr {
        Expr::Word(word) => vec![word.clone()],
        Expr::Seq(parts) => {
            let words: Option<Vec<String>> = parts.iter().map(word).collect();
            words.map(|words| words.join(" ")).into_iter().collect()
        }
        Expr::Alt(parts) => parts.iter().flat_map(literals).collect(),
        _ => Vec::new(),
    }
}

impl<'a> Grammar<'a> {
    /// Those of a pack.
    pub fn of(talk: &'a Talk) -> Self {
        Self { rules: talk.rules.iter().map(|rule| (last(&rule.name), rule)).collect() }
    }

    /// Whether the rule says exactly these words. What the program or a card fills in is none of them.
    pub fn says(&self, rule: &TalkRule, words: &[String]) -> bool {
        self.ends(&rule.body, words, 0, DEPTH).contains(&words.len())
    }

    /// Where an expansion that begins at a word may end.
    fn ends(&self, expr: &Expr, words: &[String], at: usize, depth: usize) -> BTreeSet<usize> {
        let Some(depth) = depth.checked_sub(1) else { return BTreeSet::new() };
        match expr {
            Expr::Word(word) => {
                words.get(at).filter(|here| *here == word).map(|_| at + 1).into_iter().collect()
            }
            Expr::Name(name) if name == "NULL" => BTreeSet::from([at]),
            Expr::Name(name) => {
                let rule = self.rules.get(last(name));
                rule.map(|rule| self.ends(&rule.body, words, at, depth)).unwrap_or_default()
            }
            Expr::Seq(parts) => parts.iter().fold(BTreeSet::from([at]), |from, part| {
                from.into_iter().flat_map(|at| self.ends(part, words, at, depth)).collect()
            }),
            Expr::Alt(parts) => parts.iter().flat_map(|part| self.ends(part, words, at, depth)).collect(),
            Expr::Opt(part) => {
                let mut found = self.ends(part, words, at, depth);
                found.insert(at);
                found
            }
            Expr::Repeat(part, once) => self.repeated(part, *once, words, at, depth),
        }
    }

    fn repeated(
        &self,
        part: &Expr,
        once: bool,
        words: &[String],
        at: usize,
        depth: usize,
    ) -> BTreeSet<usize> {
        let mut found = if once { BTreeSet::new() } else { BTreeSet::from([at]) };
        let mut from = BTreeSet::from([at]);
        for _ in 0..words.len() {
            from = from.into_iter().flat_map(|at| self.ends(part, words, at, depth)).collect();
            found.extend(&from);
        }
        found
    }
}

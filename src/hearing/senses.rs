//! The senses of words: what the model sees of a word that no example showed.

use super::stem::stem;
use super::token::tokens;
use std::collections::HashMap;

/// A sense, by its number.
pub type Sense = u16;

/// A phrase by its stems, with its senses.
type Phrase = (Vec<String>, Vec<Sense>);

/// The senses of words and phrases.
#[derive(Debug, Clone, Default)]
pub struct Senses {
    names: Vec<String>,
    words: HashMap<String, Vec<Sense>>,
    phrases: HashMap<String, Vec<Phrase>>,
}

impl Senses {
    /// The senses of a table, numbered in its order.
    #[must_use]
    pub fn new(table: &std::collections::BTreeMap<String, Vec<String>>) -> Self {
        let mut out = Self { names: table.keys().cloned().collect(), ..Self::default() };
        for (number, list) in table.values().enumerate() {
            let Ok(sense) = Sense::try_from(number) else { break };
            for entry in list {
                let roots: Vec<String> = tokens(entry).into_iter().map(|token| stem(&token.text)).collect();
                match roots.as_slice() {
                    [] => {}
                    [one] => out.words.entry(one.clone()).or_default().push(sense),
                    [first, ..] => out.phrase(first.clone(), roots, sense),
                }
            }
        }
        for list in out.phrases.values_mut() {
            list.sort_by_key(|(words, _)| std::cmp::Reverse(words.len()));
        }
        out
    }

    fn phrase(&mut self, first: String, roots: Vec<String>, sense: Sense) {
        let list = self.phrases.entry(first).or_default();
        match list.iter_mut().find(|(words, _)| *words == roots) {
            Some((_, senses)) => senses.push(sense),
            None => list.push((roots, vec![sense])),
        }
    }

    /// The senses along a line of stems: for each word or phrase that has any, in order.
    #[must_use]
    pub fn of(&self, roots: &[String]) -> Vec<Vec<Sense>> {
        let mut out = Vec::new();
        let mut at = 0;
        while let Some(root) = roots.get(at) {
            let phrase = self.phrases.get(root).and_then(|list| {
                list.iter().find(|(words, _)| roots.get(at..at + words.len()) == Some(words.as_slice()))
            });
            match phrase {
                Some((words, senses)) => {
                    out.push(senses.clone());
                    at += words.len();
                }
                None => {
                    if let Some(senses) = self.words.get(root) {
                        out.push(senses.clone());
                    }
                    at += 1;
                }
            }
        }
        out
    }

    /// The names of the senses that a line of stems has, in the order of the table.
    #[must_use]
    pub fn names(&self, roots: &[String]) -> std::collections::BTreeSet<&str> {
        let found = self.of(roots);
        let named = found.iter().flatten().filter_map(|sense| self.names.get(usize::from(*sense)));
        named.map(String::as_str).collect()
    }

    /// Whether a line of stems has a word or phrase of a sense, by its name.
    #[must_use]
    pub fn has(&self, roots: &[String], name: &str) -> bool {
        let number = self.names.iter().position(|own| own == name).and_then(|at| Sense::try_from(at).ok());
        number.is_some_and(|number| self.of(roots).iter().any(|senses| senses.contains(&number)))
    }
}

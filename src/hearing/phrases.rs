//! Rewrites of words and phrases by a table: what is said to what is meant.

use super::token::Token;
use std::collections::{BTreeMap, HashMap};

/// What is said, and what is meant.
type Rewrite = (Vec<String>, Vec<String>);

/// A phrase table, looked up by its first word, longest phrase first.
#[derive(Debug, Clone, Default)]
pub struct Phrases {
    by_first: HashMap<String, Vec<Rewrite>>,
}

impl Phrases {
    /// The table of a list of phrases.
    #[must_use]
    pub fn new(table: &BTreeMap<String, String>) -> Self {
        let mut by_first: HashMap<String, Vec<Rewrite>> = HashMap::new();
        for (said, meant) in table {
            let words = |text: &str| text.split_whitespace().map(str::to_lowercase).collect::<Vec<_>>();
            let said = words(said);
            if let Some(first) = said.first().cloned() {
                by_first.entry(first).or_default().push((said, words(meant)));
            }
        }
        for list in by_first.values_mut() {
            list.sort_by_key(|(said, _)| std::cmp::Reverse(said.len()));
        }
        Self { by_first }
    }

    /// The tokens with every phrase of the table rewritten once, left to right.
    #[must_use]
    pub fn rewrite(&self, tokens: Vec<Token>) -> Vec<Token> {
        let mut out = Vec::with_capacity(tokens.len());
        let mut at = 0;
        while let Some(token) = tokens.get(at) {
            let Some((said, meant)) = self.found(&tokens, at) else {
                out.push(token.clone());
                at += 1;
                continue;
            };
            let span = tokens.get(at..at + said.len()).unwrap_or_default();
            let end = span.last().map_or(token.raw.end, |last| last.raw.end);
            let mark = span.last().map(|last| last.mark).unwrap_or_default();
            for (n, text) in meant.iter().enumerate() {
                let mark = if n + 1 == meant.len() { mark } else { Default::default() };
                out.push(Token { text: text.clone(), was: None, raw: token.raw.start..end, mark });
            }
            if meant.is_empty()
                && let Some(last) = out.last_mut()
            {
                last.mark = last.mark.max(mark);
            }
            at += said.len();
        }
        out
    }

    fn found(&self, tokens: &[Token], at: usize) -> Option<&Rewrite> {
        let list = self.by_first.get(&tokens.get(at)?.text)?;
        list.iter().find(|(said, _)| {
            let span = tokens.get(at..at + said.len());
            span.is_some_and(|span| span.iter().zip(said).all(|(token, word)| token.text == *word))
        })
    }
}

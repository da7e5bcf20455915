//! What the linear model sees of a clause.

use super::model::{Feature, feature, fold};
use super::senses::{Sense, Senses};
use super::stem::stem;
use std::collections::BTreeSet;

/// A word or slot of a clause, as the model sees it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Seen {
    /// The word, or the slot that stands for several.
    pub text: String,
    /// Whether talk knows it.
    pub known: bool,
    /// Whether it tells little.
    pub small: bool,
    /// The last word of the name that a slot stands for.
    pub head: Option<String>,
}

/// The features of a clause: its words and stems, neighbours, first and last words, and the pieces found in it.
#[must_use]
pub fn features(clause: &[Seen], pieces: &BTreeSet<String>, senses: &Senses) -> Vec<Feature> {
    let mut out = vec![feature(&["bias"])];
    let text = |seen: &Seen| if seen.known { seen.text.clone() } else { "<new>".to_owned() };
    let words: Vec<String> = clause.iter().map(text).collect();
    for word in &words {
        out.push(feature(&["w", word]));
        let root = stem(word);
        if root != *word {
            out.push(feature(&["s", &root]));
        }
    }
    out.extend(clause.iter().filter_map(|seen| Some(feature(&["h", seen.head.as_deref()?]))));
    let edge = "<edge>".to_owned();
    let mut before = &edge;
    let mut before_that = &edge;
    for word in words.iter().chain([&edge]) {
        out.push(feature(&["2", before, word]));
        if before_that != "<edge>" {
            out.push(feature(&["3", before_that, word]));
        }
        before_that = before;
        before = word;
    }
    let telling: Vec<String> =
        clause.iter().zip(&words).filter(|(seen, _)| !seen.small).map(|(_, word)| stem(word)).collect();
    for (a, b) in telling.iter().zip(telling.iter().skip(1)) {
        out.push(feature(&["t", a, b]));
    }
    let roots: Vec<String> = clause.iter().map(|seen| stem(&seen.text)).collect();
    of_senses(&senses.of(&roots), &mut out);
    let fresh = clause.iter().filter(|seen| !seen.known).count();
    if fresh >= 2 {
        out.push(feature(&["many-new"]));
    }
    if clause.len() == 1 {
        out.push(feature(&["one-word"]));
    }
    out.extend(pieces.iter().map(|piece| feature(&["p", piece])));
    out.sort_unstable();
    out.dedup();
    out
}

/// Senses, neighbouring senses in order, and senses that meet in one clause.
fn of_senses(line: &[Vec<Sense>], out: &mut Vec<Feature>) {
    let pair = |kind: u64, a: Sense, b: Sense| {
        fold((kind << 32 | u64::from(a) << 16 | u64::from(b)).wrapping_mul(0x9e37_79b9_7f4a_7c15))
    };
    for (at, here) in line.iter().enumerate() {
        for a in here {
            out.push(pair(1, *a, 0));
            for b in line.get(at + 1).into_iter().flatten() {
                out.push(pair(2, *a, *b));
            }
            for b in line.iter().skip(at + 1).take(REACH).flatten() {
                out.push(pair(3, *a.min(b), *a.max(b)));
            }
        }
    }
}

/// How far on two senses still meet.
const REACH: usize = 5;

//! How words sound: phonetic keys (Double Metaphone) and nearness of spelling.

use rphonetic::{DoubleMetaphone, Encoder};
use std::collections::BTreeSet;

/// Longest key kept; names of three words fit.
const KEY: usize = 12;

/// The phonetic key of a word, or of several words run together; digits and signs have none.
#[must_use]
pub fn key(word: &str) -> String {
    let letters: String = word.chars().filter(char::is_ascii_alphabetic).collect();
    if letters.is_empty() { String::new() } else { DoubleMetaphone::new(Some(KEY)).encode(&letters) }
}

/// A key and all it becomes when one sound is left out: two keys one sound apart share one of these.
#[must_use]
pub fn near_keys(key: &str) -> BTreeSet<String> {
    let mut out = BTreeSet::from([key.to_owned()]);
    if key.len() >= 3 {
        for skip in 0..key.chars().count() {
            out.insert(key.chars().enumerate().filter(|(at, _)| *at != skip).map(|(_, c)| c).collect());
        }
    }
    out
}

/// How alike two words are, by sound and spelling, 0 to 1.
#[must_use]
pub fn likeness(a: &str, b: &str, key_a: &str, key_b: &str) -> f64 {
    if key_a.is_empty() || key_b.is_empty() {
        return 0.0;
    }
    let sound = strsim::normalized_levenshtein(key_a, key_b);
    let spelling = strsim::normalized_damerau_levenshtein(a, b);
    0.6 * sound + 0.4 * spelling
}

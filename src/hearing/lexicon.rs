//! The words that talk knows, how they follow each other, and what a misheard word may have been.

use super::measure;
use super::names::Names;
use super::sound;
use super::stem::stem;
use super::token::Token;
use crate::rulebase::talk::Words;
use std::collections::{BTreeMap, BTreeSet, HashMap, HashSet};

/// The words of a pack's talk.
#[derive(Debug, Clone, Default)]
pub struct Lexicon {
    known: HashSet<String>,
    stems: HashSet<String>,
    keys: HashMap<String, String>,
    near: HashMap<String, BTreeSet<String>>,
    heard: BTreeMap<String, Vec<String>>,
    denials: HashSet<String>,
    /// Words of the names of units ("birch").
    pub unit_words: HashSet<String>,
    bench: BTreeSet<String>,
    pairs: HashMap<String, HashMap<String, f32>>,
    singles: HashMap<String, f32>,
    total: f32,
}

/// What a word may be, with what it costs to take it so.
#[derive(Debug, Clone, PartialEq)]
struct Guess {
    text: String,
    cost: f32,
}

/// What it costs that a word follows which no example has.
const NEW_WORD: f32 = 5.0;
const EDGE: &str = "<edge>";
/// A bench word never costs less than this to be put for a known one.
const SAME_SOUND: f32 = 5.0;

impl Lexicon {
    /// The lexicon of example lines (as words and slots) and the word lists.
    #[must_use]
    pub fn new(
        lines: &[Vec<String>],
        bench: &BTreeSet<String>,
        parts: &Names,
        words: &Words,
        unit_words: HashSet<String>,
    ) -> Self {
        let mut lexicon = Self { heard: words.heard.clone(), unit_words, ..Self::default() };
        lexicon.denials = words.denials.iter().cloned().collect();
        for line in lines {
            lexicon.learn(line, parts);
        }
        lexicon.bench = bench.clone();
        let lists = [
            &words.plain,
            &words.small,
            &words.light,
            &words.fillers,
            &words.hedges,
            &words.denials,
            &words.reported,
        ];
        for word in lists.into_iter().flatten() {
            lexicon.know(word);
        }
        let units: Vec<String> = lexicon.unit_words.iter().cloned().collect();
        for word in bench.iter().chain(&units) {
            lexicon.know(word);
            let key = sound::key(word);
            if key.is_empty() || word.len() < 2 {
                continue;
            }
            for near in sound::near_keys(&key) {
                lexicon.near.entry(near).or_default().insert(word.clone());
            }
            lexicon.keys.insert(word.clone(), key);
        }
        lexicon
    }

    fn know(&mut self, word: &str) {
        self.stems.insert(stem(word));
        self.known.insert(word.to_owned());
    }

    fn learn(&mut self, line: &[String], parts: &Names) {
        let mut before = EDGE.to_owned();
        for word in line.iter().chain([&EDGE.to_owned()]) {
            let class = class_of(word, parts, &self.unit_words);
            if !word.starts_with('<') {
                self.know(word);
            }
            *self.singles.entry(class.clone()).or_default() += 1.0;
            *self.pairs.entry(before).or_default().entry(class.clone()).or_default() += 1.0;
            self.total += 1.0;
            before = class;
        }
    }

    /// Whether talk, or plain English as far as the pack lists it, knows the word.
    #[must_use]
    pub fn knows(&self, word: &str) -> bool {
        self.known.contains(word)
            || self.stems.contains(&stem(word))
            || is_number_word(word)
            || measure::is_measure(word)
    }

    /// Whether the word is one of the bench's: of its grammars, numbers or units.
    #[must_use]
    pub fn of_bench(&self, word: &str) -> bool {
        self.bench.contains(word) || is_number_word(word) || measure::is_measure(word)
    }

    /// The words of the bench: of its grammars' acts.
    #[must_use]
    pub fn bench(&self) -> &BTreeSet<String> {
        &self.bench
    }

    /// Takes words in that are what they are, whatever they sound like.
    pub fn know_all(&mut self, words: impl IntoIterator<Item = String>) {
        for word in words {
            self.know(&word);
        }
    }

    /// The tokens with misheard words mended where sound and neighbours agree; `unit` leads.
    #[must_use]
    pub fn mend(&self, tokens: Vec<Token>, unit: &Names) -> Vec<Token> {
        let guesses: Vec<Vec<Guess>> = tokens
            .iter()
            .enumerate()
            .map(|(at, token)| {
                let before = at.checked_sub(1).and_then(|at| tokens.get(at)).map(|token| token.text.as_str());
                self.guesses(&token.text, before, unit)
            })
            .collect();
        if guesses.iter().all(|list| list.len() == 1) {
            return tokens;
        }
        let chosen = self.likeliest(&guesses, unit);
        let mut out = Vec::with_capacity(tokens.len());
        for (mut token, text) in tokens.into_iter().zip(chosen) {
            if text != token.text {
                token.was = Some(std::mem::replace(&mut token.text, text));
            }
            out.push(token);
        }
        out
    }

    fn guesses(&self, word: &str, before: Option<&str>, unit: &Names) -> Vec<Guess> {
        let known = self.knows(word) || unit.holds(word);
        let mut out = vec![Guess { text: word.to_owned(), cost: if known { 0.0 } else { 3.0 } }];
        if word.len() < 2 && !matches!(word, "y" | "u" | "r") || word.chars().any(|c| c.is_ascii_digit()) {
            return out;
        }
        let pointed = before.is_some_and(|before| {
            matches!(before, "the" | "a" | "this" | "that" | "my" | "his" | "old" | "new")
                || unit.holds(before)
        });
        let denies = if self.denials.contains(word) { 2.0 } else { 0.0 };
        // A word of denial is never heard away, unless it stands where only a part can.
        let may = pointed || !self.denials.contains(word);
        for other in self.heard.get(word).into_iter().flatten().filter(|_| may) {
            // What the bench itself says is misheard less often than it is said.
            let ours = if self.bench.contains(word) && !self.denials.contains(word) { 2.5 } else { 0.0 };
            out.push(Guess { text: other.clone(), cost: 1.5 + denies + ours });
        }
        let key = sound::key(word);
        if !known {
            for other in sound::near_keys(&key).iter().filter_map(|key| self.near.get(key)).flatten() {
                out.extend(self.guess(word, other, &key, known, denies));
            }
        }
        for other in unit.words().iter().filter(|_| pointed || !known) {
            let other_key = self.keys.get(other).cloned().unwrap_or_else(|| sound::key(other));
            if other_key == key && other != word && other.len() > 1 {
                out.extend(self.guess(word, other, &key, known, denies));
            }
        }
        out.sort_by(|a, b| a.text.cmp(&b.text).then(a.cost.total_cmp(&b.cost)));
        out.dedup_by(|a, b| a.text == b.text);
        out
    }

    fn guess(&self, word: &str, other: &str, key: &str, known: bool, denies: f32) -> Option<Guess> {
        if other == word || (known && stem(other) == stem(word)) {
            return None;
        }
        let other_key = self.keys.get(other).cloned().unwrap_or_else(|| sound::key(other));
        let like = sound::likeness(word, other, key, &other_key) as f32;
        let cost = if known { SAME_SOUND + (1.0 - like) * 3.0 + denies } else { 0.8 + (1.0 - like) * 12.0 };
        (like
            >= if known {
                0.6
            } else if word.len() <= 4 && other_key != key {
                0.9
            } else {
                0.76
            })
        .then(|| Guess { text: other.to_owned(), cost })
    }

    fn likeliest(&self, guesses: &[Vec<Guess>], unit: &Names) -> Vec<String> {
        let mut rows: Vec<Vec<(f32, usize)>> = Vec::with_capacity(guesses.len());
        let start = [Guess { text: EDGE.to_owned(), cost: 0.0 }];
        let mut before: (&[Guess], Vec<f32>) = (&start, vec![0.0]);
        for list in guesses {
            let classes: Vec<String> =
                before.0.iter().map(|guess| class_of(&guess.text, unit, &self.unit_words)).collect();
            let row: Vec<(f32, usize)> = list
                .iter()
                .map(|guess| {
                    let class = class_of(&guess.text, unit, &self.unit_words);
                    let ways = classes.iter().zip(&before.1).enumerate();
                    let (cost, from) = ways
                        .map(|(from, (last, cost))| (cost + self.follows(last, &class), from))
                        .min_by(|a, b| a.0.total_cmp(&b.0))
                        .unwrap_or((0.0, 0));
                    (cost + guess.cost, from)
                })
                .collect();
            before = (list, row.iter().map(|(cost, _)| *cost).collect());
            rows.push(row);
        }
        let ends =
            before.0.iter().zip(&before.1).map(|(guess, cost)| {
                cost + self.follows(&class_of(&guess.text, unit, &self.unit_words), EDGE)
            });
        let mut at = ends.enumerate().min_by(|a, b| a.1.total_cmp(&b.1)).map_or(0, |(at, _)| at);
        let mut chosen = Vec::with_capacity(guesses.len());
        for (list, row) in guesses.iter().zip(&rows).rev() {
            chosen.push(list.get(at).map(|guess| guess.text.clone()).unwrap_or_default());
            at = row.get(at).map_or(0, |(_, from)| *from);
        }
        chosen.reverse();
        chosen
    }

    /// What it costs that one class of word follows another: the negative logarithm of its chance.
    fn follows(&self, before: &str, after: &str) -> f32 {
        // A word that no example has may stand anywhere, as any word may.
        let Some(count) = self.singles.get(after) else { return NEW_WORD };
        let alone = (count + 0.1) / (self.total + 100.0);
        let seen = self.singles.get(before).copied().unwrap_or(0.0);
        let pair = self.pairs.get(before).and_then(|next| next.get(after)).copied().unwrap_or(0.0);
        let chance = (pair + 4.0 * alone) / (seen + 4.0);
        -(chance.max(1e-6)).ln()
    }
}

/// Whether a word is or begins a number.
#[must_use]
pub fn is_number_word(word: &str) -> bool {
    word.starts_with(|c: char| c.is_ascii_digit())
        || (word.starts_with(['-', '.']) && word.chars().nth(1).is_some_and(|c| c.is_ascii_digit()))
        || matches!(
            word,
            "zero"
                | "nought"
                | "naught"
                | "nil"
                | "oh"
                | "one"
                | "two"
                | "three"
                | "four"
                | "five"
                | "six"
                | "seven"
                | "eight"
                | "nine"
                | "ten"
                | "eleven"
                | "twelve"
                | "thirteen"
                | "fourteen"
                | "fifteen"
                | "sixteen"
                | "seventeen"
                | "eighteen"
                | "nineteen"
                | "twenty"
                | "thirty"
                | "forty"
                | "fourty"
                | "fifty"
                | "sixty"
                | "seventy"
                | "eighty"
                | "ninety"
                | "hundred"
                | "thousand"
                | "half"
                | "quarter"
                | "quarters"
                | "dozen"
                | "point"
        )
}

fn class_of(word: &str, unit: &Names, units: &HashSet<String>) -> String {
    if units.contains(word) {
        return "<unit>".to_owned();
    }
    if word == "<quantity>" || word == "<duration>" || is_number_word(word) {
        "<number>".to_owned()
    } else if unit.holds(word) {
        "<part>".to_owned()
    } else if measure::is_measure(word) {
        "<measure>".to_owned()
    } else {
        word.to_owned()
    }
}

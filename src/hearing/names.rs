//! Finds a unit's things by their spoken names: whole, by head word, by first word, or by sound.

use super::sound;
use super::vocabulary::Vocabulary;
use std::collections::{BTreeMap, BTreeSet, HashMap};

/// How a name was recognised.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fit {
    /// The whole name.
    Whole,
    /// Its last word ("the nut").
    Head,
    /// The whole name by sound ("piston not").
    Sound,
    /// Its first word ("the slow").
    First,
}

/// The names of one unit, ready to be looked up.
#[derive(Debug, Clone, Default)]
pub struct Names {
    whole: HashMap<String, BTreeSet<String>>,
    heads: HashMap<String, BTreeSet<String>>,
    firsts: HashMap<String, BTreeSet<String>>,
    sounds: HashMap<String, Vec<(String, String, String)>>,
    words: BTreeSet<String>,
}

impl Names {
    /// The names of a unit's things, with the variants that `also` allows.
    #[must_use]
    pub fn new(vocabulary: &Vocabulary, also: &BTreeMap<String, Vec<String>>) -> Self {
        let mut names = Self::default();
        for thing in &vocabulary.things {
            let id_words = thing.id.replace('-', " ");
            for name in thing.called.iter().map(String::as_str).chain([id_words.as_str()]) {
                for variant in variants(&plain(name), also) {
                    names.add(&variant, &thing.id);
                }
            }
        }
        names
    }

    fn add(&mut self, name: &str, id: &str) {
        let put = |map: &mut HashMap<String, BTreeSet<String>>, word: &str| {
            map.entry(word.to_owned()).or_default().insert(id.to_owned());
        };
        put(&mut self.whole, name);
        let words: Vec<&str> = name.split(' ').collect();
        self.words.extend(words.iter().map(|word| (*word).to_owned()));
        if let [first, .., last] = words.as_slice() {
            put(&mut self.firsts, first);
            put(&mut self.heads, last);
        }
        for number in [name.to_owned(), plural(name)] {
            put(&mut self.whole, &number);
            let key = sound::key(&number);
            for near in sound::near_keys(&key) {
                let list = self.sounds.entry(near).or_default();
                let entry = (number.clone(), key.clone(), id.to_owned());
                if !list.contains(&entry) {
                    list.push(entry);
                }
            }
        }
    }

    /// Every word of the names.
    #[must_use]
    pub fn words(&self) -> &BTreeSet<String> {
        &self.words
    }

    /// Whether a word stands in a name, or is the plural of one that does.
    #[must_use]
    pub fn holds(&self, word: &str) -> bool {
        self.words.contains(word) || word.strip_suffix('s').is_some_and(|one| self.words.contains(one))
    }

    /// The things of exactly that name.
    #[must_use]
    pub fn whole(&self, name: &str) -> Option<&BTreeSet<String>> {
        self.whole.get(name)
    }

    /// The things whose names end with that word.
    #[must_use]
    pub fn head(&self, word: &str) -> Option<&BTreeSet<String>> {
        self.heads.get(word).or_else(|| self.heads.get(word.strip_suffix('s')?))
    }

    /// The things whose names begin with that word.
    #[must_use]
    pub fn first(&self, word: &str) -> Option<&BTreeSet<String>> {
        self.firsts.get(word)
    }

    /// The things whose name sounds like that, with the likeness; only near ones.
    #[must_use]
    pub fn sounding(&self, said: &str) -> Option<(BTreeSet<String>, f64)> {
        let key = sound::key(said);
        if key.len() < 3 {
            return None;
        }
        let run = said.replace(' ', "");
        let mut best: Option<(BTreeSet<String>, f64)> = None;
        for near in sound::near_keys(&key) {
            for (name, name_key, id) in self.sounds.get(&near).into_iter().flatten() {
                let like = sound::likeness(&run, &name.replace(' ', ""), &key, name_key);
                match &mut best {
                    Some((ids, most)) if (like - *most).abs() < 1e-9 => {
                        ids.insert(id.clone());
                    }
                    Some((_, most)) if like < *most => {}
                    _ => best = Some((BTreeSet::from([id.clone()]), like)),
                }
            }
        }
        best.filter(|(_, like)| *like >= 0.72)
    }

    /// The thing with the name nearest to an unknown one.
    #[must_use]
    pub fn nearest(&self, said: &str) -> Option<String> {
        let mut names: Vec<(&String, &BTreeSet<String>)> = self.whole.iter().collect();
        names.sort();
        let last = said.rsplit(' ').next().unwrap_or(said);
        let near = |name: &str| {
            let same_head = name.rsplit(' ').next() == Some(last);
            strsim::normalized_damerau_levenshtein(name, said) + if same_head { 0.5 } else { 0.0 }
        };
        names
            .into_iter()
            .map(|(name, ids)| (near(name), ids))
            .max_by(|a, b| a.0.total_cmp(&b.0))
            .filter(|(near, _)| *near >= 0.4)
            .and_then(|(_, ids)| ids.first().cloned())
    }
}

/// A name in lower case, hyphens as spaces, what stands in brackets left out.
fn plain(name: &str) -> String {
    let text = name.to_lowercase().replace(['-', '\''], " ");
    let text = text.split('(').next().unwrap_or_default();
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn plural(name: &str) -> String {
    if name.ends_with('s') { name.to_owned() } else { format!("{name}s") }
}

/// The name and what it becomes when its words are exchanged for those that people use for them.
fn variants(name: &str, also: &BTreeMap<String, Vec<String>>) -> BTreeSet<String> {
    let mut out = BTreeSet::from([name.to_owned()]);
    for _ in 0..2 {
        let mut more = Vec::new();
        for known in &out {
            for (word, others) in also {
                more.extend(others.iter().filter_map(|other| exchange(known, word, other)));
            }
        }
        out.extend(more);
        if out.len() > 64 {
            break;
        }
    }
    out
}

fn exchange(name: &str, word: &str, other: &str) -> Option<String> {
    let padded = format!(" {name} ");
    let found = padded.replacen(&format!(" {word} "), &format!(" {other} "), 1);
    (found != padded).then(|| found.trim().to_owned())
}

//! Which words are the bench's, and which belong to which act: learned from the examples and the rules.

use super::class::Class;
use super::compile::{Compiled, Example};
use super::stem::stem;
use super::token::tokens;
use crate::act::ActName;
use crate::rulebase::talk::{Talk, TalkRule};
use std::collections::{BTreeMap, BTreeSet, HashSet};

impl Compiled {
    /// Which words belong to which class, and which to the bench as a whole.
    pub(super) fn learn_words(&mut self, lines: &[Example]) {
        self.class_words = vec![HashSet::new(); self.classes.len()];
        let mut counts: BTreeMap<String, usize> = BTreeMap::new();
        for line in lines {
            let technical = self.classes.get(line.class).and_then(Class::name).is_some_and(is_technical);
            for word in &line.seen {
                let root = stem(&word.text);
                if technical && line.weight > 0.9 {
                    *counts.entry(root.clone()).or_default() += 1;
                }
                if let Some(words) = self.class_words.get_mut(line.class) {
                    words.insert(root);
                }
            }
        }
        self.domain = counts.into_iter().filter(|(_, count)| *count >= 4).map(|(word, _)| word).collect();
    }

    /// The words of a class's rules and of the pieces they name are its own too.
    pub(super) fn learn_rule_words(&mut self, talk: &Talk, rules: &[(&TalkRule, usize)]) {
        let names = talk.by_name();
        for (rule, class) in rules {
            let Some(words) = self.class_words.get_mut(*class) else { continue };
            let mut todo = vec![&rule.body];
            let mut done: BTreeSet<&str> = BTreeSet::new();
            while let Some(body) = todo.pop() {
                words.extend(body.words().into_iter().flat_map(tokens).map(|token| stem(&token.text)));
                for name in body.names() {
                    if let Some(piece) = names.get(name).filter(|_| done.insert(name)) {
                        todo.push(&piece.body);
                    }
                }
            }
        }
    }

    /// Words of other matters: those listed, and those of the senses listed that no act's example uses.
    pub(super) fn learn_elsewhere(&mut self, talk: &Talk) {
        let bench: HashSet<String> = self.lexicon.bench().iter().map(|word| stem(word)).collect();
        for word in &talk.words.elsewhere {
            match word.strip_prefix('<').and_then(|name| talk.senses.get(name.trim_end_matches('>'))) {
                Some(list) => {
                    let single = list.iter().filter(|entry| !entry.contains(' ')).map(|entry| stem(entry));
                    self.elsewhere_roots.extend(single.filter(|root| !bench.contains(root)));
                }
                None => {
                    self.elsewhere.insert(word.clone());
                }
            }
        }
    }

    /// Words that make a line the bench's: those of every class but chatter and asides.
    pub(super) fn bench_words(&self, talk: &Talk, lines: &[Example]) -> BTreeSet<String> {
        let mut out = BTreeSet::new();
        for line in lines {
            if matches!(self.classes.get(line.class), Some(Class::Act(_) | Class::Ask)) {
                out.extend(line.words.iter().filter(|word| !word.starts_with('<')).cloned());
            }
        }
        for rule in &talk.rules {
            if !rule.public {
                out.extend(rule.body.words().into_iter().map(str::to_owned));
            }
        }
        for name in talk.words.tools.keys() {
            out.extend(name.split(' ').map(str::to_owned));
        }
        for word in NUMBER_WORDS.iter().chain(&MEASURE_WORDS) {
            out.insert((*word).to_owned());
        }
        out
    }
}

const NUMBER_WORDS: [&str; 34] = [
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
    "twenty",
    "thirty",
    "forty",
    "fifty",
    "sixty",
    "seventy",
    "eighty",
    "ninety",
    "hundred",
    "half",
    "quarter",
    "zero",
    "nought",
    "eighth",
    "quarters",
];
const MEASURE_WORDS: [&str; 34] = [
    "ft",
    "lb",
    "lbs",
    "nm",
    "psi",
    "mil",
    "mils",
    "kilo",
    "celsius",
    "per",
    "inch",
    "degree",
    "click",
    "clicks",
    "turn",
    "turns",
    "newton",
    "newtons",
    "metre",
    "metres",
    "pounds",
    "foot",
    "millimetre",
    "millimetres",
    "bar",
    "degrees",
    "kilos",
    "millilitres",
    "minutes",
    "hours",
    "inches",
    "position",
    "flats",
    "thou",
];

/// Acts whose examples are about the work, and not about people's comings and goings.
fn is_technical(name: ActName) -> bool {
    !matches!(
        name,
        ActName::Pause
            | ActName::Resume
            | ActName::Note
            | ActName::By
            | ActName::Help
            | ActName::Again
            | ActName::Wait
            | ActName::Finish
            | ActName::Back
            | ActName::AskNow
            | ActName::AskNext
            | ActName::AskLeft
            | ActName::AskTime
            | ActName::AskLog
    )
}

//! The ear: compiled once for a pack, then a pure function from a line to what was heard.

use super::clauses::clauses;
use super::compile::Compiled;
use super::decide;
use super::names::Names;
use super::parsed::Parsed;
use super::spot::{Scene, mentions};
use super::vocabulary::Vocabulary;
use super::why::{ClauseWhy, FitWhy, Why};
use crate::act::{Heard, Waiting};
use crate::rulebase::talk::Talk;
use std::collections::{BTreeMap, HashMap};
use std::sync::OnceLock;

/// A line to be understood.
#[derive(Debug, Clone, Copy)]
pub struct Line<'a> {
    /// What was said or typed.
    pub said: &'a str,
    /// The unit on the bench.
    pub unit: Option<&'a str>,
    /// What the job waits for.
    pub waiting: &'a Waiting,
}

/// What a pack gives to the ear.
#[derive(Debug, Clone, Default)]
pub struct Stock {
    /// Units with their things.
    pub units: Vec<Vocabulary>,
    /// Procedures by spoken name.
    pub procedures: BTreeMap<String, String>,
    /// Tools by spoken name.
    pub tools: BTreeMap<String, String>,
}

/// Understands lines with one pack's talk and units.
#[derive(Debug, Clone)]
pub struct Ear {
    pub(super) talk: Compiled,
    units: HashMap<String, Known>,
    none: Known,
    also: BTreeMap<String, Vec<String>>,
    foreign: HashMap<String, String>,
    unit_names: BTreeMap<String, String>,
    short_units: BTreeMap<String, String>,
    procedures: BTreeMap<String, String>,
    tools: BTreeMap<String, String>,
    never: Vec<String>,
}

/// Words of corners.
const CORNER_WORDS: [&str; 14] = [
    "front",
    "rear",
    "back",
    "left",
    "right",
    "nearside",
    "offside",
    "driver",
    "drivers",
    "passenger",
    "passengers",
    "hand",
    "side",
    "corner",
];

/// A unit's words, and its names once they are asked for.
#[derive(Debug, Clone)]
struct Known {
    vocabulary: Vocabulary,
    names: OnceLock<Names>,
}

impl Known {
    fn new(vocabulary: Vocabulary) -> Self {
        Self { vocabulary, names: OnceLock::new() }
    }

    fn names(&self, also: &BTreeMap<String, Vec<String>>) -> &Names {
        self.names.get_or_init(|| Names::new(&self.vocabulary, also))
    }
}

/// Units whose names the example lines may use; with no unit in hand theirs are the names known.
const EXAMPLE_UNITS: usize = 12;

impl Ear {
    /// An ear for talk and stock.
    #[must_use]
    pub fn build(talk: &Talk, stock: &Stock) -> Self {
        let also = &talk.words.also;
        let mut units = HashMap::new();
        let mut foreign = HashMap::new();
        let mut unit_names = BTreeMap::new();
        let mut merged =
            Vocabulary { unit: String::new(), called: Vec::new(), axle: None, things: Vec::new() };
        for (count, unit) in stock.units.iter().enumerate() {
            for thing in &unit.things {
                for name in &thing.called {
                    foreign.entry(name.to_lowercase()).or_insert_with(|| thing.id.clone());
                }
            }
            for name in unit.called.iter().cloned().chain([unit.unit.replace('-', " ")]) {
                for name in spoken_numbers(&name.to_lowercase()) {
                    unit_names.entry(name).or_insert_with(|| unit.unit.clone());
                }
            }
            if count < EXAMPLE_UNITS {
                merged.things.extend(unit.things.iter().cloned());
            }
            units.insert(unit.unit.clone(), Known::new(unit.clone()));
        }
        let none = Known { names: Names::new(&merged, also).into(), vocabulary: merged };
        let mut short_units = short_names(&unit_names);
        let (numbers, unit_names): (BTreeMap<_, _>, BTreeMap<_, _>) =
            unit_names.into_iter().partition(|(name, _)| name.split(' ').all(super::lexicon::is_number_word));
        short_units.extend(numbers);
        let mut unit_names = unit_names;
        unit_names.extend(first_names(&unit_names));
        let mut tools = talk.words.tools.clone();
        tools.extend(stock.tools.clone());
        let mut ear = Self {
            talk: Compiled::default(),
            units,
            none,
            also: also.clone(),
            foreign,
            short_units,
            unit_names,
            procedures: stock.procedures.clone(),
            tools,
            never: talk.words.never_alone.clone(),
        };
        let unit_words: std::collections::HashSet<String> = ear
            .unit_names
            .keys()
            .flat_map(|name| name.split(' '))
            .filter(|word| {
                !super::lexicon::is_number_word(word)
                    && !talk.words.small.iter().any(|small| small == word)
                    && !ear.none.names(also).holds(word)
            })
            .map(str::to_owned)
            .collect();
        let small = talk.words.small.iter().cloned().collect();
        let nothing = Waiting::default();
        let no = HashMap::new();
        let compiled = {
            let known = |word: &str| {
                talk.words.plain.iter().any(|plain| plain == word)
                    || talk.words.small.iter().any(|small| small == word)
            };
            let spot = |tokens: &[super::token::Token]| {
                let scene = Scene {
                    foreign: &no,
                    small: &small,
                    known: &known,
                    ..ear.scene(ear.none.names(also), &nothing)
                };
                mentions(tokens, &Scene { by_sound: false, ..scene })
            };
            Compiled::new(talk, &spot, ear.none.names(also), &unit_words)
        };
        ear.talk = compiled;
        let names = ear
            .foreign
            .keys()
            .chain(ear.unit_names.keys())
            .chain(ear.procedures.keys())
            .chain(ear.tools.keys());
        let words: Vec<String> = names.flat_map(|name| name.split([' ', '-'])).map(str::to_owned).collect();
        ear.talk.lexicon.know_all(words.into_iter().chain(CORNER_WORDS.map(str::to_owned)));
        ear
    }

    fn scene<'a>(&'a self, unit: &'a Names, waiting: &'a Waiting) -> Scene<'a> {
        Scene {
            unit,
            foreign: &self.foreign,
            units: &self.unit_names,
            short_units: &self.short_units,
            procedures: &self.procedures,
            tools: &self.tools,
            known: &|_| true,
            by_sound: true,
            small: &self.talk.small,
            never: &self.never,
            waiting: waiting.kind,
            about: waiting.about.as_deref(),
        }
    }

    fn unit(&self, id: Option<&str>) -> &Known {
        id.and_then(|id| self.units.get(id)).unwrap_or(&self.none)
    }

    fn read<'a>(&'a self, line: &Line<'_>) -> (Parsed<'a>, &'a Vocabulary, &'a Names) {
        let known_unit = self.unit(line.unit);
        let (vocabulary, names) = (&known_unit.vocabulary, known_unit.names(&self.also));
        let tokens = self.talk.lexicon.mend(self.talk.prepare(line.said), names);
        let known = |word: &str| self.talk.lexicon.knows(word);
        let found = mentions(&tokens, &Scene { known: &known, ..self.scene(names, line.waiting) });
        (Parsed::new(&self.talk, tokens, found), vocabulary, names)
    }

    /// What was heard in a line.
    #[must_use]
    pub fn hear(&self, line: &Line<'_>) -> Heard {
        let (parsed, vocabulary, names) = self.read(line);
        let clauses = clauses(&parsed);
        decide::decide(line, &parsed, vocabulary, names, &clauses).0
    }

    /// What was heard in a line, and why.
    #[must_use]
    pub fn explain(&self, line: &Line<'_>) -> Why {
        let (parsed, vocabulary, names) = self.read(line);
        let found = clauses(&parsed);
        let (heard, decided) = decide::decide(line, &parsed, vocabulary, names, &found);
        let fit = |fit: &super::parsed::Fitting| FitWhy {
            class: self.talk.classes.get(fit.class).map(|class| format!("{class:?}")).unwrap_or_default(),
            rule: fit.rule.and_then(|(rule, _)| self.talk.sources.get(rule)).map(|(_, name)| name.clone()),
            cost: fit.rule.map(|(_, cost)| cost),
            chance: fit.chance,
            score: fit.score,
        };
        Why {
            normalised: parsed.text(0, parsed.tokens.len()),
            mended: parsed
                .tokens
                .iter()
                .filter_map(|token| Some((token.was.clone()?, token.text.clone())))
                .collect(),
            mentions: parsed
                .mentions
                .iter()
                .map(|mention| (mention.slot().to_owned(), parsed.text(mention.start, mention.end)))
                .collect(),
            clauses: found
                .iter()
                .map(|clause| ClauseWhy {
                    words: parsed.text(clause.from, clause.to),
                    fits: clause.fits.iter().map(fit).collect(),
                })
                .collect(),
            decided,
            heard,
        }
    }
}

/// "birch 44" is also said "birch forty four".
fn spoken_numbers(name: &str) -> Vec<String> {
    let said: Vec<String> = name
        .split(' ')
        .map(|word| word.parse::<f64>().map_or(word.to_owned(), crate::quantity::figures::words))
        .collect();
    let said = said.join(" ");
    if said == name { vec![said] } else { vec![name.to_owned(), said] }
}

/// The numbers that stand for a unit by themselves ("sixty"), where only one unit's name ends with them.
fn short_names(names: &BTreeMap<String, String>) -> BTreeMap<String, String> {
    let mut out: BTreeMap<String, Option<String>> = BTreeMap::new();
    for (name, id) in names {
        let words: Vec<&str> = name.split(' ').collect();
        let number = words.iter().position(|word| super::lexicon::is_number_word(word));
        let Some(tail) = number.and_then(|at| words.get(at..)).filter(|tail| tail.len() < words.len()) else {
            continue;
        };
        let entry = out.entry(tail.join(" ")).or_insert_with(|| Some(id.clone()));
        if entry.as_ref().is_some_and(|known| known != id) {
            *entry = None;
        }
    }
    out.into_iter().filter_map(|(name, id)| Some((name, id?))).collect()
}

/// The words that stand for a unit by themselves ("lark"), where only one unit's name begins with them.
fn first_names(names: &BTreeMap<String, String>) -> BTreeMap<String, String> {
    let mut out: BTreeMap<String, Option<String>> = BTreeMap::new();
    for (name, id) in names {
        let mut words = name.split(' ');
        let (Some(first), Some(second)) = (words.next(), words.next()) else { continue };
        if super::lexicon::is_number_word(first) || !super::lexicon::is_number_word(second) {
            continue;
        }
        let entry = out.entry(first.to_owned()).or_insert_with(|| Some(id.clone()));
        if entry.as_ref().is_some_and(|known| known != id) {
            *entry = None;
        }
    }
    out.into_iter().filter_map(|(name, id)| Some((name, id?))).collect()
}

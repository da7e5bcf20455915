//! Talk made ready once for a pack: symbols, nets, lexicon and model.

use super::automaton::{Builder, Edge, Net, Symbol, Symbols};
use super::class::Class;
use super::features::{Seen, features};
use super::lexicon::Lexicon;
use super::mention::Mention;
use super::model::{Model, Sample};
use super::names::Names;
use super::phrases::Phrases;
use super::sample::Sampler;
use super::senses::Senses;
use super::token::{Token, tokens};
use crate::rulebase::talk::{Expr, Talk, TalkRule, Words};
use std::collections::{BTreeMap, BTreeSet, HashSet};

/// Talk, ready to be matched.
#[derive(Debug, Clone, Default)]
pub struct Compiled {
    /// Names of symbols.
    pub symbols: Symbols,
    /// The pieces of the grammars.
    pub pieces: Net,
    /// The symbol of each piece, by its number.
    pub piece_symbols: Vec<Symbol>,
    /// The public rules.
    pub rules: Net,
    /// For each public rule: its class's number, name, file and line.
    pub sources: Vec<(usize, String)>,
    /// Whether a public rule is an example line: it speaks for its class only where it fits closely.
    pub shown: Vec<bool>,
    /// The classes.
    pub classes: Vec<Class>,
    /// Words and their neighbours.
    pub lexicon: Lexicon,
    /// The linear model over the classes.
    pub model: Model,
    /// The senses of words.
    pub senses: Senses,
    /// Rewrites.
    pub phrases: Phrases,
    /// Words without meaning.
    pub fillers: HashSet<String>,
    /// Words of little meaning.
    pub small: HashSet<String>,
    /// The word lists.
    pub words: Words,
    /// For each class, the stems of the words that its examples use.
    pub class_words: Vec<HashSet<String>>,
    /// Words that show that a line is about something else than the unit, and the stems of those that senses list.
    pub elsewhere: HashSet<String>,
    /// Stems of words of other matters.
    pub elsewhere_roots: HashSet<String>,
    /// Stems of words that several examples of bench talk use.
    pub domain: HashSet<String>,
}

/// Finds what tokens mention, for the example lines.
pub type Spotter<'a> = dyn Fn(&[Token]) -> Vec<Mention> + 'a;

/// An example, read.
pub(super) struct Example {
    pub words: Vec<String>,
    pub seen: Vec<Seen>,
    pub class: usize,
    pub weight: f32,
}

/// An example line of so many words or fewer is a rule too.
const SHORT: usize = 5;

/// Expansions drawn for each alternative of a rule.
const DRAWN: usize = 6;

impl Compiled {
    /// Compiles a pack's talk; tags that mean nothing are passed over (the loader reports them).
    #[must_use]
    pub fn new(talk: &Talk, spot: &Spotter<'_>, parts: &Names, unit_words: &HashSet<String>) -> Self {
        let mut out = Self {
            words: talk.words.clone(),
            phrases: Phrases::new(&talk.words.means),
            senses: Senses::new(&talk.senses),
            ..Self::default()
        };
        out.fillers = talk.words.fillers.iter().cloned().collect();
        out.small = talk.words.small.iter().cloned().collect();
        let rules = out.nets(talk);
        out.fit(talk, &rules, spot, parts, unit_words);
        out
    }

    fn nets<'a>(&mut self, talk: &'a Talk) -> Vec<(&'a TalkRule, usize)> {
        let mut symbols = std::mem::take(&mut self.symbols);
        let mut pieces = Builder::new(talk, &mut symbols, true);
        let inner: Vec<&TalkRule> = talk.rules.iter().filter(|rule| !rule.public).collect();
        for (number, rule) in inner.iter().enumerate() {
            pieces.add(&rule.body, number);
        }
        self.pieces = pieces.finish(&BTreeSet::new());
        self.piece_symbols = inner.iter().map(|rule| symbols.add(&format!("<{}>", rule.name))).collect();
        let mut tags: BTreeMap<&str, usize> = BTreeMap::new();
        let mut public = Vec::new();
        let mut rules = Builder::new(talk, &mut symbols, false);
        for rule in talk.rules.iter().filter(|rule| rule.public) {
            let Some(tag) = rule.tag.as_deref() else { continue };
            let class = match tags.get(tag) {
                Some(class) => *class,
                None => {
                    let Ok(class) = Class::parse(tag) else { continue };
                    self.classes.push(class);
                    tags.insert(tag, self.classes.len() - 1);
                    self.classes.len() - 1
                }
            };
            rules.add(&rule.body, self.sources.len());
            self.sources.push((class, format!("{}:{} <{}>", rule.file, rule.line, rule.name)));
            self.shown.push(false);
            // A long line is hardly ever said again to the word: it teaches the likeness, and is no rule of its own.
            let short = |example: &str| example.split_whitespace().count() <= SHORT;
            for (line, example) in rule.examples.iter().filter(|(_, example)| short(example)) {
                rules.add(&as_rule(example), self.sources.len());
                self.sources.push((class, format!("{}:{line} example of <{}>", rule.file, rule.name)));
                self.shown.push(true);
            }
            public.push((rule, class));
        }
        let small = talk.words.dropped.iter().filter_map(|word| rules.symbol(word)).collect();
        self.rules = rules.finish(&small);
        self.symbols = symbols;
        public
    }

    /// Draws and reads the examples, then fits lexicon and model to them.
    fn fit(
        &mut self,
        talk: &Talk,
        rules: &[(&TalkRule, usize)],
        spot: &Spotter<'_>,
        parts: &Names,
        unit_words: &HashSet<String>,
    ) {
        let mut sampler = Sampler::new(talk);
        let mut lines: Vec<Example> = Vec::new();
        for (rule, class) in rules {
            for (_, text) in &rule.examples {
                lines.push(self.example(text, *class, 1.0, spot));
            }
            for drawn in sampler.lines(rule, DRAWN) {
                lines.push(self.example(&drawn.join(" "), *class, 0.5, spot));
            }
        }
        lines.retain(|line| !line.words.is_empty());
        let rare = rare_words(&lines, &self.classes);
        let bench = self.bench_words(talk, &lines);
        {
            let spoken: Vec<Vec<String>> = lines.iter().map(|line| for_lexicon(&line.words)).collect();
            self.lexicon = Lexicon::new(&spoken, &bench, parts, &talk.words, unit_words.clone());
        }
        for seen in lines.iter_mut().flat_map(|line| &mut line.seen) {
            seen.known = !rare.contains(&seen.text);
        }
        self.learn_words(&lines);
        // Each line is let go as it becomes a sample: they are many.
        let samples: Vec<Sample> = lines
            .into_iter()
            .map(|line| {
                let pieces = self.piece_names(&line.seen);
                Sample {
                    features: features(&line.seen, &pieces, &self.senses),
                    class: line.class,
                    weight: line.weight,
                }
            })
            .collect();
        self.model = Model::fit(samples, self.classes.len());
        self.learn_rule_words(talk, rules);
        self.learn_elsewhere(talk);
    }

    /// A word as the model sees it.
    #[must_use]
    pub fn seen(&self, word: &str, known: bool) -> Seen {
        Seen { text: word.to_owned(), known, small: self.small.contains(word), head: None }
    }

    /// Tokens as the model sees them, each mention as its slot.
    #[must_use]
    pub fn seen_all(&self, tokens: &[Token], mentions: &[Mention]) -> Vec<(usize, Seen)> {
        let mut out = Vec::new();
        let mut at = 0;
        while let Some(token) = tokens.get(at) {
            match mentions.iter().find(|mention| mention.start == at) {
                Some(mention) => {
                    let mut seen = self.seen(mention.slot(), true);
                    let last = tokens.get(mention.end.saturating_sub(1)).map(|token| token.text.clone());
                    seen.head = last.filter(|_| mention.slot() == "<part>");
                    out.push((at, seen));
                    at = mention.end.max(at + 1);
                }
                None => {
                    out.push((at, self.seen(&token.text, self.lexicon.knows(&token.text))));
                    at += 1;
                }
            }
        }
        out
    }

    /// An example: written like speech, slots in angle brackets.
    fn example(&self, text: &str, class: usize, weight: f32, spot: &Spotter<'_>) -> Example {
        let mut out = Example { words: Vec::new(), seen: Vec::new(), class, weight };
        let mut run = String::new();
        for word in text.split_whitespace() {
            if word.starts_with('<') {
                self.plain(&run, spot, &mut out);
                run.clear();
                let slot = word.trim_end_matches([',', '.', '?', '!']);
                if slot != "<text>" {
                    out.words.push(slot.to_owned());
                    out.seen.push(self.seen(slot, true));
                }
            } else {
                run.push_str(word);
                run.push(' ');
            }
        }
        self.plain(&run, spot, &mut out);
        out
    }

    fn plain(&self, text: &str, spot: &Spotter<'_>, out: &mut Example) {
        let tokens = self.prepare(text);
        let mentions = spot(&tokens);
        out.seen.extend(self.seen_all(&tokens, &mentions).into_iter().map(|(_, seen)| seen));
        out.words.extend(tokens.into_iter().map(|token| token.text));
    }

    /// A line's tokens, rewritten and without fillers.
    #[must_use]
    pub fn prepare(&self, said: &str) -> Vec<Token> {
        let tokens = self.phrases.rewrite(tokens(said));
        let mut out: Vec<Token> = Vec::with_capacity(tokens.len());
        let figure =
            |word: Option<&Token>| word.is_some_and(|token| super::lexicon::is_number_word(&token.text));
        let nought: Vec<bool> = (0..tokens.len())
            .map(|at| {
                figure(tokens.get(at + 1))
                    || at.checked_sub(1).is_some_and(|before| figure(tokens.get(before)))
            })
            .collect();
        for (token, beside_figure) in tokens.into_iter().zip(nought) {
            // "Oh point five": a filler elsewhere, a figure here.
            // "The last fella" is somebody; "there you are, fella" is not said of anybody.
            let spoken_of = out.last().is_some_and(|before| {
                before.mark == Default::default()
                    && matches!(
                        before.text.as_str(),
                        "the"
                            | "a"
                            | "this"
                            | "that"
                            | "last"
                            | "other"
                            | "young"
                            | "old"
                            | "some"
                            | "another"
                            | "his"
                            | "same"
                    )
            });
            let filler =
                self.fillers.contains(&token.text) && !(token.text == "oh" && beside_figure) && !spoken_of;
            let doubled = out.last().is_some_and(|last| {
                last.text == token.text
                    && last.mark == Default::default()
                    && self.small.contains(&token.text)
                    && token.text != "no"
            });
            if matches!(token.text.as_str(), "comma" | "komma" | "coma" | "virgola") && beside_figure {
                out.push(Token { text: "point".to_owned(), ..token });
                continue;
            }
            if doubled || filler {
                if let Some(last) = out.last_mut() {
                    last.mark = last.mark.max(token.mark);
                }
                continue;
            }
            out.push(token);
        }
        out
    }

    fn piece_names(&self, line: &[Seen]) -> BTreeSet<String> {
        let edges: Vec<Vec<Edge>> = line
            .iter()
            .enumerate()
            .map(|(at, seen)| {
                self.symbols
                    .of_word(&seen.text)
                    .into_iter()
                    .map(|symbol| Edge { symbol, end: at + 1 })
                    .collect()
            })
            .collect();
        let mut names = BTreeSet::new();
        for at in 0..line.len() {
            self.pieces.pieces(&edges, at, |piece, _| {
                if let Some(symbol) = self.piece_symbols.get(piece) {
                    names.insert(self.symbols.name(*symbol).to_owned());
                }
            });
        }
        names
    }
}

/// An example as a rule of its own: its words, slots in angle brackets.
fn as_rule(example: &str) -> Expr {
    let one = |word: &str| match word.strip_prefix('<') {
        Some(slot) => Expr::Name(slot.trim_end_matches([',', '.', '?', '!', '>']).to_owned()),
        None => Expr::Word(word.to_lowercase()),
    };
    Expr::Seq(example.split_whitespace().map(one).collect())
}

/// Words that only one line of chatter shows: the model learns them as "new".
fn rare_words(lines: &[Example], classes: &[Class]) -> BTreeSet<String> {
    let mut found: BTreeMap<&String, (usize, bool)> = BTreeMap::new();
    for line in lines {
        let class = classes.get(line.class);
        let bench = class.is_some_and(|class| matches!(class, Class::Act(_) | Class::Ask | Class::Refuse(_)));
        for seen in &line.seen {
            let entry = found.entry(&seen.text).or_default();
            entry.0 += 1;
            entry.1 |= bench;
        }
    }
    found
        .into_iter()
        .filter(|(_, (count, bench))| *count <= 1 && !bench)
        .map(|(word, _)| word.clone())
        .collect()
}

/// A line for the lexicon: a quantity is a number and a unit.
fn for_lexicon(line: &[String]) -> Vec<String> {
    let mut out = Vec::with_capacity(line.len());
    for word in line {
        match word.as_str() {
            "<unit>" => out.extend(["<unit>".to_owned(), "<number>".to_owned()]),
            "<quantity>" | "<duration>" => out.extend(["<number>".to_owned(), "<measure>".to_owned()]),
            _ => out.push(word.clone()),
        }
    }
    out
}

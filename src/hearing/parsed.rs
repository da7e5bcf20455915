//! A line read: its tokens, mentions, symbols and pieces.

use super::automaton::{Costs, Edge};
use super::compile::Compiled;
use super::features::{Seen, features};
use super::mention::Mention;
use super::stem::stem;
use super::token::Token;
use std::collections::{BTreeMap, BTreeSet};

/// A line ready to be understood.
pub struct Parsed<'a> {
    /// The talk.
    pub talk: &'a Compiled,
    /// Its words.
    pub tokens: Vec<Token>,
    /// What it mentions.
    pub mentions: Vec<Mention>,
    seen: Vec<(usize, Seen)>,
    edges: Vec<Vec<Edge>>,
    pieces: Vec<(usize, usize, String)>,
    skip: Vec<f32>,
}

/// How well a class fits a stretch of the line.
#[derive(Debug, Clone, PartialEq)]
pub struct Fitting {
    /// The class.
    pub class: usize,
    /// The rule that fits best, with its cost.
    pub rule: Option<(usize, f32)>,
    /// The model's chance.
    pub chance: f32,
    /// Both together, 0 to 1.
    pub score: f32,
}

/// Paths that leave out more than this are given up.
const BUDGET: f32 = 1.45;

impl<'a> Parsed<'a> {
    /// Reads the tokens of a line with its mentions.
    #[must_use]
    pub fn new(talk: &'a Compiled, tokens: Vec<Token>, mentions: Vec<Mention>) -> Self {
        let mut edges: Vec<Vec<Edge>> = tokens
            .iter()
            .enumerate()
            .map(|(at, token)| {
                talk.symbols
                    .of_word(&token.text)
                    .into_iter()
                    .map(|symbol| Edge { symbol, end: at + 1 })
                    .collect()
            })
            .collect();
        for mention in &mentions {
            if let (Some(symbol), Some(list)) =
                (talk.symbols.get(mention.slot()), edges.get_mut(mention.start))
            {
                list.push(Edge { symbol, end: mention.end });
            }
            if mention.slot() == "<duration>"
                && let (Some(symbol), Some(list)) =
                    (talk.symbols.get("<quantity>"), edges.get_mut(mention.start))
            {
                list.push(Edge { symbol, end: mention.end });
            }
        }
        if let Some(symbol) = talk.symbols.get("<name>") {
            for (at, token) in tokens.iter().enumerate() {
                let named = mentions.iter().any(|mention| mention.start <= at && at < mention.end);
                let plain = talk.small.contains(&token.text) || talk.words.light.contains(&token.text);
                if !named
                    && !plain
                    && !talk.lexicon.of_bench(&token.text)
                    && let Some(list) = edges.get_mut(at)
                {
                    list.push(Edge { symbol, end: at + 1 });
                }
            }
        }
        let mut pieces = Vec::new();
        for at in 0..tokens.len() {
            talk.pieces.pieces(&edges, at, |piece, end| {
                if let Some(symbol) = talk.piece_symbols.get(piece) {
                    pieces.push((at, end, *symbol));
                }
            });
        }
        pieces.sort_unstable();
        pieces.dedup();
        for (at, end, symbol) in &pieces {
            if let Some(list) = edges.get_mut(*at) {
                list.push(Edge { symbol: *symbol, end: *end });
            }
        }
        let seen = talk.seen_all(&tokens, &mentions);
        let skip = skip_costs(talk, &tokens, &mentions);
        let pieces = pieces
            .into_iter()
            .map(|(at, end, symbol)| (at, end, talk.symbols.name(symbol).to_owned()))
            .collect();
        Self { talk, tokens, mentions, seen, edges, pieces, skip }
    }

    /// The words from one place to another, in lower case.
    #[must_use]
    pub fn text(&self, from: usize, to: usize) -> String {
        let words: Vec<&str> =
            self.tokens.get(from..to).unwrap_or_default().iter().map(|token| token.text.as_str()).collect();
        words.join(" ")
    }

    /// Whether a piece of the grammars stands somewhere between two places.
    #[must_use]
    pub fn has(&self, piece: &str, from: usize, to: usize) -> bool {
        let name = format!("<{piece}>");
        self.pieces.iter().any(|(at, end, found)| *at >= from && *end <= to && *found == name)
    }

    /// The first stretch that a piece takes between two places; the longest that begins there.
    #[must_use]
    pub fn first(&self, piece: &str, from: usize, to: usize) -> Option<(usize, usize)> {
        let name = format!("<{piece}>");
        let found = self.pieces.iter().filter(|(at, end, found)| *at >= from && *end <= to && *found == name);
        found.map(|(at, end, _)| (*at, *end)).min_by_key(|(at, end)| (*at, std::cmp::Reverse(*end)))
    }

    /// The share of telling words that talk knows.
    #[must_use]
    pub fn known(&self, from: usize, to: usize) -> f32 {
        let telling: Vec<&Seen> = self
            .seen
            .iter()
            .filter(|(at, seen)| *at >= from && *at < to && !seen.small)
            .map(|(_, seen)| seen)
            .collect();
        if telling.is_empty() {
            return 1.0;
        }
        telling
            .iter()
            .filter(|seen| seen.text.starts_with('<') || self.talk.lexicon.of_bench(&seen.text))
            .count() as f32
            / telling.len() as f32
    }

    /// Telling words between two places, and how many of them neither the class nor the bench has use for.
    #[must_use]
    pub fn foreign(&self, from: usize, to: usize, class: usize) -> (usize, usize) {
        let own = self.talk.class_words.get(class);
        let mut telling = 0;
        let mut foreign = 0;
        for (_, seen) in self.seen.iter().filter(|(at, _)| *at >= from && *at < to) {
            if seen.small || self.talk.words.light.contains(&seen.text) {
                continue;
            }
            telling += 1;
            let root = stem(&seen.text);
            let ours = seen.text.starts_with('<')
                || own.is_some_and(|own| own.contains(&root))
                || self.talk.domain.contains(&root)
                || super::lexicon::is_number_word(&seen.text)
                || super::measure::is_measure(&seen.text);
            foreign += usize::from(!ours);
        }
        (telling, foreign)
    }

    /// How much the words between two places have to tell.
    #[must_use]
    pub fn weight(&self, from: usize, to: usize) -> f32 {
        self.skip.get(from..to).unwrap_or_default().iter().map(|cost| cost.clamp(0.1, 1.0)).sum()
    }

    /// The rules that fit from a place on, for each place where they may end.
    #[must_use]
    pub fn parses(&self, from: usize) -> Vec<BTreeMap<usize, f32>> {
        let costs = Costs { skip: &self.skip, any: 0.05, missing: 0.2, budget: BUDGET };
        self.talk.rules.parse(&self.edges, from, self.tokens.len(), &costs)
    }

    /// The classes that fit between two places, best first.
    #[must_use]
    pub fn fittings(&self, from: usize, to: usize, parses: &[BTreeMap<usize, f32>]) -> Vec<Fitting> {
        let mut rules: BTreeMap<usize, (usize, f32)> = BTreeMap::new();
        for (rule, cost) in parses.get(to.saturating_sub(from)).into_iter().flatten() {
            let Some((class, _)) = self.talk.sources.get(*rule) else { continue };
            let best = rules.entry(*class).or_insert((*rule, *cost));
            if *cost < best.1 {
                *best = (*rule, *cost);
            }
        }
        let clause: Vec<Seen> = self
            .seen
            .iter()
            .filter(|(at, _)| *at >= from && *at < to)
            .map(|(_, seen)| seen.clone())
            .collect();
        let pieces: BTreeSet<String> = self
            .pieces
            .iter()
            .filter(|(at, end, _)| *at >= from && *end <= to)
            .map(|(_, _, name)| name.clone())
            .collect();
        let chances = self.talk.model.chances(&features(&clause, &pieces));
        let known = self.known(from, to);
        let chatter = chances.iter().enumerate().any(|(class, chance)| {
            *chance > 0.5 && matches!(self.talk.classes.get(class), Some(super::class::Class::Decline))
        });
        let mut out: Vec<Fitting> = chances
            .iter()
            .enumerate()
            .map(|(class, chance)| {
                let rule = rules.get(&class).copied();
                let by_model = 0.85 * chance * known;
                let score = rule.map_or(by_model, |(_, cost)| {
                    let fit = (-1.1 * cost).exp();
                    let close = if cost < 0.3 { 0.15 * fit } else { 0.0 };
                    // What a rule says to the word outweighs any likeness, unless all of it sounds like small talk.
                    let exact = if cost < 0.05 && !chatter { 0.82 + 0.18 * chance } else { 0.0 };
                    (0.62 * fit + 0.38 * chance + close).min(1.0).max(by_model).max(exact)
                });
                Fitting { class, rule, chance: *chance, score }
            })
            .collect();
        out.sort_by(|a, b| b.score.total_cmp(&a.score).then(a.class.cmp(&b.class)));
        out.truncate(4);
        out
    }
}

/// What it costs to leave each word out: little words little, what denies or doubts almost never.
fn skip_costs(talk: &Compiled, tokens: &[Token], mentions: &[Mention]) -> Vec<f32> {
    let lists = &talk.words;
    let mut costs: Vec<f32> = tokens
        .iter()
        .map(|token| {
            let word = &token.text;
            if lists.denials.contains(word) || lists.hedges.contains(word) || lists.reported.contains(word) {
                3.0
            } else if talk.small.contains(word) {
                0.12
            } else if lists.light.contains(word) {
                0.35
            } else if talk.lexicon.of_bench(word) {
                0.75
            } else {
                1.1
            }
        })
        .collect();
    for mention in mentions {
        let whole = match mention.slot() {
            "<number>" | "<quantity>" | "<duration>" => 2.0,
            "<part>" => 0.45,
            _ => 0.8,
        };
        for at in mention.start..mention.end {
            if let Some(cost) = costs.get_mut(at) {
                *cost = whole / (mention.end - mention.start) as f32;
            }
        }
    }
    costs
}

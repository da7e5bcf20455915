//! Finds what a line mentions.

use super::measure;
use super::mention::{Mention, What};
use super::names::Names;
use super::spot_corner::corner;
use super::spot_number::{measure_after, number};
use super::spot_part::part;
use super::token::Token;
use crate::act::WaitingFor;
use std::collections::{BTreeMap, HashMap, HashSet};

/// Everything that may be mentioned, for one unit.
#[derive(Clone, Copy)]
pub struct Scene<'a> {
    /// Names of the unit in hand.
    pub unit: &'a Names,
    /// Names of every unit of the pack, to know a foreign part.
    pub foreign: &'a HashMap<String, String>,
    /// Unit cards by spoken name.
    pub units: &'a BTreeMap<String, String>,
    /// The same by the number in the name alone.
    pub short_units: &'a BTreeMap<String, String>,
    /// Procedures by spoken name.
    pub procedures: &'a BTreeMap<String, String>,
    /// Tools by the names people give them.
    pub tools: &'a BTreeMap<String, String>,
    /// Whether a name may be recognised by its sound.
    pub by_sound: bool,
    /// Words known to talk: one of them alone is never a part by its sound.
    pub known: &'a dyn Fn(&str) -> bool,
    /// Little words: no part's name by sound is made of them alone.
    pub small: &'a HashSet<String>,
    /// Last words of names that are no name by themselves.
    pub never: &'a [String],
    /// What is waited for.
    pub waiting: WaitingFor,
    /// The part in hand.
    pub about: Option<&'a str>,
}

/// The mentions of a line, longest first where they begin at the same word; none overlaps another.
#[must_use]
pub fn mentions(tokens: &[Token], scene: &Scene<'_>) -> Vec<Mention> {
    let texts: Vec<&str> = tokens.iter().map(|token| token.text.as_str()).collect();
    let mut out = Vec::new();
    let mut at = 0;
    while at < texts.len() {
        let found = named(&texts, at, scene)
            .or_else(|| number(tokens, &texts, at, scene))
            .or_else(|| corner(&texts, at))
            .or_else(|| part(tokens, &texts, at, scene));
        match found {
            Some(mention) => {
                at = mention.end.max(at + 1);
                out.push(mention);
            }
            None => at += 1,
        }
    }
    out
}

/// Some tokens from a place on.
pub(super) fn span<'a>(texts: &'a [&'a str], at: usize, len: usize) -> Option<&'a [&'a str]> {
    texts.get(at..at + len)
}

/// Units, procedures and tools by name.
fn named(texts: &[&str], at: usize, scene: &Scene<'_>) -> Option<Mention> {
    (1..=4).rev().find_map(|len| {
        let name = span(texts, at, len)?.join(" ");
        let what = if let Some(id) = scene.units.get(&name) {
            What::Unit(id.clone())
        } else if let Some(id) = scene.short_units.get(&name).filter(|_| short_unit(texts, at, len, scene)) {
            What::Unit(id.clone())
        } else if let Some(id) = scene.procedures.get(&name) {
            What::Procedure(id.clone())
        } else {
            What::Tool(scene.tools.get(&name)?.clone())
        };
        Some(Mention { start: at, end: at + len, what })
    })
}

/// "the sixty", "left hand sixty": a unit by the number in its name, where no value is waited for.
fn short_unit(texts: &[&str], at: usize, len: usize, scene: &Scene<'_>) -> bool {
    let before = at.checked_sub(1).and_then(|before| texts.get(before)).copied().unwrap_or_default();
    let tail: Vec<&str> = texts.get(at + len..).unwrap_or_default().iter().take(4).copied().collect();
    matches!(before, "the" | "hand" | "left" | "right" | "other" | "rear" | "front" | "a" | "this" | "that")
        && !measure::is_number(scene.waiting)
        && scene.waiting != WaitingFor::Tool
        && measure_after(&tail, scene).is_none()
        && !matches!(tail.first(), Some(&"spring" | &"one" | &"key" | &"socket" | &"bore"))
}

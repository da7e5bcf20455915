//! Parts in a line: by name, head word, sound or first word.

use super::mention::{Mention, What};
use super::names::Fit;
use super::spot::Scene;
use super::token::{Mark, Token};
use std::collections::BTreeSet;

use super::spot::span;

/// A part of the unit, by name, head word, sound or first word.
pub(super) fn part(tokens: &[Token], texts: &[&str], at: usize, scene: &Scene<'_>) -> Option<Mention> {
    let found = |len: usize, ids: &BTreeSet<String>, fit: Fit| {
        Some(Mention { start: at, end: at + len, what: What::Part(settled(ids, fit, scene)) })
    };
    for len in (1..=4).rev() {
        let Some(words) = span(texts, at, len) else { continue };
        let name = words.join(" ");
        if let Some(ids) = scene.unit.whole(&name).filter(|_| !scene.never.contains(&name)) {
            return found(len, ids, Fit::Whole);
        }
        if len >= 2
            && let Some(id) = scene.foreign.get(&name)
        {
            return Some(Mention { start: at, end: at + len, what: What::Foreign(id.clone()) });
        }
        let joined = tokens
            .get(at..at + len - 1)
            .is_some_and(|tokens| tokens.iter().all(|token| token.mark == Mark::None));
        let itself = len == 1 && (scene.unit.holds(&name) || (scene.known)(&name));
        let little = words.iter().all(|word| scene.small.contains(*word));
        let free =
            joined && !(itself || little) && !words.iter().any(|word| super::lexicon::is_number_word(word));
        let edge = |word: Option<&&str>| {
            word.is_some_and(|word| {
                scene.small.contains(*word)
                    && !scene.unit.holds(word)
                    && !matches!(*word, "not" | "her" | "in")
            })
        };
        let loose = edge(words.first()) || (len > 1 && edge(words.last()));
        let some_new = len == 1
            || words.iter().any(|word| scene.unit.holds(word))
            || words.iter().any(|word| !(scene.known)(word))
            || len == 2;
        if scene.by_sound
            && len <= 3
            && free
            && !loose
            && some_new
            && let Some((ids, like)) = scene.unit.sounding(&name)
            && like
                >= if len == 1 {
                    0.72
                } else if words.iter().any(|word| scene.unit.holds(word)) {
                    0.78
                } else {
                    0.84
                }
        {
            return found(len, &ids, Fit::Sound);
        }
    }
    let word = *texts.get(at)?;
    if let Some(ids) = scene.unit.head(word).filter(|_| !scene.never.iter().any(|never| never == word)) {
        return found(1, ids, Fit::Head);
    }
    let marked =
        at.checked_sub(1).and_then(|before| tokens.get(before)).is_some_and(|token| token.mark != Mark::None);
    let before = if marked {
        ""
    } else {
        at.checked_sub(1).and_then(|before| texts.get(before)).copied().unwrap_or_default()
    };
    let after = texts.get(at + 1).copied().unwrap_or_default();
    let points = matches!(before, "the" | "on" | "for" | "of" | "this" | "that" | "" | "and")
        && matches!(
            after,
            "is" | "at"
                | "to"
                | "one"
                | ""
                | "out"
                | "was"
                | "meant"
                | "go"
                | "goes"
                | "and"
                | "should"
                | "does"
                | "for"
                | "needs"
                | "same"
        );
    let points = points || (super::lexicon::is_number_word(after) && before != "too");
    if points
        && !scene.small.contains(word)
        && !scene.never.iter().any(|never| never == word)
        && let Some(ids) = scene.unit.first(word)
    {
        let one = usize::from(after == "one");
        return found(1 + one, ids, Fit::First);
    }
    None
}

/// The part in hand settles a name that fits several: it itself, or what belongs to it ("foot nut" to "foot grub").
fn settled(ids: &BTreeSet<String>, fit: Fit, scene: &Scene<'_>) -> BTreeSet<String> {
    let Some(about) = scene.about.filter(|_| ids.len() > 1 && fit != Fit::Sound) else { return ids.clone() };
    if ids.contains(about) {
        return BTreeSet::from([about.to_owned()]);
    }
    let first = about.split('-').next().unwrap_or(about);
    let kin: BTreeSet<String> =
        ids.iter().filter(|id| id.split('-').next() == Some(first)).cloned().collect();
    if kin.len() == 1 { kin } else { ids.clone() }
}

//! Cuts a line into what is said one after the other, so that each piece is one act or talk beside the matter.

use super::class::Class;
use super::parsed::{Fitting, Parsed};
use super::token::Mark;
use std::collections::BTreeMap;

/// A stretch of the line with what it was taken for.
#[derive(Debug, Clone, PartialEq)]
pub struct Clause {
    /// First token.
    pub from: usize,
    /// One past the last.
    pub to: usize,
    /// The best fittings, best first; empty when nothing fits.
    pub fits: Vec<Fitting>,
}

/// The line in the clauses that explain it best.
#[must_use]
pub fn clauses(line: &Parsed<'_>) -> Vec<Clause> {
    let places = places(line);
    let count = places.len();
    let starts: Vec<(usize, Vec<BTreeMap<usize, f32>>)> = places
        .iter()
        .take(count.saturating_sub(1))
        .map(|place| {
            let start = place + joined(line, *place);
            (start, line.parses(start))
        })
        .collect();
    // best[n]: the best value of the line up to place n, the place before, and the clause between.
    let mut best: Vec<Option<(f32, usize, Clause)>> = vec![None; count];
    for to in 1..count {
        for from in 0..to {
            let (Some(start), Some(end)) = (places.get(from), places.get(to)) else { continue };
            let before = if from == 0 {
                0.0
            } else {
                match best.get(from) {
                    Some(Some((value, _, _))) => *value,
                    _ => continue,
                }
            };
            let Some((after, parses)) = starts.get(from) else { continue };
            let clause = Clause { from: *after, to: *end, fits: line.fittings(*after, *end, parses) };
            let value = before + value(line, &clause) - cut_cost(line, *start);
            let slot = best.get_mut(to);
            if let Some(slot) = slot
                && slot.as_ref().is_none_or(|(most, _, _)| value > *most)
            {
                *slot = Some((value, from, clause));
            }
        }
    }
    let mut out = Vec::new();
    let mut at = count.saturating_sub(1);
    while at > 0 {
        let Some(Some((_, from, clause))) = best.get(at).cloned() else { break };
        out.push(clause);
        at = from;
    }
    out.reverse();
    out
}

/// What a cut costs: little after a mark, more before a joining word, most where nothing shows it.
fn cut_cost(line: &Parsed<'_>, at: usize) -> f32 {
    match at.checked_sub(1).and_then(|before| line.tokens.get(before)) {
        None => 0.3,
        Some(before) if before.mark >= Mark::Stop => 0.15,
        Some(before) if before.mark == Mark::Comma => 0.3,
        Some(_) if line.tokens.get(at).is_some_and(|token| joins(&token.text)) => 0.5,
        Some(_) => 0.85,
    }
}

fn joins(word: &str) -> bool {
    matches!(word, "and" | "then" | "but" | "so" | "also")
}

/// Words that may begin a clause where a recogniser wrote no mark.
fn begins(word: &str) -> bool {
    matches!(
        word,
        "what"
            | "where"
            | "which"
            | "how"
            | "when"
            | "why"
            | "note"
            | "write"
            | "can"
            | "call"
            | "set"
            | "take"
            | "start"
    )
}

/// Where the line may be cut: after marks, before joining words, and in a line without marks before question words.
fn places(line: &Parsed<'_>) -> Vec<usize> {
    let inside = |at: usize| line.mentions.iter().any(|mention| mention.start < at && at < mention.end);
    let marks = line.tokens.iter().rev().skip(1).any(|token| token.mark != Mark::None);
    let mut out = vec![0];
    for (at, token) in line.tokens.iter().enumerate().skip(1) {
        let marked = line.tokens.get(at - 1).is_some_and(|before| before.mark != Mark::None);
        let led = line.tokens.get(at - 1).is_some_and(|before| {
            matches!(
                before.text.as_str(),
                "on" | "to"
                    | "in"
                    | "with"
                    | "for"
                    | "at"
                    | "from"
                    | "by"
                    | "and"
                    | "but"
                    | "so"
                    | "then"
                    | "about"
                    | "of"
                    | "yes"
                    | "no"
                    | "i"
                    | "you"
                    | "me"
            )
        });
        let denied = line.tokens.get(at + 1).is_some_and(|next| next.text == "not");
        let open = (joins(&token.text) && !denied) || (!marks && at > 1 && !led && begins(&token.text));
        if (marked || (open && out.len() < 6)) && !inside(at) && out.len() < 9 {
            out.push(at);
        }
    }
    out.push(line.tokens.len());
    out
}

/// A joining word at the front belongs to no clause.
fn joined(line: &Parsed<'_>, at: usize) -> usize {
    usize::from(line.tokens.get(at).is_some_and(|token| joins(&token.text)) && at + 1 < line.tokens.len())
}

/// What a clause is worth: how well its best class fits, by how much it has to tell.
fn value(line: &Parsed<'_>, clause: &Clause) -> f32 {
    let weight = line.weight(clause.from, clause.to);
    let Some(best) = clause.fits.first() else { return 0.0 };
    let aside = matches!(line.talk.classes.get(best.class), Some(Class::Aside | Class::Decline));
    // What no rule knows is worth less: the same words cut in two may be what rules know.
    let score = if best.rule.is_none() { best.score * 0.7 } else { best.score };
    let score = if aside { score.min(0.6) } else { score };
    weight * (score.max(0.2) - 0.2)
}

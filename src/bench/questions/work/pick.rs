//! Which calculation a question calls for: by its cues, by what its figures fit, by the kind that hearing gave.

use super::fill::{self, Said};
use super::words::Words;
use crate::rulebase::talk::{Asking, Works};
use crate::workings::registry::{Kind, Working};

/// A calculation that a question may call for.
pub struct Picked<'w> {
    /// The table's entry.
    pub asking: &'w Asking,
    /// The calculation.
    pub working: &'static Working,
    /// What the question says of its inputs.
    pub said: Said,
    /// Words of the question that call for it.
    pub cue: usize,
}

impl Picked<'_> {
    /// How surely the words alone call for it: cue words, and figures that have their place.
    #[must_use]
    pub fn strength(&self) -> usize {
        self.cue + self.said.values.len()
    }
}

/// The calculation that suits the question best.
#[must_use]
pub fn pick<'w>(works: &'w Works, kind: Option<Kind>, words: &Words) -> Option<Picked<'w>> {
    let mut best: Option<(f64, Picked<'w>)> = None;
    for asking in &works.works {
        let Some(picked) = consider(asking, kind, words) else { continue };
        let score = score(&picked, kind);
        if best.as_ref().is_none_or(|(most, _)| score > *most) {
            best = Some((score, picked));
        }
    }
    best.map(|(_, picked)| picked)
}

fn consider<'w>(asking: &'w Asking, kind: Option<Kind>, words: &Words) -> Option<Picked<'w>> {
    let working = asking.working()?;
    if asking.not.iter().any(|cue| words.cue(cue) > 0) {
        return None;
    }
    let cue = asking.cues.iter().map(|cue| words.cue(cue)).max().unwrap_or(0);
    let by_kind = asking.usual && kind == Some(working.kind);
    (cue > 0 || by_kind).then(|| Picked { asking, working, said: fill::said(asking, working, words), cue })
}

/// Cue words count most; then figures that find their place, less those that do not.
fn score(picked: &Picked<'_>, kind: Option<Kind>) -> f64 {
    let placed = picked.said.values.len() as f64;
    let left_over = picked.said.left_over.len() as f64;
    let kind = if kind == Some(picked.working.kind) { 1.0 } else { 0.0 };
    2.0 * picked.cue as f64 + placed - 1.5 * left_over + kind
}

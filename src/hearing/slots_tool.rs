//! The tool that a question offers, and the figures of a calculation.

use super::mention::{Mention, Spoken, What};
use super::slots::Source;
use crate::act::{Said, WaitingFor};

/// The tool offered: a size with its kind, or a plain name; not the one that is missing ("instead of the 21").
pub(super) fn tool(source: &Source<'_>) -> Option<String> {
    let offered: Vec<&Mention> =
        source.mentions().filter(|mention| !missing(source, mention.start)).collect();
    let kind = offered.iter().rev().find_map(|mention| match &mention.what {
        What::Tool(name) => Some(name.clone()),
        _ => None,
    });
    let size = offered.iter().find_map(|mention| mention.spoken()).map(|spoken| {
        let unit = match spoken.unit {
            Some("in") => "in",
            None if spoken.size.contains('/') => "in",
            _ => "mm",
        };
        format!("{} {unit}", spoken.size)
    });
    match (size, kind) {
        (Some(size), Some(kind)) => Some(format!("{size} {kind}")),
        (size, kind) => size.or(kind),
    }
}

/// Whether the words before a tool say that it is the one to be replaced.
fn missing(source: &Source<'_>, at: usize) -> bool {
    let start = at.saturating_sub(4).max(source.from);
    let before = source.line.text(start, at);
    [
        "instead of",
        "in place of",
        "rather than",
        "not got",
        "not have",
        "no",
        "in lieu of",
        "lost my",
        "lost the",
        "cannot find",
        "not find",
        "same as",
    ]
    .iter()
    .any(|cue| format!(" {before} ").contains(&format!(" {cue} ")))
}

/// The figures of a calculation; a unit that means several is taken for itself and not for what is waited for.
pub(super) fn values(source: &Source<'_>) -> Vec<Said> {
    let unit = |spoken: &Spoken| {
        let words: Vec<&str> = spoken.unit_said.as_deref().unwrap_or_default().split(' ').collect();
        match super::measure::unit_at(&words, WaitingFor::Nothing) {
            Some((super::measure::Measure::Unit(name), len)) if len == words.len() => Some(name),
            _ => spoken.unit,
        }
    };
    source
        .numbers()
        .into_iter()
        .map(|spoken| Said { value: spoken.value, unit: unit(spoken).map(str::to_owned) })
        .collect()
}

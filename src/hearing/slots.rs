//! Fills an act's slots from what its clause mentions and from what is in hand.

use super::mention::{Mention, Spoken, What};
use super::parsed::Parsed;
use super::vocabulary::{Sort, Vocabulary};
use crate::act::{Act, ActName, Corner, Duration, End, Said, Waiting, WaitingFor};
use std::collections::BTreeSet;

/// What an act is filled from.
pub struct Source<'a> {
    /// The line.
    pub line: &'a Parsed<'a>,
    /// What was said, whole.
    pub said: &'a str,
    /// First token of the clause.
    pub from: usize,
    /// One past its last.
    pub to: usize,
    /// The unit in hand.
    pub unit: &'a Vocabulary,
    /// What is waited for.
    pub waiting: &'a Waiting,
}

impl Source<'_> {
    /// The mentions of the clause.
    pub fn mentions(&self) -> impl Iterator<Item = &Mention> {
        self.line.mentions.iter().filter(|mention| mention.start >= self.from && mention.end <= self.to)
    }

    /// The parts named, each as the ids that its name fits.
    #[must_use]
    pub fn parts(&self) -> Vec<&BTreeSet<String>> {
        self.mentions()
            .filter_map(|mention| match &mention.what {
                What::Part(ids) => Some(ids),
                _ => None,
            })
            .collect()
    }

    /// The numbers said.
    #[must_use]
    pub fn numbers(&self) -> Vec<&Spoken> {
        self.mentions().filter_map(Mention::spoken).collect()
    }

    fn corner(&self) -> Option<Option<Corner>> {
        self.mentions().find_map(|mention| match mention.what {
            What::Corner(corner) => Some(corner),
            _ => None,
        })
    }

    /// The id that the clause is about: a part named, or the part in hand.
    #[must_use]
    pub fn about(&self) -> Option<String> {
        self.named().or_else(|| self.waiting.about.clone())
    }

    /// The part named, if one is and it is one.
    #[must_use]
    pub fn named(&self) -> Option<String> {
        let parts: Vec<&BTreeSet<String>> = self
            .mentions()
            .filter(|mention| !denied(self, mention.start))
            .filter_map(|mention| match &mention.what {
                What::Part(ids) => Some(ids),
                _ => None,
            })
            .collect();
        let sure: Vec<&&BTreeSet<String>> = parts.iter().filter(|ids| ids.len() == 1).collect();
        // Of several parts the one in hand counts least: "the nut on the seal head" is about what was named first.
        sure.first().and_then(|ids| ids.first().cloned())
    }

    /// The clause as it was said; words mended by sound as they were meant.
    #[must_use]
    pub fn text(&self, from: usize) -> String {
        let mut out: Vec<String> = Vec::new();
        let mut last = usize::MAX;
        for token in self.line.tokens.get(from..self.to).unwrap_or_default() {
            if token.was.is_some() {
                out.push(token.text.clone());
            } else if token.raw.start != last {
                out.push(self.said.get(token.raw.clone()).unwrap_or_default().to_owned());
            }
            last = token.raw.start;
        }
        out.join(" ").trim_end_matches([',', '.', ' ']).to_owned()
    }
}

/// The act with its slots filled.
#[must_use]
pub fn filled(act: &Act, source: &Source<'_>) -> Act {
    let mut act = act.clone();
    match act.act {
        ActName::Confirm => act.slots.about = act.slots.about.or_else(|| source.named()),
        ActName::Reading | ActName::Correct => value(&mut act, source),
        ActName::Want => {
            value(&mut act, source);
            act.slots.text = Some(source.text(source.from));
        }
        ActName::Note => act.slots.text = Some(source.text(after_cue(source, "write-down"))),
        ActName::Skip => act.slots.reason = reason(source),
        ActName::By => act.slots.text = Some(source.text(after_cue(source, "it-is-me"))),
        ActName::Trouble | ActName::Fitted => {
            act.slots.text = Some(source.text(source.from));
            act.slots.about = source.about();
        }
        ActName::Wait => act.slots.duration = duration(source),
        ActName::Start | ActName::Switch => place(&mut act, source),
        ActName::AskSwap => act.slots.tool = tool(source),
        ActName::AskWork => act.slots.values = Some(values(source)),
        name if takes_about(name) => act.slots.about = act.slots.about.or_else(|| source.about()),
        _ => {}
    }
    act
}

fn takes_about(name: ActName) -> bool {
    matches!(
        name,
        ActName::AskTool
            | ActName::AskTorque
            | ActName::AskTurn
            | ActName::AskLocker
            | ActName::AskBack
            | ActName::AskSetting
            | ActName::AskRange
            | ActName::AskMark
            | ActName::AskSource
            | ActName::AskStuck
            | ActName::AskPart
            | ActName::AskLog
    )
}

/// Why a step is left out: what follows the words that leave it out; none when there is nothing more. Where a line leaves
/// out in other words, all of it is kept.
fn reason(source: &Source<'_>) -> Option<String> {
    match source.line.first("leave-out", source.from, source.to) {
        Some((start, end)) if start <= source.from + 3 => {
            (source.line.weight(end, source.to) > 0.9).then(|| source.text(end))
        }
        _ => Some(source.text(source.from)),
    }
}

fn after_cue(source: &Source<'_>, piece: &str) -> usize {
    match source.line.first(piece, source.from, source.to) {
        Some((start, end)) if start <= source.from + 3 && source.line.weight(end, source.to) > 0.9 => end,
        _ => source.from,
    }
}

fn value(act: &mut Act, source: &Source<'_>) {
    let chosen = chosen(source);
    act.slots.about = about_value(source, chosen);
    if let Some(spoken) = chosen {
        act.slots.value = Some(spoken.value);
        act.slots.unit = spoken.unit.map(str::to_owned);
    }
    if source.line.has("from-open", source.from, source.to) {
        act.slots.from = Some(End::FullOut);
    }
}

/// The number that stands: the last one that is not denied or said to have been wrong, those that fit first.
fn chosen<'a>(source: &'a Source<'_>) -> Option<&'a Spoken> {
    let numbers: Vec<(usize, &Spoken)> =
        source.mentions().filter_map(|mention| Some((mention.start, mention.spoken()?))).collect();
    let stands: Vec<&Spoken> =
        numbers.iter().filter(|(at, _)| !denied(source, *at)).map(|(_, spoken)| *spoken).collect();
    let fits =
        |spoken: &&&Spoken| spoken.unit.is_some_and(|unit| super::measure::fits(unit, source.waiting.kind));
    stands
        .iter()
        .rev()
        .find(fits)
        .or_else(|| stands.last())
        .copied()
        .or_else(|| numbers.last().map(|(_, spoken)| *spoken))
}

/// Whether the words before a number say that it does not stand ("not eleven", "I said two").
fn denied(source: &Source<'_>, at: usize) -> bool {
    let before = |n: usize| {
        let place = at.checked_sub(n).filter(|place| *place >= source.from);
        place.and_then(|place| source.line.tokens.get(place)).map_or("", |token| token.text.as_str())
    };
    let word = if matches!(before(1), "the" | "that" | "a" | "position" | "number" | "of" | "at") {
        before(2)
    } else {
        before(1)
    };
    matches!(
        word,
        "not"
            | "said"
            | "strike"
            | "scrub"
            | "scratch"
            | "instead"
            | "than"
            | "wrote"
            | "replace"
            | "delete"
            | "heard"
            | "isn't"
    )
}

/// The part a value is about: the one named that takes such a value, else the one in hand.
fn about_value(source: &Source<'_>, chosen: Option<&Spoken>) -> Option<String> {
    let hand = source.waiting.about.clone();
    let named = source.named();
    let takes = |id: &Option<String>| {
        let sort = id.as_deref().and_then(|id| source.unit.thing(id)).map(|thing| thing.sort);
        sort.is_some_and(|sort| measured_in(sort, chosen.and_then(|spoken| spoken.unit), source.waiting.kind))
    };
    match (named, hand) {
        (Some(named), Some(hand))
            if named != hand && !takes(&Some(named.clone())) && takes(&Some(hand.clone())) =>
        {
            Some(hand)
        }
        (Some(named), _) => Some(named),
        (None, hand) => hand,
    }
}

fn duration(source: &Source<'_>) -> Option<Duration> {
    let times: Vec<&Spoken> = source
        .numbers()
        .into_iter()
        .filter(|spoken| matches!(spoken.unit, Some("s" | "min" | "h")))
        .collect();
    let first = times.first()?;
    let unit = first.unit?;
    let size = |unit: &str| match unit {
        "h" => 60.0,
        "s" => 1.0 / 60.0,
        _ => 1.0,
    };
    if times.len() > 1 {
        let total = times.iter().map(|one| one.value * size(one.unit.unwrap_or("min"))).sum();
        return Some(Duration { value: total, unit: "min".to_owned() });
    }
    Some(Duration { value: first.value, unit: unit.to_owned() })
}

fn place(act: &mut Act, source: &Source<'_>) {
    let whole = Source { from: 0, to: source.line.tokens.len(), ..*source };
    act.slots.corner = source.corner().or_else(|| whole.corner()).flatten();
    for mention in whole.mentions() {
        match &mention.what {
            What::Unit(id) => act.slots.unit = Some(id.clone()),
            What::Procedure(id) => act.slots.procedure = Some(id.clone()),
            _ => {}
        }
    }
    // "the other rear, the left-hand one": an end and a side said apart.
    if let Some(side @ (Corner::Left | Corner::Right)) = act.slots.corner {
        let end = source.line.tokens.iter().find_map(|token| match token.text.as_str() {
            "front" => Some(true),
            "rear" | "back" => Some(false),
            _ => None,
        });
        act.slots.corner = Some(match (end, side) {
            (Some(true), Corner::Left) => Corner::FrontLeft,
            (Some(true), _) => Corner::FrontRight,
            (Some(false), Corner::Left) => Corner::RearLeft,
            (Some(false), _) => Corner::RearRight,
            (None, side) => side,
        });
    }
}

/// The tool offered: a size with its kind, or a plain name; not the one that is missing ("instead of the 21").
fn tool(source: &Source<'_>) -> Option<String> {
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
fn values(source: &Source<'_>) -> Vec<Said> {
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

/// Whether a thing of that sort is measured in such a unit, or when none was said, in what is waited for.
#[must_use]
pub fn measured_in(sort: Sort, unit: Option<&str>, waiting: WaitingFor) -> bool {
    let any = |kinds: &[WaitingFor]| match unit {
        Some(unit) => kinds.iter().any(|kind| super::measure::fits(unit, *kind)),
        None => kinds.contains(&waiting),
    };
    match sort {
        Sort::Clicker => any(&[WaitingFor::Clicks]),
        Sort::Ring => any(&[WaitingFor::Position]),
        Sort::Screw => any(&[WaitingFor::Turns, WaitingFor::Length]),
        Sort::Charge => any(&[WaitingFor::Pressure, WaitingFor::Temperature]),
        Sort::Spring => any(&[WaitingFor::Rate, WaitingFor::Length, WaitingFor::Mass]),
        Sort::Level => any(&[WaitingFor::Length]),
        Sort::Fluid => any(&[WaitingFor::Volume, WaitingFor::Temperature]),
        Sort::Part => {
            any(&[WaitingFor::Torque, WaitingFor::Length, WaitingFor::Temperature, WaitingFor::Mass])
        }
    }
}

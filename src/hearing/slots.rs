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
        let parts = self.parts();
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
        ActName::Skip => act.slots.reason = Some(source.text(source.from)),
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
        ActName::AskTool | ActName::AskTorque | ActName::AskTurn | ActName::AskLocker | ActName::AskBack
            | ActName::AskSetting | ActName::AskRange | ActName::AskMark | ActName::AskSource | ActName::AskStuck
            | ActName::AskPart | ActName::AskLog
    )
}

fn after_cue(source: &Source<'_>, piece: &str) -> usize {
    match source.line.first(piece, source.from, source.to) {
        Some((start, end)) if start <= source.from + 3 && end < source.to => end,
        _ => source.from,
    }
}

fn value(act: &mut Act, source: &Source<'_>) {
    act.slots.about = about_value(source);
    let numbers = source.numbers();
    let fits = |spoken: &&&Spoken| spoken.unit.is_some_and(|unit| super::measure::fits(unit, source.waiting.kind));
    let chosen = numbers.iter().rev().find(fits).or_else(|| numbers.last());
    if let Some(spoken) = chosen {
        act.slots.value = Some(spoken.value);
        act.slots.unit = spoken.unit.map(str::to_owned);
    }
    if source.line.has("from-open", source.from, source.to) {
        act.slots.from = Some(End::FullOut);
    }
}

/// The part a value is about: named, else the one in hand, else the only one that takes such a value.
fn about_value(source: &Source<'_>) -> Option<String> {
    source.named().or_else(|| source.waiting.about.clone())
}

fn duration(source: &Source<'_>) -> Option<Duration> {
    let times: Vec<&Spoken> =
        source.numbers().into_iter().filter(|spoken| matches!(spoken.unit, Some("s" | "min" | "h"))).collect();
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
    act.slots.corner = source.corner().flatten();
    for mention in source.mentions() {
        match &mention.what {
            What::Unit(id) => act.slots.unit = Some(id.clone()),
            What::Procedure(id) => act.slots.procedure = Some(id.clone()),
            _ => {}
        }
    }
    // "the other rear, the left-hand one": an end and a side said apart.
    if let Some(side @ (Corner::Left | Corner::Right)) = act.slots.corner {
        let end = source.line.tokens.get(source.from..source.to).unwrap_or_default().iter().find_map(|token| match token.text.as_str() {
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

/// The tool offered: a size with its kind, or a plain name.
fn tool(source: &Source<'_>) -> Option<String> {
    let kind = source.mentions().find_map(|mention| match &mention.what {
        What::Tool(name) => Some(name.clone()),
        _ => None,
    });
    let size = source.numbers().first().map(|spoken| {
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

fn values(source: &Source<'_>) -> Vec<Said> {
    source.numbers().into_iter().map(|spoken| Said { value: spoken.value, unit: spoken.unit.map(str::to_owned) }).collect()
}

/// Whether a thing of that sort is measured so.
#[must_use]
pub fn measured_in(sort: Sort, waiting: WaitingFor) -> bool {
    match sort {
        Sort::Clicker => waiting == WaitingFor::Clicks,
        Sort::Ring => waiting == WaitingFor::Position,
        Sort::Screw => matches!(waiting, WaitingFor::Turns | WaitingFor::Length),
        Sort::Charge => matches!(waiting, WaitingFor::Pressure | WaitingFor::Temperature),
        Sort::Spring => matches!(waiting, WaitingFor::Rate | WaitingFor::Length | WaitingFor::Mass),
        Sort::Fluid => matches!(waiting, WaitingFor::Volume | WaitingFor::Length | WaitingFor::Temperature),
        Sort::Part => true,
    }
}

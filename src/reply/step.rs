//! The step in hand: part, tool, way, amount in a breath for the ear; a bench card for the screen.

use super::Reply;
use super::figure::{limit, quantity, seen, way};
use super::piece::{Context, Piece, Weight, ear};
use super::sentence::{clause, inside, question, sentence, words, yes_or_no};
use super::table::block;
use crate::act::WaitingFor;
use crate::bench::{Asks, Part, StepCard};
use crate::quantity::Unit;

/// A say of a step keeps to this many words: what only explains gives way first.
const WORDS: usize = 35;

/// The step in hand.
pub(super) fn step(card: &StepCard, context: &Context<'_>) -> Piece {
    let asks = asks(card, context);
    let room = WORDS.saturating_sub(asks.as_ref().map_or(0, |asks| words(&asks.say)));
    let mut piece = Piece { say: said(card, context, room), show: shown(card), asks: None };
    piece.asks = asks.map(|asks| (Weight::Closing, asks));
    piece
}

/// For the ear, in so many words where what must be said allows it.
fn said(card: &StepCard, context: &Context<'_>, room: usize) -> String {
    let mut parts: Vec<(bool, String)> = vec![(true, lead(card, context))];
    parts.extend(limits(card));
    parts.extend(explained(card));
    let mut parts: Vec<(bool, String)> = parts.into_iter().map(|(must, text)| (must, ear(&text))).collect();
    while parts.iter().map(|(_, text)| words(text)).sum::<usize>() > room {
        let Some(place) = parts.iter().rposition(|(must, _)| !must) else { break };
        parts.remove(place);
    }
    let texts: Vec<String> =
        parts.into_iter().map(|(_, text)| text).filter(|text| !text.is_empty()).collect();
    texts.join(" ")
}

/// Part, tool, way, from where it is seen, amount: "Foot nut, 21, anticlockwise".
fn lead(card: &StepCard, context: &Context<'_>) -> String {
    let mut parts = vec![head(card, context)];
    let tool = tool(card, true)
        .filter(|tool| !parts.iter().any(|head| head.to_lowercase().contains(&tool.to_lowercase())));
    parts.push(tool.unwrap_or_default());
    parts.push(card.way.map(way).unwrap_or_default().to_owned());
    parts.push(card.seen_from.as_deref().map(seen).unwrap_or_default());
    parts.push(card.amount.as_deref().map(inside).unwrap_or_default());
    parts.retain(|part| !part.is_empty());
    parts.join(", ")
}

/// The step's own short form; the part's name where the card turns it; else the whole sentence, which a way back or
/// a list after it makes needless.
fn head(card: &StepCard, context: &Context<'_>) -> String {
    let turned = card.way.is_some() && (card.tool.is_some() || card.size.is_some() || card.limit.is_some());
    let detailed = matches!(context.next, Some(Part::Restore(_) | Part::Settings(_)));
    match &card.brief {
        Some(brief) => clause(brief).to_owned(),
        None if turned => clause(&card.name).to_owned(),
        None if detailed => String::new(),
        None => clause(&card.text).to_owned(),
    }
}

/// The tool with its size. For the ear a size in millimetres is the bare number, as it is called for at the bench.
fn tool(card: &StepCard, bare: bool) -> Option<String> {
    let size = card.size.map(|size| match size.unit {
        Unit::Millimetre if bare => crate::quantity::bench_figures(size.value).to_string(),
        _ => quantity(size),
    });
    match (size, &card.tool) {
        (Some(size), Some(tool)) if holds_size(tool, &size) => Some(clause(tool).to_owned()),
        (Some(size), Some(tool)) => Some(format!("{size} {}", clause(tool))),
        (Some(size), None) => Some(size),
        (None, tool) => tool.as_deref().map(|tool| clause(tool).to_owned()),
    }
}

/// Whether the tool's own name begins with its size ("21 mm socket").
fn holds_size(tool: &str, size: &str) -> bool {
    let number = |text: &str| text.split(' ').next().map(str::to_owned);
    number(tool) == number(size)
}

/// What must be kept to, and so is always said: torque, nip, a limit not to be passed.
fn limits(card: &StepCard) -> Vec<(bool, String)> {
    let mut out = Vec::new();
    out.extend(card.limit.as_ref().map(|band| (true, limit(band))));
    out.extend(card.nip.as_deref().map(|nip| (true, nipped(nip))));
    out.extend(card.hold.as_deref().map(|hold| (true, with_verb("hold", hold))));
    out.extend(card.never.as_deref().map(|never| (true, with_verb("never", never))));
    out
}

/// What explains: always said where it holds a figure.
fn explained(card: &StepCard) -> Vec<(bool, String)> {
    let mut out = Vec::new();
    out.extend(card.locker.as_deref().map(|locker| (true, format!("Threadlocker, {}", inside(locker)))));
    out.extend(card.note.as_deref().map(|note| (has_figure(note), note.to_owned())));
    out
}

fn has_figure(text: &str) -> bool {
    text.contains(|c: char| c.is_ascii_digit())
}

fn nipped(nip: &str) -> String {
    match clause(nip) {
        "" => "Nip it only".to_owned(),
        how => format!("Nip it only, {}", inside(how)),
    }
}

/// The text led by a verb, unless it begins with it.
pub(super) fn with_verb(verb: &str, text: &str) -> String {
    let text = inside(text);
    let first = text.split_whitespace().next().unwrap_or_default();
    let says_so = verb == "never" && text.to_lowercase().contains("never");
    if says_so || first.eq_ignore_ascii_case(verb) || verb == "never" && matches!(first, "not" | "do" | "no")
    {
        text
    } else {
        format!("{verb} {text}")
    }
}

/// For the screen: a bench card.
fn shown(card: &StepCard) -> String {
    let (number, of) = card.number;
    let name = clause(card.brief.as_deref().unwrap_or(&card.name));
    let title = format!("Step {number} of {of}: {name}  [{}]", card.id);
    let rows = block(&[
        ("do", Some(sentence(&card.text))),
        ("", None),
        ("tool", tool(card, false)),
        ("turn", turn(card)),
        ("amount", card.amount.clone()),
        ("hold", card.hold.clone()),
        ("limit", card.limit.as_ref().map(limit)),
        ("nip", card.nip.as_ref().map(|nip| nipped(nip))),
        ("locker", card.locker.clone()),
        ("never", card.never.clone()),
        ("note", card.note.clone()),
    ]);
    format!("{title}\n{rows}").trim_end().to_owned()
}

fn turn(card: &StepCard) -> Option<String> {
    let seen_from = card.seen_from.as_deref().map(seen);
    match (card.way.map(way), seen_from) {
        (Some(way), Some(seen)) => Some(format!("{way}, {seen}")),
        (way, seen) => way.map(str::to_owned).or(seen),
    }
}

/// What closes the step, without leading.
fn asks(card: &StepCard, context: &Context<'_>) -> Option<Reply> {
    let text = match card.asks.as_ref()? {
        Asks::YesOrNo(text) => yes_or_no(text),
        Asks::Words(text) if text.is_empty() => return None,
        Asks::Value(text) | Asks::Words(text) => question(text),
        Asks::Done => return None,
    };
    let hint = wanted(context.waits).map(|wanted| format!(" ({wanted})")).unwrap_or_default();
    let show = block(&[("asks", Some(format!("{text}{hint}")))]);
    (!text.is_empty()).then(|| Reply { say: ear(&text), show })
}

/// The kind of entry waited for, where it is a value.
pub(super) fn wanted(waits: WaitingFor) -> Option<&'static str> {
    match waits {
        WaitingFor::Torque => Some("a torque"),
        WaitingFor::Clicks => Some("a number of clicks"),
        WaitingFor::Position => Some("a position"),
        WaitingFor::Turns => Some("a number of turns"),
        WaitingFor::Length => Some("a length"),
        WaitingFor::Pressure => Some("a pressure"),
        WaitingFor::Temperature => Some("a temperature"),
        WaitingFor::Volume => Some("a volume"),
        WaitingFor::Mass => Some("a mass"),
        WaitingFor::Rate => Some("a spring rate"),
        WaitingFor::Text => Some("a few words"),
        WaitingFor::Done | WaitingFor::YesOrNo | WaitingFor::Tool | WaitingFor::Nothing => None,
    }
}

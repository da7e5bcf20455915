//! What an answer must hold: written by hand, never rewritten.

use crate::session::Turn;

/// A demand on the answer before it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Must {
    /// Each of these stands in it.
    Hold(Vec<String>),
    /// None of these does.
    NotHold(Vec<String>),
    /// The job then waits for this, with this part in hand if one is named.
    Wait(String, Option<String>),
    /// These kinds of event were kept, in this order.
    Keep(Vec<String>),
}

impl Must {
    /// Reads a `must` line; none when it is another kind of line.
    pub fn parse(text: &str) -> Option<Self> {
        let (head, rest) = text.split_once(':')?;
        let rest = rest.trim();
        match head.trim() {
            "must" => Some(Self::Hold(pieces(rest, ';'))),
            "must not" => Some(Self::NotHold(pieces(rest, ';'))),
            "must wait" => {
                let mut words = rest.split_whitespace();
                Some(Self::Wait(words.next()?.to_owned(), words.next().map(str::to_owned)))
            }
            "must keep" if rest == "nothing" => Some(Self::Keep(Vec::new())),
            "must keep" => Some(Self::Keep(pieces(rest, ','))),
            _ => None,
        }
    }

    /// What is not as it must be.
    pub fn broken(&self, turns: &[Turn]) -> Option<String> {
        match self {
            Self::Hold(wanted) => {
                let missing = wanted.iter().find(|piece| !holds(turns, piece))?;
                Some(format!("`{missing}` is not in the answer"))
            }
            Self::NotHold(barred) => {
                let there = barred.iter().find(|piece| holds(turns, piece))?;
                Some(format!("`{there}` is in the answer"))
            }
            Self::Wait(kind, about) => waits(turns, kind, about.as_deref()),
            Self::Keep(kinds) => {
                let kept: Vec<String> =
                    turns.iter().flat_map(|turn| &turn.events).map(|e| kind_of(&e.event)).collect();
                (kept != *kinds).then(|| format!("kept was {}", listed(&kept)))
            }
        }
    }
}

fn listed(kinds: &[String]) -> String {
    if kinds.is_empty() { "nothing".to_owned() } else { kinds.join(", ") }
}

fn pieces(text: &str, between: char) -> Vec<String> {
    text.split(between).map(|piece| piece.trim().to_owned()).filter(|piece| !piece.is_empty()).collect()
}

fn waits(turns: &[Turn], kind: &str, about: Option<&str>) -> Option<String> {
    let waiting = &turns.last()?.waiting;
    let name = word(&waiting.kind);
    let same = name == kind && about.is_none_or(|id| waiting.about.as_deref() == Some(id));
    (!same).then(|| format!("it waits for {name} {}", waiting.about.as_deref().unwrap_or("")))
}

/// The name that something serialises to.
pub fn word(value: &impl serde::Serialize) -> String {
    serde_json::to_value(value).ok().and_then(|json| json.as_str().map(str::to_owned)).unwrap_or_default()
}

/// The kind of an event.
pub(super) fn kind_of(event: &crate::event::Event) -> String {
    let json = serde_json::to_value(event).unwrap_or_default();
    json.get("kind").and_then(|kind| kind.as_str()).unwrap_or_default().to_owned()
}

/// Whether a piece stands in what was said or shown, as whole words, in any case.
fn holds(turns: &[Turn], piece: &str) -> bool {
    turns.iter().any(|turn| stands_in(&turn.reply.say, piece) || stands_in(&turn.reply.show, piece))
}

fn stands_in(text: &str, piece: &str) -> bool {
    let (text, piece) = (flat(text), flat(piece));
    text.match_indices(&piece).any(|(at, found)| {
        let before = text.get(..at).and_then(|head| head.chars().next_back());
        let after = text.get(at + found.len()..).and_then(|tail| tail.chars().next());
        apart(before, piece.chars().next()) && apart(after, piece.chars().next_back())
    })
}

/// Whether a neighbour belongs to another word than the piece's own edge.
fn apart(neighbour: Option<char>, edge: Option<char>) -> bool {
    !(neighbour.is_some_and(char::is_alphanumeric) && edge.is_some_and(char::is_alphanumeric))
}

fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase()
}

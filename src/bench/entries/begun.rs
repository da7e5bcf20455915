//! What the lines that begin a job say beyond its slots: it fills steps that book in, or is kept as a note.

use super::booked;
use super::said::{self, Word};
use crate::act::{Corner, WaitingFor};
use crate::bench::desk::Desk;
use crate::bench::{Ack, Part};
use crate::event::{Event, How, Pending};
use crate::rulebase::Step;
use crate::rulebase::talk::Words;

/// Keeps what the lines said that led to the unit just put on the bench.
pub fn keep(desk: &mut Desk<'_>) {
    let Some(card) = desk.card() else { return };
    let pieces: Vec<Vec<Word>> =
        lines(desk).iter().flat_map(|line| pieces(desk, &said::words(line))).collect();
    for piece in pieces {
        match books(desk, &piece) {
            Some((step, text)) => {
                let kept = booked::record(desk, &card, &step, &text, How::Ahead);
                booked::say_back(desk, &kept);
            }
            None => note(desk, &said::text(&piece)),
        }
    }
}

fn note(desk: &mut Desk<'_>, text: &str) {
    desk.emit(Event::Noted { text: text.to_owned() });
    desk.say(Part::Ack(Ack::Noted));
    desk.say(Part::Sentence(format!("{text}.")));
}

/// The lines since the unit before: those that asked what was missing, and the one that opened it.
fn lines(desk: &Desk<'_>) -> Vec<String> {
    let mut out: Vec<String> = Vec::new();
    let mut opened = false;
    for kept in desk.state.events.iter().rev() {
        match &kept.event {
            Event::PlaceOpened { .. } if opened => break,
            Event::PlaceOpened { .. } => opened = true,
            Event::Opened { pending: Pending::Start { .. } } => {}
            _ => continue,
        }
        if let Some(line) = kept.utterance.heard.clone().filter(|line| !out.contains(line)) {
            out.insert(0, line);
        }
    }
    out
}

/// The pieces of a line that its slots leave over, each with a word that the word lists do not know as a mere opening.
fn pieces(desk: &Desk<'_>, line: &[Word]) -> Vec<Vec<Word>> {
    let (names, lists) = (names(desk), &desk.rules.talk.words);
    let mut out: Vec<Vec<Word>> = vec![Vec::new()];
    let mut at = 0;
    while let Some(word) = line.get(at) {
        let rest = line.get(at..).unwrap_or_default();
        let named = said::opening(rest, &names).unwrap_or_default();
        if named > 0 || opener(lists, word).is_some() {
            out.push(Vec::new());
        }
        if named == 0
            && let Some(piece) = out.last_mut()
        {
            piece.push(word.clone());
        }
        at += named.max(1);
        if line.get(at - 1).is_some_and(Word::ends_clause) {
            out.push(Vec::new());
        }
    }
    out.iter().map(|piece| trimmed(lists, piece)).filter(|piece| tells(lists, piece)).collect()
}

/// All names of units, procedures and corners.
fn names(desk: &Desk<'_>) -> Vec<String> {
    let units = desk.rules.procedures.values().filter_map(|found| desk.rules.unit(&found.unit));
    let units: Vec<String> = units.flat_map(|card| card.called.clone()).collect();
    let procedures = desk.rules.procedures.values().flat_map(|found| found.called.clone());
    let corners = Corner::ALL.into_iter().map(|corner| corner.as_str().to_owned());
    units.into_iter().chain(procedures).chain(corners).collect()
}

/// The role that a word opens ("for" the customer).
fn opener<'a>(lists: &'a Words, word: &Word) -> Option<&'a String> {
    lists.books.iter().find(|(_, opens)| opens.contains(&word.plain)).map(|(role, _)| role)
}

fn idle(lists: &Words, word: &Word) -> bool {
    [&lists.small, &lists.dropped, &lists.light, &lists.fillers, &lists.begins]
        .into_iter()
        .any(|list| list.contains(&word.plain))
}

/// A piece without the idle words at its ends, but for the one that opens a role.
fn trimmed(lists: &Words, piece: &[Word]) -> Vec<Word> {
    let idle = |word: &Word| idle(lists, word) && opener(lists, word).is_none();
    let from = piece.iter().position(|word| !idle(word)).unwrap_or(piece.len());
    let to = piece.iter().rposition(|word| !idle(word)).map_or(from, |at| at + 1);
    piece.get(from..to).unwrap_or_default().to_vec()
}

fn tells(lists: &Words, piece: &[Word]) -> bool {
    piece.iter().any(|word| !idle(lists, word) && opener(lists, word).is_none())
}

/// The open step that a piece books in, with the words for it: those after a small word that opens ("for"), or all of them
/// where the opening word belongs to it ("car").
fn books(desk: &Desk<'_>, piece: &[Word]) -> Option<(Step, String)> {
    let lists = &desk.rules.talk.words;
    let (procedure, place) = (desk.procedure()?, desk.place()?);
    let first = piece.first()?;
    let role = opener(lists, first)?;
    let rest = if idle(lists, first) { trimmed(lists, piece.get(1..)?) } else { piece.to_vec() };
    let step = procedure.all_steps().into_iter().find(|step| {
        let read = step.read.as_ref().filter(|read| read.kind == WaitingFor::Text);
        read.is_some_and(|read| read.role.as_str() == role) && !place.closed.contains_key(&step.id)
    });
    Some((step?.clone(), said::text(&rest)))
}

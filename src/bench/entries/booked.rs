//! What is booked in by words: a line that asks, goes back or corrects is no answer to a step that waits for words, and an
//! earlier answer is corrected by its name.

use super::said::{self, Word};
use super::{closing, notes, reading};
use crate::act::{Act, ActName, Heard, Outcome, WaitingFor};
use crate::bench::desk::Desk;
use crate::bench::state::Entry;
use crate::bench::{Part, flow, pending};
use crate::event::{Event, How, Kept, Pending};
use crate::rulebase::{Step, UnitCard};

/// Whether the line was about what is booked in, by its own words; if so it has been worked.
pub fn takes(desk: &mut Desk<'_>, heard: &Heard) -> bool {
    let Some(line) = line(desk, heard).filter(|_| listens(desk, heard)) else { return false };
    let lists = &desk.rules.talk.words;
    let returns = said::opening(&line, &lists.returns);
    let corrects = said::opening(&line, &lists.corrections);
    if let Some(from) = returns {
        return go_back(desk, line.get(from..).unwrap_or_default());
    }
    if let Some(who) = said::opening(&line, &lists.introduces).and_then(|from| line.get(from..)) {
        let mut act = Act::new(ActName::By);
        act.slots.text = Some(said::text(who)).filter(|who| !who.is_empty());
        notes::by(desk, &act);
        return true;
    }
    let rest = line.get(corrects.unwrap_or_default()..).unwrap_or_default();
    if let Some((step, text)) = assigned(desk, rest, corrects.is_some()) {
        keep(desk, &step, &text);
        return true;
    }
    match corrects {
        Some(_) if !rest.is_empty() && tells_words(desk, heard) => correct_last(desk, &said::text(rest)),
        None if waits_for_words(desk) && asks(desk, &line) => {
            answer(desk, &line);
            true
        }
        _ => false,
    }
}

/// The words of the line: as said, or as a note has them.
fn line(desk: &Desk<'_>, heard: &Heard) -> Option<Vec<Word>> {
    let note = match heard.acts.as_slice() {
        [act] if act.act == ActName::Note => act.slots.text.clone(),
        _ => None,
    };
    let line = said::words(&desk.utterance.heard.clone().or(note)?);
    (!line.is_empty()).then_some(line)
}

/// Whether words may be about what is booked in: no other question waits for them, and they were not understood as one.
fn listens(desk: &Desk<'_>, heard: &Heard) -> bool {
    let acts = if heard.outcome == Outcome::Ask { &heard.between } else { &heard.acts };
    let asks = !acts.is_empty() && acts.iter().all(|act| act.act.is_question());
    let waits = !matches!(
        desk.state.progress.pending,
        None | Some(Pending::Acknowledge { .. } | Pending::Value { .. } | Pending::Between { .. })
    );
    desk.place().is_some() && !desk.state.progress.paused && !asks && !waits
}

/// Whether the line may tell words: it has no figure that was understood, and beside a step that waits for something else
/// it was understood as nothing else.
fn tells_words(desk: &Desk<'_>, heard: &Heard) -> bool {
    let mut acts = heard.acts.iter().chain(&heard.between);
    let takes = notes::current(desk).is_some_and(|step| takes_words(&step));
    acts.all(|act| {
        act.slots.value.is_none() && (takes || matches!(act.act, ActName::Note | ActName::Correct))
    })
}

/// Whether the step in hand waits for words, and no question stands before it.
fn waits_for_words(desk: &Desk<'_>) -> bool {
    desk.state.progress.pending.is_none() && notes::current(desk).is_some_and(|step| takes_words(&step))
}

fn takes_words(step: &Step) -> bool {
    step.read.as_ref().is_some_and(|read| read.kind == WaitingFor::Text)
}

/// The words that name what a step books in: its role's.
fn role(step: &Step) -> Vec<String> {
    let role = step.read.as_ref().map(|read| read.role.as_str().to_owned()).unwrap_or_default();
    said::words(&role.replace('-', " ")).into_iter().map(|word| word.plain).collect()
}

/// The words that matter among those of a head: without the small ones.
fn matter(desk: &Desk<'_>, head: &[Word]) -> Vec<String> {
    let lists = &desk.rules.talk.words;
    let small = |word: &String| lists.small.contains(word) || lists.dropped.contains(word);
    head.iter().map(|word| own(&word.plain).to_owned()).filter(|word| !small(word)).collect()
}

/// A word without the verb that is drawn together with it ("serial's").
fn own(word: &str) -> &str {
    word.strip_suffix("'s").or_else(|| word.strip_suffix("\u{2019}s")).unwrap_or(word)
}

/// The step that words name as what it books in, with a word more at most ("the serial number").
fn named(desk: &Desk<'_>, head: &[Word]) -> Option<Step> {
    let (procedure, lists) = (desk.procedure()?, &desk.rules.talk.words);
    let said = matter(desk, head);
    let small = |word: &String| lists.small.contains(word) || lists.dropped.contains(word);
    let names = |step: &&Step| {
        let role: Vec<String> = role(step).into_iter().filter(|word| !small(word)).collect();
        !role.is_empty() && role.iter().all(|word| said.contains(word)) && said.len() <= role.len() + 1
    };
    let steps = procedure.all_steps();
    steps.into_iter().filter(|step| takes_words(step)).find(names).cloned()
}

/// What the line says that a booked thing is: "the serial number is B44-0127", "the complaint is wrong, it should be ...".
/// Without a word that corrects, it must be said to a step that waits for words, or say that something was wrong.
fn assigned(desk: &Desk<'_>, line: &[Word], corrects: bool) -> Option<(Step, String)> {
    let lists = &desk.rules.talk.words;
    let (head, after) = split(line, &lists.becomes)?;
    let step = named(desk, head)?;
    let wrong = after.iter().any(|word| lists.amiss.contains(&word.plain));
    let value = if wrong { split(after, &lists.becomes)?.1 } else { after };
    let cut = denied(value);
    if !corrects && !wrong && cut.is_none() && !waits_for_words(desk) {
        return None;
    }
    let text = said::text(value.get(..cut.unwrap_or(value.len())).unwrap_or_default());
    (!text.is_empty()).then_some((step, text))
}

/// Where the line goes on to say what the thing is not ("..., not the other").
fn denied(line: &[Word]) -> Option<usize> {
    let pair = |pair: &[Word]| {
        pair.first().is_some_and(Word::ends_clause) && pair.last().is_some_and(|word| word.plain == "not")
    };
    line.windows(2).position(pair).map(|at| at + 1)
}

/// The words before and after the first of those phrases.
fn split<'a>(line: &'a [Word], phrases: &[String]) -> Option<(&'a [Word], &'a [Word])> {
    (1..line.len()).find_map(|at| {
        let drawn = line.get(at - 1).is_some_and(|word| own(&word.plain) != word.plain);
        let length = if drawn { Some(0) } else { said::opening(line.get(at..)?, phrases) };
        Some((line.get(..at)?, line.get(at + length?..)?))
    })
}

/// The words that stand for a step.
fn entry(desk: &Desk<'_>, step: Option<&str>) -> Option<Entry> {
    let here = desk.place_id();
    let standing = |entry: &&Entry| entry.place == here && !entry.corrected;
    let mine = |entry: &&Entry| step.is_none() || entry.kept.step.as_deref() == step;
    desk.state.record.kept.iter().rev().filter(standing).find(mine).cloned()
}

/// Goes to the step that booked in what the words name, to say it anew. Whatever they name, they answer no step.
fn go_back(desk: &mut Desk<'_>, head: &[Word]) -> bool {
    let Some(step) = named(desk, head) else {
        let waits = waits_for_words(desk);
        if waits {
            desk.say(Part::Unknown { what: format!("an entry of that name, {}", said::text(head)) });
        }
        return waits;
    };
    if desk.state.progress.pending.is_some() {
        desk.emit(Event::Settled);
    }
    flow::show(desk, &step, true);
    if let Some(entry) = entry(desk, Some(&step.id)) {
        say_back(desk, &entry.kept);
    }
    flow::say_step(desk);
    desk.show_step = false;
    true
}

/// Corrects the entry made last, where it was one of words; else the words answer the step in hand, as they do where its
/// words are being asked back.
fn correct_last(desk: &mut Desk<'_>, text: &str) -> bool {
    let asked = matches!(desk.state.progress.pending, Some(Pending::Between { .. }));
    if let Some(step) = notes::current(desk).filter(|step| asked && takes_words(step)) {
        keep(desk, &step, text);
        return true;
    }
    let step = entry(desk, None)
        .filter(|entry| entry.kept.text.is_some())
        .and_then(|entry| desk.procedure()?.step(entry.kept.step.as_deref()?).cloned());
    let here = notes::current(desk).filter(|_| waits_for_words(desk));
    let Some(step) = step.or(here) else { return false };
    keep(desk, &step, text);
    true
}

/// Keeps words for a step: its first, or in place of those kept before.
fn keep(desk: &mut Desk<'_>, step: &Step, text: &str) {
    let Some(card) = desk.card() else { return };
    let in_hand = desk.cursor().as_deref() == Some(step.id.as_str());
    if in_hand && matches!(desk.state.progress.pending, Some(Pending::Between { .. })) {
        desk.emit(Event::Settled);
    }
    let kept = record(desk, &card, step, text, if in_hand { How::Value } else { How::Ahead });
    say_back(desk, &kept);
    desk.closed_one = true;
    desk.show_step = true;
    if pending::say_again(desk) {
        desk.show_step = false;
    }
}

/// Records words for a step, in place of those kept before, and closes it.
pub fn record(desk: &mut Desk<'_>, card: &UnitCard, step: &Step, text: &str, how: How) -> Kept {
    let role = step.read.as_ref().map_or("words", |read| read.role.as_str()).to_owned();
    let kept = Kept {
        step: Some(step.id.clone()),
        about: step.about.clone(),
        text: Some(text.to_owned()),
        ..reading::blank(&role)
    };
    match entry(desk, Some(&step.id)) {
        Some(before) => desk.emit(Event::Corrected { now: kept.clone(), of: before.event }),
        None => desk.emit(Event::Reading(kept.clone())),
    }
    let open = desk.place().is_some_and(|place| !place.closed.contains_key(&step.id) || place.went_back);
    if open {
        closing::close(desk, card, step, how, None);
    }
    kept
}

/// Says words back in a breath, with what they are of.
pub fn say_back(desk: &mut Desk<'_>, kept: &Kept) {
    let Some(text) = &kept.text else { return };
    let role = kept.role.replace('-', " ");
    let mut name = role.clone();
    if let Some(first) = name.get_mut(0..1) {
        first.make_ascii_uppercase();
    }
    // "Batch: 411", and not "batch: batch 411".
    let text = said::words(text);
    let from = said::opens(&text, &role).filter(|from| *from < text.len()).unwrap_or_default();
    let text = said::text(text.get(from..).unwrap_or_default());
    desk.say(Part::Sentence(format!("{name}: {text}.")));
}

/// Whether the line asks: it opens as a question does, or is written as one.
fn asks(desk: &Desk<'_>, line: &[Word]) -> bool {
    let lists = &desk.rules.talk.words;
    let plain = |at: usize| line.get(at).map(|word| word.plain.as_str()).unwrap_or_default();
    let holds = |list: &[String], word: &str| list.iter().any(|own| own == word);
    let first = own(plain(0));
    let written = line.last().is_some_and(|word| word.said.ends_with('?'));
    let pronoun = holds(&lists.asking, first) && (first != plain(0) || holds(&lists.helping, plain(1)));
    let inverted = holds(&lists.helping, plain(0)) && holds(&lists.subjects, plain(1));
    written || pronoun || inverted
}

/// A question said to a step that waits for words: what is booked in is told, and anything else is not written down.
fn answer(desk: &mut Desk<'_>, line: &[Word]) {
    let (procedure, words) = (desk.procedure(), matter(desk, line));
    let steps: Vec<Step> = procedure.iter().flat_map(|found| found.all_steps()).cloned().collect();
    let asked = steps.iter().filter(|step| takes_words(step)).find(|step| {
        let role = role(step);
        !role.is_empty() && role.iter().any(|own| words.contains(own))
    });
    match asked.map(|step| (step, entry(desk, Some(&step.id)))) {
        Some((_, Some(entry))) => say_back(desk, &entry.kept),
        Some((step, None)) => {
            let name = role(step).join(" ");
            desk.say(Part::Sentence(format!("Nothing is written down yet for the {name}.")));
        }
        None => desk.say(Part::Sentence("That is a question, so it is not written down.".to_owned())),
    }
    let about = Act::new(ActName::AskLog);
    desk.emit(Event::Answered { act: about.act.as_str().to_owned(), said: String::new() });
    desk.show_step = true;
}

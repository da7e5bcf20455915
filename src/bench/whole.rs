//! Whole lines that mean one thing whatever else their words may say: "stop", "never mind".

use super::desk::Desk;
use super::{Ack, Part, pending};
use crate::act::{Act, ActName, Heard};
use crate::event::Pending;
use crate::rulebase::talk::Words;

/// What the pack's word list says of the whole line, as a line heard; none for any other line. A line that drops the open
/// question carries no act: the bench knows which question that is.
#[must_use]
pub fn whole(words: &Words, said: &str) -> Option<Heard> {
    let acts = match meaning(words, said)? {
        "pause" => vec![Act::new(ActName::Pause)],
        _ => Vec::new(),
    };
    Some(Heard::take(acts, 1.0))
}

fn meaning<'a>(words: &'a Words, said: &str) -> Option<&'a str> {
    let plain: Vec<&str> =
        said.split(|c: char| !(c.is_alphanumeric() || c == '\'')).filter(|word| !word.is_empty()).collect();
    words.whole.get(&plain.join(" ").to_lowercase()).map(String::as_str)
}

/// Whether the line drops the open question; if so it has. A caution is never dropped.
pub fn drops(desk: &mut Desk<'_>) -> bool {
    let said = desk.utterance.heard.clone().unwrap_or_default();
    if meaning(&desk.rules.talk.words, &said) != Some("drop") {
        return false;
    }
    match &desk.state.progress.pending {
        None => desk.say(Part::Ack(Ack::Dropped)),
        Some(Pending::Acknowledge { .. }) => {
            pending::say_again(desk);
        }
        Some(_) => pending::dropped(desk),
    }
    true
}

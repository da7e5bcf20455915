//! What an answer rests on, said back: what was said, what the job, the crib and the card gave, what was assumed.

use super::tell::{self, Rest};
use crate::rulebase::talk::Asking;
use crate::workings::registry::{Told, Worked};

/// Inputs in sentences: first what was said and what this job knows, then what the card gave. Usual values, and what
/// the way of asking settles by itself, stand on the screen only.
#[must_use]
pub fn sentences(asking: &Asking, worked: &Worked, rest: &Rest, split: &[&str]) -> Vec<String> {
    let settled = |told: &&Told| {
        let named = asking.input(told.name).is_some_and(|found| found.called.is_some() || !found.strict);
        told.usual || split.contains(&told.name) || asking.with.contains_key(told.name) || !named
    };
    let place = |told: &Told| asking.inputs.iter().position(|found| found.input == told.name);
    let mut own: Vec<&Told> = worked.inputs.iter().filter(|told| !settled(told)).collect();
    own.sort_by_key(|told| place(told));
    let carded = |told: &&Told| rest.places.get(told.name).is_some_and(|place| on_card(place));
    let (card, said): (Vec<&Told>, Vec<&Told>) = own.into_iter().partition(carded);
    let list = |told: Vec<&Told>| {
        told.into_iter().map(|told| one(asking, told, rest)).collect::<Vec<_>>().join(", ")
    };
    let lead = |lead: &str, list: String| if list.is_empty() { list } else { format!("{lead} {list}") };
    vec![lead("With", list(said)), lead("From the card:", list(card))]
}

fn on_card(place: &str) -> bool {
    place.contains("on the card")
}

/// One input: what it is called, its figure, and where it was found unless that was the card.
fn one(asking: &Asking, told: &Told, rest: &Rest) -> String {
    let place = rest.places.get(told.name).filter(|place| !on_card(place));
    let place = place.map(|place| format!(" ({place})")).unwrap_or_default();
    format!("{} {}{place}", tell::called(asking, told), tell::say(&told.value, told.unit))
}

//! What can be read out of a sentence: words, figures, names, and the limits of Simplified Technical English that a
//! machine can check (ASD-STE100, part 1: rules 3 and 5 for instructions).

use crate::act::{ActName, Outcome, Waiting, WaitingFor};
use crate::hearing::{Ear, Line};
use crate::rulebase::UnitCard;
use crate::source::Place;
use crate::workings::adjusters::Way;
use rphonetic::{DoubleMetaphone, Encoder};
use std::collections::BTreeSet;

/// Verbs that begin an instruction at the bench, beside the words for what a step does.
const VERBS: &str = "add adjust align ask apply attach back bleed blow bring brush build call change charge check clamp clean \
close compare compress connect count cover cut degrease deflate depress disconnect drain draw drive drop dry empty ensure \
exchange fill find fit fix free give go grease grip guide hang heat hold hook insert inspect install keep lay leave let \
lever lift line listen lock look loosen lower lubricate make mark measure mount move note oil open paint pinch place plug \
point polish pour preload press prove pull pump push put raise read rebuild record refill refit release remove repeat \
replace rest restore rinse rock roll rotate run say screw seal seat see send separate set shake shine shut slacken slide \
soak spin spray squeeze stand start stop store strike stroke support swing take tap tell test thread threadlock tie tighten \
tilt torque touch trim try turn twist undo unclip unhook unlock unscrew use vent wait warm wash watch weigh wet wind wipe \
work wrap write zero";

/// Words that no instruction begins with.
const NO_BEGINNING: [&str; 24] = [
    "the", "a", "an", "you", "it", "this", "that", "these", "those", "please", "there", "we", "should",
    "must", "now", "your", "its", "always", "never", "not", "do", "be", "they", "then",
];

/// The words of a text; a figure with its unit sign counts as it is written.
pub fn words(text: &str) -> Vec<&str> {
    text.split_whitespace()
        .map(|word| word.trim_matches(|c: char| !c.is_alphanumeric()))
        .filter(|word| !word.is_empty())
        .collect()
}

fn lower(text: &str) -> Vec<String> {
    words(text).into_iter().map(str::to_lowercase).collect()
}

fn is_verb(word: &str) -> bool {
    VERBS.split_whitespace().any(|verb| verb == word)
}

/// Where a second instruction begins: a second sentence, or a verb behind `and`, `then` or `;`.
pub fn second_instruction(text: &str) -> Option<String> {
    let inner = text.trim().trim_end_matches(['.', '!', '?']);
    if let Some((_, second)) = inner.split_once(". ").or_else(|| inner.split_once("; ")) {
        return words(second).first().map(|word| (*word).to_owned());
    }
    let all = lower(inner);
    let joint = |at: usize| match all.get(at).map(String::as_str) {
        Some("then") => true,
        Some("and") => !matches!(all.get(at + 1).map(String::as_str), Some("then")),
        _ => false,
    };
    let found = (1..all.len()).find(|at| {
        joint(*at) && all.get(at + 1).is_some_and(|next| is_verb(next) && !is_noun_here(&all, at + 1))
    });
    found.and_then(|at| all.get(at + 1).cloned())
}

/// Words that are as often a thing as something to do.
const THINGS: &str = "bleed build change charge check clamp cover drain drive fit free grip guide hook lever lift light line \
lock look mark measure mount note oil paint pinch place plug point polish press rock roll run screw seal seat shake spin \
spray spring start stop store strike stroke support swing tap test thread threadlock torque turn twist vent wash watch wind";

/// "and oil between them", "and seat faces", "and oil level": what stands before a preposition or at the end is a
/// thing, and so is what may be one and has nothing behind it that it could be done to, or how.
fn is_noun_here(all: &[String], at: usize) -> bool {
    let is_thing = |word: &String| THINGS.split_whitespace().any(|thing| thing == word);
    let object = |next: &String| {
        next.ends_with("ly")
            || matches!(
                next.as_str(),
                "the"
                    | "a"
                    | "an"
                    | "it"
                    | "them"
                    | "its"
                    | "this"
                    | "that"
                    | "each"
                    | "both"
                    | "all"
                    | "any"
                    | "one"
                    | "two"
                    | "your"
                    | "new"
                    | "again"
                    | "off"
                    | "out"
                    | "in"
                    | "on"
                    | "up"
                    | "down"
                    | "back"
                    | "for"
                    | "to"
                    | "at"
                    | "with"
                    | "by"
                    | "if"
                    | "until"
            )
    };
    if all.get(at).is_some_and(is_thing) && all.get(at + 1).is_some_and(|next| !object(next)) {
        return true;
    }
    all.get(at + 1).is_none_or(|next| {
        matches!(
            next.as_str(),
            "between" | "is" | "are" | "stands" | "stays" | "of" | "meet" | "line" | "faces"
        )
    })
}

/// Whether a text begins as an instruction does: with a verb, or with its condition.
pub fn is_instruction(text: &str) -> bool {
    let all = lower(text);
    let Some(first) = all.first() else { return true };
    if matches!(first.as_str(), "if" | "when" | "while" | "with" | "before" | "after" | "until" | "once") {
        return true;
    }
    let gerund = first.ends_with("ing") && first.len() > 5 && !is_verb(first);
    !gerund && !NO_BEGINNING.contains(&first.as_str())
}

/// The word of a condition that stands behind what to do.
pub fn late_condition(text: &str) -> Option<&'static str> {
    let all = lower(text);
    // "See if it turns" asks; it is no condition.
    let asks =
        matches!(all.first().map(String::as_str), Some("see" | "say" | "ask" | "check" | "find" | "tell"));
    let rest = all.get(if asks { 2 } else { 1 }..).unwrap_or_default();
    ["if", "unless", "when", "whenever", "provided"]
        .into_iter()
        .find(|word| rest.iter().any(|other| other == word))
}

/// A contraction.
pub fn contraction(text: &str) -> Option<String> {
    let plain = text.replace('\u{2019}', "'");
    let found = plain
        .split_whitespace()
        .map(|word| word.trim_matches(|c: char| !c.is_alphanumeric() && c != '\''))
        .find(|word| {
            let word = word.to_lowercase();
            let ends = ["n't", "'ll", "'re", "'ve", "'m", "'d"].iter().any(|end| word.ends_with(end));
            ends || matches!(
                word.as_str(),
                "it's" | "that's" | "there's" | "what's" | "here's" | "let's" | "he's" | "she's" | "who's"
            )
        });
    found.map(str::to_owned)
}

/// Whether a text has one of these words or pairs of words.
pub fn has_word(text: &str, known: &[&str]) -> bool {
    let text = format!(" {} ", lower(text).join(" "));
    known.iter().any(|word| text.contains(&format!(" {word} ")))
}

/// The metric threads that a text names ("M5 grub screw"), by diameter in mm.
pub fn threads_in(text: &str) -> Vec<f64> {
    let all = words(text).into_iter();
    all.filter_map(|word| word.strip_prefix('M')?.split('x').next()?.parse::<f64>().ok()).collect()
}

/// The way of turning that a text says; none where it says both or neither.
pub fn way_in(text: &str) -> Option<Way> {
    let with = has_word(text, &["clockwise"]);
    let against =
        has_word(text, &["anticlockwise", "counterclockwise", "counter-clockwise", "anti-clockwise"]);
    match (with, against) {
        (true, false) => Some(Way::Clockwise),
        (false, true) => Some(Way::Anticlockwise),
        _ => None,
    }
}

/// The adjusters and parts of a card that a text names by one of their spoken names, the longest name first.
pub fn names_in<'a>(card: &'a UnitCard, text: &str) -> BTreeSet<&'a str> {
    let mut text = format!(" {} ", lower(text).join(" "));
    let mut all: Vec<(String, &str)> =
        things(card).map(|(id, name, _)| (lower(name).join(" "), id)).collect();
    all.sort_by_key(|(name, _)| std::cmp::Reverse(name.len()));
    let mut found = BTreeSet::new();
    for (name, id) in all {
        let whole = format!(" {name} ");
        if text.contains(&whole) {
            text = text.replace(&whole, " . ");
            found.insert(id);
        }
    }
    found
}

/// Every spoken name of a card with what it is the name of.
pub fn things(card: &UnitCard) -> impl Iterator<Item = (&str, &str, &Place)> {
    let adjusters = card.adjusters.iter().map(|one| (one.id.as_str(), &one.called, &one.at));
    let parts = card.parts.iter().map(|one| (one.id.as_str(), &one.called, &one.at));
    adjusters.chain(parts).flat_map(|(id, called, at)| called.iter().map(move |name| (id, name.as_str(), at)))
}

/// How a name sounds (Double Metaphone, word by word).
pub fn sounds_as(name: &str) -> String {
    let coder = DoubleMetaphone::new(Some(8));
    let sound = |word: String| {
        let letters: String = word.chars().filter(char::is_ascii_alphabetic).collect();
        if letters.is_empty() { word } else { coder.encode(&letters) }
    };
    lower(name).into_iter().map(sound).collect::<Vec<_>>().join(" ")
}

/// The other name that a text calls a thing by, and the first one.
pub fn alias<'a>(text: &str, called: &'a [String]) -> Option<(&'a str, &'a str)> {
    let (first, others) = called.split_first()?;
    let text = format!(" {} ", lower(text).join(" "));
    let has = |name: &str| text.contains(&format!(" {} ", lower(name).join(" ")));
    let name = lower(first).join(" ");
    // A name that is part of the first one is the first one cut short.
    let other =
        others.iter().find(|other| has(other) && !has(first) && !name.contains(&lower(other).join(" ")));
    other.map(|other| (other.as_str(), first.as_str()))
}

/// What the ear makes of an example line, over all that a job may wait for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum HeardAs {
    /// Its own act, at least once; or it belongs to no act and is left alone.
    Own,
    /// Always another act.
    Other(String),
    /// Never its own act: it is asked about or left alone.
    Unsure,
}

/// Asks the ear.
pub fn heard_as(ear: &Ear, said: &str, act: &str) -> HeardAs {
    use WaitingFor::{Clicks, Done, Length, Text, Torque, YesOrNo};
    let (mut other, mut sure) = (None, true);
    for kind in [Done, YesOrNo, Torque, Clicks, Length, Text] {
        let waiting = Waiting { kind, ..Waiting::default() };
        let heard = ear.hear(&Line { said, unit: None, waiting: &waiting });
        let taken = heard.outcome == Outcome::Take;
        let own = heard.acts.iter().any(|one| one.act.as_str() == act);
        // Lines that move nothing are well heard when they are not taken.
        if own && taken || !taken && !ActName::ALL.iter().any(|name| name.as_str() == act) || act == "aside" {
            return HeardAs::Own;
        }
        sure &= taken;
        other = other.or_else(|| heard.acts.first().map(|one| one.act.as_str().to_owned()));
    }
    other.filter(|_| sure).map_or(HeardAs::Unsure, HeardAs::Other)
}

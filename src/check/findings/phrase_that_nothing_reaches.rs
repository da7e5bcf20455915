//! Phrase that nothing reaches.

use crate::check::finding::{Finding, Look};
use crate::check::grammar::last;
use crate::check::language::{HeardAs, heard_as};
use crate::check::sink::Sink;
use crate::check::subject::OnPack;
use crate::source::Level;
use std::collections::BTreeSet;

/// A rule of the talk whose act no utterance can come to, or that no other rule makes use of.
pub static FINDING: Finding = Finding {
    name: "phrase that nothing reaches",
    level: Level::Doubtful,
    milder: false,
    what: "A rule of the talk whose act no utterance can come to, or that no other rule makes use of.",
    why: "It was written for something, and whoever says that is not understood.",
    example: "public <scrub> = <VOID> {undo}; or a rule none of whose own examples is taken for its act",
    mend: "mend the rule, or the one that takes its phrases",
    look: Look::Pack(look),
};

/// Rules that the ear itself looks up by name, to find where the words that matter begin.
const LOOKED_UP: [&str; 6] = ["because", "complaint", "it-is-me", "leave-out", "wanted", "weekday"];

fn look(on: &OnPack<'_>, sink: &mut Sink<'_>) {
    if on.ear.is_none() {
        return;
    }
    let named: BTreeSet<&str> =
        on.pack.talk.rules.iter().flat_map(|rule| rule.body.names()).map(last).collect();
    for rule in on.pack.talk.rules.iter().filter(|rule| {
        !rule.public && !named.contains(last(&rule.name)) && !LOOKED_UP.contains(&last(&rule.name))
    }) {
        let place = sink.in_line(&rule.file, rule.line, last(&rule.name));
        sink.raise(place, format!("no rule makes use of `<{}>`", rule.name));
    }
    for rule in on.pack.talk.rules.iter().filter(|rule| rule.public) {
        let act = rule.tag.as_deref().and_then(|tag| tag.split(' ').next()).unwrap_or_default();
        let void = rule.body.names().contains(&"VOID");
        let plain: Vec<&str> =
            rule.examples.iter().map(|(_, text)| text.as_str()).filter(|text| !text.contains('<')).collect();
        let taken = |text: &&str| on.ear.is_some_and(|ear| matches!(heard_as(ear, text, act), HeardAs::Other(_)));
        if void || !plain.is_empty() && plain.iter().all(taken) {
            let place = sink.in_line(&rule.file, rule.line, last(&rule.name));
            sink.raise(place, format!("nothing that is said comes to `<{}>`", rule.name));
        }
    }
}

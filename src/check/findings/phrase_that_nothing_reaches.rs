//! Phrase that nothing reaches.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnPack;
use crate::source::Level;
use std::collections::BTreeSet;

/// A piece of the talk that no utterance can come to.
pub static FINDING: Finding = Finding {
    name: "phrase that nothing reaches",
    level: Level::Doubtful,
    what: "A piece of the talk that no utterance can come to.",
    why: "It was written for something, and whoever says that is not understood.",
    example: "<undo-words> = ...; used by no rule",
    mend: "use it in a rule, or take it out",
    look: Look::Pack(look),
};

fn look(on: &OnPack<'_>, sink: &mut Sink<'_>) {
    let rules = &on.pack.talk.rules;
    let known = on.pack.talk.by_name();
    let mut reached: BTreeSet<&str> = BTreeSet::new();
    let mut todo: Vec<&str> = rules.iter().filter(|rule| rule.public).map(|rule| rule.name.as_str()).collect();
    while let Some(name) = todo.pop() {
        if reached.insert(name)
            && let Some(rule) = known.get(name)
        {
            todo.extend(rule.body.names());
        }
    }
    for rule in rules.iter().filter(|rule| !reached.contains(rule.name.as_str()) || rule.body.names().contains(&"VOID")) {
        let line = u32::try_from(rule.line).unwrap_or(0);
        let place = crate::source::Place::new(rule.file.as_str(), line, 1);
        sink.raise(place, format!("nothing that is said comes to `<{}>`", rule.name));
    }
}

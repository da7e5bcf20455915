//! Phrase that nothing reaches.

use crate::check::finding::{Finding, Look};
use crate::check::language::heard_as;
use crate::check::sink::Sink;
use crate::check::subject::OnPack;
use crate::source::Level;

/// A rule of the talk whose act no utterance can come to.
pub static FINDING: Finding = Finding {
    name: "phrase that nothing reaches",
    level: Level::Doubtful,
    what: "A rule of the talk whose act no utterance can come to.",
    why: "It was written for something, and whoever says that is not understood.",
    example: "public <scrub> = <VOID> {undo}; or a rule none of whose own examples is taken for its act",
    mend: "mend the rule, or the one that takes its phrases",
    look: Look::Pack(look),
};

fn look(on: &OnPack<'_>, sink: &mut Sink<'_>) {
    for rule in on.pack.talk.rules.iter().filter(|rule| rule.public) {
        let act = rule.tag.as_deref().and_then(|tag| tag.split(' ').next()).unwrap_or_default();
        let void = rule.body.names().contains(&"VOID");
        let plain: Vec<&str> =
            rule.examples.iter().map(|(_, text)| text.as_str()).filter(|text| !text.contains('<')).collect();
        let taken = |text: &&str| on.ear.is_some_and(|ear| heard_as(ear, text, act).is_some());
        if void || !plain.is_empty() && plain.iter().all(taken) {
            let line = u32::try_from(rule.line).unwrap_or(0);
            let place = crate::source::Place::new(rule.file.as_str(), line, 1);
            sink.raise(place, format!("nothing that is said comes to `<{}>`", rule.name));
        }
    }
}

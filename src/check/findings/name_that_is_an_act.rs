//! Name that is an act.

use crate::act::ActName;
use crate::check::finding::{Finding, Look};
use crate::check::grammar::{Grammar, plain};
use crate::check::language::things;
use crate::rulebase::talk::TalkRule;
use crate::check::sink::Sink;
use crate::check::subject::OnPack;
use crate::source::Level;
use std::collections::BTreeMap;

/// A spoken name on a card that the bench takes for something else to do.
pub static FINDING: Finding = Finding {
    name: "name that is an act",
    level: Level::Doubtful,
    milder: false,
    what: "A spoken name on a card that the bench takes for something else to do.",
    why: "Whoever names the part moves the job on.",
    example: "called: [stop] for a bump stop",
    mend: "give it a name that nobody says for another reason",
    look: Look::Pack(look),
};

fn look(on: &OnPack<'_>, sink: &mut Sink<'_>) {
    let grammar = Grammar::of(&on.pack.talk);
    let moving: Vec<(&TalkRule, &str)> = on.pack.talk.rules.iter().filter_map(moves).collect();
    let mut tried = BTreeMap::new();
    for card in on.pack.units.values() {
        let own = card.called.iter().map(|name| (name.as_str(), &card.at));
        for (name, at) in own.chain(things(card).map(|(_, name, at)| (name, at))) {
            let act = tried.entry(name.to_lowercase()).or_insert_with_key(|name| {
                let words = plain(name);
                let said = |rule: &TalkRule| {
                    grammar.says(rule, &words) || rule.examples.iter().any(|(_, text)| plain(text) == words)
                };
                moving.iter().find(|(rule, _)| said(rule)).map(|(_, act)| *act)
            });
            if let Some(act) = act {
                sink.raise(at.clone(), format!("`{name}` is also how one says `{act}`"));
            }
        }
    }
}

/// The act of a rule, if it moves a job.
fn moves(rule: &TalkRule) -> Option<(&TalkRule, &str)> {
    let act = rule.tag.as_deref()?.split(' ').next()?;
    (rule.public && MOVING.iter().any(|one| one.as_str() == act)).then_some((rule, act))
}

/// Acts that move a job.
const MOVING: [ActName; 9] = [
    ActName::Confirm,
    ActName::Deny,
    ActName::Undo,
    ActName::Back,
    ActName::Skip,
    ActName::Pause,
    ActName::Resume,
    ActName::Finish,
    ActName::Again,
];

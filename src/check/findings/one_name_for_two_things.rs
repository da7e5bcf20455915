//! One name for two things.

use crate::check::finding::{Finding, Look};
use crate::check::language::things;
use crate::check::sink::Sink;
use crate::check::subject::OnPack;
use crate::rulebase::{Tool, UnitCard};
use crate::source::Level;
use std::collections::BTreeMap;

/// The same spoken name stands for two things of one unit, or for two kinds of tool.
pub static FINDING: Finding = Finding {
    name: "one name for two things",
    level: Level::Wrong,
    milder: false,
    what: "The same spoken name stands for two things of one unit, or for two kinds of tool.",
    why: "What is said of one is taken for the other.",
    example: "called: [grub] on two screws",
    mend: "give each its own name",
    look: Look::Pack(look),
};

fn look(on: &OnPack<'_>, sink: &mut Sink<'_>) {
    for card in on.pack.units.values() {
        on_card(card, sink);
    }
    let mut first: BTreeMap<String, &Tool> = BTreeMap::new();
    for tool in &on.pack.tools {
        for name in &tool.called {
            let other = *first.entry(name.to_lowercase()).or_insert(tool);
            if other.kind != tool.kind {
                sink.raise(tool.at.clone(), format!("`{name}` is also the name of `{}`", other.id));
            }
        }
    }
}

fn on_card(card: &UnitCard, sink: &mut Sink<'_>) {
    let mut first = BTreeMap::new();
    for (id, name, at) in things(card) {
        let key = name.to_lowercase();
        match first.get(&key) {
            Some(other) if *other != id => {
                sink.raise(at.clone(), format!("`{name}` is also the name of `{other}`"));
            }
            _ => {
                first.insert(key, id);
            }
        }
    }
}

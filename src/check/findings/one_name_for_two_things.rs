//! One name for two things.

use crate::check::finding::{Finding, Look};
use crate::check::language::things;
use crate::check::sink::Sink;
use crate::check::subject::OnCard;
use crate::source::Level;

/// The same spoken name stands for two things of one unit.
pub static FINDING: Finding = Finding {
    name: "one name for two things",
    level: Level::Wrong,
    what: "The same spoken name stands for two things of one unit.",
    why: "What is said of one is taken for the other.",
    example: "called: [grub] on two screws",
    mend: "give each its own name",
    look: Look::Card(look),
};

fn look(on: &OnCard<'_>, sink: &mut Sink<'_>) {
    let mut first = std::collections::BTreeMap::new();
    for (id, name, at) in things(on.card) {
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

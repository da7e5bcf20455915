//! Names that sound alike.

use crate::check::finding::{Finding, Look};
use crate::check::language::{sounds_as, things};
use crate::check::sink::Sink;
use crate::check::subject::OnCard;
use crate::source::Level;

/// Two things of one unit whose spoken names sound alike.
pub static FINDING: Finding = Finding {
    name: "names that sound alike",
    level: Level::Doubtful,
    milder: false,
    what: "Two things of one unit whose spoken names sound alike.",
    why: "Over noise one is taken for the other.",
    example: "called: [seal] and called: [steel]",
    mend: "give one of them a name that sounds different",
    look: Look::Card(look),
};

fn look(on: &OnCard<'_>, sink: &mut Sink<'_>) {
    let mut first: std::collections::BTreeMap<String, (&str, &str)> = std::collections::BTreeMap::new();
    for (id, name, at) in things(on.card) {
        let key = sounds_as(name);
        match first.get(&key) {
            Some((other, said)) if *other != id && !said.eq_ignore_ascii_case(name) => {
                sink.raise(at.clone(), format!("`{name}` sounds like `{said}`, which is `{other}`"));
            }
            _ => {
                first.entry(key).or_insert((id, name));
            }
        }
    }
}

//! Phrases that fight.

use crate::check::finding::{Finding, Look};
use crate::check::language::heard_as;
use crate::check::sink::Sink;
use crate::check::subject::OnPack;
use crate::source::Level;
use std::collections::BTreeMap;

/// A phrase that stands under one act is also another act's, or is taken for one.
pub static FINDING: Finding = Finding {
    name: "phrases that fight",
    level: Level::Wrong,
    what: "A phrase that stands under one act is also another act's, or is taken for one.",
    why: "The technician says one thing and the bench does another.",
    example: "@example scratch that, under {undo} and under {confirm}",
    mend: "leave it with one act; say the other in other words",
    look: Look::Pack(look),
};

fn look(on: &OnPack<'_>, sink: &mut Sink<'_>) {
    let Some(ear) = on.ear else { return };
    let mut first: BTreeMap<String, (&str, &str, usize)> = BTreeMap::new();
    for rule in &on.pack.talk.rules {
        let Some(tag) = rule.tag.as_deref() else { continue };
        let act = tag.split(' ').next().unwrap_or(tag);
        for (line, example) in &rule.examples {
            let place =
                || crate::source::Place::new(rule.file.as_str(), u32::try_from(*line).unwrap_or(0), 1);
            let key = example.to_lowercase().replace([',', '.', '?'], "");
            match first.get(&key) {
                Some((other, file, at)) if *other != act => {
                    sink.raise(
                        place(),
                        format!("`{example}` stands under `{other}` too, in {file}, line {at}"),
                    );
                }
                Some(_) => {}
                None => {
                    first.insert(key, (act, rule.file.as_str(), *line));
                    if let Some(other) = heard_as(ear, example, act).filter(|_| !example.contains('<')) {
                        sink.doubt(
                            place(),
                            format!("`{example}` is taken for `{other}`"),
                            format!("`{act}`"),
                        );
                    }
                }
            }
        }
    }
}

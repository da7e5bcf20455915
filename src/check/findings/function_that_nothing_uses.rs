//! Function that nothing uses.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnPack;
use crate::source::Level;
use std::collections::BTreeSet;

/// A function of a script that no expression calls.
pub static FINDING: Finding = Finding {
    name: "function that nothing uses",
    level: Level::Doubtful,
    milder: false,
    what: "A function of a script that no expression calls.",
    why: "It was written for something, and that is not judged.",
    example: "fn closes_early() { ... }, and no when: closes_early()",
    mend: "call it, or take it out",
    look: Look::Pack(look),
};

fn look(on: &OnPack<'_>, sink: &mut Sink<'_>) {
    let scripts = on.pack.scripts();
    let mut texts: Vec<String> = scripts.expressions().map(|one| one.text.clone()).collect();
    let mut used: BTreeSet<&str> = BTreeSet::new();
    while let Some(text) = texts.pop() {
        for name in scripts.functions().keys().filter(|name| calls(&text, name)) {
            if used.insert(name.as_str()) {
                texts.extend(body(on, name));
            }
        }
    }
    for (name, file) in scripts.functions().iter().filter(|(name, _)| !used.contains(name.as_str())) {
        let head = format!("fn {name}");
        let text = on.pack.files().get(file.as_ref());
        let line = text.and_then(|text| text.lines().position(|line| line.trim_start().starts_with(&head)));
        let line = line.and_then(|line| u32::try_from(line + 1).ok()).unwrap_or(1);
        sink.raise(crate::source::Place::new(file.as_ref(), line, 1), format!("nothing calls `{name}`"));
    }
}

/// Whether a text calls a function of that name.
fn calls(text: &str, name: &str) -> bool {
    let whole = |before: &str| {
        !before.ends_with(|c: char| c.is_alphanumeric() || c == '_') && !before.trim_end().ends_with("fn")
    };
    text.match_indices(name).any(|(at, _)| {
        let (before, rest) = text.split_at(at);
        whole(before) && rest.get(name.len()..).is_some_and(|rest| rest.trim_start().starts_with('('))
    })
}

/// The text of a function, up to the next one.
fn body(on: &OnPack<'_>, name: &str) -> Option<String> {
    let file = on.pack.scripts().functions().get(name)?;
    let text = on.pack.files().get(file.as_ref())?;
    let from = text.split_once(&format!("fn {name}"))?.1;
    Some(from.split("\nfn ").next().unwrap_or(from).to_owned())
}

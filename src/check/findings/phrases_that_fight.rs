//! Phrases that fight.

use crate::check::finding::{Finding, Look};
use crate::check::grammar::{Grammar, literals, plain};
use crate::check::language::{HeardAs, heard_as};
use crate::check::sink::Sink;
use crate::check::subject::OnPack;
use crate::hearing::Ear;
use crate::rulebase::talk::TalkRule;
use crate::source::Level;
use std::collections::BTreeMap;

/// A phrase that stands under one act is also another act's, or is taken for one.
pub static FINDING: Finding = Finding {
    name: "phrases that fight",
    level: Level::Wrong,
    milder: true,
    what: "A phrase that stands under one act is also another act's, or is taken for one.",
    why: "The technician says one thing and the bench does another.",
    example: "@example scratch that, under {undo} and under {confirm}",
    mend: "leave it with one act; say the other in other words",
    look: Look::Pack(look),
};

fn look(on: &OnPack<'_>, sink: &mut Sink<'_>) {
    let Some(ear) = on.ear else { return };
    let grammar = Grammar::of(&on.pack.talk);
    literally(on, sink);
    let mut first: BTreeMap<String, (&str, &str, usize)> = BTreeMap::new();
    for rule in &on.pack.talk.rules {
        let Some(tag) = rule.tag.as_deref() else { continue };
        let act = tag.split(' ').next().unwrap_or(tag);
        for (line, example) in &rule.examples {
            let place = sink.in_line(&rule.file, *line, example);
            let key = example.to_lowercase().replace([',', '.', '?'], "");
            match first.get(&key) {
                Some((other, file, at)) if *other != act => {
                    sink.raise(
                        place,
                        format!("`{example}` stands under `{other}` too, in {file}, line {at}"),
                    );
                }
                Some(_) => {}
                None => {
                    first.insert(key, (act, rule.file.as_str(), *line));
                    // A line with a slot is said in as many ways as the slot has.
                    let plain = !example.contains('<');
                    if let Some(found) = plain.then(|| lost(on, ear, &grammar, example, act)).flatten() {
                        sink.doubt(place, found, format!("`{act}`"));
                    }
                }
            }
        }
    }
}

/// An alternative that is nothing but words, and that is another act's example word for word.
fn literally(on: &OnPack<'_>, sink: &mut Sink<'_>) {
    let rules = on.pack.talk.rules.iter().filter_map(|rule| Some((rule, act_of(rule)?)));
    let mut examples: BTreeMap<String, (&str, &str, usize)> = BTreeMap::new();
    for (rule, act) in rules.clone() {
        for (line, text) in &rule.examples {
            examples.entry(plain(text).join(" ")).or_insert((act, rule.file.as_str(), *line));
        }
    }
    for (rule, act) in rules {
        for phrase in literals(&rule.body) {
            let Some((other, file, line)) = examples.get(&phrase).filter(|(other, ..)| *other != act) else { continue };
            let place = sink.in_line(&rule.file, rule.line, &rule.name);
            sink.raise(place, format!("`{phrase}` stands in the rule of `{act}`, and under `{other}` in {file}, line {line}"));
        }
    }
}

/// How an example line is lost to another act.
fn lost(on: &OnPack<'_>, ear: &Ear, grammar: &Grammar<'_>, line: &str, act: &str) -> Option<String> {
    match heard_as(ear, line, act) {
        HeardAs::Own => None,
        HeardAs::Other(other) => Some(format!("`{line}` is taken for `{other}`")),
        HeardAs::Unsure => said_too(on, grammar, line, act)
            .map(|(other, at)| format!("`{line}` is never taken: the rule of `{other}` says it too, in {at}")),
    }
}

/// A rule of another act that says the line word for word, and where it stands.
fn said_too(on: &OnPack<'_>, grammar: &Grammar<'_>, line: &str, act: &str) -> Option<(String, String)> {
    let words = plain(line);
    let others = on.pack.talk.rules.iter().filter(|rule| rule.public);
    let others = others.filter_map(|rule| Some((rule, act_of(rule)?))).filter(|(_, other)| *other != act);
    let mut saying = others.filter(|(rule, _)| grammar.says(rule, &words));
    saying.next().map(|(rule, other)| (other.to_owned(), format!("{}, line {}", rule.file, rule.line)))
}

/// The act of a rule's tag.
fn act_of(rule: &TalkRule) -> Option<&str> {
    rule.tag.as_deref()?.split(' ').next()
}

//! `pack keys`: every key of a pack's files, every word for what a step does and every function of scripts, as a page
//! made from the tables that the reader itself goes by.

use super::pack_schema::FILES;
use crate::check::FINDINGS;
use crate::rulebase::Deed;
use crate::rulebase::load::{Field, Form, Shape, forms};
use crate::rulebase::script::FUNCTIONS;
use std::fmt::Write as _;

/// The page, in Markdown.
pub fn page() -> String {
    let mut out =
        "# Every key of a pack\n\nMade by `sparehand pack keys`. A key with a star must be there.\n"
            .to_owned();
    let mut done: Vec<&str> = Vec::new();
    for (_, path) in FILES {
        if let Some((_, form)) = forms().into_iter().find(|(known, _)| *known == path) {
            let _ = write!(out, "\n## `{path}`\n");
            keys(form, &mut done, &mut out);
        }
    }
    deeds(&mut out);
    functions(&mut out);
    findings(&mut out);
    out
}

/// The keys of a form, then those of the forms that stand in it, each once.
fn keys(form: &'static Form, done: &mut Vec<&'static str>, out: &mut String) {
    if done.contains(&form.name) {
        return;
    }
    done.push(form.name);
    let mut name = form.name.to_owned();
    if let Some(first) = name.get_mut(0..1) {
        first.make_ascii_uppercase();
    }
    let _ = write!(out, "\n**{name}**\n\n| key | what | written |\n|---|---|---|\n");
    for field in form.fields {
        let star = if field.needed { " *" } else { "" };
        let _ = writeln!(out, "| `{}`{star} | {} | {} |", field.name, field.what, written(field));
    }
    for field in form.fields {
        if let Shape::Entry(inner) | Shape::Entries(inner) | Shape::Named(inner) = field.shape {
            keys(inner, done, out);
        }
    }
}

fn written(field: &Field) -> String {
    match &field.shape {
        Shape::Text => "words".to_owned(),
        Shape::Texts => "words, or a list of them".to_owned(),
        Shape::Script => "Rhai".to_owned(),
        Shape::Flag => "`yes` or `no`".to_owned(),
        Shape::Whole => "a whole number from 1".to_owned(),
        Shape::Way => "`clockwise` or `anticlockwise`".to_owned(),
        Shape::Quantity(_) => "a figure with its unit".to_owned(),
        Shape::Limit(_) => {
            "a figure, a band (`14 bar +/- 0.5 bar`, `2 to 6 mm`), `at most` or `at least`".to_owned()
        }
        Shape::Thread => "`M14 x 1`, `M14 x 1 left-hand`".to_owned(),
        Shape::Figure(example) => format!("as `{example}`"),
        Shape::Entry(form) => format!("{}: its keys, indented or in braces", form.name),
        Shape::Entries(form) => format!("a list, each {}", form.name),
        Shape::Named(form) => format!("by name, each {}", form.name),
        Shape::Sizes => "by name, each a figure with its unit".to_owned(),
        Shape::Limits => "by name, each a band".to_owned(),
        Shape::Words => "by name, each words".to_owned(),
    }
}

fn deeds(out: &mut String) {
    out.push_str("\n## What a step does\n\nA step begins with one of these words and the id of a part or an adjuster: `- loosen: foot-nut`.\n\n| word | what it does and what it waits for |\n|---|---|\n");
    for deed in Deed::ALL {
        let _ = writeln!(out, "| `{}` | {} |", deed.as_str(), deed.what());
    }
    let free: Vec<String> = Deed::ALL
        .iter()
        .filter(|deed| deed.takes_words())
        .map(|deed| format!("`{}`", deed.as_str()))
        .collect();
    let _ = writeln!(
        out,
        "\nAfter {} there may be words of your own in the place of the id, two or more of them (`- hold: whole unit`): one word \
         alone is an id, except after `record`.",
        free.join(", ")
    );
}

fn functions(out: &mut String) {
    out.push_str("\n## What a script can ask\n\nIn `when:`, `accept:` and `scripts/*.rhai`. In `accept:` the reading is `value`. Names stand in quotes.\n\n| function | what it gives |\n|---|---|\n");
    for function in FUNCTIONS {
        let _ = writeln!(out, "| `{}` | {} |", function.form(), function.gives);
    }
}

fn findings(out: &mut String) {
    out.push_str("\n## What `sparehand check` finds\n\n`sparehand check --explain NAME` tells the rest of each.\n\n| finding | level | what |\n|---|---|---|\n");
    for one in FINDINGS {
        let _ = writeln!(out, "| {} | {} | {} |", one.name, one.levels(), one.what);
    }
}

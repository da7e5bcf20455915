//! `pack.yaml`, `cautions.yaml` and `tools.yaml`.

use super::fields::Fields;
use super::form::{Form, Shape, may, must};
use super::report::Report;
use super::slug;
use crate::quantity::Dimension;
use crate::rulebase::{Caution, Signal, Tool};
use crate::source::nearest;
use crate::source::yaml::{Key, Node};
use std::collections::BTreeMap;

/// The fields of `pack.yaml`.
pub static PACK: Form = Form {
    name: "a pack",
    takes_deed: false,
    fields: &[
        must("name", Shape::Text, "the pack's name"),
        must("format", Shape::Whole, "the form of its files; this program reads `1`"),
        may("what", Shape::Text, "what it is for"),
    ],
};

/// The fields of a caution.
pub static CAUTION: Form = Form {
    name: "a caution",
    takes_deed: false,
    fields: &[
        must("signal", Shape::Text, "`danger`, `warning`, `caution` or `notice` (ANSI Z535.6)"),
        must("full", Shape::Text, "hazard, what follows, how to avoid it"),
        must("brief", Shape::Text, "one clause, for later times"),
        may("source", Shape::Text, "where it comes from"),
    ],
};

/// The fields of a tool.
pub static TOOL: Form = Form {
    name: "a tool",
    takes_deed: false,
    fields: &[
        must("called", Shape::Texts, "spoken names"),
        must("kind", Shape::Text, "what kind of tool"),
        may("sizes", Shape::Texts, "the sizes it has"),
        may("range", Shape::Figure("10 to 60 N.m"), "the range it may be used over"),
        may("calibrated", Shape::Text, "the day it was last calibrated (2026-03-14)"),
        may("due", Shape::Text, "the day the calibration runs out"),
        may("length", Shape::Quantity(Dimension::Length), "length from grip to square"),
        may("note", Shape::Text, "what must be known about it"),
    ],
};

/// The form that this program reads.
const FORMAT: u32 = 1;

/// Reads `pack.yaml`: the name.
pub(super) fn pack(root: &Node, report: &Report) -> Option<String> {
    let fields = Fields::of(&PACK, root, root.span, report)?;
    if let Some(format) = fields.whole("format").filter(|format| *format != FORMAT) {
        let mend = "use the program that this pack was written for";
        report.wrong(fields.span_of("format"), format!("format {format}"), format!("format {FORMAT}"), mend);
    }
    fields.text("name")
}

/// Reads `cautions.yaml`.
pub(super) fn cautions(root: &Node, report: &Report) -> BTreeMap<String, Caution> {
    let mut out = BTreeMap::new();
    for (key, fields) in entries(root, &CAUTION, report) {
        if let Some(caution) = caution(key, &fields)
            && out.insert(caution.id.clone(), caution).is_some()
        {
            report.wrong(
                key.span,
                format!("`{}` stands twice", key.text),
                "each caution once",
                "give it its own name",
            );
        }
    }
    out
}

fn caution(key: &Key, fields: &Fields<'_>) -> Option<Caution> {
    let (full, brief) = (fields.text("full"), fields.text("brief"));
    Some(Caution {
        id: slug(&key.text),
        signal: signal(fields)?,
        full: full?,
        brief: brief?,
        source: fields.text("source"),
        at: fields.report.place(key.span),
    })
}

fn signal(fields: &Fields<'_>) -> Option<Signal> {
    const ALL: [Signal; 4] = [Signal::Danger, Signal::Warning, Signal::Caution, Signal::Notice];
    let word = fields.text("signal")?;
    let found = ALL.into_iter().find(|signal| signal.word() == word);
    if found.is_none() {
        let near = nearest(&word, ALL.iter().map(|signal| signal.word())).unwrap_or("warning");
        let expected = "`danger`, `warning`, `caution` or `notice`";
        fields.report.wrong(
            fields.span_of("signal"),
            format!("`{word}` is no signal word"),
            expected,
            format!("write `{near}`"),
        );
    }
    found
}

/// Reads `tools.yaml`.
pub(super) fn tools(root: &Node, report: &Report) -> Vec<Tool> {
    entries(root, &TOOL, report).iter().map(|(key, fields)| tool(key, fields)).collect()
}

fn tool(key: &Key, fields: &Fields<'_>) -> Tool {
    Tool {
        id: key.text.clone(),
        called: fields.texts("called"),
        kind: fields.text("kind").unwrap_or_default(),
        sizes: fields.quantities("sizes"),
        range: fields.limit("range"),
        calibrated: day(fields, "calibrated"),
        due: day(fields, "due"),
        length: fields.quantity("length"),
        note: fields.text("note"),
        at: fields.report.place(key.span),
    }
}

fn day(fields: &Fields<'_>, name: &str) -> Option<String> {
    let text = fields.text(name)?;
    if chrono::NaiveDate::parse_from_str(&text, "%Y-%m-%d").is_err() || text.len() != 10 {
        let found = format!("`{text}` is no day");
        fields.report.wrong(
            fields.span_of(name),
            found,
            "year, month and day (ISO 8601)",
            "write it as `2026-03-14`",
        );
    }
    Some(text)
}

fn entries<'a>(root: &'a Node, form: &'static Form, report: &'a Report) -> Vec<(&'a Key, Fields<'a>)> {
    let Some(entries) = root.map() else {
        if root.words() != "nothing" {
            report.wrong(
                root.span,
                root.words(),
                format!("names, {} each", form.name),
                "write `name:` with its fields under it",
            );
        }
        return Vec::new();
    };
    entries.iter().filter_map(|(key, node)| Some((key, Fields::of(form, node, key.span, report)?))).collect()
}

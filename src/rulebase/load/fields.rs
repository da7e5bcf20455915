//! Reads the fields of one entry by its form: unknown and missing fields are reported, values are read by shape.

use super::form::{Form, Shape};
use super::report::{Found, Report};
use super::values;
use crate::quantity::{Dimension, Limit, Quantity};
use crate::rulebase::{Deed, Thread, script};
use crate::source::nearest;
use crate::source::yaml::{Key, Kind, Node, Span};
use crate::workings::adjusters::Way;
use std::collections::BTreeMap;

/// The fields of one entry.
#[derive(Clone, Copy)]
pub(super) struct Fields<'a> {
    form: &'static Form,
    entries: &'a [(Key, Node)],
    /// Where the entry stands.
    pub span: Span,
    /// Where problems go.
    pub report: &'a Report,
}

impl<'a> Fields<'a> {
    /// Takes an entry; what is no map, an unknown field and a missing one are reported.
    pub fn of(form: &'static Form, node: &'a Node, span: Span, report: &'a Report) -> Option<Self> {
        let Some(entries) = node.map() else {
            let fields = form.fields.iter().map(|field| format!("`{}`", field.name)).collect::<Vec<_>>();
            report.wrong(
                if node.kind == Kind::Empty { span } else { node.span },
                format!("{} where {} is wanted", node.words(), form.name),
                format!("fields such as {}", fields.iter().take(4).cloned().collect::<Vec<_>>().join(", ")),
                "write its fields under it, indented",
            );
            return None;
        };
        let fields = Self { form, entries, span, report };
        fields.check_names();
        Some(fields)
    }

    fn check_names(&self) {
        for (key, node) in self.entries {
            if self.form.field(&key.text).is_none()
                && !(self.form.takes_deed && Deed::parse(&key.text).is_some())
            {
                self.unknown(key, node.kind == Kind::Empty);
            }
        }
        for field in self.form.fields.iter().filter(|field| field.needed) {
            if self.node(field.name).is_none() {
                let found = format!("{} has no `{}`", self.form.name, field.name);
                self.report.wrong(self.span, found, field.what, format!("add `{}:`", field.name));
            }
        }
    }

    fn unknown(&self, key: &Key, empty: bool) {
        let mut known: Vec<&str> = self.form.fields.iter().map(|field| field.name).collect();
        if self.form.takes_deed {
            known.extend(Deed::ALL.iter().map(|deed| deed.as_str()));
        }
        let mend = match nearest(&key.text, known.iter().copied()) {
            Some(near) => format!("write `{near}` if that is what is meant"),
            // `{how: square, by hand}` makes a field of `by hand`.
            None if empty && key.text.contains(' ') => {
                "put the text before it in quotes: a comma ends it here".to_owned()
            }
            None => "take it out".to_owned(),
        };
        let expected = match known.len() {
            0..=12 => format!(
                "one of {}",
                known.iter().map(|name| format!("`{name}`")).collect::<Vec<_>>().join(", ")
            ),
            _ => format!("a field that {} has", self.form.name),
        };
        self.report.wrong(
            key.span,
            format!("{} has no field `{}`", self.form.name, key.text),
            expected,
            mend,
        );
    }

    /// The entries as they stand.
    pub fn entries(&self) -> &'a [(Key, Node)] {
        self.entries
    }

    /// The value of a field; an empty one counts as left out.
    pub fn node(&self, name: &str) -> Option<&'a Node> {
        let found = self.entries.iter().find(|(key, _)| key.text == name)?;
        (found.1.kind != Kind::Empty).then_some(&found.1)
    }

    /// The value of a field, reporting it when it stands there empty.
    fn filled(&self, name: &str) -> Option<&'a Node> {
        let (key, node) = self.entries.iter().find(|(key, _)| key.text == name)?;
        if node.kind == Kind::Empty || node.text().is_some_and(|text| text.trim().is_empty()) {
            self.report.wrong(
                key.span,
                format!("`{name}` is empty"),
                "a value after the colon",
                "fill it in, or take it out",
            );
            return None;
        }
        Some(node)
    }

    /// Where a field's value stands; the entry's own place when it is not there.
    pub fn span_of(&self, name: &str) -> Span {
        self.node(name).map_or(self.span, |node| node.span)
    }

    /// A text.
    pub fn text(&self, name: &str) -> Option<String> {
        text_of(self.filled(name)?, name, self.report)
    }

    /// An expression, kept by the report to be compiled and tried later.
    pub fn script(&self, name: &str, kind: script::Kind) -> Option<String> {
        let node = self.filled(name)?;
        let text = text_of(node, name, self.report)?;
        if let Kind::Text(_, style) = node.kind {
            self.report.expression(Found { text: text.clone(), kind, span: node.span, style });
        }
        Some(text)
    }

    /// One text or several.
    pub fn texts(&self, name: &str) -> Vec<String> {
        let Some(node) = self.filled(name) else { return Vec::new() };
        match node.list() {
            Some(items) => items.iter().filter_map(|item| text_of(item, name, self.report)).collect(),
            None => text_of(node, name, self.report).into_iter().collect(),
        }
    }

    /// One text or several, each with its place.
    pub fn placed_texts(&self, name: &str) -> Vec<(String, Span)> {
        let Some(node) = self.filled(name) else { return Vec::new() };
        let items = node.list().unwrap_or(std::slice::from_ref(node));
        items.iter().filter_map(|item| Some((text_of(item, name, self.report)?, item.span))).collect()
    }

    /// `yes` or `no`; no when left out.
    pub fn flag(&self, name: &str) -> bool {
        let Some(node) = self.filled(name) else { return false };
        match node.text() {
            Some("yes" | "true") => true,
            Some("no" | "false") => false,
            _ => {
                let found = format!("`{name}` is {}", node.words());
                self.report.wrong(node.span, found, "`yes` or `no`", "write `yes` or `no`");
                false
            }
        }
    }

    /// A whole number from 1.
    pub fn whole(&self, name: &str) -> Option<u32> {
        let node = self.filled(name)?;
        let number = node.text().and_then(|text| text.parse::<u32>().ok()).filter(|number| *number > 0);
        if number.is_none() {
            let found = format!("`{name}` is {}", node.words());
            self.report.wrong(node.span, found, "a whole number from 1", "write one such as `3`");
        }
        number
    }

    /// A way of turning.
    pub fn way(&self, name: &str) -> Option<Way> {
        values::way(self.filled(name)?, self.report)
    }

    /// A quantity, of the dimension the form says.
    pub fn quantity(&self, name: &str) -> Option<Quantity> {
        values::quantity(self.filled(name)?, self.dimension(name), self.report)
    }

    /// A limit, of the dimension the form says.
    pub fn limit(&self, name: &str) -> Option<Limit> {
        values::limit(self.filled(name)?, self.dimension(name), self.report)
    }

    fn dimension(&self, name: &str) -> Option<Dimension> {
        match self.form.field(name)?.shape {
            Shape::Quantity(dimension) | Shape::Limit(dimension) => Some(dimension),
            _ => None,
        }
    }

    /// A thread.
    pub fn thread(&self, name: &str) -> Option<Thread> {
        values::thread(self.filled(name)?, self.report)
    }

    /// An entry with fields of its own.
    pub fn entry(&self, name: &str) -> Option<Fields<'a>> {
        let node = self.filled(name)?;
        match self.form.field(name)?.shape {
            Shape::Entry(form) => Fields::of(form, node, node.span, self.report),
            _ => None,
        }
    }

    /// A list of entries.
    pub fn list(&self, name: &str) -> Vec<Fields<'a>> {
        let Some(node) = self.filled(name) else { return Vec::new() };
        let Some(Shape::Entries(form)) = self.form.field(name).map(|field| field.shape) else {
            return Vec::new();
        };
        let Some(items) = node.list() else {
            self.report.wrong(
                node.span,
                node.words(),
                format!("a list, {} each", form.name),
                "begin each with `- `",
            );
            return Vec::new();
        };
        items.iter().filter_map(|item| Fields::of(form, item, item.span, self.report)).collect()
    }

    /// Entries by name.
    pub fn named(&self, name: &str) -> Vec<(&'a Key, Fields<'a>)> {
        let Some(Shape::Named(form)) = self.form.field(name).map(|field| field.shape) else {
            return Vec::new();
        };
        let entries = self.map(name);
        entries
            .iter()
            .filter_map(|(key, node)| Some((key, Fields::of(form, node, key.span, self.report)?)))
            .collect()
    }

    /// One quantity or several, of any dimension.
    pub fn quantities(&self, name: &str) -> Vec<Quantity> {
        let Some(node) = self.filled(name) else { return Vec::new() };
        let items = node.list().unwrap_or(std::slice::from_ref(node));
        items.iter().filter_map(|item| values::quantity(item, None, self.report)).collect()
    }

    /// Quantities by name.
    pub fn sizes(&self, name: &str) -> BTreeMap<String, Quantity> {
        let read =
            |(key, node): &(Key, Node)| Some((key.text.clone(), values::quantity(node, None, self.report)?));
        self.map(name).iter().filter_map(read).collect()
    }

    /// Limits by name.
    pub fn limits(&self, name: &str) -> BTreeMap<String, Limit> {
        let read =
            |(key, node): &(Key, Node)| Some((key.text.clone(), values::limit(node, None, self.report)?));
        self.map(name).iter().filter_map(read).collect()
    }

    /// Texts by name.
    pub fn words(&self, name: &str) -> BTreeMap<String, String> {
        let read =
            |(key, node): &(Key, Node)| Some((key.text.clone(), text_of(node, &key.text, self.report)?));
        self.map(name).iter().filter_map(read).collect()
    }

    /// A field that holds a map.
    pub fn map(&self, name: &str) -> &'a [(Key, Node)] {
        let Some(node) = self.filled(name) else { return &[] };
        node.map().unwrap_or_else(|| {
            self.report.wrong(
                node.span,
                node.words(),
                format!("names under `{name}`, each with its value"),
                "write `name: value`, indented",
            );
            &[]
        })
    }
}

fn text_of(node: &Node, name: &str, report: &Report) -> Option<String> {
    match node.text() {
        Some(text) => Some(text.trim().to_owned()),
        None => {
            report.wrong(
                node.span,
                format!("{} where the text of `{name}` is wanted", node.words()),
                "a text",
                "write it on one line, in quotes if it holds `: `",
            );
            None
        }
    }
}

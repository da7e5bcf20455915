//! `pack schema`: the form of a pack's YAML files as JSON Schema, made from the tables that the reader itself goes by.

use crate::rulebase::Deed;
use crate::rulebase::load::{Field, Form, Shape, forms};
use serde_json::{Map, Value, json};
use std::collections::BTreeMap;

/// What a file of a pack may be called on the command line, and the file or folder that `forms` knows it by.
pub const FILES: [(&str, &str); 5] = [
    ("pack", "pack.yaml"),
    ("unit", "units/"),
    ("procedure", "procedures/"),
    ("cautions", "cautions.yaml"),
    ("tools", "tools.yaml"),
];

/// The schema of one kind of file; of all kinds, each under `$defs`, when none is named.
pub fn schema(file: Option<&str>) -> Option<Value> {
    let mut defs = BTreeMap::new();
    let mut roots = Vec::new();
    for (name, path) in FILES {
        let (_, form) = forms().into_iter().find(|(known, _)| *known == path)?;
        let inner = define(form, &mut defs);
        // Cautions and tools stand by name.
        let root = if matches!(name, "cautions" | "tools") {
            defs.insert(name.to_owned(), json!({"type": "object", "additionalProperties": inner}));
            json!({"$ref": format!("#/$defs/{name}")})
        } else {
            inner
        };
        roots.push((name, root));
    }
    let mut whole = json!({"$schema": "https://json-schema.org/draft/2020-12/schema", "title": "Files of a Sparehand pack"});
    let own = match file {
        Some(file) => ("$ref", roots.iter().find(|(name, _)| *name == file)?.1.get("$ref")?.clone()),
        None => ("anyOf", Value::Array(roots.into_iter().map(|(_, root)| root).collect())),
    };
    let fields = whole.as_object_mut()?;
    fields.insert(own.0.to_owned(), own.1);
    fields.insert("$defs".to_owned(), serde_json::to_value(defs).ok()?);
    Some(whole)
}

/// Defines a form, once, and gives the reference to it.
fn define(form: &'static Form, defs: &mut BTreeMap<String, Value>) -> Value {
    let name = form.name.trim_start_matches("a ").trim_start_matches("an ").replace(' ', "-");
    let reference = json!({"$ref": format!("#/$defs/{name}")});
    if defs.contains_key(&name) {
        return reference;
    }
    // The place is taken before its fields are looked at: a step holds steps.
    defs.insert(name.clone(), Value::Null);
    let mut properties: Map<String, Value> =
        form.fields.iter().map(|field| (field.name.to_owned(), property(field, defs))).collect();
    let needed: Vec<&str> = form.fields.iter().filter(|field| field.needed).map(|field| field.name).collect();
    let mut made = json!({"type": "object", "additionalProperties": false, "required": needed});
    if form.takes_deed {
        for deed in Deed::ALL {
            let what = json!({"type": "string", "description": deed.what()});
            properties.entry(deed.as_str()).or_insert(what);
        }
        if let Some(made) = made.as_object_mut() {
            let one = Deed::ALL.iter().map(|deed| json!({"required": [deed.as_str()]})).collect();
            made.insert("anyOf".to_owned(), Value::Array(one));
        }
    }
    if let Some(made) = made.as_object_mut() {
        made.insert("properties".to_owned(), Value::Object(properties));
    }
    defs.insert(name, made);
    reference
}

fn property(field: &Field, defs: &mut BTreeMap<String, Value>) -> Value {
    let mut made = shape(&field.shape, defs);
    if let Some(made) = made.as_object_mut() {
        made.insert("description".to_owned(), Value::String(field.what.to_owned()));
    }
    made
}

fn shape(shape: &Shape, defs: &mut BTreeMap<String, Value>) -> Value {
    match shape {
        Shape::Text | Shape::Script => json!({"type": ["string", "number", "boolean"]}),
        Shape::Texts => {
            let text = json!({"type": ["string", "number", "boolean"]});
            json!({"anyOf": [text, {"type": "array", "items": text}]})
        }
        // YAML 1.2 reads `yes` as a text, YAML 1.1 as true.
        Shape::Flag => json!({"enum": ["yes", "no", "true", "false", true, false]}),
        Shape::Whole => json!({"type": ["integer", "string"], "minimum": 1}),
        Shape::Way => json!({"enum": ["clockwise", "anticlockwise"]}),
        Shape::Quantity(kind) => json!({"type": "string", "pattern": "[0-9]", "examples": [example(*kind)]}),
        Shape::Limit(kind) => json!({
            "type": "string", "pattern": "[0-9]",
            "examples": [example(*kind), format!("at most {}", example(*kind))],
        }),
        Shape::Thread => json!({"type": "string", "examples": ["M14 x 1"]}),
        Shape::Figure(text) => json!({"type": "string", "examples": [text]}),
        Shape::Entry(form) => define(form, defs),
        Shape::Entries(form) => json!({"type": "array", "items": define(form, defs)}),
        Shape::Named(form) => json!({"type": "object", "additionalProperties": named(form, defs)}),
        Shape::Sizes | Shape::Limits | Shape::Words => {
            json!({"type": "object", "additionalProperties": {"type": "string"}})
        }
    }
}

/// What stands by name; where all that it needs is a list, it may be that list alone (a phase and its steps).
fn named(form: &'static Form, defs: &mut BTreeMap<String, Value>) -> Value {
    let whole = define(form, defs);
    let mut needed = form.fields.iter().filter(|field| field.needed);
    match (needed.next().map(|field| field.shape), needed.next()) {
        (Some(Shape::Entries(inner)), None) => {
            json!({"anyOf": [{"type": "array", "items": define(inner, defs)}, whole]})
        }
        _ => whole,
    }
}

fn example(kind: crate::quantity::Dimension) -> &'static str {
    use crate::quantity::Dimension as D;
    match kind {
        D::Torque => "32 N.m",
        D::Length => "21 mm",
        D::Pressure => "14 bar",
        D::Temperature => "20 degC",
        D::Time => "5 min",
        D::Rate => "70 N/mm",
        D::Force => "100 N",
        D::Volume => "420 ml",
        _ => "1",
    }
}

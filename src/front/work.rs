//! `ask --work`: one calculation by its name, or the list of them. With `--json` the figures are exact.

use super::{Cli, out::Out};
use crate::session::{Fault, plain};
use crate::workings::registry::{Answer, Listed, Refusal, Told, Worked, all, call_text, find};
use serde_json::json;
use std::collections::BTreeMap;

/// Calls a calculation, or lists them.
///
/// # Errors
/// A calculation that is not there, or figures that it does not take; nobody reading any more.
pub fn run(cli: &Cli, name: &str, given: &[String]) -> Result<u8, Fault> {
    if name == "list" {
        return list(cli);
    }
    match call_text(name, &files(name, pairs(given)?)?) {
        Ok(worked) => answer(cli, &worked),
        Err(refusal) => refuse(cli, &refusal),
    }
}

/// `d=10.8mm` and the like.
fn pairs(given: &[String]) -> Result<BTreeMap<String, String>, Fault> {
    let mut pairs = BTreeMap::new();
    for text in given {
        let shown = plain(text);
        let (key, value) = text.split_once('=').ok_or_else(|| {
            Fault::call(format!("`{shown}` gives nothing"), "write a name and a value, such as d=10.8mm")
        })?;
        if pairs.insert(key.trim().to_owned(), value.trim().to_owned()).is_some() {
            return Err(Fault::call(format!("`{}` is given twice", plain(key)), "give it once"));
        }
    }
    Ok(pairs)
}

/// Files named for inputs that are files become their texts.
fn files(name: &str, mut given: BTreeMap<String, String>) -> Result<BTreeMap<String, String>, Fault> {
    let Some(working) = find(name) else { return Ok(given) };
    for (key, value) in &mut given {
        if working.input(key).is_some_and(|input| input.file) {
            let path = plain(value);
            let text = std::fs::read(&*value).map_err(|error| {
                Fault::call(format!("`{path}` cannot be read: {error}"), "name a file that is there")
            })?;
            *value = String::from_utf8_lossy(&text).into_owned();
        }
    }
    Ok(given)
}

fn answer(cli: &Cli, worked: &Worked) -> Result<u8, Fault> {
    let mut out = Out::new();
    if cli.place.json {
        out.json(worked)?;
        return Ok(0);
    }
    out.line(&format!("{}: {}", worked.name, worked.show()))?;
    for told in &worked.inputs {
        out.line(&format!("  {}", input(told)))?;
    }
    for more in &worked.more {
        if let Answer::Text(text) = &more.value
            && text.contains('\n')
        {
            out.text(&format!("{}:\n{text}", more.name))?;
            continue;
        }
        out.line(&format!("  {}: {}", more.name, figure(&more.value, more.unit.map(|unit| unit.name()))))?;
    }
    out.line(&format!("  method: {}", worked.method))?;
    out.line(&format!("  source: {}", worked.source))?;
    worked.cautions.iter().try_for_each(|caution| out.line(&format!("  mind: {caution}")))?;
    Ok(0)
}

fn input(told: &Told) -> String {
    let usual = if told.usual { " (usual)" } else { "" };
    format!(
        "{} = {}{usual}: {}",
        told.name,
        figure(&told.value, told.unit.map(|unit| unit.name())),
        told.what
    )
}

fn figure(value: &Answer, unit: Option<&str>) -> String {
    let rounded = crate::quantity::bench_figures;
    let text = match value {
        Answer::Number(value) => rounded(*value).to_string(),
        Answer::List(values) => {
            values.iter().map(|value| rounded(*value).to_string()).collect::<Vec<_>>().join(", ")
        }
        Answer::Text(text) => text.clone(),
        Answer::Nothing => "none".to_owned(),
    };
    format!("{text} {}", unit.unwrap_or_default()).trim_end().to_owned()
}

/// A refusal is an answer too: 1 when the figures do not do, 2 when the call names what is not there.
fn refuse(cli: &Cli, refusal: &Refusal) -> Result<u8, Fault> {
    let text = plain(&refusal.to_string());
    if cli.place.json {
        let mut value = json!(refusal);
        if let Some(fields) = value.as_object_mut() {
            fields.insert("error".to_owned(), json!(text));
            if let Refusal::Missing { input, .. } = refusal {
                fields.insert("missing".to_owned(), json!(input));
            }
        }
        Out::new().json(&value)?;
    }
    match refusal {
        Refusal::NoSuchWorking { .. } | Refusal::NoSuchInput { .. } => {
            Err(Fault::call(text, "see `sparehand ask --work list`"))
        }
        _ => Err(Fault::NotSo(text)),
    }
}

fn list(cli: &Cli) -> Result<u8, Fault> {
    let listed: Vec<Listed> = all().iter().map(|working| working.listed()).collect();
    let mut out = Out::new();
    if cli.place.json {
        out.json(&listed)?;
        return Ok(0);
    }
    listed.iter().try_for_each(|one| out.line(&entry(one)))?;
    Ok(0)
}

fn entry(one: &Listed) -> String {
    let mut lines = vec![format!("{}: {}", one.name, one.about)];
    lines.extend(one.inputs.iter().map(|input| {
        let usual = input.usual.as_ref().map(|usual| format!(", {usual} unless given")).unwrap_or_default();
        let need = if input.required { "" } else { ", may be left out" };
        format!("  {} ({}{}{usual}): {}", input.name, input.takes, need, input.what)
    }));
    let outputs: Vec<String> = one
        .outputs
        .iter()
        .map(|output| {
            format!("{} {}", output.name, output.unit.map_or("", |unit| unit.name())).trim_end().to_owned()
        })
        .collect();
    lines.push(format!("  gives: {}", outputs.join(", ")));
    lines.push(format!("  method: {}", one.method));
    lines.push(format!("  source: {}", one.source));
    lines.join("\n")
}

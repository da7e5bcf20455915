//! `check`: a pack proved before anyone trusts it.

use super::{CheckArgs, Cli, open, out::Out};
use crate::check::{FINDINGS, Finding, Report, check, finding};
use crate::rulebase::Pack;
use crate::session::{Clock, Fault, SystemClock};
use crate::source::{Level, nearest, render};
use serde_json::json;
use std::collections::BTreeMap;
use std::path::Path;

/// Runs the command.
///
/// # Errors
/// A pack that does not load, a finding that is not known, an output that cannot be written.
pub fn run(cli: &Cli, args: &CheckArgs) -> Result<u8, Fault> {
    if let Some(name) = &args.explain {
        return explain(cli, name);
    }
    let begun = SystemClock.now();
    let rules = args.folder.as_deref().or(cli.place.rules.as_deref());
    let pack = match load(rules) {
        Err(Fault::Text { problems, .. }) if cli.place.json => return not_loaded(&problems),
        loaded => loaded?,
    };
    let report = check(&pack);
    let mut out = Out::new();
    if cli.place.json {
        out.json(&whole(&report))?;
    } else {
        out.text(&drawn(&pack, &report, out.colour()))?;
        let took = (SystemClock.now() - begun).num_milliseconds();
        super::out::aside(&format!("checked in {}.{:03} s", took / 1000, took % 1000));
    }
    Ok(u8::from(!report.found.is_empty()))
}

fn load(folder: Option<&Path>) -> Result<Pack, Fault> {
    match folder {
        Some(folder) => open::pack(folder),
        None => Ok(Pack::built_in()?),
    }
}

/// A pack that does not load, as JSON: each problem of form is one of the finding `form`.
fn not_loaded(problems: &[crate::source::Problem]) -> Result<u8, Fault> {
    let found = problems.iter().map(|problem| {
        json!({
            "finding": "form", "level": problem.level, "file": &*problem.place.file, "line": problem.place.line,
            "column": problem.place.column, "found": problem.found, "expected": problem.expected, "mend": problem.mend,
        })
    });
    Out::new().json(&json!({"loads": false, "found": found.collect::<Vec<_>>()}))?;
    Ok(2)
}

fn whole(report: &Report) -> serde_json::Value {
    let counts: BTreeMap<&str, usize> = [Level::Wrong, Level::Doubtful, Level::Style]
        .into_iter()
        .map(|level| (level.word(), report.count(level)))
        .collect();
    json!({"loads": true, "found": report.found, "counts": counts, "walked": report.walked})
}

/// Every finding with its line, then the counts and how far the walk went.
pub fn drawn(pack: &Pack, report: &Report, colour: bool) -> String {
    let mut parts: Vec<String> = report
        .found
        .iter()
        .map(|found| {
            render(&found.named(), pack.files().get(&*found.problem.place.file).map(String::as_str), colour)
        })
        .collect();
    let count = |level: Level| format!("{} {}", report.count(level), level.word());
    let walked = &report.walked;
    let mut last = format!(
        "{}, {}, {}\nwalked: {}, {}, {}, {} ({} to the end), {}",
        count(Level::Wrong),
        count(Level::Doubtful),
        count(Level::Style),
        many(walked.procedures, "procedure"),
        many(walked.steps, "step"),
        many(walked.states, "state"),
        many(walked.paths, "path"),
        walked.ended,
        many(walked.decisions, "decision"),
    );
    if walked.cut > 0 {
        last += &format!("\nthe walk of {} was cut short by its bound", many(walked.cut, "procedure"));
    }
    parts.push(last);
    parts.join("\n\n")
}

fn many(count: usize, what: &str) -> String {
    format!("{count} {what}{}", if count == 1 { "" } else { "s" })
}

/// The findings, or one of them with all that is known of it.
fn explain(cli: &Cli, name: &str) -> Result<u8, Fault> {
    let mut out = Out::new();
    if name.is_empty() {
        for one in FINDINGS {
            if cli.place.json {
                out.json(&as_json(one))?
            } else {
                out.line(&format!("{:36} {:18} {}", one.name, one.levels(), one.what))?
            }
        }
        return Ok(0);
    }
    let Some(one) = finding(name) else {
        let mend = match nearest(name, FINDINGS.iter().map(|one| one.name)) {
            Some(near) => format!("did you mean `{near}`? `sparehand check --explain` lists them"),
            None => "`sparehand check --explain` lists them".to_owned(),
        };
        return Err(Fault::call(format!("there is no finding `{name}`"), mend));
    };
    if cli.place.json {
        out.json(&as_json(one))?
    } else {
        out.text(&explained(one))?
    }
    Ok(0)
}

/// A finding under its headings, in Markdown.
pub fn explained(one: &Finding) -> String {
    format!(
        "# {}\n\nLevel: {}.\n\n## What\n{}\n\n## Why it matters\n{}\n\n## Example\n{}\n\n## How to mend it\n{}\n",
        one.name,
        one.levels(),
        one.what,
        one.why,
        one.example,
        one.mend,
    )
}

fn as_json(one: &Finding) -> serde_json::Value {
    json!({
        "name": one.name, "level": one.level, "milder": one.milder, "what": one.what, "why": one.why, "example": one.example, "mend": one.mend,
    })
}

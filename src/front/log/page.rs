//! The log as a page for people: the head, the lines with their times, the settings side by side, what stands out.

use super::{Job, line, table, times};
use crate::event::{Envelope, Event};
use crate::session::plain;

/// The whole page.
pub fn page(job: &Job<'_>) -> String {
    let mut out = vec![head(job), String::new()];
    out.extend(job.state.events.iter().filter_map(|event| row(job, event)));
    for place in job.state.progress.places.keys() {
        section(&mut out, &format!("Settings, {}", place.replace('-', " ")), table::shown(job, place));
    }
    section(&mut out, "Findings", findings(job));
    section(&mut out, "Left out or left as they are", reasons(job));
    section(&mut out, "Parts fitted", fitted(job));
    section(&mut out, "Steps and how long they took", durations(job));
    out.join("\n")
}

fn section(out: &mut Vec<String>, title: &str, rows: Vec<String>) {
    if !rows.is_empty() {
        out.push(String::new());
        out.push(title.to_owned());
        out.extend(rows);
    }
}

fn head(job: &Job<'_>) -> String {
    let line = job.line;
    let stands = match line.closed {
        Some(closed) => format!(
            "closed {}, after {}",
            closed.format("%Y-%m-%d %H:%M"),
            times::spoken(times::minutes(closed - line.opened))
        ),
        None => format!("open, last {}", line.last.format("%Y-%m-%d %H:%M")),
    };
    format!("Job {}, opened {}, {stands}", line.number, line.opened.format("%Y-%m-%d %H:%M"))
}

/// One event's line; what was taken back is struck out.
fn row(job: &Job<'_>, event: &Envelope) -> Option<String> {
    let text = plain(&line::told(job, event)?);
    let struck = struck(job, event);
    let by = event.by.as_ref().map(|by| format!("  ({})", plain(by))).unwrap_or_default();
    let text = if struck { format!("~~{text}~~ taken back") } else { text };
    Some(format!("{}  {text}{by}", event.at.format("%H:%M:%S")))
}

/// Whether an event was taken back.
pub fn struck(job: &Job<'_>, event: &Envelope) -> bool {
    event.event.changes_job() && job.state.struck.contains(&event.utterance.id)
}

/// What has to be told at hand-over: what the steps found, and the troubles told beside them.
fn findings(job: &Job<'_>) -> Vec<String> {
    let found = job.state.record.findings.iter().map(|(place, _, text)| format!("{place}: {text}"));
    let told = troubles(job).map(|(place, about, text)| {
        let about = about.map(|id| format!("{}: ", job.names.part(job.state, place, id)));
        format!("{place}: {}{text}", about.unwrap_or_default())
    });
    found.chain(told).map(|text| indented(plain(&text))).collect()
}

/// The troubles told that still stand: place, part, words.
pub fn troubles<'a>(job: &'a Job<'_>) -> impl Iterator<Item = (&'a str, Option<&'a str>, &'a str)> {
    job.state.events.iter().filter(|event| !struck(job, event)).filter_map(|event| match &event.event {
        Event::Troubled { text, about } => {
            Some((event.place.as_deref().unwrap_or_default(), about.as_deref(), text.as_str()))
        }
        _ => None,
    })
}

fn reasons(job: &Job<'_>) -> Vec<String> {
    let told = |(place, step, reason): &(String, String, String)| {
        indented(plain(&format!("{place}: {} - {reason}", job.names.step(job.state, place, step))))
    };
    job.state.record.reasons.iter().map(told).collect()
}

fn fitted(job: &Job<'_>) -> Vec<String> {
    let told = |(place, part, text): &(String, String, String)| {
        indented(plain(&format!("{place}: {} {text}", job.names.part(job.state, place, part))))
    };
    job.state.record.fitted.iter().map(told).collect()
}

fn durations(job: &Job<'_>) -> Vec<String> {
    let told = |step: &times::StepTime| {
        let lasted = step.minutes().map_or_else(|| "open".to_owned(), times::spoken);
        indented(format!("{:>10}  {}", lasted, plain(&job.names.step(job.state, &step.place, &step.step))))
    };
    times::steps(job.state).iter().map(told).collect()
}

fn indented(text: String) -> String {
    format!("  {text}")
}

//! `jobs`: what jobs the book has.

use super::out::Out;
use super::{Cli, open};
use crate::book::{Book, JobLine, Query};
use crate::session::{Fault, plain};
use serde_json::{Value, json};

/// Lists them by number.
///
/// # Errors
/// A book that cannot be read; nobody reading any more.
pub fn run(cli: &Cli) -> Result<u8, Fault> {
    let lines = match open::book_to_read(cli)? {
        Some(book) => book.find(&Query::All)?,
        None => Vec::new(),
    };
    // What was said before any job was begun has no number.
    let begun: Vec<&JobLine> = lines.iter().filter(|line| line.number > 0).collect();
    let mut out = Out::new();
    if cli.place.json {
        let all: Vec<Value> = begun.iter().map(|line| as_json(line)).collect();
        out.json(&all)?;
    } else if begun.is_empty() {
        out.line("There are no jobs yet.")?;
    } else {
        begun.iter().try_for_each(|line| out.line(&row(line)))?;
    }
    Ok(0)
}

fn row(line: &JobLine) -> String {
    let opened = line.opened.format("%Y-%m-%d %H:%M");
    let stands = match line.closed {
        Some(closed) => format!("closed {}", closed.format("%Y-%m-%d %H:%M")),
        None => "open".to_owned(),
    };
    let places: Vec<String> = line
        .places
        .values()
        .map(|place| {
            let serial = place.serial.as_ref().map(|serial| format!("serial {serial}"));
            let words = [place.unit.clone(), place.corner.clone(), place.procedure.clone(), serial];
            plain(&words.into_iter().flatten().collect::<Vec<_>>().join(", "))
        })
        .collect();
    format!("{:>4}  {opened}  {stands:<23}  {}", line.number, places.join("; "))
}

fn as_json(line: &JobLine) -> Value {
    let places: serde_json::Map<String, Value> = line
        .places
        .iter()
        .map(|(id, place)| {
            let fields = json!({
                "unit": place.unit, "procedure": place.procedure, "corner": place.corner, "serial": place.serial,
            });
            (id.clone(), fields)
        })
        .collect();
    json!({
        "number": line.number, "job": line.job, "bench": line.bench, "opened": line.opened, "last": line.last,
        "closed": line.closed, "events": line.events, "pack": line.pack, "places": places,
    })
}

//! Settings side by side: found, wanted, left, and the travel counted before and after.

use super::Job;
use super::names::figure;
use crate::bench::state::{AdjusterState, Entry};
use std::collections::BTreeMap;

/// One adjuster's row.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// Its id.
    pub adjuster: String,
    /// Its unit's design name, where a value came with one.
    pub unit: Option<String>,
    /// Its settings.
    pub state: AdjusterState,
    /// What is wanted of it in words.
    pub words: Option<String>,
}

/// The rows of a place, in the card's order.
pub fn rows(job: &Job<'_>, place: &str) -> Vec<Row> {
    let Some(held) = job.state.progress.places.get(place) else { return Vec::new() };
    let units = units(job, place);
    let order = job.names.adjusters(job.state, place);
    let known = order.iter().filter_map(|id| Some((id, held.adjusters.get(id)?)));
    let others = held.adjusters.iter().filter(|(id, _)| !order.contains(id));
    known
        .chain(others)
        .map(|(id, state)| Row {
            adjuster: id.clone(),
            unit: units.get(id.as_str()).cloned(),
            state: state.clone(),
            words: job.state.record.wanted_words.get(&(place.to_owned(), id.clone())).cloned(),
        })
        .collect()
}

/// The unit that each adjuster's values were kept in.
fn units<'a>(job: &'a Job<'_>, place: &str) -> BTreeMap<&'a str, String> {
    let here = job.state.record.kept.iter().filter(|entry| entry.place == place);
    let settings = here.filter(|entry| is_setting(entry));
    settings.filter_map(|entry| Some((entry.kept.about.as_deref()?, entry.kept.unit.clone()?))).collect()
}

fn is_setting(entry: &Entry) -> bool {
    matches!(entry.kept.role.as_str(), "found" | "travel" | "travel-again" | "left")
}

/// The table as the screen has it.
pub fn shown(job: &Job<'_>, place: &str) -> Vec<String> {
    let rows = rows(job, place);
    if rows.is_empty() {
        return Vec::new();
    }
    let head = ["adjuster", "found", "wanted", "left", "travel", "travel again"].map(str::to_owned);
    let cells = rows.iter().map(|row| {
        let say = |value: Option<f64>| {
            value.map_or_else(|| "-".to_owned(), |value| figure(value, row.unit.as_deref()))
        };
        let wanted = row.words.clone().unwrap_or_else(|| say(row.state.target()));
        [
            job.names.part(job.state, place, &row.adjuster),
            say(row.state.found),
            wanted,
            say(row.state.left),
            say(row.state.travel),
            say(row.state.travel_again),
        ]
    });
    lined_up(std::iter::once(head).chain(cells).collect())
}

/// Columns as wide as their widest cell.
fn lined_up(rows: Vec<[String; 6]>) -> Vec<String> {
    let mut widths = [0; 6];
    for row in &rows {
        for (width, cell) in widths.iter_mut().zip(row) {
            *width = cell.chars().count().max(*width);
        }
    }
    rows.iter()
        .map(|row| {
            let cells = row.iter().zip(widths).map(|(cell, width)| format!("{cell:<width$}"));
            format!("  {}", cells.collect::<Vec<_>>().join("  ").trim_end())
        })
        .collect()
}

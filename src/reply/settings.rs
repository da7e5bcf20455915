//! A list of settings: one adjuster a row, found, wanted and left side by side.

use super::figure::quantity;
use super::piece::{Piece, Weight, ear};
use super::sentence::{capital, inside, list, sentence};
use super::table::aligned;
use crate::bench::{SettingRow, SettingsCard};
use crate::quantity::{Quantity, Unit, bench_figures};
use crate::rulebase::ReadBack;

/// A figure of a row, by the name of its column.
type Column = (&'static str, fn(&SettingRow) -> Option<f64>);

/// A list of settings.
pub(super) fn settings(card: &SettingsCard) -> Piece {
    let columns = columns(card.which);
    let said: Vec<String> = card.rows.iter().map(|row| sentence(&row_said(row, &columns))).collect();
    let heading = heading(card.which);
    let piece = Piece {
        say: ear(&format!("{heading}. {}", said.join(" "))),
        show: format!("{heading}\n{}", aligned(&table(card, &columns), false)),
        asks: None,
    };
    if card.asks { piece.asking(Weight::Closing, "Is that so, yes or no?") } else { piece }
}

/// What the list is called.
pub(super) fn heading(which: ReadBack) -> &'static str {
    match which {
        ReadBack::Found => "Settings as found",
        ReadBack::Wanted => "Settings wanted",
        ReadBack::Left => "Settings as left",
    }
}

/// The columns of a list, the one it is about first.
fn columns(which: ReadBack) -> Vec<Column> {
    let found: Column = ("found", |row| row.found);
    let wanted: Column = ("wanted", |row| row.wanted);
    let left: Column = ("left", |row| row.left);
    let travel: Column = ("travel", |row| row.travel);
    match which {
        ReadBack::Found => vec![found, travel],
        ReadBack::Wanted => vec![found, wanted],
        ReadBack::Left => vec![found, wanted, left, travel],
    }
}

/// One row for the ear: equal figures once ("slow rebound, found and left 14 clicks, wanted 12 clicks").
fn row_said(row: &SettingRow, columns: &[Column]) -> String {
    let mut groups: Vec<(f64, Vec<String>)> = Vec::new();
    for (name, value) in columns {
        let Some(value) = value(row).map(bench_figures) else { continue };
        match groups.iter_mut().find(|(kept, _)| *kept == value && *name != "travel") {
            Some((_, names)) => names.push((*name).to_owned()),
            None => groups.push((value, vec![(*name).to_owned()])),
        }
    }
    let mut parts: Vec<String> = groups
        .iter()
        .map(|(value, names)| format!("{} {}", list(names, "and"), figure(row, *value, names)))
        .collect();
    if parts.is_empty() && row.words.is_none() {
        parts.push("not known".to_owned());
    }
    parts.extend(row.words.as_deref().map(inside));
    format!("{}, {}", row.name, parts.join(", "))
}

/// A figure of the row with its unit's word, for the columns of these names.
fn figure(row: &SettingRow, value: f64, names: &[String]) -> String {
    match Unit::parse(&row.unit) {
        Some(Unit::PositionStep) if !names.iter().any(|name| name == "travel") => format!("position {value}"),
        Some(unit) => quantity(Quantity::new(value, unit)),
        None => format!("{value} {}", row.unit).trim_end().to_owned(),
    }
}

/// The rows for the screen: only columns that hold something.
fn table(card: &SettingsCard, columns: &[Column]) -> Vec<Vec<String>> {
    let used: Vec<&Column> =
        columns.iter().filter(|(_, value)| card.rows.iter().any(|row| value(row).is_some())).collect();
    let mut head = vec![String::new()];
    head.extend(used.iter().map(|(name, _)| (*name).to_owned()));
    let mut rows = vec![head];
    for row in &card.rows {
        let mut cells = vec![capital(&row.name)];
        cells.extend(
            used.iter()
                .map(|(name, value)| value(row).map_or("-".to_owned(), |value| cell(row, value, name))),
        );
        cells.extend(row.words.clone());
        rows.push(cells);
    }
    rows
}

/// A cell: the figure as it is said.
fn cell(row: &SettingRow, value: f64, name: &str) -> String {
    figure(row, bench_figures(value), &[name.to_owned()])
}

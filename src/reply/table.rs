//! Plain text tables and two-column blocks, aligned by spaces.

/// Rows of cells, each column as wide as its widest cell; the first column stands left, the others as `right` says.
pub(super) fn aligned(rows: &[Vec<String>], right: bool) -> String {
    let columns = rows.iter().map(Vec::len).max().unwrap_or_default();
    let width = |column: usize| {
        rows.iter()
            .filter_map(|row| row.get(column))
            .map(|cell| cell.chars().count())
            .max()
            .unwrap_or_default()
    };
    let widths: Vec<usize> = (0..columns).map(width).collect();
    let lines: Vec<String> = rows.iter().map(|row| line(row, &widths, right)).collect();
    lines.join("\n")
}

fn line(row: &[String], widths: &[usize], right: bool) -> String {
    let cells: Vec<String> = row
        .iter()
        .zip(widths)
        .enumerate()
        .map(
            |(place, (cell, width))| {
                if right && place > 0 { format!("{cell:>width$}") } else { format!("{cell:<width$}") }
            },
        )
        .collect();
    format!("  {}", cells.join("  ")).trim_end().to_owned()
}

/// The least width of a block's names, so that blocks under each other line up.
const NAMES: usize = 6;

/// Names and texts, one a line, the texts under each other. Rows without a text are left out.
pub(super) fn block(rows: &[(&str, Option<String>)]) -> String {
    let rows: Vec<Vec<String>> = rows
        .iter()
        .filter_map(|(name, text)| text.as_ref().map(|text| vec![(*name).to_owned(), text.trim().to_owned()]))
        .filter(|row| row.iter().all(|cell| !cell.is_empty()))
        .collect();
    let names = NAMES
        .max(rows.iter().filter_map(|row| row.first()).map(|name| name.chars().count()).max().unwrap_or(0));
    let lines: Vec<String> = rows.iter().map(|row| line(row, &[names, 0], false)).collect();
    lines.join("\n")
}

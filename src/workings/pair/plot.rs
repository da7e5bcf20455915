//! Traces drawn in characters, for the terminal.

use super::Trace;

/// Draws traces with a mark each (velocity across, force up), with the range of both axes written at their ends.
/// Empty without traces or for a size below 8 by 4.
#[must_use]
pub fn plot(traces: &[(char, &Trace)], width: usize, height: usize) -> String {
    let Some((across, up)) = ranges(traces).filter(|_| width >= 8 && height >= 4) else {
        return String::new();
    };
    let mut rows = vec![vec![' '; width]; height];
    let column = |v: f64| place(v, across, width);
    let row = |f: f64| height - 1 - place(f, up, height);
    axes(
        &mut rows,
        (across.0 <= 0.0 && across.1 >= 0.0).then(|| column(0.0)),
        (up.0 <= 0.0 && up.1 >= 0.0).then(|| row(0.0)),
    );
    for (mark, trace) in traces {
        for at in 0..width {
            let velocity = across.0 + (across.1 - across.0) * at as f64 / (width - 1) as f64;
            if let Some(force) = trace.force_at(velocity)
                && let Some(cell) = rows.get_mut(row(force)).and_then(|row| row.get_mut(at))
            {
                *cell = *mark;
            }
        }
    }
    let mut drawn = format!("{:.0} N\n", up.1);
    for row in rows {
        drawn.push_str(row.into_iter().collect::<String>().trim_end());
        drawn.push('\n');
    }
    drawn.push_str(&format!("{:.0} N, {:.0} to {:.0} mm/s\n", up.0, across.0, across.1));
    drawn
}

type Range = (f64, f64);

fn ranges(traces: &[(char, &Trace)]) -> Option<(Range, Range)> {
    let points = || traces.iter().flat_map(|(_, trace)| trace.points().iter());
    let range = |of: fn(&(f64, f64)) -> f64| -> Option<Range> {
        let low = points().map(of).min_by(f64::total_cmp)?;
        let high = points().map(of).max_by(f64::total_cmp)?;
        Some(if high > low { (low, high) } else { (low - 1.0, high + 1.0) })
    };
    Some((range(|point| point.0)?, range(|point| point.1)?))
}

/// The cell of a value along an axis of so many cells.
fn place(value: f64, (low, high): Range, cells: usize) -> usize {
    let share = ((value - low) / (high - low)).clamp(0.0, 1.0);
    (share * (cells - 1) as f64).round() as usize
}

fn axes(rows: &mut [Vec<char>], column: Option<usize>, row: Option<usize>) {
    for line in rows.iter_mut() {
        if let Some(cell) = column.and_then(|at| line.get_mut(at)) {
            *cell = '|';
        }
    }
    if let Some(line) = row.and_then(|at| rows.get_mut(at)) {
        line.iter_mut().for_each(|cell| *cell = if *cell == '|' { '+' } else { '-' });
    }
}

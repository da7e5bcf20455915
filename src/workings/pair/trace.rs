//! A force-velocity trace, and the CSV that a spreadsheet writes it in.
//!
//! The format: a head of two columns, each named `velocity` or `force` with its unit in brackets, such as
//! `velocity (mm/s),force (N)`; then a row a point. Commas, semicolons or tabs part the cells; with semicolons or tabs
//! a comma is a decimal comma. Lines that begin with `#` and empty lines are passed over. Compression is positive
//! velocity and force, rebound negative. Points may come in any order; several at one velocity are averaged.

use thiserror::Error;

use crate::quantity::{Dimension, Quantity, Unit};

/// Rows beyond this are refused: no dyno writes so many, and a console has to answer.
const MOST_ROWS: usize = 200_000;

/// Force in N over velocity in mm/s, in order of velocity.
#[derive(Debug, Clone, PartialEq)]
pub struct Trace {
    points: Vec<(f64, f64)>,
}

/// What is wrong with a trace's file, with its line.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[error("line {line}: {reason}")]
pub struct TraceError {
    /// The line, from 1.
    pub line: usize,
    /// What was found, and what is accepted.
    pub reason: String,
}

/// The columns of a head.
struct Head {
    split: char,
    velocity: (usize, Unit),
    force: (usize, Unit),
}

impl Trace {
    /// From points of velocity (mm/s) and force (N), in any order. `None` with fewer than two velocities, or figures
    /// that are not finite.
    #[must_use]
    pub fn new(mut points: Vec<(f64, f64)>) -> Option<Self> {
        if points.iter().any(|(v, f)| !v.is_finite() || !f.is_finite()) {
            return None;
        }
        points.sort_by(|a, b| a.0.total_cmp(&b.0));
        let mut merged: Vec<(f64, f64, f64)> = Vec::new();
        for (v, f) in points {
            match merged.last_mut() {
                Some(last) if (last.0 - v).abs() < 1e-9 => (last.1, last.2) = (last.1 + f, last.2 + 1.0),
                _ => merged.push((v, f, 1.0)),
            }
        }
        (merged.len() >= 2).then(|| Self { points: merged.into_iter().map(|(v, f, n)| (v, f / n)).collect() })
    }

    /// Reads the format above.
    ///
    /// # Errors
    /// [`TraceError`] with the line: no head, an unknown unit, a cell that is no number, too few or too many rows.
    pub fn read(text: &str) -> Result<Self, TraceError> {
        let mut lines = text
            .trim_start_matches('\u{feff}')
            .lines()
            .enumerate()
            .map(|(at, line)| (at + 1, line.trim()))
            .filter(|(_, line)| !line.is_empty() && !line.starts_with('#'));
        let wanted = "a head such as `velocity (mm/s),force (N)` is expected";
        let (line, text) = lines.next().ok_or_else(|| problem(1, format!("the file is empty; {wanted}")))?;
        let head = head(line, text)?;
        let mut points = Vec::new();
        for (line, text) in lines {
            if points.len() >= MOST_ROWS {
                return Err(problem(line, format!("more than {MOST_ROWS} rows")));
            }
            points.push(row(line, text, &head)?);
        }
        Self::new(points).ok_or_else(|| {
            problem(line, "at least two rows with different velocities are expected".to_owned())
        })
    }

    /// The points in order of velocity: mm/s, N.
    #[must_use]
    pub fn points(&self) -> &[(f64, f64)] {
        &self.points
    }

    /// Force at a velocity, straight between points; `None` outside the trace.
    #[must_use]
    pub fn force_at(&self, velocity: f64) -> Option<f64> {
        self.points.windows(2).find_map(|pair| match pair {
            [(v0, f0), (v1, f1)] if velocity >= *v0 && velocity <= *v1 => {
                Some(f0 + (f1 - f0) * (velocity - v0) / (v1 - v0))
            }
            _ => None,
        })
    }

    /// The trace with a gas force in N taken off (it pushes out, so it adds to compression and takes from rebound).
    #[must_use]
    pub fn without_gas(&self, force: f64) -> Self {
        Self { points: self.points.iter().map(|(v, f)| (*v, f - force)).collect() }
    }
}

fn problem(line: usize, reason: String) -> TraceError {
    TraceError { line, reason }
}

fn head(line: usize, text: &str) -> Result<Head, TraceError> {
    let split = ['\t', ';', ','].into_iter().find(|c| text.contains(*c)).unwrap_or(',');
    let (mut velocity, mut force) = (None, None);
    for (at, cell) in text.split(split).enumerate() {
        let cell = cell.trim().trim_matches('"');
        let (name, unit) = cell.split_once(['(', '[']).unwrap_or((cell, ""));
        let unit = unit.trim_end_matches([')', ']']).trim();
        let column = match name.trim().to_lowercase().as_str() {
            "velocity" | "speed" => Some((&mut velocity, Dimension::Speed, "mm/s")),
            "force" => Some((&mut force, Dimension::Force, "N")),
            _ => None,
        };
        if let Some((slot, dimension, usual)) = column {
            let known = Unit::parse(unit).filter(|unit| unit.dimension() == dimension);
            let known = known.ok_or_else(|| {
                problem(
                    line,
                    format!(
                        "found the unit `{unit}` for {}; write it in the head, such as `({usual})`",
                        name.trim()
                    ),
                )
            })?;
            *slot = Some((at, known));
        }
    }
    match (velocity, force) {
        (Some(velocity), Some(force)) => Ok(Head { split, velocity, force }),
        _ => Err(problem(
            line,
            format!("found `{text}`; a head such as `velocity (mm/s),force (N)` is expected"),
        )),
    }
}

fn row(line: usize, text: &str, head: &Head) -> Result<(f64, f64), TraceError> {
    let cells: Vec<&str> = text.split(head.split).map(|cell| cell.trim().trim_matches('"')).collect();
    let number = |(at, unit): (usize, Unit), to: Unit| {
        let cell = cells.get(at).copied().unwrap_or_default();
        let plain = if head.split == ',' { cell.to_owned() } else { cell.replace(',', ".") };
        let value = plain.parse::<f64>().ok().filter(|value| value.is_finite());
        let value =
            value.ok_or_else(|| problem(line, format!("found `{cell}` where a number is expected")))?;
        Quantity::new(value, unit).in_unit(to).map_err(|mismatch| problem(line, mismatch.to_string()))
    };
    Ok((number(head.velocity, Unit::MillimetrePerSecond)?, number(head.force, Unit::Newton)?))
}

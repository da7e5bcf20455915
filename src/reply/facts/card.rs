//! Facts of the unit's card: tool, torque, way, threadlocker, marks, sizes.

use super::super::figure::{limit as band, quantity, seen, way as turned};
use super::super::piece::{Piece, ear};
use super::super::sentence::{capital, clause, inside, sentence, words};
use super::super::step::with_verb;
use super::super::table::aligned;
use crate::quantity::{Limit, Quantity};
use crate::workings::adjusters::Way;

/// Words of a list of sizes for the ear.
const WORDS: usize = 25;

/// Tool, size and hold.
pub(super) fn tool(name: &str, tool: Option<&str>, size: Option<Quantity>, hold: Option<&str>) -> String {
    let tool = match (size.map(quantity), tool.map(clause)) {
        (Some(size), Some(tool)) if tool.starts_with(&size) => tool.to_owned(),
        (Some(size), Some(tool)) => format!("{size} {tool}"),
        (Some(size), None) => size,
        (None, Some(tool)) => tool.to_owned(),
        (None, None) => "the card names no tool".to_owned(),
    };
    format!("{}: {tool}.{}", capital(name), after(hold.map(|hold| with_verb("hold", hold))))
}

/// Whether another tool will do.
pub(super) fn swap(tool: &str, part: &str, verdict: &str, why: &str) -> String {
    let verdict = match verdict {
        "fits" => "yes, it fits",
        "marginal" => "only just",
        "loose" => "no, it is loose",
        other => other,
    };
    format!("{} on {}: {verdict}.{}", capital(clause(tool)), clause(part), after(Some(why.to_owned())))
}

/// How tight.
pub(super) fn torque(name: &str, limit: Option<&Limit>, nip: Option<&str>, critical: Option<&str>) -> String {
    let tight = match (limit, nip) {
        (Some(limit), _) => band(limit),
        (None, Some(nip)) => format!("a nip only, {}", inside(nip)),
        (None, None) => "the card gives no torque".to_owned(),
    };
    format!(
        "{}: {}.{}",
        capital(name),
        clause(&tight),
        after(critical.map(|why| format!("Critical, {}", inside(why))))
    )
}

/// Which way.
pub(super) fn turn(name: &str, doing: &str, way: Way, seen_from: Option<&str>) -> String {
    let doing = clause(doing);
    let doing = match doing {
        "" => String::new(),
        purpose if purpose.starts_with("to ") => format!(" {purpose}"),
        other => format!(", {other}"),
    };
    let seen = seen_from.map(|from| format!(", {}", seen(from))).unwrap_or_default();
    format!("{}: {}{doing}{seen}.", capital(name), turned(way))
}

/// Threadlocker: grade, how little and where, where never and why, open time.
pub(super) fn locker(
    name: &str,
    grade: Option<&str>,
    texts: &[Option<&str>; 2],
    open: Option<Quantity>,
) -> String {
    let Some(grade) = grade.map(clause) else { return format!("{} takes no threadlocker.", capital(name)) };
    let [put, never] = *texts;
    let strength = if grade.contains("strength") { "" } else { " strength" };
    format!(
        "{}: {grade}{strength} threadlocker.{}{}{}",
        capital(name),
        after(put.map(str::to_owned)),
        after(never.map(|never| with_verb("never", never))),
        after(open.map(|open| format!("Open time {}", quantity(open)))),
    )
}

/// What lines up with what.
pub(super) fn mark(name: &str, lines_up: &str) -> String {
    format!("{}: line up {}.", capital(name), inside(lines_up))
}

/// Where a value comes from.
pub(super) fn source(name: &str, source: &str) -> String {
    format!("{} is from {}.", capital(name), inside(source))
}

/// A rung of the ladder when something will not move.
pub(super) fn stuck(name: &str, rung: &str, last: bool) -> String {
    let stops = rung.to_lowercase().starts_with("stop");
    let end =
        if last && !stops { " That is the last thing to try. If it still will not move, stop." } else { "" };
    format!("{}. {}{end}", capital(name), sentence(rung))
}

/// A part's sizes, thread, grade and limits: each its name, its spoken figure and its shown figure.
pub(super) fn sizes(name: &str, rows: &[(String, String, String)]) -> Piece {
    if rows.is_empty() {
        return Piece::both(&format!("The card gives no sizes for {}.", clause(name)));
    }
    let mut said: Vec<String> =
        rows.iter().map(|(what, said, _)| sentence(&format!("{}, {}", clause(what), clause(said)))).collect();
    // For the ear what stands first, as much as goes into a breath; all of it is on the screen.
    let mut room = WORDS;
    said.retain(|row| {
        room = room.saturating_sub(words(&ear(row)));
        room > 0
    });
    let cells: Vec<Vec<String>> =
        rows.iter().map(|(what, _, shown)| vec![what.clone(), shown.clone()]).collect();
    Piece {
        say: ear(&format!("{}. {}", capital(name), said.join(" "))),
        show: format!("{}\n{}", capital(name), aligned(&cells, false)),
        asks: None,
    }
}

/// A sentence after another; nothing when there is none.
fn after(text: Option<String>) -> String {
    text.map(|text| format!(" {}", sentence(&text))).unwrap_or_default()
}

//! Facts of the job and its record: settings, ranges, times, the log, calculations, help.

use super::super::figure::{minutes as stretch, quantity, standing, way};
use super::super::piece::{Piece, ear};
use super::super::sentence::{capital, clause, inside, list, words};
use super::super::table::aligned;
use crate::bench::Fact;
use crate::quantity::{Quantity, Unit, bench_figures};

/// Words of a log or a help for the ear: the rest is on the screen.
const WORDS: usize = 35;
/// Phrases of a help for the ear.
const PHRASES: usize = 5;

/// Where an adjuster stood, stands, is wanted.
pub(super) fn setting(name: &str, which: &str, value: Option<Quantity>, text: Option<&str>) -> String {
    let which = match which {
        "found" | "left" => format!("as {which}"),
        other => other.to_owned(),
    };
    let figure = value.map(standing);
    let text = text.map(inside).filter(|text| !text.is_empty());
    match (figure, text) {
        (Some(figure), Some(text)) => format!("{}, {which}: {figure}, {text}.", capital(name)),
        (Some(figure), None) => format!("{}, {which}: {figure}.", capital(name)),
        (None, Some(text)) => format!("{}, {which}: {text}.", capital(name)),
        (None, None) => format!("I do not know where the {} stands, {which}.", clause(name)),
    }
}

/// All of its clicks or positions, and from where they are counted.
pub(super) fn range(fact: &Fact) -> String {
    let Fact::Range { name, first, last, unit, from, counted, only } = fact else { return String::new() };
    let unit = Unit::parse(unit).unwrap_or(Unit::One);
    let end = |value: f64| quantity(Quantity::new(value, unit));
    let span = match unit {
        Unit::PositionStep => format!("positions {} to {}", bench_figures(*first), bench_figures(*last)),
        _ => format!("{} to {}", bench_figures(*first), end(*last)),
    };
    let from = match clause(from) {
        "" => String::new(),
        convention if convention.contains(" is ") => format!(", {convention}"),
        start => format!(", counted from {start}"),
    };
    let counted =
        counted.map(|counted| format!(" Counted on this unit: {}.", end(counted))).unwrap_or_default();
    let only = only.map(|only| format!(" It turns {} only.", way(only))).unwrap_or_default();
    format!("{}: {span}{from}.{counted}{only}", capital(name))
}

/// How long so far, or to go.
pub(super) fn time(what: &str, minutes: Option<f64>, to_go: bool) -> String {
    let Some(minutes) = minutes else {
        return format!("{}: there is no end to it yet.", capital(clause(what)));
    };
    let end = if to_go { "to go" } else { "so far" };
    match minutes {
        minutes if minutes < 0.5 => format!("{}: under a minute {end}.", capital(clause(what))),
        minutes => format!("{}: {} {end}.", capital(clause(what)), stretch(minutes)),
    }
}

/// What was recorded: all of it on the screen, the latest by ear.
pub(super) fn log(rows: &[(String, String)]) -> Piece {
    if rows.is_empty() {
        return Piece::both("Nothing is recorded of that.");
    }
    let mut said: Vec<String> = Vec::new();
    for (time, what) in rows.iter().rev() {
        let line = ear(&format!("{}, {}", clause(time), clause(what)));
        if !said.is_empty() && said.iter().map(|line| words(line)).sum::<usize>() + words(&line) > WORDS {
            break;
        }
        said.insert(0, line);
    }
    let cells: Vec<Vec<String>> = rows.iter().map(|(time, what)| vec![time.clone(), what.clone()]).collect();
    Piece { say: said.join(" "), show: aligned(&cells, false), asks: None }
}

/// A calculation: its figure by ear, the whole of it on the screen.
pub(super) fn worked(name: &str, say: &str, show: &[String]) -> Piece {
    let (first, rest) = show.split_first().map_or((say, show), |(first, rest)| (first.as_str(), rest));
    let rows: Vec<String> = rest.iter().map(|line| format!("  {line}")).collect();
    let head = format!("{}: {first}", capital(clause(name)));
    Piece { say: ear(say), show: format!("{head}\n{}", rows.join("\n")).trim_end().to_owned(), asks: None }
}

/// What can be said now.
pub(super) fn help(phrases: &[String]) -> Piece {
    if phrases.is_empty() {
        return Piece::both("There is nothing to say just now.");
    }
    let few: Vec<String> = phrases.iter().take(PHRASES).cloned().collect();
    let rows: Vec<String> = phrases.iter().map(|phrase| format!("  {phrase}")).collect();
    Piece::two(&format!("You can say {}.", list(&few, "or")), format!("You can say:\n{}", rows.join("\n")))
}

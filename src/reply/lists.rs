//! Lists about the whole job: what remains, what is still open at its end.

use super::piece::{Piece, ear};
use super::sentence::{capital, clause, inside, list, sentence};

/// How many of the coming steps are named for the ear.
const NEXT: usize = 3;

/// How far the job is.
pub(super) fn remaining(steps: usize, next: &[String]) -> Piece {
    let count = match steps {
        0 => "No steps left.".to_owned(),
        1 => "1 step left.".to_owned(),
        steps => format!("{steps} steps left."),
    };
    let near: Vec<String> = next.iter().take(NEXT).cloned().collect();
    if near.is_empty() {
        return Piece::both(&count);
    }
    let rows: Vec<String> = next.iter().map(|name| format!("  {}", capital(clause(name)))).collect();
    Piece::two(
        &format!("{count} Next, {}.", list(&near, "then")),
        format!("{count} Next:\n{}", rows.join("\n")),
    )
}

/// What the bench does not know, said plainly.
pub(super) fn unknown(what: &str) -> Piece {
    let what = inside(what);
    let thing = ["a ", "an ", "any "].iter().find_map(|article| what.strip_prefix(article));
    match thing {
        Some(thing) => Piece::both(&format!("I have no {thing}.")),
        None => Piece::both(&format!("I do not know {what}.")),
    }
}

/// What is still open at the end of a job.
pub(super) fn open_ends(items: &[String]) -> Piece {
    if items.is_empty() {
        return Piece::both("Nothing is left open.");
    }
    let said: Vec<String> = items.iter().map(|item| sentence(item)).collect();
    let rows: Vec<String> = said.iter().map(|item| format!("  - {item}")).collect();
    Piece {
        say: ear(&format!("Still open. {}", said.join(" "))),
        show: format!("Still open:\n{}", rows.join("\n")),
        asks: None,
    }
}

//! Facts asked for.

mod card;
mod record;

use super::piece::Piece;
use super::sentence::sentence;
use crate::bench::Fact;

/// A fact asked for.
pub(super) fn fact(fact: &Fact) -> Piece {
    match fact {
        Fact::Sizes { name, rows } => card::sizes(name, rows),
        Fact::Log { rows } => record::log(rows),
        Fact::Worked { name, say, show, .. } => record::worked(name, say, show),
        Fact::Help { phrases } => record::help(phrases),
        Fact::Why(text) => Piece::both(text),
        other => Piece::both(&sentence(&words(other))),
    }
}

/// Facts with the same words for eye and ear.
fn words(fact: &Fact) -> String {
    match fact {
        Fact::Tool { name, tool, size, hold } => card::tool(name, tool.as_deref(), *size, hold.as_deref()),
        Fact::Swap { tool, part, verdict, why } => card::swap(tool, part, verdict, why),
        Fact::Torque { name, limit, nip, critical } => {
            card::torque(name, limit.as_ref(), nip.as_deref(), critical.as_deref())
        }
        Fact::Turn { name, doing, way, seen_from } => card::turn(name, doing, *way, seen_from.as_deref()),
        Fact::Locker { name, grade, put, never, open } => {
            card::locker(name, grade.as_deref(), &[put.as_deref(), never.as_deref()], *open)
        }
        Fact::Mark { name, lines_up } => card::mark(name, lines_up),
        Fact::Source { name, source } => card::source(name, source),
        Fact::Stuck { name, rung, last } => card::stuck(name, rung, *last),
        Fact::Setting { name, which, value, text } => record::setting(name, which, *value, text.as_deref()),
        Fact::Range { .. } => record::range(fact),
        Fact::Time { what, minutes, to_go } => record::time(what, *minutes, *to_go),
        Fact::Sizes { .. } | Fact::Log { .. } | Fact::Worked { .. } | Fact::Help { .. } | Fact::Why(_) => {
            String::new()
        }
    }
}

//! Numbers that sound alike.

use crate::check::figures::numbers_in;
use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnProcedure;
use crate::quantity::figures::sounds_like;
use crate::source::Level;

/// Two numbers in one step that sound alike.
pub static FINDING: Finding = Finding {
    name: "numbers that sound alike",
    level: Level::Doubtful,
    milder: false,
    what: "Two numbers in one step that sound alike.",
    why: "Fifteen is heard as fifty, and both stand there.",
    example: "say: Turn it fifteen clicks, then to fifty.",
    mend: "make two steps of it, or write one of the two another way",
    look: Look::Procedure(look),
};

fn look(on: &OnProcedure<'_>, sink: &mut Sink<'_>) {
    for step in on.steps {
        let texts = [&step.text, &step.amount, &step.note, &step.question];
        let mut all: Vec<f64> = texts.into_iter().flatten().flat_map(|text| numbers_in(text)).collect();
        all.extend(
            step.read
                .as_ref()
                .and_then(|read| read.limit)
                .into_iter()
                .flat_map(|limit| [limit.lo, limit.hi])
                .flatten(),
        );
        let alike = all.iter().find_map(|one| {
            all.iter().find(|other| sounds_like(*one).contains(other)).map(|other| (one, other))
        });
        if let Some((one, other)) = alike {
            sink.raise(step.at.clone(), format!("{one} and {other} sound alike"));
        }
    }
}

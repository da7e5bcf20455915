//! Script that fails.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnPack;
use crate::check::turning::made_up;
use crate::rulebase::script::{FaultKind, Kind};
use crate::source::Level;

/// An expression that fails on values that a job can have.
pub static FINDING: Finding = Finding {
    name: "script that fails",
    level: Level::Wrong,
    milder: false,
    what: "An expression that fails on values that a job can have.",
    why: "Its step is then judged without it.",
    example: "accept: value / (left(\"preload\") - 2) > 1",
    mend: "see that it holds for every value that can come",
    look: Look::Pack(look),
};

fn look(on: &OnPack<'_>, sink: &mut Sink<'_>) {
    let scripts = on.pack.scripts();
    for one in scripts.expressions() {
        let fault = made_up(on.pack, one).find_map(|(view, value)| {
            let given = match one.kind {
                Kind::Guard => scripts.guard(&one.text, &view),
                Kind::Accept => scripts.accept(&one.text, value, &view),
            };
            given.err().filter(|fault| fault.kind != FaultKind::Missing)
        });
        if let Some(fault) = fault {
            sink.raise(fault.place, fault.found);
        }
    }
}

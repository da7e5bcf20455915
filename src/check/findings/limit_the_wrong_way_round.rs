//! Limit the wrong way round.

use crate::check::finding::{Finding, Look};
use crate::check::language::has_word;
use crate::check::sink::Sink;
use crate::check::subject::OnProcedure;
use crate::rulebase::Deed;
use crate::source::Level;

/// Something of which little is good has a lower limit and no upper one.
pub static FINDING: Finding = Finding {
    name: "limit the wrong way round",
    level: Level::Doubtful,
    milder: false,
    what: "Something of which little is good has a lower limit and no upper one.",
    why: "The bent shaft passes, and the straight one is sent back.",
    example: "measure: run-out of the shaft with limit: at least 0.05 mm",
    mend: "write `at most`",
    look: Look::Procedure(look),
};

/// What should be little.
const LITTLE: [&str; 16] = [
    "run-out",
    "run out",
    "runout",
    "play",
    "backlash",
    "wear",
    "leak",
    "leakage",
    "bend",
    "lean",
    "wobble",
    "ovality",
    "taper",
    "drop",
    "loss",
    "end float",
];

fn look(on: &OnProcedure<'_>, sink: &mut Sink<'_>) {
    for step in on.steps.iter().filter(|step| step.deed == Deed::Measure) {
        let Some((read, limit)) = step.read.as_ref().and_then(|read| Some((read, read.limit?))) else {
            continue;
        };
        let texts = [step.object.as_deref(), step.text.as_deref(), Some(read.role.as_str())];
        let words = texts.into_iter().flatten().collect::<Vec<_>>().join(" ").replace("run-out", "run out");
        if limit.hi.is_none() && has_word(&words, &LITTLE) {
            let place = sink.of_step(step, "limit");
            sink.raise_for(place, format!("`{}`, of what should be little", limit.show()), "`at most`");
        }
    }
}

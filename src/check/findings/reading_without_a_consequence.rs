//! Reading without a consequence.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnProcedure;
use crate::rulebase::Deed;
use crate::source::Level;

/// A measurement has a limit, and out of it nothing follows.
pub static FINDING: Finding = Finding {
    name: "reading without a consequence",
    level: Level::Doubtful,
    milder: false,
    what: "A measurement has a limit, and out of it nothing follows.",
    why: "The technician measures again and again, or writes down what should have stopped the job.",
    example: "measure: cartridge with a limit, and neither else: nor stop:",
    mend: "add `stop:`, or `else:` with the steps that mend it",
    look: Look::Procedure(look),
};

fn look(on: &OnProcedure<'_>, sink: &mut Sink<'_>) {
    for step in on.steps.iter().filter(|step| step.deed == Deed::Measure) {
        let limited = step.read.as_ref().is_some_and(|read| read.limit.is_some()) || step.accept.is_some();
        if limited && step.stop.is_none() && step.fails.is_empty() {
            sink.raise(step.at.clone(), "out of limits, nothing follows");
        }
    }
}

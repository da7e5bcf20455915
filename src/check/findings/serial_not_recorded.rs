//! Serial not recorded.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnProcedure;
use crate::rulebase::Deed;
use crate::source::Level;

/// A procedure that never asks for the serial number.
pub static FINDING: Finding = Finding {
    name: "serial not recorded",
    level: Level::Doubtful,
    milder: false,
    what: "A procedure that never asks for the serial number.",
    why: "With two units in one job, nothing tells which is on the bench.",
    example: "no step - record: serial",
    mend: "add `- record: serial` at the beginning",
    look: Look::Procedure(look),
};

fn look(on: &OnProcedure<'_>, sink: &mut Sink<'_>) {
    let asks = on.steps.iter().any(|step| {
        step.deed == Deed::Record && step.read.as_ref().is_some_and(|read| read.role.as_str() == "serial")
    });
    if !asks {
        sink.raise(on.procedure.at.clone(), "no step records the serial number");
    }
}

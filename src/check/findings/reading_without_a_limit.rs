//! Reading without a limit.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnProcedure;
use crate::rulebase::{AdjusterKind, Deed, Step};
use crate::source::Level;

/// Something is measured, and nothing says what is good.
pub static FINDING: Finding = Finding {
    name: "reading without a limit",
    level: Level::Doubtful,
    milder: false,
    what: "Something is measured, and nothing says what is good.",
    why: "A number that is held against nothing is not looked at.",
    example: "measure: cartridge with in: mm and no limit",
    mend: "give the card a limit of that name, the step a `limit:`, or judge it with `accept:`",
    look: Look::Procedure(look),
};

fn look(on: &OnProcedure<'_>, sink: &mut Sink<'_>) {
    for step in on.steps.iter().filter(|step| step.deed == Deed::Measure) {
        let Some(read) = &step.read else { continue };
        let judged = read.limit.is_some() || step.accept.is_some();
        if !judged && !is_datum(on, step) && !is_read(on, read.role.as_str()) {
            sink.raise(step.at.clone(), "this is measured and held against nothing");
        }
    }
}

/// A length to a datum is kept to come back to: the first time. Measured again it is held against that.
fn is_datum(on: &OnProcedure<'_>, step: &Step) -> bool {
    let adjuster = step.about.as_deref().and_then(|id| on.card.adjuster(id));
    let first = on.steps.iter().find(|one| one.deed == Deed::Measure && one.about == step.about);
    adjuster.is_some_and(|one| matches!(one.kind, AdjusterKind::Screw { datum: Some(_), .. }))
        && first.is_some_and(|first| first.id == step.id)
}

/// Whether an expression reads it.
fn is_read(on: &OnProcedure<'_>, role: &str) -> bool {
    let quoted = format!("\"{role}\"");
    let own = on.steps.iter().flat_map(|step| [step.when.as_deref(), step.accept.as_deref()]).flatten();
    let files =
        on.pack.files().iter().filter(|(path, _)| path.ends_with(".rhai")).map(|(_, text)| text.as_str());
    own.chain(files).any(|text| text.contains(&quoted))
}

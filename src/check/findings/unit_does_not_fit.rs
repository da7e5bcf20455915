//! Unit does not fit.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnProcedure;
use crate::quantity::Dimension;
use crate::rulebase::{Pack, Step, Tool};
use crate::source::Level;

/// A step reads a value in a unit that its tool does not measure, or beyond what it measures.
pub static FINDING: Finding = Finding {
    name: "unit does not fit",
    level: Level::Wrong,
    milder: false,
    what: "A step reads a value in a unit that its tool does not measure, or beyond what it measures.",
    why: "The number on the tool is no answer to what is asked.",
    example: "measure: cartridge with tool: caliper and limit: 2 to 3 bar",
    mend: "mend the unit, or name the tool that measures it",
    look: Look::Procedure(look),
};

fn look(on: &OnProcedure<'_>, sink: &mut Sink<'_>) {
    for step in on.steps {
        let Some(unit) = step.read.as_ref().and_then(|read| read.unit) else { continue };
        let Some(tool) = tool(on, step) else { continue };
        let Some(measures) = measures(tool) else { continue };
        let place = if step.tool.is_some() { sink.of_step(step, "tool") } else { step.at.clone() };
        if measures != unit.dimension() {
            let found = format!("a value in {} from the {}", unit.name(), name(tool));
            sink.raise_for(place, found, format!("{measures:?}").to_lowercase());
        } else if let Some((wanted, most)) = beyond(step, tool) {
            sink.raise_for(
                place,
                format!("up to {wanted} {}, from the {}", unit.name(), name(tool)),
                format!("at most {most} {}", unit.name()),
            );
        }
    }
}

fn name(tool: &Tool) -> &str {
    tool.called.first().map_or(tool.kind.as_str(), String::as_str)
}

/// The tool that the step reads its value from.
fn tool<'a>(on: &OnProcedure<'a>, step: &Step) -> Option<&'a Tool> {
    let handled = step.about.as_deref().and_then(|id| on.card.handling(id, step.deed));
    let name = step.tool.as_deref().or_else(|| handled.and_then(|one| one.tool.as_deref()))?;
    of_name(on.pack, name)
}

fn of_name<'a>(pack: &'a Pack, name: &str) -> Option<&'a Tool> {
    pack.tools.iter().find(|tool| tool.answers_to(name))
}

/// What a tool measures: by the unit of its range, or by what it is called.
fn measures(tool: &Tool) -> Option<Dimension> {
    if let Some(range) = tool.range {
        return Some(range.unit.dimension());
    }
    let known = [
        ("caliper", Dimension::Length),
        ("micrometer", Dimension::Length),
        ("depth gauge", Dimension::Length),
        ("dial gauge", Dimension::Length),
        ("feeler", Dimension::Length),
        ("rule", Dimension::Length),
        ("thermometer", Dimension::Temperature),
        ("pressure gauge", Dimension::Pressure),
        ("torque wrench", Dimension::Torque),
    ];
    let is = |word: &str| tool.kind.contains(word) || tool.called.iter().any(|called| called.contains(word));
    known.into_iter().find(|(word, _)| is(word)).map(|(_, measures)| measures)
}

/// A limit above the tool's range: the two figures.
fn beyond(step: &Step, tool: &Tool) -> Option<(f64, f64)> {
    let limit = step.read.as_ref()?.limit?;
    let most = tool.range?.to(limit.unit).ok()?.hi?;
    let wanted = limit.hi.or(limit.lo)?;
    (wanted > most + 1e-9).then_some((wanted, most))
}

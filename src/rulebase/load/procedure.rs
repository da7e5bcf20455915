//! `procedures/*.yaml`: phases of steps.

use super::fields::Fields;
use super::form::{Form, Shape, may, must};
use super::report::Report;
use super::step::{self, STEP};
use super::world::World;
use crate::rulebase::{Phase, Procedure, Step};
use crate::source::yaml::{Key, Node};
use std::collections::BTreeMap;

/// The fields of a procedure.
pub static PROCEDURE: Form = Form {
    name: "a procedure",
    takes_deed: false,
    fields: &[
        must("procedure", Shape::Text, "the procedure's id, such as `re-spring`"),
        must("called", Shape::Texts, "spoken names, the first being the one the bench says"),
        must("unit", Shape::Text, "the id of the unit card it is for"),
        may("what", Shape::Text, "what it is for, in one line"),
        must("phases", Shape::Named(&PHASE), "its phases, each with its steps"),
        may("afterwards", Shape::Texts, "what is checked again after the first run"),
    ],
};

/// The fields of a phase that is more than a list of steps.
pub static PHASE: Form = Form {
    name: "a phase",
    takes_deed: false,
    fields: &[
        may("makes safe", Shape::Flag, "whether its steps make the unit safe and so are never skipped"),
        must("steps", Shape::Entries(&STEP), "its steps"),
    ],
};

/// Reads a procedure; none when its unit is not known or it does not say what it is.
pub(super) fn read(root: &Node, report: &Report, world: &World<'_>) -> Option<Procedure> {
    let fields = Fields::of(&PROCEDURE, root, root.span, report)?;
    let (id, unit) = (fields.text("procedure"), fields.text("unit")?);
    let card = world.card(&unit, fields.span_of("unit"), report)?;
    let phases: Vec<Phase> = fields
        .map("phases")
        .iter()
        .filter_map(|(key, node)| phase(key, node, report, &world.with(card)))
        .collect();
    let procedure = Procedure {
        id: id?,
        called: fields.texts("called"),
        unit,
        what: fields.text("what"),
        phases,
        afterwards: fields.texts("afterwards"),
        at: report.place(fields.span_of("procedure")),
    };
    colliding(&procedure, report);
    Some(procedure)
}

fn phase(key: &Key, node: &Node, report: &Report, world: &World<'_>) -> Option<Phase> {
    let (makes_safe, steps) = match node.list() {
        Some(items) => {
            let steps = items.iter().filter_map(|item| Fields::of(&STEP, item, item.span, report)).collect();
            (false, steps)
        }
        None => {
            let fields = Fields::of(&PHASE, node, key.span, report)?;
            (fields.flag("makes safe"), fields.list("steps"))
        }
    };
    let empty = node.list().or_else(|| node.get("steps")?.list()).is_some_and(<[Node]>::is_empty);
    if empty {
        report.wrong(
            key.span,
            format!("the phase `{}` has no steps", key.text),
            "a list of steps",
            "add steps, or take it out",
        );
    }
    let steps = steps.iter().filter_map(|fields| step::read(fields, &key.text, world)).collect();
    Some(Phase { id: key.text.clone(), makes_safe, steps })
}

/// Two steps with one id cannot be told apart in the record.
fn colliding(procedure: &Procedure, report: &Report) {
    let mut first: BTreeMap<&str, &Step> = BTreeMap::new();
    for step in procedure.all_steps() {
        let Some(other) = first.insert(&step.id, step) else { continue };
        let problem =
            crate::source::Problem::wrong(step.at.clone(), format!("two steps have the id `{}`", step.id))
                .expected(format!("each step its own; the first is on line {}", other.at.line))
                .mend("add `id:` with a name of its own to one of them");
        report.add(problem);
    }
}

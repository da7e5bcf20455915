//! `pack show`: a unit card or a procedure as a page in Markdown. A procedure's page has the order of the procedural data
//! module of S1000D: what is needed before (conditions, support equipment, supplies, spares, safety), the main procedure,
//! what is needed after the job; what there is none of is said.

use crate::rulebase::{AdjusterKind, Caution, Deed, Pack, Part, Procedure, Step, UnitCard};
use std::collections::BTreeSet;
use std::fmt::Write as _;

/// The pages of that name: a unit's, or those of a procedure for each unit ("re-spring", "re-spring birch-44").
pub fn pages(pack: &Pack, name: &str) -> Vec<String> {
    if let Some(card) = pack.unit(name) {
        return vec![unit(card)];
    }
    let all = pack.procedures.values().filter(|one| {
        one.id == name || [' ', '.'].iter().any(|joint| format!("{}{joint}{}", one.id, one.unit) == name)
    });
    all.filter_map(|one| Some(procedure(pack, one, pack.unit(&one.unit)?))).collect()
}

/// A procedure's page.
pub fn procedure(pack: &Pack, procedure: &Procedure, card: &UnitCard) -> String {
    let steps = procedure.all_steps();
    let mut out = format!("# {}, {}\n\n", capital(procedure.name()), card.name());
    if let Some(what) = &procedure.what {
        let _ = writeln!(out, "{what}.\n");
    }
    out += "## Preliminary requirements\n\n";
    let cautions: BTreeSet<&str> = steps.iter().flat_map(|step| &step.before).map(String::as_str).collect();
    let mut cautions: Vec<&Caution> = cautions.into_iter().filter_map(|id| pack.caution(id)).collect();
    cautions.sort_by_key(|caution| caution.signal);
    let told = cautions.iter().map(|one| format!("**{}**: {}", capital(one.signal.word()), one.full));
    section(&mut out, "Conditions", conditions(procedure, card));
    section(&mut out, "Support equipment", once(steps.iter().flat_map(|step| tools(card, step))));
    section(&mut out, "Supplies", once(steps.iter().filter_map(|step| supply(card, step))));
    section(&mut out, "Spares", once(steps.iter().filter_map(|step| spare(card, step))));
    section(&mut out, "Safety", told.collect());
    out += "## Main procedure\n\n";
    let mut number = 0;
    for phase in &procedure.phases {
        let safe = if phase.makes_safe { " (makes safe: never skipped)" } else { "" };
        let _ = writeln!(out, "### {}{safe}\n", capital(&phase.id.replace('-', " ")));
        for step in &phase.steps {
            number += 1;
            line(&mut out, pack, card, step, &format!("{number}."), 0);
        }
        out.push('\n');
    }
    section(&mut out, "Requirements after the job", procedure.afterwards.clone());
    out.trim_end().replace("### Requirements after", "## Requirements after") + "\n"
}

/// What has to hold before the work, from the steps that make safe.
fn conditions(procedure: &Procedure, card: &UnitCard) -> Vec<String> {
    let safe = procedure.phases.iter().filter(|phase| phase.makes_safe).flat_map(|phase| &phase.steps);
    safe.filter(|step| step.deed == Deed::Prove || step.question.is_some())
        .map(|step| {
            let name = step.about.as_deref().map_or("unit", |id| card.name_of(id));
            format!(
                "The {name} is proved safe: {}",
                step.question.clone().unwrap_or_else(|| sentence(card, step))
            )
        })
        .collect()
}

/// A list under a heading, or the word that there is none.
fn section(out: &mut String, heading: &str, items: Vec<String>) {
    let _ = writeln!(out, "### {heading}\n");
    if items.is_empty() {
        out.push_str("None.\n");
    }
    for item in items {
        let _ = writeln!(out, "- {item}");
    }
    out.push('\n');
}

/// Each text once, in the order in which they come.
fn once(items: impl Iterator<Item = String>) -> Vec<String> {
    let mut seen = BTreeSet::new();
    items.filter(|item| seen.insert(item.clone())).collect()
}

fn tools(card: &UnitCard, step: &Step) -> Vec<String> {
    let Some(id) = step.about.as_deref() else { return step.tool.clone().into_iter().collect() };
    let own = step.tool.clone().or_else(|| card.handling(id, step.deed)?.tool.clone());
    let turned =
        matches!(step.deed, Deed::Loosen | Deed::Tighten | Deed::Remove).then(|| card.part(id)).flatten();
    let mut all: Vec<String> = own.or_else(|| turned.and_then(size)).into_iter().collect();
    if step.deed == Deed::Tighten
        && let Some(torque) = turned.and_then(|part| part.torque)
    {
        all.push(format!("torque wrench, for {}", torque.nominal().show()));
    }
    all
}

fn size(part: &Part) -> Option<String> {
    let of = |size: crate::quantity::Quantity, what: &str| format!("{} {what}", size.show());
    let key = part.key.map(|key| of(key, "hex key"));
    part.tool.clone().or(key).or_else(|| part.across.map(|across| of(across, "spanner or socket")))
}

fn supply(card: &UnitCard, step: &Step) -> Option<String> {
    let part = card.part(step.about.as_deref()?)?;
    match step.deed {
        Deed::Threadlock => {
            part.locker.as_ref().map(|locker| format!("threadlocker, {} strength", locker.grade))
        }
        Deed::Fill => Some(part.what.clone().unwrap_or_else(|| part.name().to_owned())),
        Deed::Charge => Some("dry nitrogen".to_owned()),
        _ => None,
    }
}

fn spare(card: &UnitCard, step: &Step) -> Option<String> {
    let part = card.part(step.about.as_deref()?).filter(|_| step.deed == Deed::Replace)?;
    Some(if part.single_use { format!("{}, new each time", part.name()) } else { part.name().to_owned() })
}

/// A step with its cautions before it and what is worked when it fails under it.
fn line(out: &mut String, pack: &Pack, card: &UnitCard, step: &Step, number: &str, deep: usize) {
    let pad = "   ".repeat(deep);
    for caution in step.before.iter().filter_map(|id| pack.caution(id)) {
        let _ = writeln!(
            out,
            "{pad}   > **{}**: {}.",
            capital(caution.signal.word()),
            caution.brief.trim_end_matches('.')
        );
    }
    let _ = writeln!(out, "{pad}{number} {}{}", sentence(card, step), details(card, step));
    if let Some(guard) = &step.when {
        let _ = writeln!(out, "{pad}   Only when `{guard}`.");
    }
    if !step.fails.is_empty() {
        let _ = writeln!(out, "{pad}   If not:");
        for inner in &step.fails {
            line(out, pack, card, inner, "-", deep + 1);
        }
    }
    if let Some(stop) = &step.stop {
        let _ = writeln!(out, "{pad}   After {} times: {stop}", step.tries);
    }
}

fn details(card: &UnitCard, step: &Step) -> String {
    let part = step.about.as_deref().and_then(|id| card.part(id));
    let torque = part
        .filter(|_| step.deed == Deed::Tighten)
        .and_then(|part| part.torque.map(|torque| torque.show()).or_else(|| part.nip.clone()));
    let limit = step
        .read
        .as_ref()
        .filter(|_| step.deed != Deed::Tighten)
        .and_then(|read| read.limit)
        .map(|limit| limit.show());
    let question = step.question.clone();
    let all: Vec<String> =
        tools(card, step).into_iter().take(1).chain(torque).chain(limit).chain(step.amount.clone()).collect();
    let all = if all.is_empty() { String::new() } else { format!(" ({})", all.join("; ")) };
    question.map_or_else(|| all.clone(), |question| format!("{all} *{question}*"))
}

fn sentence(card: &UnitCard, step: &Step) -> String {
    let object =
        step.about.as_deref().map(|id| format!("the {}", card.name_of(id))).or_else(|| step.object.clone());
    step.text
        .clone()
        .unwrap_or_else(|| format!("{} {}.", capital(step.deed.as_str()), object.unwrap_or_default()))
}

/// A card's page.
pub fn unit(card: &UnitCard) -> String {
    let mut out = format!("# {}\n\n{}.\n\n", capital(card.name()), card.what.trim_end_matches('.'));
    section(
        &mut out,
        "Sizes",
        card.sizes
            .iter()
            .map(|(name, size)| format!("{}: {}", name.replace('-', " "), size.show()))
            .collect(),
    );
    out += "### Adjusters\n\n| name | what | seen | source |\n|---|---|---|---|\n";
    for one in &card.adjusters {
        let source = one.source.as_ref().or(card.source.as_ref()).map_or("", String::as_str);
        let _ = writeln!(
            out,
            "| {} | {} | {} | {source} |",
            one.name(),
            kind(&one.kind),
            card.seen_from(&one.id).unwrap_or("")
        );
    }
    out += "\n### Parts\n\n| name | thread | tool | torque | threadlocker | hold | source |\n|---|---|---|---|---|---|---|\n";
    for part in &card.parts {
        let thread = part.thread.as_ref().map_or("", |thread| thread.text.as_str());
        let torque = part.torque.map(|torque| torque.show()).or_else(|| part.nip.clone()).unwrap_or_default();
        let locker = part.locker.as_ref().map_or("", |locker| locker.grade.as_str());
        let source = part.source.as_ref().or(card.source.as_ref()).map_or("", String::as_str);
        let hold = part.hold.as_deref().unwrap_or("");
        let _ = writeln!(
            out,
            "| {} | {thread} | {} | {torque} | {locker} | {hold} | {source} |",
            part.name(),
            size(part).unwrap_or_default()
        );
    }
    out
}

fn kind(kind: &AdjusterKind) -> String {
    match kind {
        AdjusterKind::Clicker { clicks, closes } => format!("{clicks} clicks, closes {}", closes.words()),
        AdjusterKind::Ring { first, last, only, .. } => {
            let only = only.map(|way| format!(", {} only", way.words())).unwrap_or_default();
            format!("positions {first} to {last}{only}")
        }
        AdjusterKind::Screw { pitch, .. } => format!("{} a turn", pitch.show()),
        AdjusterKind::Charge { limit, at } => format!("{} at {}", limit.show(), at.show()),
    }
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

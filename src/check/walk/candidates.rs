//! Values worth trying: what the card and the expressions of a pack name, and a little to either side.

use super::digest::Eyes;
use super::hand::Node;
use crate::check::subject::OnProcedure;
use crate::rulebase::{Role, Step};
use std::collections::BTreeSet;

/// How many values are tried at one step, beside the right one.
const MOST: usize = 5;

/// Numbers and texts that stand in the expressions of a procedure and in the functions that they call.
#[derive(Debug, Clone, Default)]
pub struct Literals {
    /// Numbers, in the order of size.
    pub numbers: Vec<f64>,
    /// What the scripts can see.
    pub eyes: Eyes,
}

impl Literals {
    /// Reads them out of a procedure and the pack's functions.
    pub fn of(on: &OnProcedure<'_>) -> Self {
        let own = on.steps.iter().flat_map(|step| [step.when.as_deref(), step.accept.as_deref()]).flatten();
        let own: Vec<&str> = own.collect();
        if own.is_empty() {
            return Self::default();
        }
        let files =
            on.pack.files().iter().filter(|(path, _)| path.ends_with(".rhai")).map(|(_, text)| text.as_str());
        let (mut numbers, mut names) = (Vec::new(), BTreeSet::new());
        for text in own.into_iter().chain(files) {
            read(text, &mut numbers, &mut names);
        }
        numbers.sort_by(f64::total_cmp);
        numbers.dedup();
        Self { numbers, eyes: Eyes { names, any: true } }
    }
}

fn read(text: &str, numbers: &mut Vec<f64>, names: &mut BTreeSet<String>) {
    for line in text.lines() {
        let line = line.split("//").next().unwrap_or_default();
        for (at, piece) in line.split('"').enumerate() {
            if at % 2 == 1 {
                names.insert(piece.to_owned());
                continue;
            }
            let words = piece.split(|c: char| !c.is_alphanumeric() && c != '.' && c != '_');
            numbers.extend(
                words.filter_map(|word| word.trim_matches('.').parse::<f64>().ok()).filter(|n| n.is_finite()),
            );
        }
    }
}

/// Values to try at a step that reads a number, the likeliest first: what is waited for, what the card names, what was
/// read of the same thing before, what the expressions name.
pub fn values(on: &OnProcedure<'_>, node: &Node, step: &Step, literals: &Literals) -> Vec<f64> {
    let mut out = Vec::new();
    let about = step.about.as_deref().unwrap_or_default();
    let role = step.read.as_ref().map(|read| &read.role);
    if let Some(part) = on.part(step) {
        out.extend(part.springs.iter().map(|spring| spring.rate.value));
    }
    let limit = step.read.as_ref().and_then(|read| read.limit);
    if matches!(role, Some(Role::Found)) {
        out.extend(limit.and_then(|limit| Some((limit.hi? * 0.6).round())));
        out.extend([14.0, 2.0]);
    }
    out.extend(node.waiting.want.as_ref().map(|want| want.value));
    out.extend(limit.map(|limit| limit.nominal().value));
    if let Some(place) = node.place() {
        let same = place.readings.iter().filter(|((of, _), _)| of == about);
        out.extend(same.map(|(_, value)| *value));
    }
    let named = step.accept.is_some() || literals.eyes.any;
    if named {
        out.extend(literals.numbers.iter().flat_map(|n| [*n, n + 1.0, n - 1.0]));
    }
    out.extend([100.0, 10.0, 1.0, 0.0, 1000.0]);
    let mut seen = BTreeSet::new();
    out.retain(|value| seen.insert(value.to_bits()));
    out
}

/// Values that may turn a guard: only of readings that an expression can see.
pub fn others(on: &OnProcedure<'_>, node: &Node, step: &Step, literals: &Literals, right: f64) -> Vec<f64> {
    let Some(read) = &step.read else { return Vec::new() };
    let about = step.about.as_deref().unwrap_or_default();
    let names = &literals.eyes.names;
    let seen = step.accept.is_some()
        || names.contains(read.role.as_str())
        || (!about.is_empty()
            && names.contains(about)
            && matches!(read.role, Role::Found | Role::Travel | Role::Left));
    if !literals.eyes.any || !seen {
        return Vec::new();
    }
    // Far to both sides first: a margin worked out from several readings turns on one that is out of all proportion.
    let mut all = vec![right * 0.5, right * 2.0];
    all.extend(values(on, node, step, literals));
    all.extend([right * 0.75, right * 1.5]);
    all.retain(|value| (value - right).abs() > 1e-9);
    let keep = step_through(all.len());
    all.into_iter().enumerate().filter(|(at, _)| keep(*at)).map(|(_, value)| value).collect()
}

/// An even choice of at most `MOST` of so many.
fn step_through(len: usize) -> impl Fn(usize) -> bool {
    let stride = len.div_ceil(MOST).max(1);
    move |at| at % stride == 0 || at < 2
}

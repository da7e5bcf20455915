//! When two states of a job are the same: they differ in nothing that the steps to come, or a finding, can tell.

use super::hand::Node;
use crate::bench::state::{AdjusterState, Place, Position};
use crate::rulebase::Step;
use std::collections::BTreeSet;
use std::collections::hash_map::DefaultHasher;
use std::hash::{Hash, Hasher};

/// What the scripts of a procedure can see, so that only that is told apart.
#[derive(Debug, Clone, Default)]
pub struct Eyes {
    /// Texts that stand in its expressions and in the functions of the pack: names of parts, readings, steps.
    pub names: BTreeSet<String>,
    /// Whether there are expressions at all.
    pub any: bool,
}

impl Eyes {
    fn see(&self, about: &str, role: &str) -> bool {
        self.any && self.names.contains(role) && (about.is_empty() || self.names.contains(about))
    }
}

/// A digest of what a state is to the rest of its path. `tops` are the steps that stand in no `else`.
pub fn digest(node: &Node, tops: &[&Step], eyes: &Eyes) -> u64 {
    let mut hash = DefaultHasher::new();
    let progress = &node.state.progress;
    (progress.open, progress.paused).hash(&mut hash);
    progress.pending.as_ref().map(std::mem::discriminant).hash(&mut hash);
    node.clean.hash(&mut hash);
    if let Some(place) = node.state.place() {
        place.cursor.hash(&mut hash);
        place.went_back.hash(&mut hash);
        steps(place, tops, eyes, &mut hash);
        things(place, eyes, &mut hash);
    }
    trail(node, &mut hash);
    hash.finish()
}

fn steps(place: &Place, steps_of: &[&Step], eyes: &Eyes, hash: &mut DefaultHasher) {
    for step in steps_of {
        let closed = place.closed.contains_key(&step.id);
        closed.hash(hash);
        if closed && !eyes.any {
            continue;
        }
        if eyes.any && eyes.names.contains(&step.id) {
            place.failed.get(&step.id).hash(hash);
        }
        if !closed {
            place.failed.get(&step.id).hash(hash);
            place.out.contains(&step.id).hash(hash);
            let branching = place.branching.contains(&step.id);
            branching.hash(hash);
            if branching {
                let inner: Vec<&Step> = step.fails.iter().collect();
                steps(place, &inner, eyes, hash);
            }
        }
    }
    place.said_back.hash(hash);
}

fn things(place: &Place, eyes: &Eyes, hash: &mut DefaultHasher) {
    for (id, part) in &place.parts {
        id.hash(hash);
        (part.fitting as u8, part.disturbed, part.locked, part.clean, part.marked, part.mark_seen).hash(hash);
        (part.new, part.vented, part.safe, part.live, part.drained, part.passed).hash(hash);
    }
    for (id, known) in &place.adjusters {
        id.hash(hash);
        adjuster(known, eyes.see(id, "found") || eyes.any && eyes.names.contains(id), hash);
    }
    for ((about, role), value) in &place.readings {
        if eyes.see(about, role) {
            (about, role, value.to_bits()).hash(hash);
        }
    }
}

fn adjuster(known: &AdjusterState, exact: bool, hash: &mut DefaultHasher) {
    let there =
        [known.found, known.found_from_out, known.travel, known.travel_again, known.wanted, known.left];
    for value in there {
        if exact { value.map(f64::to_bits).hash(hash) } else { value.is_some().hash(hash) }
    }
    match known.position {
        Position::Uncounted => 0_u8.hash(hash),
        Position::Lost => 1_u8.hash(hash),
        Position::At(at) => {
            (2_u8, known.target() == Some(at), known.left == Some(at), exact.then_some(at.to_bits()))
                .hash(hash)
        }
    }
}

fn trail(node: &Node, hash: &mut DefaultHasher) {
    let trail = &node.trail;
    (&trail.apart, &trail.unlooked, &trail.uncounted, &trail.worn, &trail.dry, &trail.unsaid).hash(hash);
    (&trail.waited, &trail.said_back, &trail.told, &trail.recounted, trail.unproved).hash(hash);
    (&trail.unbled, &trail.pressed, &trail.off, &trail.bared).hash(hash);
    for ((_, part), locking) in &node.state.record.locked {
        let loose = node.place().and_then(|place| place.parts.get(part)).is_some_and(|part| part.locked);
        let gone = (node.now - locking.at).num_seconds() as f64 / 60.0;
        (part, loose && gone > locking.open).hash(hash);
    }
}

//! Which guards held where a job stands, and which were passed by.

use super::seen::Both;
use crate::bench::state::Place;
use crate::rulebase::Step;
use std::collections::BTreeMap;

/// Notes the guards of a list: a step in hand or closed applied; one that is open with the work past it did not.
pub fn note(
    steps: &[Step],
    place: &Place,
    cursor: &str,
    here: &mut bool,
    guards: &mut BTreeMap<String, Both>,
) {
    for step in steps {
        if place.branching.contains(&step.id) && !*here && !place.closed.contains_key(&step.id) {
            note(&step.fails, place, cursor, here, guards);
        }
        if step.id == cursor {
            *here = true;
        }
        if step.when.is_some() {
            let both = guards.entry(step.id.clone()).or_default();
            if step.id == cursor || place.closed.contains_key(&step.id) {
                both.yes = true;
            } else if !*here {
                both.no = true;
            }
        }
        if *here {
            return;
        }
    }
}

//! Torque out of reach.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnCard;
use crate::quantity::Unit;
use crate::source::Level;
use crate::workings::torque::wrench::{Fit, suits};

/// A torque that no torque wrench of the crib can be set to.
pub static FINDING: Finding = Finding {
    name: "torque out of reach",
    level: Level::Wrong,
    milder: false,
    what: "A torque that no torque wrench of the crib can be set to.",
    why: "It is done by feel.",
    example: "torque: 320 N.m with no wrench above 200 N.m in tools.yaml",
    mend: "mend the torque, or add a wrench whose range reaches it",
    look: Look::Card(look),
};

fn look(on: &OnCard<'_>, sink: &mut Sink<'_>) {
    let ranges = on
        .pack
        .tools
        .iter()
        .filter(|tool| tool.kind == "torque wrench")
        .filter_map(|tool| tool.range?.to(Unit::NewtonMetre).ok());
    let ranges: Vec<_> = ranges.collect();
    if ranges.is_empty() && on.pack.tools.is_empty() {
        return;
    }
    for part in &on.card.parts {
        let Some(torque) = part.torque.and_then(|limit| limit.to(Unit::NewtonMetre).ok()) else { continue };
        let aim = torque.nominal().value;
        let reached =
            ranges.iter().any(|range| range.hi.is_some_and(|hi| suits(aim, range.lo, hi, None) != Fit::No));
        if !reached {
            let place = sink.field(&on.card.at, &format!("parts/{}/torque", part.id));
            sink.raise(
                place,
                format!(
                    "no torque wrench of the crib reaches {} for the {}",
                    torque.nominal().show(),
                    part.name()
                ),
            );
        }
    }
}

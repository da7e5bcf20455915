//! What a pack gives to the ear: its talk, and the words of its units, procedures and tools.

use super::{Ear, Sort, Stock, Thing, Vocabulary};
use crate::quantity::Dimension;
use crate::rulebase::{Adjuster, AdjusterKind, Pack, Part, UnitCard};

impl Ear {
    /// An ear for a pack: compiled once, then read-only.
    #[must_use]
    pub fn new(pack: &Pack) -> Self {
        Self::build(&pack.talk, &stock(pack))
    }
}

/// What a pack gives to the ear.
#[must_use]
pub fn stock(pack: &Pack) -> Stock {
    let procedures = pack.procedures.values().flat_map(|procedure| {
        let own = procedure.id.replace('-', " ");
        let names = procedure.called.iter().map(|name| name.to_lowercase()).chain([own]);
        names.map(|name| (name, procedure.id.clone())).collect::<Vec<_>>()
    });
    let tools = pack.tools.iter().flat_map(|tool| {
        tool.called.iter().map(|name| (name.to_lowercase(), name.clone())).collect::<Vec<_>>()
    });
    Stock {
        units: pack.units.values().map(|card| vocabulary(card)).collect(),
        procedures: procedures.collect(),
        tools: tools.collect(),
    }
}

fn vocabulary(card: &UnitCard) -> Vocabulary {
    let adjusters = card.adjusters.iter().map(adjuster);
    let parts = card.parts.iter().filter(|part| card.adjuster(&part.id).is_none()).map(part);
    Vocabulary {
        unit: card.id.clone(),
        called: card.called.clone(),
        axle: card.axle.clone(),
        things: adjusters.chain(parts).collect(),
    }
}

fn adjuster(adjuster: &Adjuster) -> Thing {
    let (sort, most) = match &adjuster.kind {
        AdjusterKind::Clicker { clicks, .. } => (Sort::Clicker, Some(*clicks)),
        AdjusterKind::Ring { last, .. } => (Sort::Ring, Some(*last)),
        AdjusterKind::Screw { .. } => (Sort::Screw, None),
        AdjusterKind::Charge { .. } => (Sort::Charge, None),
    };
    Thing { id: adjuster.id.clone(), called: adjuster.called.clone(), sort, most }
}

fn part(part: &Part) -> Thing {
    // What the card gives a viscosity or a volume is a fluid.
    let figures =
        part.sizes.values().map(|size| size.unit).chain(part.limits.values().map(|limit| limit.unit));
    let fluid = figures
        .map(crate::quantity::Unit::dimension)
        .any(|kind| matches!(kind, Dimension::KinematicViscosity | Dimension::Volume));
    let level = part.called.iter().any(|name| name.ends_with("level") || name.ends_with("height"));
    let sort = match (part.springs.is_empty(), level, fluid) {
        (false, _, _) => Sort::Spring,
        (true, true, _) => Sort::Level,
        (true, false, true) => Sort::Fluid,
        (true, false, false) => Sort::Part,
    };
    Thing { id: part.id.clone(), called: part.called.clone(), sort, most: None }
}

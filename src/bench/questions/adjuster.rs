//! Questions about an adjuster: the way back, where it stood or stands, how much it has.

use crate::act::{Act, Which};
use crate::bench::deeds::unit_of;
use crate::bench::desk::Desk;
use crate::bench::state::{AdjusterState, Position};
use crate::bench::{Fact, Part, restore, settings};
use crate::quantity::Quantity;
use crate::rulebase::{Adjuster, AdjusterKind};

/// The adjuster a question is about; says so where there is none.
fn adjuster_of(desk: &mut Desk<'_>, act: &Act) -> Option<Adjuster> {
    let Some(card) = desk.card() else {
        crate::bench::entries::job::none_open(desk);
        return None;
    };
    let named = super::part::about(desk, act);
    let found = named.as_deref().and_then(|id| card.adjuster(id)).cloned();
    if found.is_none() {
        let what = named.map_or_else(
            || "which adjuster is meant".to_owned(),
            |id| format!("a setting of the {}", card.name_of(&id)),
        );
        desk.say(Part::Unknown { what });
    }
    found
}

/// How many clicks, steps or turns, and which way, to the wanted setting?
pub fn back(desk: &mut Desk<'_>, act: &Act) {
    if let Some(adjuster) = adjuster_of(desk, act) {
        restore::say(desk, &adjuster.id);
    }
}

/// Where did it stand, does it stand, was it left, was it last time, should it be?
pub fn setting(desk: &mut Desk<'_>, act: &Act) {
    let Some(adjuster) = adjuster_of(desk, act) else { return };
    let known = settings::known(desk, &adjuster.id);
    let which = act.slots.which.unwrap_or(Which::Now);
    let value = match which {
        Which::Found => known.found,
        Which::Left => known.left,
        Which::Wanted => known.target(),
        Which::Last => last_time(desk, &adjuster),
        _ => standing(&known),
    };
    let key = (desk.place_id(), adjuster.id.clone());
    let text = desk.state.record.wanted_words.get(&key).filter(|_| which == Which::Wanted).cloned();
    desk.say(Part::Fact(Fact::Setting {
        name: adjuster.name().to_owned(),
        which: word(which).to_owned(),
        value: value.map(|value| Quantity::new(value, unit_of(&adjuster))),
        text,
    }));
}

fn standing(known: &AdjusterState) -> Option<f64> {
    match known.position {
        Position::At(value) => Some(value),
        Position::Lost => None,
        Position::Uncounted => known.found,
    }
}

/// Where this serial's adjuster was left at the end of the job before this one.
fn last_time(desk: &Desk<'_>, adjuster: &Adjuster) -> Option<f64> {
    let (state, place) = desk.past.last.as_ref()?;
    let known = state.progress.places.get(place)?.adjusters.get(&adjuster.id)?;
    known.left.or(known.found)
}

fn word(which: Which) -> &'static str {
    match which {
        Which::Found => "found",
        Which::Left => "left",
        Which::Wanted => "wanted",
        Which::Last => "last time",
        _ => "now",
    }
}

/// How many clicks or positions has it, and from where is it counted?
pub fn range(desk: &mut Desk<'_>, act: &Act) {
    let Some(adjuster) = adjuster_of(desk, act) else { return };
    let known = settings::known(desk, &adjuster.id);
    let counted = known.travel_again.or(known.travel);
    let (first, last, from, only) = match &adjuster.kind {
        AdjusterKind::Clicker { clicks, .. } => (0.0, f64::from(*clicks), "full in", None),
        AdjusterKind::Ring { first, last, only, .. } => {
            (f64::from(*first), f64::from(*last), "its numbers", *only)
        }
        AdjusterKind::Screw { turns, datum, .. } => match (turns, datum) {
            (Some(turns), _) => (0.0, *turns, "full out", None),
            (None, Some(_)) | (None, None) => {
                return desk
                    .say(Part::Unknown { what: format!("all of the turns of the {}", adjuster.name()) });
            }
        },
        AdjusterKind::Charge { limit, .. } => {
            (limit.lo.unwrap_or_default(), limit.hi.unwrap_or_default(), "the gauge", None)
        }
    };
    desk.say(Part::Fact(Fact::Range {
        name: adjuster.name().to_owned(),
        first,
        last,
        unit: unit_of(&adjuster).name().to_owned(),
        from: from.to_owned(),
        counted,
        only,
    }));
}

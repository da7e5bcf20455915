//! The way back: from where an adjuster stands to its wanted setting, by a legal path.

use super::deeds::unit_of;
use super::desk::Desk;
use super::state::{AdjusterState, Position};
use super::{Fact, Part, Refusal, RestoreCard, rate, settings};
use crate::act::End;
use crate::quantity::{Limit, Quantity, Unit};
use crate::rulebase::{Adjuster, AdjusterKind, UnitCard};
use crate::workings::adjusters::{Clicker, NoPath, Path, Ring, Screw, Setting, Stop};

/// A sixth of a turn: the finest step of a screw that is counted (design, section 2).
pub const FLAT: f64 = 1.0 / 6.0;

/// Says how to bring an adjuster to its wanted setting, or why that cannot be said.
pub fn say(desk: &mut Desk<'_>, about: &str) {
    let Some(card) = desk.card() else { return };
    let part = answer(desk, &card, about);
    desk.say(part);
}

/// The way back of one adjuster, as a part of an answer.
pub fn answer(desk: &Desk<'_>, card: &UnitCard, about: &str) -> Part {
    let Some(adjuster) = card.adjuster(about) else {
        return Part::Unknown { what: format!("a setting of the {}", card.name_of(about)) };
    };
    let known = desk.place().and_then(|place| place.adjusters.get(about)).cloned().unwrap_or_default();
    let unit = unit_of(adjuster);
    let Some(wanted) = settings::target(adjuster, &known).map(|value| Quantity::new(value, unit)) else {
        return words_or_unknown(desk, adjuster, about);
    };
    match path(adjuster, &known, wanted.value) {
        Ok(path) => Part::Restore(card_of(desk, card, adjuster, &known, wanted, path)),
        Err(why) => {
            let name = adjuster.name().to_owned();
            Part::Refused(Refusal::NotASetting { name, value: wanted, why: why.to_string() })
        }
    }
}

fn words_or_unknown(desk: &Desk<'_>, adjuster: &Adjuster, about: &str) -> Part {
    let key = (desk.place_id(), about.to_owned());
    match desk.state.record.wanted_words.get(&key) {
        Some(text) => Part::Fact(Fact::Setting {
            name: adjuster.name().to_owned(),
            which: "wanted".to_owned(),
            value: None,
            text: Some(text.clone()),
        }),
        None => Part::Unknown { what: format!("where the {} stood: it was not counted", adjuster.name()) },
    }
}

/// What the path has to be, by kind. A charge has none: the gauge tells.
fn path(adjuster: &Adjuster, known: &AdjusterState, wanted: f64) -> Result<Option<Path>, NoPath> {
    let at = match known.position {
        Position::At(value) => Some(value),
        Position::Uncounted | Position::Lost => None,
    };
    match &adjuster.kind {
        AdjusterKind::Clicker { clicks, closes } => {
            let travel = known.travel_again.or(known.travel).unwrap_or(f64::from(*clicks));
            let clicker = Clicker { travel: travel as u32, closes: *closes };
            clicker.path(Setting { count: wanted, from: Stop::FullIn }).map(Some)
        }
        AdjusterKind::Ring { first, last, only, rises, wraps } => {
            let ring =
                Ring { min: *first as i32, max: *last as i32, rises: *rises, only: *only, wraps: *wraps };
            ring.path(at, wanted).map(Some)
        }
        AdjusterKind::Screw { pitch, turns, adds, .. } => {
            let pitch = pitch.in_unit(Unit::Millimetre).unwrap_or_default();
            let screw = Screw { pitch, adds: *adds, adding_lengthens: false, travel: *turns };
            screw.by_turns(at, wanted).map(Some)
        }
        AdjusterKind::Charge { .. } => Ok(None),
    }
}

fn card_of(
    desk: &Desk<'_>,
    card: &UnitCard,
    adjuster: &Adjuster,
    known: &AdjusterState,
    wanted: Quantity,
    path: Option<Path>,
) -> RestoreCard {
    let (datum, length) = match &adjuster.kind {
        AdjusterKind::Screw { datum, .. } => {
            (datum.clone(), rate::datum_length(desk, card, adjuster, wanted.value))
        }
        _ => (None, None),
    };
    let to_stop = path.as_ref().and_then(|path| path.to_stop).map(|to| (end(to.stop), to.way));
    let turn = path
        .as_ref()
        .filter(|path| path.then.amount > 0.0)
        .map(|path| (path.then.way, Quantity::new(path.then.amount, path.then.unit)));
    RestoreCard {
        name: adjuster.name().to_owned(),
        wanted,
        to_stop,
        turn,
        passes: path.map(|path| path.passes.iter().map(|at| at.unsigned_abs()).collect()).unwrap_or_default(),
        length,
        datum,
        also: also(known, wanted),
        seen_from: card.seen_from(&adjuster.id).map(str::to_owned),
        by_hand: adjuster.by_hand.clone(),
    }
}

fn end(stop: Stop) -> End {
    match stop {
        Stop::FullIn => End::FullIn,
        Stop::FullOut => End::FullOut,
    }
}

/// The number the customer counts, when it is from full out.
fn also(known: &AdjusterState, wanted: Quantity) -> Option<(Quantity, End)> {
    let travel = known.travel_again.or(known.travel)?;
    (known.wanted_from == Some(End::FullOut))
        .then(|| (Quantity::new(travel - wanted.value, wanted.unit), End::FullOut))
}

/// The band that closes the setting of an adjuster: the wanted value; a screw to within a flat of its hexagon, a
/// charge to within the card's own band.
pub fn band(desk: &Desk<'_>, card: &UnitCard, about: &str) -> Option<Limit> {
    let adjuster = card.adjuster(about)?;
    let wanted = settings::target(adjuster, &settings::known(desk, about));
    let unit = unit_of(adjuster);
    match &adjuster.kind {
        AdjusterKind::Charge { limit, .. } => {
            let (Some(wanted), Some(lo), Some(hi)) = (wanted, limit.lo, limit.hi) else {
                return Some(*limit);
            };
            Some(Limit::around(Quantity::new(wanted, unit), (hi - lo) / 2.0))
        }
        AdjusterKind::Screw { .. } => Some(Limit::around(Quantity::new(wanted?, unit), FLAT)),
        _ => Some(Limit::exactly(Quantity::new(wanted?, unit))),
    }
}

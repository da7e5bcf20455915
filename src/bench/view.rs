//! The read-only view of job and unit that scripts see.

use super::desk::Desk;
use super::flow::Judge;
use super::settings;
use super::state::{Fitting, Place, Position, State};
use crate::rulebase::script::{AdjusterView, PartView, ScriptFault, View};
use crate::rulebase::{Adjuster, Pack, UnitCard};
use chrono::{DateTime, FixedOffset};

/// Whether a guard holds.
///
/// # Errors
/// [`ScriptFault`] with the file and line where the script failed.
pub fn guard(judge: &Judge<'_>, expression: &str) -> Result<bool, ScriptFault> {
    let view = of(judge.rules, judge.state, judge.now);
    judge.rules.scripts().guard(expression, &view)
}

/// Whether a value is acceptable to a step's own expression.
///
/// # Errors
/// [`ScriptFault`] with the file and line where the script failed.
pub fn accept(desk: &Desk<'_>, expression: &str, value: Option<f64>) -> Result<bool, ScriptFault> {
    let view = of(desk.rules, &desk.state, desk.now);
    desk.rules.scripts().accept(expression, value.unwrap_or_default(), &view)
}

/// The view of the place in hand.
pub fn of(rules: &Pack, state: &State, now: DateTime<FixedOffset>) -> View {
    let Some(place) = state.place() else { return View::default() };
    let id = state.progress.current.clone().unwrap_or_default();
    let card = rules.unit(&place.unit).cloned();
    View {
        unit: place.unit.clone(),
        corner: place.corner.map(|corner| corner.as_str().to_owned()).unwrap_or_default(),
        readings: place.readings.clone(),
        failed: place.failed.clone(),
        texts: texts(state, &id),
        adjusters: card.as_deref().map(|card| adjusters(card, place)).unwrap_or_default(),
        parts: parts(state, place, &id, now),
        card,
    }
}

fn texts(state: &State, id: &str) -> std::collections::BTreeMap<String, String> {
    let here = state.record.texts.iter().filter(|((place, _), _)| place == id);
    here.map(|((_, role), text)| (role.clone(), text.clone())).collect()
}

fn adjusters(card: &UnitCard, place: &Place) -> std::collections::BTreeMap<String, AdjusterView> {
    let view = |adjuster: &Adjuster| {
        let known = place.adjusters.get(&adjuster.id).cloned().unwrap_or_default();
        AdjusterView {
            found: known.found,
            wanted: settings::target(adjuster, &known),
            travel: known.travel_again.or(known.travel),
            left: known.left,
            position: match known.position {
                Position::At(value) => Some(value),
                Position::Uncounted | Position::Lost => None,
            },
        }
    };
    card.adjusters.iter().map(|adjuster| (adjuster.id.clone(), view(adjuster))).collect()
}

fn parts(
    state: &State,
    place: &Place,
    id: &str,
    now: DateTime<FixedOffset>,
) -> std::collections::BTreeMap<String, PartView> {
    let minutes = |part: &String| {
        let locking = state.record.locked.get(&(id.to_owned(), part.clone()))?;
        Some((now - locking.at).num_milliseconds() as f64 / 60_000.0)
    };
    let view = |part: &String, known: &super::state::PartState| PartView {
        off: known.fitting == Fitting::Off,
        loose: known.fitting == Fitting::Loose,
        tight: matches!(known.fitting, Fitting::Torqued | Fitting::Nipped),
        locked: known.locked,
        locked_minutes: minutes(part).filter(|_| known.locked),
        marked: known.marked,
        clean: known.clean,
        new: known.new,
        safe: known.safe,
    };
    place.parts.iter().map(|(part, known)| (part.clone(), view(part, known))).collect()
}

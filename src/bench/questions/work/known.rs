//! Where an input is found that was not said: the unit card, the job, the tool crib.

use super::words::Words;
use crate::bench::desk::Desk;
use crate::bench::settings;
use crate::event::Kept;
use crate::quantity::{Limit, Quantity, Unit};
use crate::rulebase::talk::Asking;
use crate::rulebase::{Adjuster, AdjusterKind, Part, Spring, Tool, UnitCard};
use crate::workings::registry::Value;
use std::collections::BTreeMap;
use std::sync::Arc;

/// What is looked in.
pub struct Known<'a, 'd> {
    /// The job.
    pub desk: &'a Desk<'d>,
    /// The card of the unit in hand.
    pub card: Option<Arc<UnitCard>>,
    /// The part or adjuster that the question names, or the one in hand.
    pub about: Option<String>,
    /// Whether the question itself named it.
    pub named: bool,
    /// Values that are settled so far.
    pub given: &'a BTreeMap<String, Value>,
    /// Rates said, N/mm: they tell which spring is meant.
    pub rates: Vec<f64>,
}

/// A value with where it was found.
pub struct FoundAt {
    /// The value.
    pub value: Value,
    /// Where, for saying what an answer rests on.
    pub place: String,
}

impl Known<'_, '_> {
    /// What stands at a place of the table (`size stroke`, `part torque`, `tool crow foot`); none when it is not known.
    #[must_use]
    pub fn find(&self, path: &str) -> Option<FoundAt> {
        let (head, rest) = path.split_once(' ').unwrap_or((path, ""));
        match head {
            "size" => self.card_says(self.card.as_ref()?.sizes.get(rest).copied()?, rest),
            "part" => self.part(rest),
            "spring" => self.spring(rest),
            "adjuster" => self.adjuster(rest),
            "tool" => self.tool(rest),
            "wrench" => self.wrench(rest),
            "job" => self.job(rest),
            _ => None,
        }
    }

    /// What a function of the pack's scripts gives, in that unit; none when the pack has no such function, or what it
    /// goes by is not known yet.
    pub fn function(&self, name: &str, unit: Unit) -> Option<FoundAt> {
        let view = crate::bench::view::of(self.desk.rules, &self.desk.state, self.desk.now);
        let value = self.desk.rules.scripts().compute(name, &[], &view).ok()?;
        let place = "measured on this job".to_owned();
        Some(FoundAt { value: Quantity::new(value, unit).into(), place })
    }

    fn card_says(&self, quantity: Quantity, what: &str) -> Option<FoundAt> {
        let place = format!("{} on the card of the {}", what.replace('-', " "), self.card.as_ref()?.name());
        Some(FoundAt { value: quantity.into(), place })
    }

    /// The part meant: the one named or in hand, else the only kind of part that has such a figure.
    fn part_with<T>(&self, get: impl Fn(&Part) -> Option<T>) -> Option<(&Part, T)> {
        let card = self.card.as_deref()?;
        let own = self.about.as_deref().and_then(|about| card.part(about));
        if let Some(part) = own
            && let Some(found) = get(part)
        {
            return Some((part, found));
        }
        if own.is_some() && self.named {
            return None;
        }
        card.parts.iter().find_map(|part| Some((part, get(part)?)))
    }

    fn part(&self, field: &str) -> Option<FoundAt> {
        let own = || {
            let card = self.card.as_deref()?;
            self.about.as_deref().and_then(|about| card.part(about))
        };
        let (part, value) = match field.split_once(' ') {
            Some(("size", name)) => self.part_with(|part| part.sizes.get(name).copied())?,
            Some(("limit", name)) => {
                self.part_with(|part| part.limits.get(name).map(|limit| limit.nominal()))?
            }
            _ => {
                let part = own()?;
                if field == "thread" {
                    let place = format!("the {}'s thread on the card", part.name());
                    return Some(FoundAt { value: Value::Text(part.thread.as_ref()?.text.clone()), place });
                }
                (part, figure(part, field)?)
            }
        };
        let name = field.split(' ').next_back().unwrap_or(field).replace('-', " ");
        Some(FoundAt { value: value.into(), place: format!("the {}'s {name} on the card", part.name()) })
    }

    /// A figure of a spring: of the one whose rate was said, of the one that goes on, or of the one fitted.
    fn spring(&self, rest: &str) -> Option<FoundAt> {
        let (field, id) = rest.split_once(' ').unwrap_or((rest, ""));
        let card = self.card.as_deref()?;
        let which = matches!(id, "" | "fitted" | "other");
        let part = card.parts.iter().find(|part| !part.springs.is_empty() && (which || part.id == id))?;
        let spring = match id {
            "other" => self.other(part)?,
            "fitted" => self.fitted(part)?,
            _ => self.meant(part)?,
        };
        let value = match field {
            "rate" => Some(spring.rate),
            "free" => Some(spring.free),
            "block" => spring.block,
            "bore" => spring.bore,
            "travel" => spring.block.and_then(|block| spring.free.minus(block).ok()),
            _ => None,
        };
        let place = format!("the {} {}'s {field} on the card", spring.rate.show(), part.name());
        Some(FoundAt { value: value?.into(), place })
    }

    fn meant<'s>(&self, part: &'s Part) -> Option<&'s Spring> {
        let said = self.rates.iter().rev().find_map(|rate| of_rate(part, *rate));
        if said.is_some() || (!self.rates.is_empty() && part.springs.len() > 1) {
            return said;
        }
        self.fitted(part)
    }

    fn fitted<'s>(&self, part: &'s Part) -> Option<&'s Spring> {
        let reading = |role: &str| self.reading(&part.id, role).and_then(|rate| of_rate(part, rate));
        reading("rate").or_else(|| reading("rate-found")).or_else(|| part.springs.first())
    }

    /// The spring on the shelf that is not the fitted one.
    fn other<'s>(&self, part: &'s Part) -> Option<&'s Spring> {
        let fitted = self.fitted(part)?;
        let mut others = part.springs.iter().filter(|spring| *spring != fitted);
        let first = others.next();
        first.filter(|_| others.next().is_none())
    }

    fn adjuster(&self, field: &str) -> Option<FoundAt> {
        let card = self.card.as_deref()?;
        let own = self.about.as_deref().and_then(|about| card.adjuster(about));
        let with = |adjuster: &&Adjuster| self.of_adjuster(adjuster, field).is_some();
        let adjuster = own.filter(with).or_else(|| card.adjusters.iter().find(with))?;
        let place = format!("the {}'s {field} on the card", adjuster.name());
        Some(FoundAt { value: self.of_adjuster(adjuster, field)?, place })
    }

    fn of_adjuster(&self, adjuster: &Adjuster, field: &str) -> Option<Value> {
        let count = |count: f64, unit| Some(Value::Quantity(Quantity::new(count, unit)));
        match (&adjuster.kind, field) {
            (AdjusterKind::Clicker { clicks, .. }, "clicks") => count(f64::from(*clicks), Unit::Click),
            (AdjusterKind::Clicker { clicks, .. }, "travel") => {
                let known = settings::known(self.desk, &adjuster.id);
                count(known.travel_again.or(known.travel).unwrap_or(f64::from(*clicks)), Unit::Click)
            }
            (AdjusterKind::Ring { last, .. }, "last") => count(f64::from(*last), Unit::PositionStep),
            (AdjusterKind::Ring { first, .. }, "first") => count(f64::from(*first), Unit::PositionStep),
            (AdjusterKind::Ring { only, .. }, "only") => Some(Value::Text((*only)?.words().to_owned())),
            (AdjusterKind::Ring { rises, .. }, "rises") => Some(Value::Text(rises.words().to_owned())),
            (AdjusterKind::Screw { pitch, .. }, "pitch") => Some((*pitch).into()),
            (AdjusterKind::Charge { limit, .. }, "charge") => Some(limit.nominal().into()),
            (AdjusterKind::Charge { at, .. }, "temperature") => Some((*at).into()),
            (_, "force-per-click") => adjuster.force_per_click.map(Value::from),
            _ => None,
        }
    }

    /// The length of a tool of the crib, by kind.
    fn tool(&self, kind: &str) -> Option<FoundAt> {
        let tool = self.desk.rules.tools.iter().find(|tool| tool.kind == kind && tool.length.is_some())?;
        Some(FoundAt { value: tool.length?.into(), place: format!("the crib's {kind}") })
    }

    /// The crib's torque wrench that suits the torque: its range holds it and its calibration has not run out.
    fn wrench(&self, field: &str) -> Option<FoundAt> {
        let torque = match self.given.get("T")? {
            Value::Quantity(torque) => torque.in_unit(Unit::NewtonMetre).ok()?,
            _ => return None,
        };
        let today = self.desk.now.date_naive().to_string();
        let suits = |tool: &&Tool| {
            let holds = tool.range.is_some_and(|range| middling(range, torque));
            tool.kind == "torque wrench" && holds && tool.due.as_ref().is_none_or(|due| *due >= today)
        };
        let tool = self.desk.rules.tools.iter().find(suits)?;
        let name = tool.called.first().unwrap_or(&tool.id);
        let value = match field {
            "length" => tool.length?,
            _ => return None,
        };
        Some(FoundAt { value: value.into(), place: format!("the crib's {name}") })
    }

    fn reading(&self, about: &str, role: &str) -> Option<f64> {
        self.desk.place()?.readings.get(&(about.to_owned(), role.to_owned())).copied()
    }

    fn job(&self, field: &str) -> Option<FoundAt> {
        let card = self.card.as_deref()?;
        let quantity = match field {
            "load" => {
                let part = card.parts.iter().find(|part| !part.springs.is_empty())?;
                Quantity::new(self.reading(&part.id, "load")?, Unit::Newton)
            }
            "preload" => self.preload(card)?,
            _ => return None,
        };
        let place = if field == "preload" { "counted on this job" } else { "told on this job" };
        Some(FoundAt { value: quantity.into(), place: place.to_owned() })
    }

    /// Preload as a length: turns as they stand or were found, by the pitch.
    fn preload(&self, card: &UnitCard) -> Option<Quantity> {
        card.adjusters.iter().find_map(|adjuster| match &adjuster.kind {
            AdjusterKind::Screw { pitch, .. } => {
                let turns = settings::known(self.desk, &adjuster.id).target()?;
                Some(Quantity::new(turns * pitch.in_unit(Unit::Millimetre).ok()?, Unit::Millimetre))
            }
            _ => None,
        })
    }
}

/// An answer that the job will know from now on: what a calculation looks for among the readings of the spring. It is
/// asked for once.
#[must_use]
pub fn kept(desk: &Desk<'_>, asking: &Asking, input: &str, value: &Value) -> Option<Kept> {
    let sought = asking.input(input)?.from.iter().any(|path| path == "job load");
    let card = desk.card()?;
    let spring = card.parts.iter().find(|part| !part.springs.is_empty()).filter(|_| sought)?;
    let load = match value {
        Value::Quantity(load) => load.in_unit(Unit::Newton).ok()?,
        _ => return None,
    };
    let blank = crate::bench::entries::reading::blank("load");
    Some(Kept {
        about: Some(spring.id.clone()),
        value: Some(load),
        unit: Some(Unit::Newton.name().to_owned()),
        ..blank
    })
}

/// Whether a wrench's range holds a torque; the ends are left to a wrench that has it in its middle.
fn middling(range: Limit, torque: f64) -> bool {
    let torque = Quantity::new(torque, Unit::NewtonMetre);
    range.holds(torque).unwrap_or(false)
}

fn of_rate(part: &Part, rate: f64) -> Option<&Spring> {
    part.springs.iter().find(|spring| {
        spring.rate.in_unit(Unit::NewtonPerMillimetre).is_ok_and(|own| (own - rate).abs() < 0.05)
    })
}

fn figure(part: &Part, field: &str) -> Option<Quantity> {
    match field {
        "torque" => part.torque.map(Limit::nominal),
        "bore" => part.bore,
        "across" => part.across,
        "key" => part.key,
        "torque-high" => part
            .torque
            .and_then(|torque| Some(Quantity::new(torque.or_torque_band().hi?, torque.nominal().unit))),
        "open" => part.locker.as_ref().map(|locker| locker.open),
        _ => None,
    }
}

/// The part or adjuster that the words name: the longest spoken name that stands among them.
#[must_use]
pub fn named(card: &UnitCard, words: &Words) -> Option<String> {
    let adjusters = card.adjusters.iter().map(|adjuster| (&adjuster.id, &adjuster.called));
    let parts = card.parts.iter().map(|part| (&part.id, &part.called));
    adjusters
        .chain(parts)
        .flat_map(|(id, called)| called.iter().map(move |name| (id, name.to_lowercase())))
        .filter(|(_, name)| words.find(name).is_some())
        .max_by_key(|(_, name)| name.split(' ').count())
        .map(|(id, _)| id.clone())
}

//! A clause that reports a value: whether it is one number, in a unit that is waited for, of one part.

use super::class::Class;
use super::clauses::Clause;
use super::guard::guard;
use super::judge::{Judge, Verdict};
use super::measure;
use super::parsed::Fitting;
use super::slots::{Source, measured_in};
use crate::act::{Act, ActName, Doubt, WaitingFor};
use crate::quantity::Unit;
use crate::quantity::figures::{self, Kind};

/// A value so many times what the card gives is asked back.
const FAR: f64 = 4.0;

impl Judge<'_> {
    /// A number where a number is waited for, in words that no rule knows and that do not sound like chatter.
    pub(super) fn unclear_value(&self, clause: &Clause, source: &Source<'_>) -> bool {
        let waiting = self.line.waiting.kind;
        let fits =
            source.numbers().iter().any(|spoken| spoken.unit.is_none_or(|unit| measure::fits(unit, waiting)));
        let chatter = clause.fits.iter().any(|fit| {
            matches!(self.parsed.talk.classes.get(fit.class), Some(Class::Decline)) && fit.chance > 0.3
        });
        let first = self.parsed.tokens.get(clause.from).map_or("", |token| token.text.as_str());
        let asks = matches!(
            first,
            "what"
                | "which"
                | "how"
                | "why"
                | "where"
                | "when"
                | "who"
                | "whose"
                | "is"
                | "are"
                | "do"
                | "does"
                | "did"
                | "can"
                | "should"
                | "will"
                | "would"
        ) || guard(self.parsed, 0, self.parsed.tokens.len()).elsewhere;
        measure::is_number(waiting)
            && fits
            && !chatter
            && !asks
            && self.parsed.known(clause.from, clause.to) > 0.5
    }

    /// One number, nothing that doubts it, and the model takes the clause for a reading.
    pub(super) fn plain_value(&self, clause: &Clause, source: &Source<'_>) -> bool {
        let chance =
            self.chance(ActName::Reading, &clause.fits) + self.chance(ActName::Correct, &clause.fits);
        let chatter: f32 = clause.fits.iter().filter(|fit| !self.is_act(fit)).map(|fit| fit.chance).sum();
        source.numbers().len() == 1
            && !guard(self.parsed, clause.from, clause.to).any()
            && chance > 0.5
            && chatter < 0.2
            && clause.fits.first().is_some_and(|fit| {
                let (_, foreign) = self.parsed.foreign(clause.from, clause.to, fit.class);
                foreign == 0 || (foreign == 1 && source.numbers().iter().any(|spoken| spoken.unit.is_some()))
            })
            && self.parsed.known(clause.from, clause.to) > 0.6
    }

    pub(super) fn is_act(&self, fit: &Fitting) -> bool {
        matches!(self.parsed.talk.classes.get(fit.class), Some(Class::Act(_)))
    }

    pub(super) fn value(&self, act: Act, fit: Option<&Fitting>, source: &Source<'_>) -> Verdict {
        let score = fit.map_or(0.5, |fit| fit.score);
        let numbers = source.numbers();
        let Some(value) = act.slots.value else {
            return if act.act == ActName::Correct && source.named().is_some() {
                Verdict::Take(act, score)
            } else {
                Verdict::Ask(vec![act], Doubt::Vague)
            };
        };
        let Some(spoken) = numbers.iter().find(|one| (one.value - value).abs() < 1e-9) else {
            return Verdict::Decline;
        };
        let each = |values: &[f64]| -> Vec<Act> {
            values
                .iter()
                .map(|value| {
                    let mut one = act.clone();
                    one.slots.value = Some(*value);
                    one
                })
                .collect()
        };
        // "Fifteen, or did it say fifty".
        let other =
            self.parsed.tokens.get(source.from).is_some_and(|token| token.text == "or") && source.from > 0;
        if other {
            return Verdict::Ask(vec![act], Doubt::Number);
        }
        match spoken.kind {
            Kind::Ambiguous => return Verdict::Ask(each(&spoken.candidates), Doubt::Number),
            Kind::Vague => return Verdict::Ask(each(&spoken.candidates), Doubt::Vague),
            Kind::Sure => {}
        }
        if spoken.mended
            && spoken.unit.is_none()
            && (spoken.len > 1 || fit.is_none_or(|fit| fit.chance < 0.9))
        {
            return Verdict::Ask(vec![act], Doubt::Number);
        }
        let waiting = self.line.waiting.kind;
        match spoken.unit {
            Some(unit)
                if measure::is_number(waiting)
                    && !measure::fits(unit, waiting)
                    && source.named().is_none_or(|named| Some(named) == self.line.waiting.about) =>
            {
                return Verdict::Ask(vec![act], Doubt::Unit);
            }
            // A value that no step waits for and that no part was named for belongs nowhere yet.
            None if waiting == WaitingFor::Done && source.named().is_none() => return Verdict::Decline,
            _ if !measure::is_number(waiting) && source.named().is_none() => {
                return Verdict::Ask(vec![act], Doubt::Unit);
            }
            _ => {}
        }
        let sort = act.slots.about.as_deref().and_then(|id| self.unit.thing(id)).map(|thing| thing.sort);
        if let (Some(unit), Some(sort)) = (spoken.unit, sort)
            && !measured_in(sort, Some(unit), waiting)
            && !(measure::is_number(waiting) && measure::fits(unit, waiting))
        {
            return Verdict::Ask(vec![act], Doubt::Unit);
        }
        let counted =
            spoken.unit.map_or(matches!(waiting, WaitingFor::Clicks | WaitingFor::Position), |unit| {
                matches!(unit, "click" | "position")
            });
        if counted && value.fract() != 0.0 {
            // Clicks and positions are whole.
            return Verdict::Ask(vec![act], Doubt::Number);
        }
        let about = act.slots.about.as_deref();
        if let Some(other) = self.misheard(value, spoken.unit, about) {
            return Verdict::Ask(each(&[value, other]), Doubt::Number);
        }
        // No gauge or wrench of the bench shows several times what the card gives.
        if self.aim(spoken.unit, about).is_some_and(|aim| value > FAR * aim) {
            return Verdict::Ask(vec![act], Doubt::Number);
        }
        let most = act.slots.about.as_deref().and_then(|id| self.unit.thing(id)).and_then(|thing| thing.most);
        if most.is_some_and(|most| {
            spoken.unit.is_none_or(|unit| matches!(unit, "click" | "position"))
                && value > f64::from(most) * 2.0 + 2.0
        }) {
            return Verdict::Ask(vec![act], Doubt::Number);
        }
        let several =
            source.parts().iter().any(|ids| {
                ids.len() > 1 && act.slots.about.as_ref().is_none_or(|about| !ids.contains(about))
            }) && source.named().is_none();
        if several {
            let ids: Vec<Act> =
                source.parts().into_iter().flatten().map(|id| act.clone().about(id)).collect();
            return Verdict::Ask(ids, Doubt::Part);
        }
        if waiting == WaitingFor::YesOrNo && spoken.unit.is_none() && source.named().is_none() {
            return Verdict::Ask(vec![act], Doubt::Meaning);
        }
        Verdict::Take(act, score)
    }

    /// The value that is wanted here and sounds like the one heard ("fifty" for "fifteen"); figures are not misheard
    /// unless they came by ear.
    fn misheard(&self, value: f64, unit: Option<&str>, about: Option<&str>) -> Option<f64> {
        let waiting = self.line.waiting;
        if !waiting.ear && self.in_figures() {
            return None;
        }
        let near = |one: f64, wanted: f64| (one - wanted).abs() <= 0.1 * wanted.abs();
        let wanted = match waiting.want.as_ref().filter(|_| waiting.ear) {
            Some(want) => want.value,
            None => self.aim(unit, about)?,
        };
        figures::sounds_like(value).into_iter().find(|other| near(*other, wanted) && !near(value, wanted))
    }

    /// Whether the line's numbers are written as figures.
    fn in_figures(&self) -> bool {
        self.parsed.tokens.iter().any(|token| token.text.starts_with(|c: char| c.is_ascii_digit()))
    }

    /// What the card gives a part, in the unit said or in its own.
    fn aim(&self, unit: Option<&str>, about: Option<&str>) -> Option<f64> {
        let limit = self.unit.thing(about?)?.aim?;
        if !measure::fits(limit.unit.name(), self.line.waiting.kind) {
            return None;
        }
        let nominal = limit.nominal();
        match unit.and_then(Unit::parse) {
            Some(unit) => nominal.in_unit(unit).ok(),
            None => Some(nominal.value),
        }
    }
}

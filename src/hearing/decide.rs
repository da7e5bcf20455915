//! Take, ask or decline, by the cost of being wrong.

use super::class::Class;
use super::clauses::Clause;
use super::ear::Line;
use super::guard::guard;
use super::measure;
use super::mention::What;
use super::names::Names;
use super::parsed::{Fitting, Parsed};
use super::slots::{Source, filled};
use super::vocabulary::Vocabulary;
use crate::act::{Act, ActName, Doubt, Heard, WaitingFor};
use crate::quantity::figures::Kind;

/// The outcome for a line, and what decided it.
#[must_use]
pub fn decide(line: &Line<'_>, parsed: &Parsed<'_>, unit: &Vocabulary, names: &Names, clauses: &[Clause]) -> (Heard, String) {
    let judge = Judge { line, parsed, unit, names };
    judge.run(clauses)
}

struct Judge<'a> {
    line: &'a Line<'a>,
    parsed: &'a Parsed<'a>,
    unit: &'a Vocabulary,
    names: &'a Names,
}

/// What a clause comes to.
enum Verdict {
    Take(Act, f32),
    Ask(Vec<Act>, Doubt),
    Decline,
    Aside,
    Refuse(String),
}

impl Judge<'_> {
    fn run(&self, clauses: &[Clause]) -> (Heard, String) {
        if self.parsed.tokens.is_empty() {
            return (Heard::decline(1.0), "nothing said".to_owned());
        }
        let verdicts: Vec<Verdict> = clauses.iter().map(|clause| self.clause(clause)).collect();
        if let Some(what) = verdicts.iter().find_map(|verdict| match verdict {
            Verdict::Refuse(what) => Some(what.clone()),
            _ => None,
        }) {
            let heard = Heard { refused: Some(what.clone()), ..Heard::decline(0.9) };
            return (heard, format!("never granted: {what}"));
        }
        let mut acts = Vec::new();
        let mut sure = 1.0_f32;
        let mut doubt = None;
        let mut declined = 0;
        for verdict in verdicts {
            match verdict {
                Verdict::Take(act, score) => {
                    sure = sure.min(score);
                    acts.push(act);
                }
                Verdict::Ask(between, why) => doubt = doubt.or(Some((between, why))),
                Verdict::Decline => declined += 1,
                Verdict::Aside | Verdict::Refuse(_) => {}
            }
        }
        if let Some((between, why)) = doubt {
            let told = format!("doubt: {why:?}");
            return (Heard::ask(between, why, 0.5), told);
        }
        if acts.is_empty() {
            return (Heard::decline(0.8), "nothing that a bench can act on".to_owned());
        }
        let moves = acts.iter().any(|act| !act.act.is_question());
        if declined > 0 && moves && !acts.iter().all(|act| matches!(act.act, ActName::Note | ActName::Trouble | ActName::Pause)) {
            let loose = clauses.iter().any(|clause| {
                let guard = guard(self.parsed, clause.from, clause.to);
                self.best(clause).is_none_or(|fit| !self.is_act(fit)) && (guard.denies || guard.hedges || guard.reports)
            });
            if loose {
                return (Heard::ask(acts, Doubt::Hedged, 0.4), "a part of the line speaks against it".to_owned());
            }
        }
        merge(&mut acts);
        (Heard::take(acts, f64::from(sure)), "clear".to_owned())
    }

    fn best<'c>(&self, clause: &'c Clause) -> Option<&'c Fitting> {
        clause.fits.first()
    }

    fn is_act(&self, fit: &Fitting) -> bool {
        matches!(self.parsed.talk.classes.get(fit.class), Some(Class::Act(_)))
    }

    fn clause(&self, clause: &Clause) -> Verdict {
        let source = Source {
            line: self.parsed,
            said: self.line.said,
            from: clause.from,
            to: clause.to,
            unit: self.unit,
            waiting: self.line.waiting,
        };
        let Some(fit) = self.best(clause) else { return Verdict::Decline };
        let Some(class) = self.parsed.talk.classes.get(fit.class) else { return Verdict::Decline };
        match class {
            Class::Decline => Verdict::Decline,
            Class::Aside => Verdict::Aside,
            Class::Refuse(what) if fit.rule.is_some() => Verdict::Refuse(what.clone()),
            Class::Refuse(_) => Verdict::Decline,
            Class::Ask if fit.score > 0.45 => Verdict::Ask(Vec::new(), Doubt::Hedged),
            Class::Ask => Verdict::Decline,
            Class::Act(act) => self.act(act, fit, &source),
        }
    }

    fn act(&self, act: &Act, fit: &Fitting, source: &Source<'_>) -> Verdict {
        let act = filled(act, source);
        if fit.score < needed(act.act) || (fit.rule.is_none() && needs_rule(act.act)) {
            return if fit.score < 0.3 { Verdict::Decline } else if act.act.is_question() { Verdict::Ask(vec![act], Doubt::Meaning) } else { Verdict::Decline };
        }
        match act.act {
            ActName::Reading | ActName::Correct => self.value(act, fit, source),
            _ => self.named(act, fit, source),
        }
    }

    /// A part that is not this unit's, or a name that fits several, is asked about.
    fn named(&self, act: Act, fit: &Fitting, source: &Source<'_>) -> Verdict {
        let named = act.slots.about.is_some();
        if named && act.act != ActName::Note {
            for mention in source.mentions() {
                match &mention.what {
                    What::Foreign(_) => {
                        let words = self.parsed.text(mention.start, mention.end);
                        let near = self.names.nearest(&words);
                        return Verdict::Ask(near.map(|id| act.clone().about(id)).into_iter().collect(), Doubt::Part);
                    }
                    What::Part(ids) if ids.len() > 1 && source.named().is_none() && !matches!(act.act, ActName::Trouble) => {
                        return Verdict::Ask(ids.iter().map(|id| act.clone().about(id)).collect(), Doubt::Part);
                    }
                    _ => {}
                }
            }
        }
        Verdict::Take(act, fit.score)
    }

    fn value(&self, act: Act, fit: &Fitting, source: &Source<'_>) -> Verdict {
        let numbers = source.numbers();
        let Some(value) = act.slots.value else {
            return if act.act == ActName::Correct && source.named().is_some() {
                Verdict::Take(act, fit.score)
            } else {
                Verdict::Ask(vec![act], Doubt::Vague)
            };
        };
        let Some(spoken) = numbers.iter().find(|one| (one.value - value).abs() < 1e-9) else { return Verdict::Decline };
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
        match spoken.kind {
            Kind::Ambiguous => return Verdict::Ask(each(&spoken.candidates), Doubt::Number),
            Kind::Vague => return Verdict::Ask(each(&spoken.candidates), Doubt::Vague),
            Kind::Sure => {}
        }
        let waiting = self.line.waiting.kind;
        match spoken.unit {
            Some(unit) if measure::is_number(waiting) && !measure::fits(unit, waiting) && source.named().is_none() => {
                return Verdict::Ask(vec![act], Doubt::Unit);
            }
            None if !measure::is_number(waiting) && source.named().is_none() => {
                return Verdict::Ask(vec![act], Doubt::Unit);
            }
            _ => {}
        }
        let several = source.parts().iter().any(|ids| ids.len() > 1) && source.named().is_none();
        if several {
            let ids: Vec<Act> = source.parts().into_iter().flatten().map(|id| act.clone().about(id)).collect();
            return Verdict::Ask(ids, Doubt::Part);
        }
        if waiting == WaitingFor::YesOrNo && spoken.unit.is_none() && source.named().is_none() {
            return Verdict::Ask(vec![act], Doubt::Meaning);
        }
        Verdict::Take(act, fit.score)
    }
}

/// How sure an act must be: what changes the job needs more than a question does.
fn needed(name: ActName) -> f32 {
    match name {
        ActName::Confirm | ActName::Skip | ActName::Finish | ActName::Undo => 0.6,
        ActName::Reading | ActName::Correct | ActName::Start | ActName::Switch | ActName::Deny | ActName::Resume => 0.5,
        name if name.is_question() => 0.42,
        _ => 0.45,
    }
}

/// Acts that the model alone never decides.
fn needs_rule(name: ActName) -> bool {
    matches!(
        name,
        ActName::Confirm | ActName::Skip | ActName::Finish | ActName::Undo | ActName::Reading | ActName::Correct | ActName::Resume | ActName::Start | ActName::Switch
    )
}

/// The same act twice in a row is one.
fn merge(acts: &mut Vec<Act>) {
    acts.dedup_by(|a, b| a == b);
}

//! What a single clause comes to: an act that is sure enough, a doubt, or nothing.

use super::class::Class;
use super::clauses::Clause;
use super::costs::{most_cost, needed, needs_rule};
use super::ear::Line;
use super::guard::guard;
use super::measure;
use super::mention::What;
use super::names::Names;
use super::parsed::{Fitting, Parsed};
use super::slots::{Source, filled};
use super::vocabulary::Vocabulary;
use crate::act::{Act, ActName, Doubt, WaitingFor};

/// A line before the judge.
pub(super) struct Judge<'a> {
    pub line: &'a Line<'a>,
    pub parsed: &'a Parsed<'a>,
    pub unit: &'a Vocabulary,
    pub names: &'a Names,
}

/// What a clause comes to.
#[expect(clippy::large_enum_variant, reason = "one for each clause of a line")]
pub(super) enum Verdict {
    Take(Act, f32),
    Ask(Vec<Act>, Doubt),
    Decline,
    Aside,
    Refuse(String),
}

impl Judge<'_> {
    pub(super) fn best<'c>(&self, clause: &'c Clause) -> Option<&'c Fitting> {
        clause.fits.first()
    }

    pub(super) fn clause(&self, clause: &Clause) -> Verdict {
        let source = Source {
            line: self.parsed,
            said: self.line.said,
            from: clause.from,
            to: clause.to,
            unit: self.unit,
            waiting: self.line.waiting,
        };
        let offered = self.line.waiting.kind == WaitingFor::Tool
            && source
                .mentions()
                .any(|mention| matches!(mention.what, What::Tool(_)) || mention.spoken().is_some());
        let swap = clause.fits.iter().any(|fit| {
            fit.chance > 0.12
                && self.parsed.talk.classes.get(fit.class).and_then(Class::name) == Some(ActName::AskSwap)
        });
        match self.judge(clause, &source) {
            Verdict::Decline | Verdict::Ask(..) if offered && swap => {
                Verdict::Take(filled(&Act::new(ActName::AskSwap), &source), 0.6)
            }
            Verdict::Decline if self.unclear_value(clause, &source) => {
                let act = filled(&Act::new(ActName::Reading), &source);
                if self.plain_value(clause, &source) {
                    return self.value(act, clause.fits.first(), &source);
                }
                Verdict::Ask(vec![act], Doubt::Vague)
            }
            verdict => verdict,
        }
    }

    pub(super) fn judge(&self, clause: &Clause, source: &Source<'_>) -> Verdict {
        let Some(fit) = self.best(clause) else { return Verdict::Decline };
        let Some(class) = self.parsed.talk.classes.get(fit.class) else { return Verdict::Decline };
        match class {
            Class::Decline => Verdict::Decline,
            Class::Aside => Verdict::Aside,
            Class::Refuse(what) if fit.rule.is_some() => Verdict::Refuse(what.clone()),
            Class::Refuse(_) => Verdict::Decline,
            Class::Ask if fit.score > 0.45 => Verdict::Ask(Vec::new(), Doubt::Hedged),
            Class::Ask => Verdict::Decline,
            Class::Act(act) => self.act(act, fit, &clause.fits, source),
        }
    }

    /// Whether a class stands well before every other one, and before chatter.
    pub(super) fn leads(&self, fit: &Fitting, fits: &[Fitting]) -> bool {
        let name = |fit: &Fitting| self.parsed.talk.classes.get(fit.class).and_then(Class::name);
        let own = name(fit);
        let sum: f32 = fits.iter().filter(|other| name(other) == own).map(|other| other.chance).sum();
        let next =
            fits.iter().filter(|other| name(other) != own).map(|other| other.chance).fold(0.0, f32::max);
        sum >= 0.28 && sum >= 1.8 * next
    }

    pub(super) fn act(
        &self,
        act: &Act,
        fit: &Fitting,
        clause_fits: &[Fitting],
        source: &Source<'_>,
    ) -> Verdict {
        let act = filled(act, source);
        let about_this = !guard(self.parsed, 0, self.parsed.tokens.len()).elsewhere;
        let free = matches!(
            act.act,
            ActName::Note
                | ActName::Trouble
                | ActName::Pause
                | ActName::Skip
                | ActName::Again
                | ActName::Resume
                | ActName::By
                | ActName::Help
        );
        if !about_this && !free {
            return Verdict::Decline;
        }
        let supposed = source.line.text(source.from, source.to);
        let supposed = format!(" {supposed} ");
        if act.act == ActName::Trouble && (supposed.contains(" if ") || supposed.contains(" would have ")) {
            return Verdict::Ask(vec![act], Doubt::Hedged);
        }
        let needs = matches!(act.act, ActName::AskSwap | ActName::AskWork | ActName::Again | ActName::Pause);
        if needs
            && fit.rule.is_none_or(|(_, cost)| cost > 1.2)
            && fit.chance < 0.72
            && self.line.waiting.kind != WaitingFor::Tool
        {
            return if fit.chance > 0.4 && fit.score > 0.3 {
                Verdict::Ask(vec![act], Doubt::Meaning)
            } else {
                Verdict::Decline
            };
        }
        if let Some(verdict) = self.out_of_place(&act, fit, source) {
            return verdict;
        }
        let lead = self.leads(fit, clause_fits);
        let plain = !guard(self.parsed, source.from, source.to).any();
        let certain = plain && fit.chance >= 0.88 && self.parsed.known(source.from, source.to) > 0.85;
        let too_loose =
            fit.rule.is_some_and(|(_, cost)| cost > most_cost(act.act) && !(certain && cost <= 1.0));
        let no_rule = fit.rule.is_none()
            && needs_rule(act.act)
            && !(certain && fit.chance >= 0.94 && act.act != ActName::Switch && act.act != ActName::Confirm);
        if act.act == ActName::Deny && guard(self.parsed, source.from, source.to).reports {
            return Verdict::Decline;
        }
        let part = source.mentions().any(|mention| matches!(mention.what, What::Part(_) | What::Foreign(_)));
        if act.act.is_question() && !part && fit.rule.is_none_or(|(_, cost)| cost > 0.8) && fit.chance < 0.76
        {
            return if lead { Verdict::Ask(vec![act], Doubt::Meaning) } else { Verdict::Decline };
        }
        let asks = act.act.is_question() && lead && self.parsed.known(source.from, source.to) > 0.75;
        if too_loose || (fit.score < needed(act.act) && !asks) || no_rule {
            return if fit.score < 0.3 {
                Verdict::Decline
            } else if act.act.is_question() {
                Verdict::Ask(vec![act], Doubt::Meaning)
            } else {
                Verdict::Decline
            };
        }
        let tight = |word: &str| matches!(word, "tight" | "snug" | "nipped" | "tightened");
        if act.act == ActName::Confirm
            && measure::is_number(self.line.waiting.kind)
            && self
                .parsed
                .tokens
                .get(source.from..source.to)
                .unwrap_or_default()
                .iter()
                .any(|token| tight(&token.text))
        {
            // Tight is no value: the value is what the step waits for.
            return Verdict::Ask(vec![act], Doubt::Hedged);
        }
        match act.act {
            ActName::Reading | ActName::Correct => self.value(act, Some(fit), source),
            _ => self.named(act, fit, source),
        }
    }

    /// A part that is not this unit's, or a name that fits several, is asked about.
    pub(super) fn named(&self, act: Act, fit: &Fitting, source: &Source<'_>) -> Verdict {
        let two_sides = source.mentions().any(|mention| mention.what == What::Corner(None));
        if two_sides && matches!(act.act, ActName::Switch | ActName::Start) {
            return Verdict::Ask(vec![act], Doubt::Side);
        }
        let set = |id: &str| self.unit.thing(id).is_none_or(|thing| thing.sort.is_adjusted());
        let no_setting = act.act == ActName::AskSetting && !act.slots.about.as_deref().is_some_and(set);
        if no_setting && source.named().is_none() && act.slots.about.is_some() {
            return Verdict::Decline;
        }
        let elsewhere = source.mentions().any(|mention| matches!(mention.what, What::Foreign(_)));
        let named = act.slots.about.is_some() || (elsewhere && act.act.is_question());
        if named && act.act != ActName::Note {
            for mention in source.mentions() {
                match &mention.what {
                    What::Foreign(_) => {
                        let words = self.parsed.text(mention.start, mention.end);
                        let near = self.names.nearest(&words);
                        return Verdict::Ask(
                            near.map(|id| act.clone().about(id)).into_iter().collect(),
                            Doubt::Part,
                        );
                    }
                    What::Part(ids)
                        if ids.len() > 1
                            && source.named().is_none()
                            && !matches!(act.act, ActName::Trouble) =>
                    {
                        return Verdict::Ask(
                            ids.iter().map(|id| act.clone().about(id)).collect(),
                            Doubt::Part,
                        );
                    }
                    _ => {}
                }
            }
        }
        Verdict::Take(act, fit.score)
    }
}

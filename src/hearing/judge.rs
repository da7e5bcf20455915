//! What a single clause comes to: an act that is sure enough, a doubt, or nothing.

use super::class::Class;
use super::clauses::Clause;
use super::costs::{claims, enough, likely, most_cost, needed, needs_rule};
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
                let corrects =
                    self.chance(ActName::Correct, &clause.fits) > self.chance(ActName::Reading, &clause.fits);
                let name = if corrects { ActName::Correct } else { ActName::Reading };
                let act = filled(&Act::new(name), &source);
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
            Class::Aside if fit.rule.is_some() || fit.chance > 0.4 => Verdict::Aside,
            Class::Aside => Verdict::Decline,
            Class::Refuse(what) if fit.rule.is_some() => Verdict::Refuse(what.clone()),
            Class::Refuse(_) => Verdict::Decline,
            Class::Ask if fit.score > 0.45 => Verdict::Ask(Vec::new(), Doubt::Hedged),
            Class::Ask => Verdict::Decline,
            Class::Act(act) if self.dictated(act.act, source) => {
                Verdict::Take(filled(&Act::new(ActName::Note), source), fit.score)
            }
            Class::Act(act) => self.act(act, fit, &clause.fits, source),
        }
    }

    /// Whether a clause begins by saying that it is to be written down: then what it tells is a note and no more.
    fn dictated(&self, name: ActName, source: &Source<'_>) -> bool {
        let cue = self.parsed.first("write-down", source.from, source.to);
        matches!(name, ActName::Want | ActName::Trouble | ActName::Fitted)
            && cue.is_some_and(|(start, end)| start <= source.from + 1 && end < source.to)
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

    /// The chance of an act, whatever slots its classes fix.
    pub(super) fn chance(&self, name: ActName, fits: &[Fitting]) -> f32 {
        let of = |fit: &&Fitting| self.parsed.talk.classes.get(fit.class).and_then(Class::name) == Some(name);
        fits.iter().filter(of).map(|fit| fit.chance).sum()
    }

    /// Whether likeness alone decides: nothing speaks against the act, and at most one word is strange to it.
    pub(super) fn certain(&self, act: &Act, fits: &[Fitting], source: &Source<'_>) -> bool {
        let guard = guard(self.parsed, source.from, source.to);
        let against = match act.act {
            ActName::Deny | ActName::Correct => guard.hedges || guard.asks,
            name if claims(name) => guard.any(),
            _ => false,
        };
        let (_, foreign) =
            fits.first().map_or((0, 0), |fit| self.parsed.foreign(source.from, source.to, fit.class));
        let chance = self.chance(act.act, fits);
        let sure = chance >= enough(act.act) || (chance >= likely(act.act) && self.unopposed(act.act, fits));
        // Many words that end in a pause are hardly only a pause.
        let strange = match act.act {
            ActName::Pause if source.to - source.from > 6 => 0,
            ActName::Finish | ActName::Skip | ActName::Resume | ActName::Switch => 0,
            _ => 1,
        };
        !against && foreign <= strange && sure
    }

    /// Whether nothing is likely that would make the act a mistake: chatter or doubt, and for what changes the job a
    /// question or a denial.
    fn unopposed(&self, name: ActName, fits: &[Fitting]) -> bool {
        let other = |fit: &&Fitting| match self.parsed.talk.classes.get(fit.class) {
            Some(Class::Act(act)) => {
                !name.is_question() && act.act != name && (act.act == ActName::Deny || act.act.is_question())
            }
            _ => true,
        };
        fits.iter().filter(other).map(|fit| fit.chance).sum::<f32>() < 0.12
    }

    pub(super) fn act(
        &self,
        act: &Act,
        fit: &Fitting,
        clause_fits: &[Fitting],
        source: &Source<'_>,
    ) -> Verdict {
        let act = filled(act, source);
        if let Some(verdict) = self.of_other_matters(&act, source) {
            return verdict;
        }
        let supposed = source.line.text(source.from, source.to);
        let supposed = format!(" {supposed} ");
        if act.act == ActName::Trouble && (supposed.contains(" if ") || supposed.contains(" would have ")) {
            return Verdict::Ask(vec![act], Doubt::Hedged);
        }
        if let Some(verdict) = self.questioned(&act, source) {
            return verdict;
        }
        if let Some(verdict) = self.out_of_place(&act, fit, clause_fits, source) {
            return verdict;
        }
        let lead = self.leads(fit, clause_fits);
        let certain = self.certain(&act, clause_fits, source);
        let too_loose = fit.rule.is_some_and(|(_, cost)| cost > most_cost(act.act)) && !certain;
        let no_rule = fit.rule.is_none() && needs_rule(act.act) && !certain;
        if act.act == ActName::Deny && guard(self.parsed, source.from, source.to).reports {
            return Verdict::Decline;
        }
        let part = source.mentions().any(|mention| matches!(mention.what, What::Part(_) | What::Foreign(_)));
        if act.act.is_question() && !part && !certain && fit.rule.is_none_or(|(_, cost)| cost > 0.8) {
            return if lead { Verdict::Ask(vec![act], Doubt::Meaning) } else { Verdict::Decline };
        }
        let asks = act.act.is_question() && lead && self.parsed.known(source.from, source.to) > 0.75;
        if too_loose || (fit.score < needed(act.act) && !asks && !certain) || no_rule {
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

    /// A line about other matters is no concern of the job; a note or a trouble may speak of them where it names the unit.
    fn of_other_matters(&self, act: &Act, source: &Source<'_>) -> Option<Verdict> {
        if !guard(self.parsed, 0, self.parsed.tokens.len()).elsewhere {
            return None;
        }
        let (from, to) = (0, self.parsed.tokens.len());
        let ours = self.parsed.mentions.iter().any(|mention| matches!(mention.what, What::Part(_)))
            || self.parsed.has("complaint", from, to)
            || self.parsed.has("damage", from, to);
        match act.act {
            ActName::Pause => None,
            ActName::Note if ours => None,
            ActName::Note => Some(Verdict::Ask(vec![act.clone()], Doubt::Meaning)),
            ActName::Trouble if source.mentions().any(|mention| matches!(mention.what, What::Part(_))) => {
                None
            }
            ActName::Resume | ActName::Skip | ActName::By | ActName::Again | ActName::Help => {
                guard(self.parsed, source.from, source.to).elsewhere.then_some(Verdict::Decline)
            }
            _ => Some(Verdict::Decline),
        }
    }

    /// What claims a state or a value and is put as a question, or denied twice over, claims nothing.
    fn questioned(&self, act: &Act, source: &Source<'_>) -> Option<Verdict> {
        let here = guard(self.parsed, source.from, source.to);
        let claims = claims(act.act) || act.act == ActName::Deny;
        let closes = matches!(act.act, ActName::Finish | ActName::Skip);
        if here.inverted && claims {
            return Some(Verdict::Decline);
        }
        if claims && self.depends(source) {
            return Some(Verdict::Decline);
        }
        if act.act == ActName::Confirm && self.may_deny(source) {
            return Some(Verdict::Ask(vec![act.clone()], Doubt::Hedged));
        }
        let doubled = here.doubled && matches!(act.act, ActName::Confirm | ActName::Deny);
        let told = act.act == ActName::Confirm && guard(self.parsed, 0, self.parsed.tokens.len()).reports;
        (doubled || told || (here.asks && (claims || closes)))
            .then(|| Verdict::Ask(vec![act.clone()], Doubt::Hedged))
    }

    /// Whether a clause hangs on another ("before I can call it done").
    fn depends(&self, source: &Source<'_>) -> bool {
        // The joining word stands first, or a word or two before where the clause was cut.
        let first = source.from.saturating_sub(2);
        let before = self.parsed.tokens.get(first..=source.from).unwrap_or_default();
        before.iter().enumerate().any(|(n, token)| {
            let cut = before
                .get(n..before.len() - 1)
                .unwrap_or_default()
                .iter()
                .any(|token| token.mark != super::token::Mark::None);
            !cut && matches!(
                token.text.as_str(),
                "before" | "until" | "till" | "unless" | "if" | "when" | "once"
            )
        })
    }

    /// Whether a word of a clause may have been a denial ("its knot on"), or the last one the number that is waited for.
    fn may_deny(&self, source: &Source<'_>) -> bool {
        let tokens = self.parsed.tokens.get(source.from..source.to).unwrap_or_default();
        let words = &self.parsed.talk.words;
        let heard = |token: &super::token::Token| {
            let said = token.was.as_ref().unwrap_or(&token.text);
            words.heard.get(said).is_some_and(|list| list.iter().any(|word| words.denials.contains(word)))
        };
        let number = measure::is_number(self.line.waiting.kind)
            && tokens.last().is_some_and(|token| {
                matches!(token.text.as_str(), "to" | "too" | "for" | "ate" | "won" | "tree")
            });
        number || tokens.iter().any(heard)
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
        let named =
            act.slots.about.is_some() || act.act == ActName::Confirm || (elsewhere && act.act.is_question());
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

//! Take, ask or decline a whole line, by the cost of being wrong.

use super::class::Class;
use super::clauses::Clause;
use super::costs::claims;
use super::ear::Line;
use super::guard::guard;
use super::judge::{Judge, Verdict};
use super::measure;
use super::mention::What;
use super::merge::{merge, several_values, spells_out};
use super::names::Names;
use super::parsed::Parsed;
use super::vocabulary::Vocabulary;
use crate::act::{Act, ActName, Doubt, Heard, Outcome, WaitingFor};

/// The outcome for a line, and what decided it.
#[must_use]
pub fn decide(
    line: &Line<'_>,
    parsed: &Parsed<'_>,
    unit: &Vocabulary,
    names: &Names,
    clauses: &[Clause],
) -> (Heard, String) {
    let judge = Judge { line, parsed, unit, names };
    judge.run(clauses)
}

/// What the clauses come to together.
#[derive(Default)]
pub(super) struct Taken {
    pub(super) acts: Vec<Act>,
    /// For each act, whether it stands on few words that no rule knows.
    pub(super) passing: Vec<bool>,
    sure: f32,
    weight: f32,
    beside: f32,
    pub(super) against: bool,
    numbers: bool,
    unexplained: bool,
    /// A part of the line says that something was wrong.
    pub(super) wrong: bool,
    /// How many clauses said done, or not done.
    said: usize,
    /// Something was said beside the acts.
    more: bool,
    doubt: Option<(Vec<Act>, Doubt)>,
}

impl Judge<'_> {
    pub(super) fn run(&self, clauses: &[Clause]) -> (Heard, String) {
        if self.parsed.tokens.is_empty() {
            return (Heard::decline(1.0), "nothing said".to_owned());
        }
        if self.line.waiting.kind == WaitingFor::Text
            && let Some(note) = self.free_text(clauses)
        {
            return note;
        }
        let verdicts: Vec<Verdict> = clauses.iter().map(|clause| self.clause(clause)).collect();
        if let Some(what) = verdicts.iter().find_map(|verdict| match verdict {
            Verdict::Refuse(what) => Some(what.clone()),
            _ => None,
        }) {
            let heard = Heard { refused: Some(what.clone()), ..Heard::decline(0.9) };
            return (heard, format!("never granted: {what}"));
        }
        let mut taken = Taken { sure: 1.0, ..Taken::default() };
        for (clause, verdict) in clauses.iter().zip(verdicts) {
            self.gather(&mut taken, clause, verdict);
        }
        let (heard, told) = self.outcome(taken);
        let waits = !matches!(self.line.waiting.kind, WaitingFor::Nothing | WaitingFor::Text);
        if heard.outcome == Outcome::Decline
            && heard.refused.is_none()
            && waits
            && (self.opens_with_doubt() || self.doubts(clauses))
        {
            return (Heard::ask(Vec::new(), Doubt::Hedged, 0.4), "it begins with a doubt".to_owned());
        }
        (heard, told)
    }

    pub(super) fn answers(&self) -> bool {
        self.parsed.tokens.iter().any(|token| matches!(token.text.as_str(), "yes" | "no"))
    }

    /// Whether the line doubts something that it may well say of the step.
    fn doubts(&self, clauses: &[Clause]) -> bool {
        let whole = guard(self.parsed, 0, self.parsed.tokens.len());
        let about = |clause: &Clause| {
            let asks: f32 = clause
                .fits
                .iter()
                .filter(|fit| matches!(self.parsed.talk.classes.get(fit.class), Some(Class::Ask)))
                .map(|fit| fit.chance)
                .sum();
            asks + self.chance(ActName::Confirm, &clause.fits)
                + self.chance(ActName::Deny, &clause.fits)
                + self.chance(ActName::Reading, &clause.fits)
                > 0.4
        };
        whole.hedges && !whole.elsewhere && clauses.iter().any(about)
    }

    pub(super) fn opens_with_doubt(&self) -> bool {
        self.parsed.tokens.first().is_some_and(|token| {
            matches!(
                token.text.as_str(),
                "probably"
                    | "maybe"
                    | "perhaps"
                    | "possibly"
                    | "nearly"
                    | "almost"
                    | "hopefully"
                    | "apparently"
                    | "think"
                    | "reckon"
            )
        })
    }

    pub(super) fn gather(&self, taken: &mut Taken, clause: &Clause, verdict: Verdict) {
        let weight = self.parsed.weight(clause.from, clause.to);
        match verdict {
            Verdict::Take(act, score) => {
                taken.sure = taken.sure.min(score);
                taken.said += usize::from(matches!(act.act, ActName::Confirm | ActName::Deny));
                let joined = clause
                    .from
                    .checked_sub(1)
                    .and_then(|at| self.parsed.tokens.get(at))
                    .is_some_and(|token| token.text == "and");
                if joined
                    && act.act == ActName::Confirm
                    && act.slots.about.is_none()
                    && taken.acts.last().is_some_and(|last| last.act == ActName::Confirm)
                {
                    return;
                }
                taken.weight += weight;
                let passing = self.passing(&act, clause);
                let act = self.carried(act, taken.acts.last());
                taken.passing.push(passing);
                taken.acts.push(act);
            }
            // "Eighty, that's eight zero": the same number, spelled out.
            Verdict::Ask(between, Doubt::Number) if spells_out(taken.acts.last(), &between) => {
                let unit = between.first().and_then(|act| act.slots.unit.clone());
                if let (Some(last), Some(unit)) = (taken.acts.last_mut(), unit) {
                    last.slots.unit = Some(unit);
                }
            }
            Verdict::Ask(between, why) => {
                taken.numbers |= self.counts(clause);
                taken.doubt = taken.doubt.take().or(Some((between, why)));
            }
            Verdict::Decline => {
                taken.wrong |= self.admits(clause);
                let guard = guard(self.parsed, clause.from, clause.to);
                taken.against |= guard.denies || guard.hedges || guard.reports;
                let chatter = clause.fits.iter().any(|fit| {
                    matches!(self.parsed.talk.classes.get(fit.class), Some(Class::Decline))
                        && fit.chance > 0.35
                });
                if chatter || self.parsed.known(clause.from, clause.to) < 0.5 {
                    taken.beside += weight;
                }
                taken.unexplained |= clause.to - clause.from > 1;
                taken.numbers |= self.counts(clause);
            }
            Verdict::Aside | Verdict::Refuse(_) => {
                taken.wrong |= self.admits(clause);
                taken.more = true;
            }
        }
    }

    /// Whether a clause has a number in it.
    fn counts(&self, clause: &Clause) -> bool {
        self.parsed.mentions.iter().any(|mention| {
            mention.start >= clause.from && mention.end <= clause.to && mention.spoken().is_some()
        })
    }

    pub(super) fn outcome(&self, mut taken: Taken) -> (Heard, String) {
        let steers = |act: &Act| !claims(act.act) && act.act != ActName::Deny;
        let over = !taken.acts.is_empty() && taken.acts.iter().all(steers);
        if let Some((between, why)) = taken.doubt.take()
            && !(over && between.is_empty() && !taken.numbers)
        {
            let told = format!("doubt: {why:?}");
            return (Heard::ask(between, why, 0.5), told);
        }
        taken.drop_passing();
        Self::unpraised(&mut taken.acts);
        self.gather_reason(&mut taken.acts);
        self.gather_figures(&mut taken.acts);
        self.put_right(&mut taken);
        merge(&mut taken.acts);
        let valued = |act: &Act| act.act == ActName::Reading && act.slots.value.is_some();
        if measure::is_number(self.line.waiting.kind) && taken.acts.iter().any(valued) {
            // The value closes the step; "and it clicked" adds nothing.
            taken.acts.retain(|act| act.act != ActName::Confirm || act.slots.about.is_some());
        }
        let has = |acts: &[Act], names: &[ActName]| acts.iter().any(|act| names.contains(&act.act));
        if has(&taken.acts, &[ActName::Start, ActName::Switch, ActName::Back, ActName::Finish]) {
            taken.acts.retain(|act| act.act != ActName::Resume);
        }
        if has(&taken.acts, &[ActName::Start, ActName::Switch]) {
            // What was not finished or not meant was said of the place that is left.
            taken.acts.retain(|act| act.act != ActName::Deny);
        }
        if self.line.waiting.kind != WaitingFor::YesOrNo
            && taken.acts.len() > 1
            && !has(&taken.acts, &[ActName::Confirm])
        {
            // "No, put down that ...": what is asked for says more than the no.
            taken.acts.retain(|act| act.act != ActName::Deny || act.slots.about.is_some());
        }
        if has(&taken.acts, &[ActName::Deny]) && has(&taken.acts, &[ActName::Confirm]) {
            return (Heard::ask(taken.acts, Doubt::Hedged, 0.4), "done and not done in one line".to_owned());
        }
        let bare =
            |act: &Act| matches!(act.act, ActName::Confirm | ActName::Deny) && act.slots.about.is_none();
        // "Yes, but which way": the question is what is wanted.
        if taken.acts.first().is_some_and(bare)
            && self.parsed.tokens.first().is_some_and(|token| matches!(token.text.as_str(), "yes" | "no"))
            && taken.acts.get(1).is_some_and(|act| act.act.is_question())
            && self.parsed.tokens.get(1).is_some_and(|token| token.text == "but")
        {
            taken.acts.remove(0);
        }
        let acts = taken.acts;
        if acts.is_empty() {
            return (Heard::decline(0.8), "nothing that a bench can act on".to_owned());
        }
        let keeps = |act: &Act| {
            act.act.is_question() || matches!(act.act, ActName::Note | ActName::Trouble | ActName::Pause)
        };
        if !acts.iter().all(keeps) {
            let light = |act: &Act| {
                bare(act)
                    || (matches!(
                        act.act,
                        ActName::Resume | ActName::Skip | ActName::Back | ActName::Finish | ActName::Undo
                    ) && act.slots.reason.is_none())
            };
            if taken.beside > taken.weight.max(1.0) && acts.iter().all(light) {
                return (Heard::decline(0.6), "most of the line is about something else".to_owned());
            }
            let unplaced = |act: &Act| act.act == ActName::Reading && act.slots.unit.is_none();
            if taken.beside > 1.0 && acts.iter().all(unplaced) {
                return (Heard::ask(acts, Doubt::Hedged, 0.4), "a bare number beside other talk".to_owned());
            }
            let steers = |act: &Act| {
                matches!(act.act, ActName::Pause | ActName::Resume | ActName::Skip | ActName::Finish)
            };
            if taken.unexplained && acts.iter().all(|act| steers(act) && act.slots.reason.is_none()) {
                return (
                    Heard::ask(acts, Doubt::Hedged, 0.4),
                    "it steers the job, and says something that is not understood".to_owned(),
                );
            }
            let late = self.answers()
                && !self
                    .parsed
                    .tokens
                    .first()
                    .is_some_and(|token| matches!(token.text.as_str(), "yes" | "no"));
            if acts.iter().all(bare) && !taken.numbers && self.answered(&acts) {
                return (
                    Heard::take(acts, f64::from(taken.sure)),
                    "yes or no, and more of the same".to_owned(),
                );
            }
            if acts.iter().all(bare)
                && ((taken.unexplained && self.answers() && taken.said < 2) || (late && taken.more))
            {
                return (
                    Heard::ask(acts, Doubt::Hedged, 0.4),
                    "yes or no, and something that is not understood".to_owned(),
                );
            }
            if taken.against || (taken.numbers && acts.iter().any(|act| act.slots.value.is_some())) {
                return (
                    Heard::ask(acts, Doubt::Hedged, 0.4),
                    "a part of the line speaks against it".to_owned(),
                );
            }
        }
        if several_values(&acts) {
            return (Heard::ask(acts, Doubt::Number, 0.4), "several values for one place".to_owned());
        }
        (Heard::take(acts, f64::from(taken.sure)), "clear".to_owned())
    }

    /// Where words are waited for, they are the answer unless they are plainly something else.
    pub(super) fn free_text(&self, clauses: &[Clause]) -> Option<(Heard, String)> {
        let classes = &self.parsed.talk.classes;
        let other = clauses.iter().any(|clause| {
            clause.fits.first().is_some_and(|fit| match classes.get(fit.class) {
                Some(Class::Act(act)) => {
                    // A note by likeness alone is words said here: only "note that ..." is a note beside them.
                    (matches!(act.act, ActName::Note) && fit.rule.is_some() && clause.from == 0)
                        || ((act.act.is_question()
                            || matches!(
                                act.act,
                                ActName::Undo
                                    | ActName::Pause
                                    | ActName::Back
                                    | ActName::Skip
                                    | ActName::Resume
                                    | ActName::Switch
                                    | ActName::Finish
                                    | ActName::Deny
                            ))
                            && fit.rule.is_some_and(|(_, cost)| cost < 0.4)
                            && fit.score > 0.6)
                }
                Some(Class::Decline) => fit.score > 0.7 && clauses.len() == 1,
                Some(Class::Refuse(_)) => fit.rule.is_some(),
                _ => false,
            })
        });
        let asks = self.parsed.tokens.first().is_some_and(|token| {
            matches!(
                token.text.as_str(),
                "how"
                    | "what"
                    | "why"
                    | "who"
                    | "when"
                    | "where"
                    | "which"
                    | "do"
                    | "does"
                    | "did"
                    | "is"
                    | "are"
                    | "can"
                    | "could"
                    | "tell"
                    | "will"
                    | "would"
            )
        });
        // "When it's hot it fades" tells; "when is it due" asks.
        let tells =
            self.parsed.tokens.first().is_some_and(|token| matches!(token.text.as_str(), "when" | "where"))
                && self.parsed.tokens.get(1).is_some_and(|token| {
                    matches!(token.text.as_str(), "it" | "the" | "he" | "she" | "they" | "you" | "i" | "we")
                });
        if other || (asks && !tells) {
            return None;
        }
        let mut act = Act::new(ActName::Note);
        act.slots.text = Some(self.line.said.trim().to_owned());
        if !self.about_the_bench() {
            return Some((
                Heard::ask(vec![act], Doubt::Meaning, 0.4),
                "words are waited for, and these are of anything".to_owned(),
            ));
        }
        Some((Heard::take(vec![act], 0.7), "words are waited for".to_owned()))
    }

    /// Whether any word of the line is one that bench talk uses.
    pub(super) fn about_the_bench(&self) -> bool {
        let place = guard(self.parsed, 0, self.parsed.tokens.len());
        let named = self
            .parsed
            .mentions
            .iter()
            .any(|mention| matches!(mention.what, What::Part(_) | What::Foreign(_)));
        let complaint = self.parsed.has("complaint", 0, self.parsed.tokens.len());
        !place.elsewhere
            && (named
                || complaint
                || self.parsed.has("damage", 0, self.parsed.tokens.len())
                || self.parsed.has("wont-move", 0, self.parsed.tokens.len()))
    }
}

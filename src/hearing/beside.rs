//! What is said beside the acts of a line: remarks, reasons, slips, and wishes that go on.

use super::clauses::Clause;
use super::decide::Taken;
use super::guard::guard;
use super::judge::Judge;
use super::measure;
use crate::act::{Act, ActName, WaitingFor};

impl Taken {
    /// What stands on a few words that no rule knows is a remark, beside an act that is surer.
    pub(super) fn drop_passing(&mut self) {
        if self.passing.iter().any(|passing| !passing) {
            let mut passing = self.passing.iter();
            self.acts.retain(|_| passing.next() != Some(&true));
        }
    }
}

impl Judge<'_> {
    /// Whether an act that changes the job stands on a few words that no rule knows.
    pub(super) fn passing(&self, act: &Act, clause: &Clause) -> bool {
        if act.act == ActName::Confirm && clause.to - clause.from <= 2 && act.slots.about.is_none() {
            return self.praises(clause);
        }
        if act.act == ActName::Resume && clause.to - clause.from <= 3 {
            return true;
        }
        if act.act == ActName::Note {
            return !self.parsed.has("write-down", clause.from, clause.to);
        }
        if act.act == ActName::Trouble && self.admits(clause) {
            return true;
        }
        let asked = self
            .parsed
            .tokens
            .first()
            .is_some_and(|token| matches!(token.text.as_str(), "how" | "why" | "what"));
        if asked && act.act == ActName::Reading {
            return clause.from > 0;
        }
        let short = clause.to - clause.from <= 3;
        let loose = clause.fits.first().is_none_or(|fit| fit.rule.is_none_or(|(_, cost)| cost > 0.3));
        let chance = self.chance(act.act, &clause.fits);
        short
            && loose
            && act.slots.value.is_none()
            && !act.act.is_question()
            && chance < 0.9
            && matches!(
                act.act,
                ActName::Pause
                    | ActName::Trouble
                    | ActName::Skip
                    | ActName::Back
                    | ActName::Resume
                    | ActName::Undo
            )
    }

    /// "Leave this one, the mount is new already": what is said beside a leaving out is its reason.
    pub(super) fn gather_reason(&self, acts: &mut Vec<Act>) {
        if acts.first().is_some_and(|act| act.act == ActName::Skip && act.slots.reason.is_some()) {
            let reason = |act: &Act| matches!(act.act, ActName::Fitted | ActName::Confirm | ActName::Trouble);
            acts.retain(|act| !reason(act));
        }
    }

    /// "Eighteen foot pounds, how much is that in newton metres": a figure beside a calculation belongs to it.
    pub(super) fn gather_figures(&self, acts: &mut Vec<Act>) {
        if acts.iter().any(|act| act.act == ActName::AskWork) {
            acts.retain(|act| act.act != ActName::Reading);
            let whole = super::slots::Source {
                line: self.parsed,
                said: self.line.said,
                from: 0,
                to: self.parsed.tokens.len(),
                unit: self.unit,
                waiting: self.line.waiting,
            };
            for act in acts.iter_mut().filter(|act| act.act == ActName::AskWork) {
                act.slots.values = Some(super::slots_tool::values(&whole));
            }
        }
    }

    /// "Eight on the bump and ten on the rebound": a wish goes on until something else is said.
    /// "It won't shift, what now": what is asked beside a trouble is what to do about it.
    pub(super) fn carried(&self, mut act: Act, last: Option<&Act>) -> Act {
        if act.act == ActName::AskNext && last.is_some_and(|last| last.act == ActName::Trouble) {
            act.act = ActName::AskStuck;
            act.slots.about = last.and_then(|last| last.slots.about.clone());
        }
        let waits = measure::is_number(self.line.waiting.kind);
        if !waits && act.act == ActName::Reading && last.is_some_and(|last| last.act == ActName::Want) {
            act.act = ActName::Want;
        }
        act
    }

    /// Whether a clause is a word of praise and no more ("grand", "lovely").
    pub(super) fn praises(&self, clause: &Clause) -> bool {
        let tokens = self.parsed.tokens.get(clause.from..clause.to).unwrap_or_default();
        tokens.iter().all(|token| {
            let root = [super::stem::stem(&token.text)];
            let senses = &self.parsed.talk.senses;
            self.parsed.talk.small.contains(&token.text)
                || (senses.has(&root, "good") && !senses.has(&root, "done") && !senses.has(&root, "agree"))
        })
    }

    /// Praise beside a trouble is none, and a step with a trouble is not simply done.
    pub(super) fn unpraised(acts: &mut Vec<Act>) {
        if acts.iter().any(|act| act.act == ActName::Trouble) {
            let only = |act: &Act| {
                act.slots.about.is_none()
                    && act
                        .slots
                        .text
                        .as_deref()
                        .is_some_and(|said| said.split(' ').all(|word| matches!(word, "good" | "done")))
            };
            acts.retain(|act| act.act != ActName::Confirm || !only(act));
        }
    }

    /// Whether a clause says that something was wrong ("my bad", "I misread it").
    pub(super) fn admits(&self, clause: &Clause) -> bool {
        let roots: Vec<String> = self
            .parsed
            .tokens
            .get(clause.from..clause.to)
            .unwrap_or_default()
            .iter()
            .map(|token| super::stem::stem(&token.text))
            .collect();
        self.parsed.talk.senses.has(&roots, "slip")
    }

    /// A value beside words that admit a slip puts the last one right.
    pub(super) fn put_right(&self, taken: &mut Taken) {
        if let [act] = taken.acts.as_mut_slice()
            && taken.wrong
            && act.act == ActName::Reading
            && act.slots.value.is_some()
        {
            act.act = ActName::Correct;
            taken.against = false;
        }
    }

    /// Whether a question of yes or no is answered with that very word, and nothing after it speaks against it.
    pub(super) fn answered(&self, acts: &[Act]) -> bool {
        let first = self.parsed.tokens.first().map_or("", |token| token.text.as_str());
        let meant = match first {
            "yes" => ActName::Confirm,
            "no" => ActName::Deny,
            _ => return false,
        };
        let rest = guard(self.parsed, 1, self.parsed.tokens.len());
        let against =
            rest.hedges || rest.reports || rest.asks || rest.elsewhere || (first == "yes" && rest.denies);
        let but =
            self.parsed.tokens.iter().any(|token| matches!(token.text.as_str(), "but" | "except" | "only"));
        self.line.waiting.kind == WaitingFor::YesOrNo
            && acts.iter().all(|act| act.act == meant)
            && !against
            && !but
    }
}

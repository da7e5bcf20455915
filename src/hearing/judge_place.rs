//! Acts out of place: words that neither the act nor the bench uses, or nothing that such an act is about.

use super::costs::is_about_the_step;
use super::judge::{Judge, Verdict};
use super::mention::What;
use super::parsed::Fitting;
use super::slots::Source;
use crate::act::{Act, ActName, Doubt, WaitingFor};

impl Judge<'_> {
    /// An act whose clause has words that neither its examples nor the bench use, or lacks what such an act is about.
    pub(super) fn out_of_place(
        &self,
        act: &Act,
        fit: &Fitting,
        fits: &[Fitting],
        source: &Source<'_>,
    ) -> Option<Verdict> {
        let (telling, foreign) = self.parsed.foreign(source.from, source.to, fit.class);
        let exact = fit.rule.is_some_and(|(_, cost)| cost < 0.25);
        let part = source.mentions().any(|mention| matches!(mention.what, What::Part(_) | What::Foreign(_)));
        let nothing_left = act.act == ActName::Confirm && fit.rule.is_some_and(|(_, cost)| cost < 0.1);
        let free = (matches!(act.act, ActName::Note | ActName::By | ActName::Skip) && fit.rule.is_some())
            || nothing_left;
        let share = foreign as f32 / telling.max(1) as f32;
        let most = if part { 0.4 } else { 0.3 };
        let beside_part = part && self.parsed.known(source.from, source.to) > 0.6;
        let share = if beside_part { share * 0.8 } else { share };
        let certain = self.certain(act, fits, source);
        if !free && !certain && foreign > 0 && (share > most || (foreign > 1 && !part)) {
            return Some(if part && fit.score > 0.5 && act.act.is_question() {
                Verdict::Ask(vec![act.clone()], Doubt::Meaning)
            } else {
                Verdict::Decline
            });
        }
        let valued = matches!(act.act, ActName::Reading | ActName::Correct);
        if valued && foreign > 0 && act.slots.unit.is_none() && fit.rule.is_none_or(|(_, cost)| cost > 0.3) {
            return Some(if foreign > 1 {
                Verdict::Decline
            } else {
                Verdict::Ask(vec![act.clone()], Doubt::Vague)
            });
        }
        if valued && self.of_somebody(source) {
            return Some(Verdict::Ask(vec![act.clone()], Doubt::Hedged));
        }
        let word = |list: &[&str]| {
            self.parsed
                .tokens
                .get(source.from..source.to)
                .unwrap_or_default()
                .iter()
                .any(|token| list.contains(&token.text.as_str()))
        };
        let whole_line = source.from == 0 && source.to == self.parsed.tokens.len();
        let lone = source.to - source.from == 1;
        match act.act {
            ActName::Confirm
                if word(&["you", "your", "yours", "myself", "yourself", "himself", "themselves"]) =>
            {
                Some(Verdict::Decline)
            }
            ActName::Confirm
                if lone
                    && !whole_line
                    && word(&[
                        "out", "in", "on", "off", "up", "down", "through", "over", "good", "set", "clear",
                    ]) =>
            {
                Some(Verdict::Aside)
            }
            ActName::Confirm if lone && word(&["all", "it", "that", "this", "is", "and"]) => {
                Some(Verdict::Decline)
            }
            ActName::Note
                if fit.rule.is_none_or(|(_, cost)| cost > 0.6)
                    && self.line.waiting.kind != WaitingFor::Text
                    && !self.parsed.has("complaint", source.from, source.to) =>
            {
                Some(Verdict::Decline)
            }
            ActName::Skip if word(&["skipped", "skipping"]) && !exact => Some(Verdict::Decline),
            ActName::Skip if self.thing_called("skip", source) => Some(Verdict::Decline),
            ActName::Skip if foreign > 0 && !part && source.to - source.from <= 5 => Some(Verdict::Decline),
            ActName::Reading
                if act.slots.about.is_none()
                    && matches!(
                        self.line.waiting.kind,
                        WaitingFor::Clicks | WaitingFor::Position | WaitingFor::Turns | WaitingFor::Torque
                    ) =>
            {
                Some(Verdict::Ask(vec![act.clone()], Doubt::Part))
            }
            ActName::Note if whole_line && self.parsed.weight(source.from, source.to) < 1.6 => {
                Some(Verdict::Ask(vec![act.clone()], Doubt::Vague))
            }
            ActName::Confirm if foreign > 0 && word(&["they", "he"]) => Some(Verdict::Decline),
            ActName::By
                if !self.names_somebody(source)
                    || (fit.rule.is_none_or(|(_, cost)| cost > 1.2) && !certain) =>
            {
                Some(Verdict::Decline)
            }
            ActName::Wait
                if act.slots.duration.is_none()
                    && !word(&["cure", "timer", "clock", "timing", "counting", "stopwatch"]) =>
            {
                Some(Verdict::Ask(vec![act.clone()], Doubt::Vague))
            }
            ActName::Want if !part && act.slots.value.is_none() && !exact => Some(Verdict::Decline),
            ActName::Want if !part && act.slots.unit.is_none() && act.slots.value.is_some() => {
                Some(Verdict::Ask(vec![act.clone()], Doubt::Vague))
            }
            name if name.is_question()
                && !part
                && word(&["he", "they", "him", "their"])
                && is_about_the_step(name) =>
            {
                Some(Verdict::Decline)
            }
            ActName::Fitted if !part || word(&["order", "buy", "need", "want", "get", "send"]) => {
                Some(Verdict::Decline)
            }
            ActName::AskPart if !part && fit.rule.is_none() && fit.chance < 0.8 => Some(Verdict::Decline),
            ActName::Start
                if act.slots.procedure.is_none() && act.slots.unit.is_none() && !word(&["job"]) =>
            {
                Some(Verdict::Decline)
            }
            ActName::Switch
                if act.slots.corner.is_none()
                    && act.slots.unit.is_none()
                    && !word(&["side", "sides", "other", "one"]) =>
            {
                Some(Verdict::Decline)
            }
            _ => None,
        }
    }

    /// Whether a clause has a word that may be a person's name: one that talk does not know, or that was written as a name.
    fn names_somebody(&self, source: &Source<'_>) -> bool {
        self.parsed.tokens.get(source.from..source.to).unwrap_or_default().iter().enumerate().any(
            |(n, token)| {
                let raw = source.said.get(token.raw.clone()).unwrap_or_default();
                let written = n > 0 && raw.starts_with(char::is_uppercase) && token.text.len() > 2;
                let strange = token.text.len() > 1 && !self.parsed.talk.lexicon.knows(&token.text);
                written || strange || token.was.is_some()
            },
        )
    }

    /// Whether a clause tells of what another had or did ("the last fella had it at sixteen").
    fn of_somebody(&self, source: &Source<'_>) -> bool {
        let tokens = self.parsed.tokens.get(source.from..source.to).unwrap_or_default();
        let roots: Vec<String> = tokens.iter().map(|token| super::stem::stem(&token.text)).collect();
        self.parsed.talk.senses.has(&roots, "somebody")
    }

    /// Whether a word stands there as the name of a thing ("the skip is full").
    fn thing_called(&self, word: &str, source: &Source<'_>) -> bool {
        let tokens = self.parsed.tokens.get(source.from..source.to).unwrap_or_default();
        tokens.windows(2).any(|pair| match pair {
            [before, here] => {
                here.text == word && matches!(before.text.as_str(), "the" | "a" | "that" | "this" | "our")
            }
            _ => false,
        })
    }
}

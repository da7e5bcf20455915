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
use crate::act::{Act, ActName, Doubt, Heard, Outcome, WaitingFor};
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

/// What the clauses come to together.
#[derive(Default)]
struct Taken {
    acts: Vec<Act>,
    sure: f32,
    weight: f32,
    beside: f32,
    against: bool,
    numbers: bool,
    unexplained: bool,
    doubt: Option<(Vec<Act>, Doubt)>,
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
        if self.line.waiting.kind == WaitingFor::Text && let Some(note) = self.free_text(clauses) {
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
        if heard.outcome == Outcome::Decline && waits && self.opens_with_doubt() {
            return (Heard::ask(Vec::new(), Doubt::Hedged, 0.4), "it begins with a doubt".to_owned());
        }
        (heard, told)
    }

    fn answers(&self) -> bool {
        self.parsed.tokens.iter().any(|token| matches!(token.text.as_str(), "yes" | "no"))
    }

    fn opens_with_doubt(&self) -> bool {
        self.parsed.tokens.first().is_some_and(|token| {
            matches!(token.text.as_str(), "probably" | "maybe" | "perhaps" | "possibly" | "nearly" | "almost" | "hopefully" | "apparently" | "think" | "reckon")
        })
    }

    fn gather(&self, taken: &mut Taken, clause: &Clause, verdict: Verdict) {
        let weight = self.parsed.weight(clause.from, clause.to);
        match verdict {
            Verdict::Take(act, score) => {
                taken.sure = taken.sure.min(score);
                let joined = clause.from.checked_sub(1).and_then(|at| self.parsed.tokens.get(at)).is_some_and(|token| token.text == "and");
                if joined && act.act == ActName::Confirm && taken.acts.last().is_some_and(|last| last.act == ActName::Confirm) {
                    return;
                }
                taken.weight += weight;
                taken.acts.push(act);
            }
            // "Eighty, that's eight zero": the same number, spelled out.
            Verdict::Ask(between, Doubt::Number) if spells_out(taken.acts.last(), &between) => {
                let unit = between.first().and_then(|act| act.slots.unit.clone());
                if let (Some(last), Some(unit)) = (taken.acts.last_mut(), unit) {
                    last.slots.unit = Some(unit);
                }
            }
            Verdict::Ask(between, why) => taken.doubt = taken.doubt.take().or(Some((between, why))),
            Verdict::Decline => {
                let guard = guard(self.parsed, clause.from, clause.to);
                taken.against |= guard.denies || guard.hedges || guard.reports;
                let chatter = clause.fits.iter().any(|fit| matches!(self.parsed.talk.classes.get(fit.class), Some(Class::Decline)) && fit.chance > 0.35);
                if chatter || self.parsed.known(clause.from, clause.to) < 0.5 {
                    taken.beside += weight;
                }
                taken.unexplained |= clause.to - clause.from > 1;
                taken.numbers |= self.parsed.mentions.iter().any(|mention| mention.start >= clause.from && mention.end <= clause.to && mention.spoken().is_some());
            }
            Verdict::Aside | Verdict::Refuse(_) => {}
        }
    }

    fn outcome(&self, mut taken: Taken) -> (Heard, String) {
        if let Some((between, why)) = taken.doubt {
            let told = format!("doubt: {why:?}");
            return (Heard::ask(between, why, 0.5), told);
        }
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
        if self.line.waiting.kind != WaitingFor::YesOrNo && taken.acts.len() > 1 && !has(&taken.acts, &[ActName::Confirm]) {
            // "No, put down that ...": what is asked for says more than the no.
            taken.acts.retain(|act| act.act != ActName::Deny || act.slots.about.is_some());
        }
        if has(&taken.acts, &[ActName::Deny]) && has(&taken.acts, &[ActName::Confirm]) {
            return (Heard::ask(taken.acts, Doubt::Hedged, 0.4), "done and not done in one line".to_owned());
        }
        let bare = |act: &Act| matches!(act.act, ActName::Confirm | ActName::Deny) && act.slots.about.is_none();
        // "Yes, but which way": the question is what is wanted.
        if taken.acts.first().is_some_and(bare) && self.parsed.tokens.first().is_some_and(|token| matches!(token.text.as_str(), "yes" | "no")) && taken.acts.get(1).is_some_and(|act| act.act.is_question())
            && self.parsed.tokens.get(1).is_some_and(|token| token.text == "but")
        {
            taken.acts.remove(0);
        }
        let acts = taken.acts;
        if acts.is_empty() {
            return (Heard::decline(0.8), "nothing that a bench can act on".to_owned());
        }
        let keeps = |act: &Act| act.act.is_question() || matches!(act.act, ActName::Note | ActName::Trouble | ActName::Pause);
        if !acts.iter().all(keeps) {
            if taken.beside > taken.weight.max(1.0) && acts.iter().all(|act| bare(act)) {
                return (Heard::decline(0.6), "most of the line is about something else".to_owned());
            }
            if taken.unexplained && acts.iter().all(|act| bare(act)) && self.answers() {
                return (Heard::ask(acts, Doubt::Hedged, 0.4), "yes or no, and something that is not understood".to_owned());
            }
            if taken.against || (taken.numbers && acts.iter().any(|act| act.slots.value.is_some())) {
                return (Heard::ask(acts, Doubt::Hedged, 0.4), "a part of the line speaks against it".to_owned());
            }
        }
        if several_values(&acts) {
            return (Heard::ask(acts, Doubt::Number, 0.4), "several values for one place".to_owned());
        }
        (Heard::take(acts, f64::from(taken.sure)), "clear".to_owned())
    }

    /// Where words are waited for, they are the answer unless they are plainly something else.
    fn free_text(&self, clauses: &[Clause]) -> Option<(Heard, String)> {
        let classes = &self.parsed.talk.classes;
        let other = clauses.iter().any(|clause| {
            clause.fits.first().is_some_and(|fit| match classes.get(fit.class) {
                Some(Class::Act(act)) => {
                    matches!(act.act, ActName::Note)
                        || ((act.act.is_question() || matches!(act.act, ActName::Undo | ActName::Pause | ActName::Back | ActName::Skip | ActName::Resume | ActName::Switch | ActName::Finish | ActName::Deny))
                            && fit.rule.is_some_and(|(_, cost)| cost < 0.4)
                            && fit.score > 0.6)
                }
                Some(Class::Decline) => fit.score > 0.7,
                Some(Class::Refuse(_)) => fit.rule.is_some(),
                _ => false,
            })
        });
        let asks = self.parsed.tokens.first().is_some_and(|token| {
            matches!(token.text.as_str(), "how" | "what" | "why" | "who" | "when" | "where" | "which" | "do" | "does" | "did" | "is" | "are" | "can" | "could" | "tell" | "will" | "would")
        });
        if other || asks {
            return None;
        }
        let mut act = Act::new(ActName::Note);
        act.slots.text = Some(self.line.said.trim().to_owned());
        if !self.about_the_bench() {
            return Some((Heard::ask(vec![act], Doubt::Meaning, 0.4), "words are waited for, and these are of anything".to_owned()));
        }
        Some((Heard::take(vec![act], 0.7), "words are waited for".to_owned()))
    }

    /// Whether any word of the line is one that bench talk uses.
    fn about_the_bench(&self) -> bool {
        let place = guard(self.parsed, 0, self.parsed.tokens.len());
        let named = self.parsed.mentions.iter().any(|mention| matches!(mention.what, What::Part(_) | What::Foreign(_)));
        let complaint = self.parsed.has("complaint", 0, self.parsed.tokens.len());
        !place.elsewhere && (named || complaint || self.parsed.has("damage", 0, self.parsed.tokens.len()) || self.parsed.has("wont-move", 0, self.parsed.tokens.len()))
    }

    fn best<'c>(&self, clause: &'c Clause) -> Option<&'c Fitting> {
        clause.fits.first()
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
        let offered = self.line.waiting.kind == WaitingFor::Tool
            && source.mentions().any(|mention| matches!(mention.what, What::Tool(_)) || mention.spoken().is_some());
        let swap = clause.fits.iter().any(|fit| {
            fit.chance > 0.12 && self.parsed.talk.classes.get(fit.class).and_then(Class::name) == Some(ActName::AskSwap)
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

    /// A number where a number is waited for, in words that no rule knows and that do not sound like chatter.
    fn unclear_value(&self, clause: &Clause, source: &Source<'_>) -> bool {
        let waiting = self.line.waiting.kind;
        let fits = source.numbers().iter().any(|spoken| spoken.unit.is_none_or(|unit| measure::fits(unit, waiting)));
        let chatter = clause.fits.iter().any(|fit| matches!(self.parsed.talk.classes.get(fit.class), Some(Class::Decline)) && fit.chance > 0.3);
        let first = self.parsed.tokens.get(clause.from).map_or("", |token| token.text.as_str());
        let asks = matches!(first, "what" | "which" | "how" | "why" | "where" | "when" | "who" | "whose" | "is" | "are" | "do" | "does" | "did" | "can" | "should" | "will" | "would")
            || guard(self.parsed, 0, self.parsed.tokens.len()).elsewhere;
        measure::is_number(waiting) && fits && !chatter && !asks && self.parsed.known(clause.from, clause.to) > 0.5
    }

    /// One number, nothing that doubts it, and the model takes the clause for a reading.
    fn plain_value(&self, clause: &Clause, source: &Source<'_>) -> bool {
        let chance = |name: ActName| -> f32 {
            let of = |fit: &&Fitting| self.parsed.talk.classes.get(fit.class).and_then(Class::name) == Some(name);
            clause.fits.iter().filter(of).map(|fit| fit.chance).sum()
        };
        let chatter: f32 = clause.fits.iter().filter(|fit| !self.is_act(fit)).map(|fit| fit.chance).sum();
        source.numbers().len() == 1
            && !guard(self.parsed, clause.from, clause.to).any()
            && chance(ActName::Reading) > 0.3
            && chatter < 0.2
            && self.parsed.known(clause.from, clause.to) > 0.6
    }

    fn is_act(&self, fit: &Fitting) -> bool {
        matches!(self.parsed.talk.classes.get(fit.class), Some(Class::Act(_)))
    }

    fn judge(&self, clause: &Clause, source: &Source<'_>) -> Verdict {
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
    fn leads(&self, fit: &Fitting, fits: &[Fitting]) -> bool {
        let name = |fit: &Fitting| self.parsed.talk.classes.get(fit.class).and_then(Class::name);
        let own = name(fit);
        let sum: f32 = fits.iter().filter(|other| name(other) == own).map(|other| other.chance).sum();
        let next = fits.iter().filter(|other| name(other) != own).map(|other| other.chance).fold(0.0, f32::max);
        sum >= 0.28 && sum >= 1.8 * next
    }

    fn act(&self, act: &Act, fit: &Fitting, clause_fits: &[Fitting], source: &Source<'_>) -> Verdict {
        let act = filled(act, source);
        let about_this = !guard(self.parsed, 0, self.parsed.tokens.len()).elsewhere;
        let free = matches!(act.act, ActName::Note | ActName::Trouble | ActName::Pause | ActName::Skip | ActName::Again | ActName::Resume | ActName::By | ActName::Help);
        if !about_this && !free {
            return Verdict::Decline;
        }
        let supposed = source.line.text(source.from, source.to);
        let supposed = format!(" {supposed} ");
        if act.act == ActName::Trouble && (supposed.contains(" if ") || supposed.contains(" would have ")) {
            return Verdict::Ask(vec![act], Doubt::Hedged);
        }
        let needs = matches!(act.act, ActName::AskSwap | ActName::AskWork | ActName::Again | ActName::Pause);
        if needs && fit.rule.is_none_or(|(_, cost)| cost > 1.2) && fit.chance < 0.72 && self.line.waiting.kind != WaitingFor::Tool {
            return if fit.chance > 0.4 && fit.score > 0.3 { Verdict::Ask(vec![act], Doubt::Meaning) } else { Verdict::Decline };
        }
        if let Some(verdict) = self.out_of_place(&act, fit, source) {
            return verdict;
        }
        let lead = self.leads(fit, clause_fits);
        let plain = !guard(self.parsed, source.from, source.to).any();
        let certain = plain && fit.chance >= 0.88 && self.parsed.known(source.from, source.to) > 0.85;
        let too_loose = fit.rule.is_some_and(|(_, cost)| cost > most_cost(act.act)) && !certain;
        let no_rule = fit.rule.is_none() && needs_rule(act.act) && !(certain && fit.chance >= 0.94 && act.act != ActName::Switch && act.act != ActName::Confirm);
        let asks = act.act.is_question() && lead && self.parsed.known(source.from, source.to) > 0.75;
        if too_loose || (fit.score < needed(act.act) && !asks) || no_rule {
            return if fit.score < 0.3 { Verdict::Decline } else if act.act.is_question() { Verdict::Ask(vec![act], Doubt::Meaning) } else { Verdict::Decline };
        }
        let tight = |word: &str| matches!(word, "tight" | "snug" | "nipped" | "tightened");
        if act.act == ActName::Confirm && measure::is_number(self.line.waiting.kind)
            && self.parsed.tokens.get(source.from..source.to).unwrap_or_default().iter().any(|token| tight(&token.text))
        {
            // Tight is no value: the value is what the step waits for.
            return Verdict::Ask(vec![act], Doubt::Hedged);
        }
        match act.act {
            ActName::Reading | ActName::Correct => self.value(act, Some(fit), source),
            _ => self.named(act, fit, source),
        }
    }

    /// An act whose clause has words that neither its examples nor the bench use, or lacks what such an act is about.
    fn out_of_place(&self, act: &Act, fit: &Fitting, source: &Source<'_>) -> Option<Verdict> {
        let (telling, foreign) = self.parsed.foreign(source.from, source.to, fit.class);
        let exact = fit.rule.is_some_and(|(_, cost)| cost < 0.25);
        let part = source.mentions().any(|mention| matches!(mention.what, What::Part(_) | What::Foreign(_)));
        let nothing_left = act.act == ActName::Confirm && fit.rule.is_some_and(|(_, cost)| cost < 0.1);
        let free = (matches!(act.act, ActName::Note | ActName::By | ActName::Skip) && fit.rule.is_some()) || nothing_left;
        let share = foreign as f32 / telling.max(1) as f32;
        let most = if part { 0.4 } else { 0.3 };
        let beside_part = part && self.parsed.known(source.from, source.to) > 0.6;
        let share = if beside_part { share * 0.8 } else { share };
        if !free && foreign > 0 && (share > most || (foreign > 1 && !part)) {
            return Some(if part && fit.score > 0.5 && act.act.is_question() { Verdict::Ask(vec![act.clone()], Doubt::Meaning) } else { Verdict::Decline });
        }
        let word = |list: &[&str]| {
            self.parsed.tokens.get(source.from..source.to).unwrap_or_default().iter().any(|token| list.contains(&token.text.as_str()))
        };
        let whole_line = source.from == 0 && source.to == self.parsed.tokens.len();
        let lone = source.to - source.from == 1;
        match act.act {
            ActName::Confirm if word(&["you", "your", "yours", "myself", "yourself", "himself", "themselves"]) => Some(Verdict::Decline),
            ActName::Confirm if lone && !whole_line && word(&["out", "in", "on", "off", "up", "down", "through", "over", "good", "set", "clear"]) => {
                Some(Verdict::Aside)
            }
            ActName::Note if whole_line && self.parsed.weight(source.from, source.to) < 1.6 => Some(Verdict::Ask(vec![act.clone()], Doubt::Vague)),
            ActName::Confirm if foreign > 0 && word(&["they", "he"]) => Some(Verdict::Decline),
            ActName::By if fit.rule.is_none_or(|(_, cost)| cost > 0.1) => Some(Verdict::Decline),
            ActName::Wait if act.slots.duration.is_none() && !word(&["cure", "timer", "clock", "timing", "counting", "stopwatch"]) => {
                Some(Verdict::Ask(vec![act.clone()], Doubt::Vague))
            }
            ActName::Want if !part && act.slots.value.is_none() && !exact => Some(Verdict::Decline),
            ActName::Want if !part && act.slots.unit.is_none() && act.slots.value.is_some() => Some(Verdict::Ask(vec![act.clone()], Doubt::Vague)),
            name if name.is_question() && !part && word(&["he", "they", "him", "their"]) && is_about_the_step(name) => Some(Verdict::Decline),
            ActName::Fitted if !part => Some(Verdict::Decline),
            ActName::AskPart if !part && fit.rule.is_none() && fit.chance < 0.8 => Some(Verdict::Decline),
            ActName::Start if act.slots.procedure.is_none() && act.slots.unit.is_none() && !word(&["job"]) => Some(Verdict::Decline),
            ActName::Switch if act.slots.corner.is_none() && act.slots.unit.is_none() && !word(&["side", "sides", "other", "one"]) => Some(Verdict::Decline),
            _ => None,
        }
    }

    /// A part that is not this unit's, or a name that fits several, is asked about.
    fn named(&self, act: Act, fit: &Fitting, source: &Source<'_>) -> Verdict {
        let two_sides = source.mentions().any(|mention| mention.what == What::Corner(None));
        if two_sides && matches!(act.act, ActName::Switch | ActName::Start) {
            return Verdict::Ask(vec![act], Doubt::Side);
        }
        let set = |id: &str| self.unit.thing(id).is_none_or(|thing| thing.sort.is_adjusted());
        let no_setting = act.act == ActName::AskSetting && !act.slots.about.as_deref().is_some_and(set);
        if no_setting && source.named().is_none() && act.slots.about.is_some() {
            return Verdict::Decline;
        }
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

    fn value(&self, act: Act, fit: Option<&Fitting>, source: &Source<'_>) -> Verdict {
        let score = fit.map_or(0.5, |fit| fit.score);
        let numbers = source.numbers();
        let Some(value) = act.slots.value else {
            return if act.act == ActName::Correct && source.named().is_some() {
                Verdict::Take(act, score)
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
        if spoken.mended && spoken.unit.is_none() {
            return Verdict::Ask(vec![act], Doubt::Number);
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
        let most = act.slots.about.as_deref().and_then(|id| self.unit.thing(id)).and_then(|thing| thing.most);
        if most.is_some_and(|most| spoken.unit.is_none_or(|unit| matches!(unit, "click" | "position")) && value > f64::from(most) * 2.0 + 2.0) {
            return Verdict::Ask(vec![act], Doubt::Number);
        }
        let several = source.parts().iter().any(|ids| ids.len() > 1) && source.named().is_none();
        if several {
            let ids: Vec<Act> = source.parts().into_iter().flatten().map(|id| act.clone().about(id)).collect();
            return Verdict::Ask(ids, Doubt::Part);
        }
        if waiting == WaitingFor::YesOrNo && spoken.unit.is_none() && source.named().is_none() {
            return Verdict::Ask(vec![act], Doubt::Meaning);
        }
        Verdict::Take(act, score)
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

/// Questions about the work in hand, of which nobody else is the subject.
fn is_about_the_step(name: ActName) -> bool {
    matches!(
        name,
        ActName::AskTool | ActName::AskTorque | ActName::AskTurn | ActName::AskMark | ActName::AskWhy | ActName::AskPart | ActName::AskCaution
            | ActName::AskStuck | ActName::AskLocker | ActName::AskSwap
    )
}

/// What a rule may leave out of the line before an act is not sure any more.
fn most_cost(name: ActName) -> f32 {
    match name {
        ActName::Confirm | ActName::Finish | ActName::Skip | ActName::Undo | ActName::Start | ActName::Switch | ActName::Resume => 0.62,
        ActName::Deny | ActName::Reading | ActName::Correct => 0.9,
        _ => 2.0,
    }
}

/// Whether one of the numbers in doubt is the one just taken.
fn spells_out(last: Option<&Act>, between: &[Act]) -> bool {
    let value = last.and_then(|act| act.slots.value);
    value.is_some() && between.iter().any(|act| act.slots.value == value)
}

/// Whether two readings of one thing stand side by side.
fn several_values(acts: &[Act]) -> bool {
    let values = |act: &&Act| matches!(act.act, ActName::Reading | ActName::Correct) && act.slots.value.is_some();
    let all: Vec<&Act> = acts.iter().filter(values).collect();
    all.iter().enumerate().any(|(n, one)| all.iter().skip(n + 1).any(|other| one.slots.about == other.slots.about && one.slots.value != other.slots.value))
}

/// Acts that the model alone never decides.
fn needs_rule(name: ActName) -> bool {
    matches!(
        name,
        ActName::Confirm | ActName::Skip | ActName::Finish | ActName::Undo | ActName::Reading | ActName::Correct | ActName::Resume | ActName::Start | ActName::Switch
    )
}

/// The same act twice in a row is one, and so is "off, and on the tray".
fn merge(acts: &mut Vec<Act>) {
    acts.dedup_by(|later, earlier| {
        let valued = |act: &Act| matches!(act.act, ActName::Reading | ActName::Correct) && act.slots.value.is_some();
        let same = valued(earlier) && valued(later) && earlier.slots.value == later.slots.value && earlier.slots.about == later.slots.about;
        if same && (earlier.slots.unit.is_none() || later.slots.unit.is_none() || earlier.slots.unit == later.slots.unit) {
            earlier.slots.unit = earlier.slots.unit.take().or_else(|| later.slots.unit.take());
            return true;
        }
        // "Ten, no, eleven": the first was never recorded.
        if valued(earlier) && later.act == ActName::Correct && valued(later) && earlier.slots.about == later.slots.about {
            earlier.slots = later.slots.clone();
            return true;
        }
        let done_twice = later.act == ActName::Confirm && earlier.act == ActName::Confirm;
        if done_twice && (later.slots.about.is_none() || earlier.slots.about.is_none()) {
            earlier.slots.about = earlier.slots.about.take().or_else(|| later.slots.about.take());
            return true;
        }
        if earlier.act == ActName::AskSwap && later.act == ActName::AskSwap {
            earlier.slots.tool = later.slots.tool.take().or_else(|| earlier.slots.tool.take());
            return true;
        }
        later == earlier || (later.act == ActName::Deny && earlier.act == ActName::Deny)
    });
}

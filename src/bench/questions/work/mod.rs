//! A calculation in mid-step: what was said, completed from the unit card and the job, answered or asked for.

mod convert;
mod fill;
mod instead;
mod known;
mod pick;
mod rests;
mod tell;
mod with;
mod words;

use crate::act::{Act, ActName, Slots};
use crate::bench::desk::Desk;
use crate::bench::{Part, Question, Refusal};
use crate::event::{Event, Pending};
use crate::quantity::Unit;
use crate::rulebase::talk::{Asking, Works};
use crate::workings::registry::{self, Kind, Refusal as Refused, Value, Worked, Working};
pub use instead::instead;
use known::{FoundAt, Known};
pub use rests::rests_on;
use std::collections::BTreeMap;
use tell::Rest;
use words::Words;

/// A calculation.
pub fn work(desk: &mut Desk<'_>, act: &Act) {
    let kind = act.slots.kind.as_deref().and_then(Kind::parse);
    let words = words_of(desk, act);
    if let Some(never) = never(&desk.rules.talk.works, &words) {
        return desk.say(Part::Refused(Refusal::Work { why: never.to_owned() }));
    }
    let talk = desk.rules.talk.clone();
    match pick::pick(&talk.works, kind, &words) {
        Some(picked) if let Some(id) = on_card(desk, &picked, &words) => {
            let slots = Slots { about: Some(id), ..Slots::default() };
            super::part::tool(desk, &Act { act: ActName::AskTool, slots });
        }
        Some(picked) if picked.working.name != "convert" => {
            if let Some(strange) = words.figures.iter().find_map(|figure| figure.strange.as_ref()) {
                let why = format!("{strange} is no unit that I know");
                return desk.say(Part::Refused(Refusal::Work { why }));
            }
            let case = Case {
                asking: picked.asking,
                working: picked.working,
                about: about(desk, act, &words, picked.asking),
                rates: rates(&picked.said.values, &words),
            };
            case.go_on(desk, picked.said.values);
        }
        Some(_) => convert::convert(desk, act, &words),
        None if kind == Some(Kind::Convert) || convert::both(&words) => convert::convert(desk, act, &words),
        None => desk.say(Part::Unknown { what: "how to work that out".to_owned() }),
    }
}

/// The units that stand among the words of a question.
#[must_use]
pub fn units(text: &str) -> Vec<Unit> {
    Words::of(text).units.into_iter().map(|(_, unit)| unit).collect()
}

/// The part or adjuster that the words of a question name.
#[must_use]
pub fn names(card: &crate::rulebase::UnitCard, text: &str) -> Option<String> {
    known::named(card, &Words::of(text))
}

/// The part that a question names, where the card itself answers it (`card` in the table): none of what the calculation
/// has to know was said, and the part has its size on the card.
fn on_card(desk: &Desk<'_>, picked: &pick::Picked<'_>, words: &Words) -> Option<String> {
    let said = &picked.said.values;
    let lacks = picked.working.inputs.iter().any(|input| input.required && !said.contains_key(input.name));
    if !picked.asking.card || !lacks {
        return None;
    }
    let card = desk.card()?;
    let part = card.part(&known::named(&card, words)?)?;
    (part.across.is_some() || part.key.is_some()).then(|| part.id.clone())
}

/// Whether another tool will do on a hexagon that the question itself names, by its size or by its part; false when it
/// names none, and the part in hand is meant.
pub fn swap(desk: &mut Desk<'_>, act: &Act) -> bool {
    let words = words_of(desk, act);
    let talk = desk.rules.talk.clone();
    let asking =
        talk.works.works.iter().find(|asking| asking.working().is_some_and(|own| own.name == "stand-in"));
    let Some((asking, working)) = asking.and_then(|asking| Some((asking, asking.working()?))) else {
        return false;
    };
    let said = fill::said(asking, working, &words).values;
    let about = about(desk, act, &words, asking);
    if !said.contains_key("tool") || !(said.contains_key("hex") || about.1) {
        return false;
    }
    Case { asking, working, about, rates: Vec::new() }.go_on(desk, said);
    true
}

/// The question's words; without them, the figures that hearing took.
fn words_of(desk: &Desk<'_>, act: &Act) -> Words {
    let text = act.slots.text.as_deref().or(desk.utterance.heard.as_deref());
    let mut words = text.map(Words::of).unwrap_or_default();
    let said = act.slots.values.as_deref().unwrap_or_default();
    if words.tokens.is_empty() {
        words.figures = words::spoken(said);
    } else if desk.utterance.understood.len() > 1 && !said.is_empty() {
        // The line holds more than this question: only the figures that hearing gave it are its own.
        words.figures.retain(|figure| said.iter().any(|own| words::same_figure(figure, own)));
    }
    words
}

/// What the question is about: what it names, or the part in hand.
fn about(desk: &Desk<'_>, act: &Act, words: &Words, asking: &Asking) -> (Option<String>, bool) {
    let card = desk.card();
    let named = act.slots.about.clone().or_else(|| known::named(card.as_deref()?, words));
    let is_named = named.is_some();
    let hand = super::super::entries::notes::current(desk).and_then(|step| step.about);
    // With none named, the calculation may tell which: the part that has such a size, the one in hand before others.
    let has = |id: &str| card.as_deref()?.part(id)?.sizes.get(asking.part.as_deref()?).map(|_| ());
    let suits = || {
        let card = card.as_deref()?;
        card.parts.iter().map(|part| &part.id).find(|id| has(id).is_some()).cloned()
    };
    let hand = hand.filter(|hand| asking.part.is_none() || has(hand).is_some()).or_else(suits);
    (named.or(hand), is_named)
}

/// The rates among what was said, N/mm: they tell which spring is meant. A bare number after "the" may be one.
fn rates(values: &BTreeMap<String, Value>, words: &Words) -> Vec<f64> {
    let given = values.values().filter_map(|value| match value {
        Value::Quantity(quantity) => quantity.in_unit(Unit::NewtonPerMillimetre).ok(),
        _ => None,
    });
    let bare = words.figures.iter().filter(|figure| figure.unit.is_none());
    let after_the = bare.filter(|figure| figure.start.checked_sub(1).is_some_and(|at| words.at(at) == "the"));
    let mut rates: Vec<f64> = given.collect();
    if rates.is_empty() {
        rates.extend(after_the.map(|figure| figure.value));
    }
    rates
}

fn never<'w>(works: &'w Works, words: &Words) -> Option<&'w str> {
    works
        .never
        .iter()
        .find(|never| never.cues.iter().any(|cue| words.cue(cue) > 0))
        .map(|never| never.why.as_str())
}

/// One question on its way to an answer.
struct Case<'w> {
    asking: &'w Asking,
    working: &'static Working,
    about: (Option<String>, bool),
    rates: Vec<f64>,
}

impl Case<'_> {
    /// Completes what was said, and answers, asks or refuses.
    fn go_on(&self, desk: &mut Desk<'_>, said: BTreeMap<String, Value>) {
        let (given, rest) = self.complete(desk, &said);
        if let Some(why) = self.too_much(desk, &said, &given) {
            return desk.say(Part::Refused(Refusal::Work { why }));
        }
        let worked: Result<Vec<Worked>, Refused> =
            self.ways().iter().map(|way| self.call(&given, way)).collect();
        match worked {
            Ok(worked) => desk.say(tell::answer(self.asking, &worked, &rest)),
            Err(Refused::Missing { input, ask, unit, .. }) => self.ask(desk, &said, &input, &ask, unit),
            Err(refused) => {
                let why = tell::reason(self.asking, self.working, &refused);
                desk.say(Part::Refused(Refusal::Work { why }));
            }
        }
    }

    /// What was said, with what card, job and crib add to it, and where each was found.
    fn complete(&self, desk: &Desk<'_>, said: &BTreeMap<String, Value>) -> (BTreeMap<String, Value>, Rest) {
        let mut given = said.clone();
        let mut rest = Rest::default();
        for (name, text) in &self.asking.with {
            given.insert(name.clone(), Value::Text(text.clone()));
        }
        for found in &self.asking.inputs {
            if given.contains_key(&found.input) {
                continue;
            }
            let places = found.from.iter();
            let unit = self.working.input(&found.input).and_then(registry::Input::unit);
            let at = places.filter(|path| allowed(path, said)).find_map(|path| {
                let path = path.split(" unless ").next().unwrap_or(path);
                let known = self.known(desk, &given);
                match path.strip_prefix("function ") {
                    Some(name) => known.function(name, unit?),
                    None => known.find(path),
                }
            });
            if let Some(FoundAt { value, place }) = at {
                rest.places.insert(found.input.clone(), place);
                given.insert(found.input.clone(), value);
            } else if let Some(assumed) = &found.assume {
                rest.places.insert(found.input.clone(), "assumed, common practice".to_owned());
                given.insert(found.input.clone(), Value::Text(assumed.clone()));
            } else {
                rest.lacking.extend(found.lacking.clone());
            }
        }
        (given, rest)
    }

    fn known<'a, 'd>(&self, desk: &'a Desk<'d>, given: &'a BTreeMap<String, Value>) -> Known<'a, 'd> {
        Known {
            desk,
            card: desk.card(),
            about: self.about.0.clone(),
            named: self.about.1,
            given,
            rates: self.rates.clone(),
        }
    }

    /// What was said passes what the card allows.
    fn too_much(
        &self,
        desk: &Desk<'_>,
        said: &BTreeMap<String, Value>,
        given: &BTreeMap<String, Value>,
    ) -> Option<String> {
        self.asking.inputs.iter().find_map(|found| {
            let most = found.most.as_ref()?;
            let own = quantity(said.get(&found.input)?)?;
            let limit = quantity(&self.known(desk, given).find(&most.of)?.value)?;
            let limit = crate::quantity::Quantity::new(limit.value * most.times, limit.unit);
            let over = own.compare(limit).is_ok_and(std::cmp::Ordering::is_gt);
            over.then(|| format!("{} is past {}: {}", own.show(), limit.show(), most.why))
        })
    }

    /// The texts that are settled several ways, one set a way.
    fn ways(&self) -> Vec<BTreeMap<String, String>> {
        match self.asking.each.iter().next() {
            None => vec![BTreeMap::new()],
            Some((name, ways)) => {
                ways.iter().map(|way| BTreeMap::from([(name.clone(), way.clone())])).collect()
            }
        }
    }

    fn call(
        &self,
        given: &BTreeMap<String, Value>,
        way: &BTreeMap<String, String>,
    ) -> Result<Worked, Refused> {
        let mut given = given.clone();
        given.extend(way.iter().map(|(name, text)| (name.clone(), Value::Text(text.clone()))));
        if let Some(want) = &self.asking.want {
            given.insert("want".to_owned(), Value::Text(want.clone()));
        }
        let done = registry::call(self.working.name, &given);
        match (&done, self.unknown(&given)) {
            // What was said is checked first: an impossible value is refused before anything is asked for.
            (Ok(_) | Err(Refused::Missing { .. }), Some(missing)) => Err(missing),
            _ => done,
        }
    }

    /// The first input, in the table's order, that has to be known and is not.
    fn unknown(&self, given: &BTreeMap<String, Value>) -> Option<Refused> {
        let input = self.asking.inputs.iter().find_map(|found| {
            let input = self.working.input(&found.input)?;
            let beside = found.need_beside.as_ref().is_some_and(|other| given.contains_key(other));
            let needed = found.need || beside || input.required;
            (needed && !given.contains_key(&found.input)).then_some(input)
        })?;
        Some(Refused::Missing {
            working: self.working.name.to_owned(),
            input: input.name.to_owned(),
            ask: input.ask(),
            unit: input.unit(),
        })
    }

    /// Asks for one input, and keeps what was said until it comes.
    fn ask(
        &self,
        desk: &mut Desk<'_>,
        said: &BTreeMap<String, Value>,
        input: &str,
        ask: &str,
        unit: Option<Unit>,
    ) {
        let called = self.asking.input(input).and_then(|found| found.called.as_deref());
        let ask = called.map_or_else(|| ask.to_owned(), |called| format!("what is the {called}?"));
        // A caution that waits for its acknowledgement stays the open question.
        let free = matches!(desk.state.progress.pending, None | Some(Pending::Work { .. }));
        if desk.state.progress.open && free {
            desk.open(Pending::Work {
                ask: self.asking.ask.clone(),
                given: said.iter().map(|(name, value)| (name.clone(), written(value))).collect(),
                missing: input.to_owned(),
                unit: unit.map(|unit| unit.name().to_owned()),
                about: self.about.0.clone().filter(|_| self.about.1),
                asks: ask.clone(),
            });
        }
        desk.say(Part::Question(Question::Work { ask, missing: input.to_owned() }));
    }
}

/// Whether a place may be looked in: `charge unless p` is passed over once `p` was said.
fn allowed(path: &str, said: &BTreeMap<String, Value>) -> bool {
    path.split_once(" unless ").is_none_or(|(_, input)| !said.contains_key(input))
}

fn quantity(value: &Value) -> Option<crate::quantity::Quantity> {
    match value {
        Value::Quantity(quantity) | Value::Pressure(quantity, _) => Some(*quantity),
        Value::Text(_) => None,
    }
}

/// A value as it is kept in the record: exact, with its unit.
fn written(value: &Value) -> String {
    match value {
        Value::Quantity(quantity) => format!("{} {}", quantity.value, quantity.unit.name()),
        Value::Pressure(quantity, basis) => {
            format!("{} {} {}", quantity.value, quantity.unit.name(), tell::basis(*basis))
        }
        Value::Text(text) => text.clone(),
    }
}

/// The answer to an input that was asked for; whether it was one.
pub fn answered(desk: &mut Desk<'_>, act: &Act, pending: &Pending) -> bool {
    let Pending::Work { ask, given, missing, about, .. } = pending else { return false };
    match act.act {
        ActName::Deny => {
            super::super::pending::dropped(desk);
            return true;
        }
        ActName::Reading if act.slots.about.is_none() || act.slots.about == *about => {}
        ActName::AskWork | ActName::Note => {}
        _ => return false,
    }
    let talk = desk.rules.talk.clone();
    let Some(asking) = talk.works.find(ask) else { return false };
    let Some(working) = asking.working() else { return false };
    let words = words_of(desk, act);
    let another =
        pick::pick(&talk.works, None, &words).is_some_and(|other| other.cue > 1 && other.asking.ask != *ask);
    if act.act == ActName::AskWork && another {
        return false;
    }
    let Some(value) = fill::answer(asking, working, missing, &words, act) else { return false };
    let mut said: BTreeMap<String, Value> =
        given.iter().map(|(name, text)| (name.clone(), Value::Text(text.clone()))).collect();
    let kept = known::kept(desk, asking, missing, &value);
    said.insert(missing.clone(), value);
    let said = read_back(working, said);
    desk.emit(Event::Settled);
    if let Some(kept) = kept {
        desk.emit(Event::Reading(kept));
    }
    let from = desk.parts.len();
    let case = Case {
        asking,
        working,
        about: (about.clone(), about.is_some()),
        rates: rates(&said, &Words::default()),
    };
    case.go_on(desk, said);
    crate::bench::decide::kept(desk, &Act::new(ActName::AskWork), from);
    desk.show_step = false;
    true
}

/// Texts kept in the record become quantities again where the input counts something.
fn read_back(working: &Working, said: BTreeMap<String, Value>) -> BTreeMap<String, Value> {
    let read = |name: &str, value: Value| match (&value, working.input(name).and_then(registry::Input::unit))
    {
        (Value::Text(text), Some(_)) if !text.contains("gauge") && !text.contains("abs") => {
            crate::quantity::Quantity::parse(text).map_or(value, Value::Quantity)
        }
        _ => value,
    };
    said.into_iter().map(|(name, value)| (name.clone(), read(&name, value))).collect()
}

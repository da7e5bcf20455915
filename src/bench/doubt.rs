//! Hearing could not tell: the bench words the question, keeps it, and knows what answers it.

use super::desk::Desk;
use super::entries::{reading, relative};
use super::waiting::waiting;
use super::{Part, Question, decide, deeds, flow, judge, pending, present};
use crate::act::{Act, ActName, Doubt, Heard, WaitingFor};
use crate::event::Pending;
use crate::quantity::{Quantity, Unit, figures};

/// Opens the question that hearing leaves to the bench.
pub fn open(desk: &mut Desk<'_>, heard: &Heard) {
    if words_answer(desk, &heard.between) {
        return flow::go_on(desk);
    }
    if tells_nothing(desk, &heard.between) {
        desk.show_step = true;
        return flow::go_on(desk);
    }
    let doubt = heard.doubt.clone().unwrap_or(Doubt::Meaning);
    if let Some(act) = anew(desk, &heard.between, &doubt) {
        decide::perform(desk, &act);
        return flow::go_on(desk);
    }
    if stays_open(desk, &heard.between) {
        return;
    }
    if doubt == Doubt::Vague && critical(desk) {
        // A critical value is asked for without leading: a guess is not offered back to be nodded at.
        let question = question(desk, &[], doubt);
        return desk.say(Part::Question(question));
    }
    // The last question asked is the one that a yes answers. What waits for words keeps waiting for them.
    let keeps = !heard.between.is_empty() && !waits_for_more(desk);
    if keeps && desk.state.progress.open {
        let acts = heard.between.clone();
        desk.open(Pending::Between { acts, doubt: doubt.clone(), then: heard.acts.clone() });
    }
    let question = question(desk, &heard.between, doubt);
    desk.say(Part::Question(question));
}

/// A value in its unit for the very step whose value is being said back: it takes that one's place, and is said back in
/// its turn. A wish that is relative to where the adjuster stands is worked out, whatever else was doubted.
fn anew(desk: &Desk<'_>, between: &[Act], doubt: &Doubt) -> Option<Act> {
    if let Some(wish) = between.iter().find(|act| relative::of_adjuster(desk, act)) {
        return Some(wish.clone());
    }
    let ([act], Doubt::Unit) = (between, doubt) else { return None };
    let Some(Pending::Value { kept }) = &desk.state.progress.pending else { return None };
    let mine = act.slots.about.is_none() || act.slots.about == kept.about;
    let value = matches!(act.act, ActName::Reading | ActName::Correct) && act.slots.value.is_some();
    let unit = |name: &Option<String>| name.as_deref().and_then(Unit::parse);
    let fits = unit(&act.slots.unit).zip(unit(&kept.unit)).is_some_and(|(a, b)| a.same_dimension(b));
    (mine && value && fits).then(|| Act { act: ActName::Reading, slots: act.slots.clone() })
}

/// Whether the question that is open stays the one to answer, and is asked again: a caution always, any other where the
/// doubt brings nothing that could be answered instead.
fn stays_open(desk: &mut Desk<'_>, between: &[Act]) -> bool {
    match &desk.state.progress.pending {
        None => return false,
        Some(Pending::Acknowledge { .. }) => desk.say(Part::Question(Question::Acknowledge)),
        Some(_) if between.is_empty() && !waits_for_more(desk) => {
            pending::say_again(desk);
        }
        Some(_) => return false,
    }
    true
}

/// Whether the open question gathers what a job needs to begin, or a serial.
fn waits_for_more(desk: &Desk<'_>) -> bool {
    matches!(desk.state.progress.pending, Some(Pending::Start { .. } | Pending::Switch { .. }))
}

/// Words said to an open question that waits for words: they answer it, or it is asked again. Each such question has its
/// own second look (a serial that must agree, a reason said back, one of its options), so that they need no other.
fn words_answer(desk: &mut Desk<'_>, between: &[Act]) -> bool {
    let [act] = between else { return false };
    let waits = waiting(desk.rules, &desk.state, desk.now, desk.by_ear()).kind == WaitingFor::Text;
    if act.act != ActName::Note || !waits || desk.state.progress.pending.is_none() {
        return false;
    }
    if !pending::takes(desk, act) {
        pending::say_again(desk);
    }
    true
}

/// A yes or a done to a step that waits for words: nothing to ask about.
fn tells_nothing(desk: &Desk<'_>, between: &[Act]) -> bool {
    let [act] = between else { return false };
    let said = act.slots.text.as_deref().filter(|_| act.act == ActName::Note && waits_for_words(desk));
    desk.state.progress.pending.is_none() && said.is_some_and(|said| reading::tells_nothing(desk, said))
}

/// The question, with each option as it would be said.
pub fn question(desk: &Desk<'_>, acts: &[Act], doubt: Doubt) -> Question {
    let options = acts.iter().map(|act| option(desk, act)).collect();
    // A bare number brought no unit that could be the wrong one.
    let bare = doubt == Doubt::Unit && !acts.is_empty() && acts.iter().all(|act| act.slots.unit.is_none());
    // Nor is a unit the wrong one that the part is measured in, at whichever step.
    let known = doubt == Doubt::Unit && !acts.is_empty() && acts.iter().all(|act| unit_is_its_own(desk, act));
    let doubt = if bare || known { Doubt::Number } else { doubt };
    Question::Which { options, doubt, wanted: wanted(desk) }
}

/// Whether the unit said is of a kind that the part named, or the one in hand, is measured in.
fn unit_is_its_own(desk: &Desk<'_>, act: &Act) -> bool {
    let (Some(card), Some(procedure)) = (desk.card(), desk.procedure()) else { return false };
    let Some(unit) = act.slots.unit.as_deref().and_then(Unit::parse) else { return false };
    let in_hand = super::entries::notes::current(desk).and_then(|step| step.about);
    let Some(about) = act.slots.about.clone().or(in_hand) else { return false };
    let steps = procedure.all_steps();
    let mut of_steps = steps
        .iter()
        .filter(|step| step.about.as_deref() == Some(about.as_str()))
        .filter_map(|step| judge::unit(&card, step));
    let torque = card.part(&about).and_then(|part| part.torque).map(|limit| limit.unit);
    let setting = card.adjuster(&about).map(deeds::unit_of);
    of_steps.any(|own| own.same_dimension(unit))
        || [torque, setting].into_iter().flatten().any(|own| own.same_dimension(unit))
}

/// What the step in hand wants, for a doubt that has no options.
fn wanted(desk: &Desk<'_>) -> String {
    let (Some(card), Some(step)) = (desk.card(), super::entries::notes::current(desk)) else {
        return String::new();
    };
    present::title(&card, &step)
}

/// An act in a few words.
pub fn option(desk: &Desk<'_>, act: &Act) -> String {
    let card = desk.card();
    let name = act.slots.about.as_deref().map(|about| match &card {
        Some(card) => card.name_of(about).to_owned(),
        None => about.to_owned(),
    });
    let value = act.slots.value.map(|value| figure(value, act.slots.unit.as_deref()));
    let text = act.slots.text.clone();
    let words: Vec<Option<String>> = match act.act {
        ActName::Reading | ActName::Correct | ActName::Want => vec![name, text, value],
        // Words said for a step that waits for words are its answer.
        ActName::Note if waits_for_words(desk) => vec![text],
        ActName::Start if text.is_some() => vec![name, text],
        // The state said ("off") tells more than "done".
        ActName::Confirm => vec![name, text.or_else(|| Some("done".to_owned()))],
        ActName::Deny => vec![name, Some("not done".to_owned())],
        ActName::AskWork => {
            vec![Some("a calculation,".to_owned()), act.slots.kind.clone(), name, text, value]
        }
        other => vec![Some(calling(other).to_owned()), name, text, act.slots.tool.clone(), value],
    };
    let words: Vec<String> = words.into_iter().flatten().filter(|word| !word.is_empty()).collect();
    words.join(" ")
}

/// What an act is called when it is asked whether it was meant.
fn calling(act: ActName) -> &'static str {
    match act {
        ActName::Note => "a note,",
        ActName::Trouble => "trouble,",
        ActName::Undo => "to take the last back",
        ActName::Back => "to go back a step",
        ActName::Again => "to say it again",
        ActName::Skip => "to leave it out",
        ActName::Pause => "to stop for now",
        ActName::Resume => "to go on",
        ActName::Finish => "to close the job",
        ActName::Start => "to start a job",
        ActName::Switch => "to go to another unit",
        ActName::Wait => "a timer",
        ActName::Fitted => "a new",
        ActName::By => "who is working,",
        ActName::AskNow => "what to do now",
        ActName::AskNext => "what comes next",
        ActName::AskTool => "which tool,",
        ActName::AskSwap => "whether it will do,",
        ActName::AskTorque => "how tight,",
        ActName::AskTurn => "which way,",
        ActName::AskLocker => "which threadlocker,",
        ActName::AskBack => "the way back,",
        ActName::AskSetting => "where it stands,",
        ActName::AskRange => "its range,",
        ActName::AskMark => "what lines up,",
        ActName::AskCaution => "what can go wrong",
        ActName::AskWhy => "why",
        ActName::AskSource => "where that comes from,",
        ActName::AskStuck => "that it will not move,",
        ActName::AskPart => "the size of it,",
        ActName::AskLeft => "what is left",
        ActName::AskTime => "how long",
        ActName::AskLog => "what was done",
        ActName::Help => "what can be said",
        _ => "",
    }
}

/// Whether the step in hand waits for a critical value.
fn critical(desk: &Desk<'_>) -> bool {
    let read = super::entries::notes::current(desk).and_then(|step| step.read);
    read.is_some_and(|read| read.critical)
}

/// Whether the step in hand waits for words.
fn waits_for_words(desk: &Desk<'_>) -> bool {
    let read = super::entries::notes::current(desk).and_then(|step| step.read);
    read.is_some_and(|read| read.kind == WaitingFor::Text)
}

fn figure(value: f64, unit: Option<&str>) -> String {
    match unit.and_then(Unit::parse) {
        Some(unit) => Quantity::new(value, unit).say(),
        None => figures::words(value),
    }
}

/// Whether an act picks that option: it is the same act and contradicts none of its slots, or names its words.
pub fn chooses(act: &Act, option: &Act) -> bool {
    let same = act.act == option.act
        && agrees(&act.slots.about, &option.slots.about)
        && agrees(&act.slots.unit, &option.slots.unit)
        && act
            .slots
            .value
            .is_none_or(|value| option.slots.value.is_some_and(|own| (own - value).abs() < 1e-9));
    let told =
        act.slots.value.is_some() || act.slots.about.is_some() || act.act != crate::act::ActName::Confirm;
    (same && told && act.slots.text.is_none()) || names(act, option)
}

fn agrees(said: &Option<String>, option: &Option<String>) -> bool {
    said.is_none() || option.is_none() || said == option
}

/// Whether the words said name the option's own words and no others of the trade ("the same force").
fn names(act: &Act, option: &Act) -> bool {
    let (Some(said), Some(own)) = (&act.slots.text, &option.slots.text) else { return false };
    let last = own.split_whitespace().next_back().unwrap_or_default();
    said.to_lowercase().split(|c: char| !c.is_alphanumeric()).any(|word| word == last)
}

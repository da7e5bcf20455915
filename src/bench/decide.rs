//! One input to events and an answer. Pure: the same rules, past, state, input and time give the same decision.

use super::desk::{Desk, Moment};
use super::entries::{booked, confirm, correct, course, job, notes, reading, resume, skip, undo, want};
use super::questions::{adjuster, part, record, step, work};
use super::state::State;
use super::{Ack, Decision, Fact, Input, Part, Past, Refusal, doubt, flow, pending, timers, waiting, whole};
use crate::act::{Act, ActName, Heard, Outcome};
use crate::event::{Event, Pending, Utterance};
use crate::quantity::Quantity;
use crate::rulebase::Pack;

/// Decides what an input means for the job.
pub fn decide(rules: &Pack, past: &Past, state: &State, input: &Input, now: Moment) -> Decision {
    worked(rules, past, state, input, now).0
}

/// The same, with the job as the decision's events leave it: the desk has applied them one by one, as the real one will
/// be. For whoever looks at many jobs that are kept nowhere.
pub fn worked(rules: &Pack, past: &Past, state: &State, input: &Input, now: Moment) -> (Decision, State) {
    let utterance = match input {
        Input::Heard { utterance, .. } => utterance.clone(),
        Input::Opened | Input::Tick => {
            Utterance { id: "tick".to_owned(), heard: None, understood: Vec::new(), ear: false }
        }
    };
    let mut desk = Desk::new(rules, past, state, now, utterance);
    match input {
        Input::Opened => opened(&mut desk),
        Input::Tick => timers::tick(&mut desk),
        Input::Heard { heard, .. } => line(&mut desk, heard),
    }
    let waiting = waiting::at(&desk);
    let answer = desk.answer();
    (Decision { answer, events: desk.events, waiting }, desk.state)
}

/// The bench is opened on this job, or on none.
fn opened(desk: &mut Desk<'_>) {
    if !desk.state.progress.open {
        return job::none_open(desk);
    }
    desk.emit(Event::TakenUp);
    resume::go_on(desk);
    if !pending::say_again(desk) {
        flow::go_on(desk);
    }
}

fn line(desk: &mut Desk<'_>, heard: &Heard) {
    if whole::drops(desk) || booked::takes(desk, heard) {
        return flow::go_on(desk);
    }
    match heard.outcome {
        Outcome::Decline => decline(desk, heard),
        Outcome::Ask => doubt::open(desk, heard),
        Outcome::Take => {
            for act in &heard.acts {
                perform(desk, act);
            }
            say_needs(desk);
            flow::go_on(desk);
        }
    }
}

/// "Done" does not close a step that wants a value, unless the same line brought it.
fn say_needs(desk: &mut Desk<'_>) {
    let Some((step, asks)) = desk.needs.take() else { return };
    if desk.place().is_some_and(|place| !place.closed.contains_key(&step)) {
        desk.say(Part::Refused(Refusal::NeedsValue { asks }));
    }
}

/// Chatter gets no answer by ear; a person who typed is told that nothing came of it.
fn decline(desk: &mut Desk<'_>, heard: &Heard) {
    if let Some(what) = &heard.refused {
        return desk.say(Part::Refused(Refusal::NotGranted { what: what.clone() }));
    }
    if desk.by_ear() {
        return;
    }
    if let Some(question) = confirm::open_question(desk) {
        // A question of yes or no stands, and what was typed is no answer to it.
        desk.needs = Some(question);
        say_needs(desk);
    } else {
        desk.say(Part::Unknown { what: "what that asks of the bench".to_owned() });
    }
}

/// Works one act. An open question takes what answers it; anything else goes by, and what moves the job drops it.
pub fn perform(desk: &mut Desk<'_>, act: &Act) {
    if pending::takes(desk, act) {
        desk.closed_one = true;
        return;
    }
    if act.act.is_question() {
        return question(desk, act);
    }
    if blocked_by_pause(desk, act) {
        let why = "the job is stopped: say carry on first".to_owned();
        return desk.say(Part::Refused(Refusal::NotNow { why }));
    }
    let hidden = matches!(desk.state.progress.pending, Some(Pending::Work { .. }));
    drop_question(desk, act);
    entry(desk, act);
    // What a calculation's open question hid is shown with the next entry, whatever that is.
    desk.show_step |= hidden;
}

fn blocked_by_pause(desk: &Desk<'_>, act: &Act) -> bool {
    let moves = matches!(
        act.act,
        ActName::Confirm
            | ActName::Deny
            | ActName::Reading
            | ActName::Correct
            | ActName::Skip
            | ActName::Fitted
    );
    desk.state.progress.paused && moves
}

/// An unanswered question never blocks other talk: it is dropped by what moves the job, a caution never.
fn drop_question(desk: &mut Desk<'_>, act: &Act) {
    let aside =
        matches!(act.act, ActName::Note | ActName::Trouble | ActName::Wait | ActName::By | ActName::Pause);
    match &desk.state.progress.pending {
        None | Some(Pending::Acknowledge { .. }) => {}
        Some(Pending::Work { .. }) => desk.emit(Event::Settled),
        Some(_) if aside => {}
        Some(_) => {
            desk.emit(Event::Settled);
            desk.show_step = true;
        }
    }
}

fn entry(desk: &mut Desk<'_>, act: &Act) {
    match act.act {
        ActName::Confirm => confirm::confirm(desk, act),
        ActName::Deny if notes::not_looked_yet(desk) => desk.say(Part::Ack(Ack::Stays)),
        ActName::Deny => confirm::deny(desk),
        ActName::Reading => reading::reading(desk, act),
        ActName::Correct => correct::correct(desk, act),
        ActName::Undo => undo::undo(desk),
        ActName::Back => course::back(desk),
        ActName::Skip => skip::skip(desk, act),
        ActName::Pause => course::pause(desk),
        ActName::Resume => course::resume(desk),
        ActName::Note => notes::note(desk, act),
        ActName::Trouble => notes::trouble(desk, act),
        ActName::Wait => notes::wait(desk, act),
        ActName::Start => job::start(desk, act),
        ActName::Switch => job::switch(desk, act),
        ActName::Finish => job::finish(desk),
        ActName::Want => want::want(desk, act, "customer"),
        ActName::Fitted => notes::fitted(desk, act),
        ActName::By => notes::by(desk, act),
        _ => {}
    }
}

fn question(desk: &mut Desk<'_>, act: &Act) {
    let from = desk.parts.len();
    match act.act {
        ActName::Again => course::again(desk),
        ActName::AskNow => step::now(desk),
        ActName::AskNext => step::next(desk),
        ActName::AskTool => part::tool(desk, act),
        ActName::AskSwap => {
            if !work::swap(desk, act) {
                part::swap(desk, act);
            }
        }
        ActName::AskTorque => part::torque(desk, act),
        ActName::AskTurn => part::turn(desk, act),
        ActName::AskLocker => part::locker(desk, act),
        ActName::AskBack => adjuster::back(desk, act),
        ActName::AskSetting => adjuster::setting(desk, act),
        ActName::AskRange => adjuster::range(desk, act),
        ActName::AskMark => part::mark(desk, act),
        ActName::AskCaution => step::caution(desk),
        ActName::AskWhy => step::why(desk),
        ActName::AskSource => part::source(desk, act),
        ActName::AskStuck => part::stuck(desk, act),
        ActName::AskPart => part::part(desk, act),
        ActName::AskLeft => step::left(desk),
        ActName::AskTime => record::time(desk, act),
        ActName::AskLog => record::log(desk, act),
        ActName::AskWork => work::work(desk, act),
        _ => step::help(desk),
    }
    kept(desk, act, from);
}

/// The figure that this answer worked out, exact, for "what's that in ...".
fn figure(desk: &Desk<'_>, from: usize) -> Option<String> {
    desk.parts
        .get(from..)?
        .iter()
        .rev()
        .find_map(|part| match part {
            Part::Fact(Fact::Worked { worked, .. }) => worked.first()?.quantity(),
            _ => None,
        })
        .map(Quantity::show)
}

/// A question is logged with what it was about; it never moves the job.
pub fn kept(desk: &mut Desk<'_>, act: &Act, from: usize) {
    let answered = desk.parts.len() > from;
    if desk.state.progress.open && answered {
        let said = figure(desk, from).or_else(|| act.slots.about.clone()).unwrap_or_default();
        desk.emit(Event::Answered { act: act.act.as_str().to_owned(), said });
    }
}

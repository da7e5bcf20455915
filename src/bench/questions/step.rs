//! Questions about the step in hand and the ones after it.

use crate::act::WaitingFor;
use crate::bench::desk::Desk;
use crate::bench::entries::job;
use crate::bench::flow::Judge;
use crate::bench::{Fact, Part, cautions, present, waiting};
use crate::rulebase::{Step, UnitCard};
use std::sync::Arc;

fn in_hand(desk: &mut Desk<'_>) -> Option<(Arc<UnitCard>, Step)> {
    let found = desk.card().zip(crate::bench::entries::notes::current(desk));
    if found.is_none() {
        crate::bench::entries::job::none_open(desk);
    }
    found
}

/// What am I doing?
pub fn now(desk: &mut Desk<'_>) {
    let Some((_, step)) = in_hand(desk) else { return };
    if !crate::bench::pending::say_again(desk) {
        present::step(desk, &step);
    }
}

/// What comes next? When the step in hand was closed by this same line, it is the new one, said anyway.
pub fn next(desk: &mut Desk<'_>) {
    let Some((card, step)) = in_hand(desk) else { return };
    if desk.show_step {
        return;
    }
    let (Some(procedure), Some(place)) = (desk.procedure(), desk.place()) else { return };
    let judge = Judge { rules: desk.rules, state: &desk.state, now: desk.now };
    let after = judge.ahead(&procedure, place).into_iter().find(|ahead| ahead.id != step.id).cloned();
    match after {
        Some(after) => {
            let mut sheet = present::sheet(desk, &card, &procedure, &after);
            sheet.asks = None;
            // Said apart, so that nobody takes it for the step in hand.
            desk.say(Part::Sentence("Next".to_owned()));
            desk.say(Part::Step(Box::new(sheet)));
        }
        None => desk.say(Part::Remaining { steps: 0, next: Vec::new() }),
    }
}

/// What can go wrong here?
pub fn caution(desk: &mut Desk<'_>) {
    let Some((card, step)) = in_hand(desk) else { return };
    let any = cautions::again(desk, &step);
    let part = step.about.as_deref().and_then(|id| card.part(id));
    let words = part.and_then(|part| part.critical.clone().or_else(|| part.never.clone()));
    match words {
        Some(words) => desk.say(Part::Sentence(words)),
        None if !any => desk.say(Part::Unknown { what: "a caution for this step".to_owned() }),
        None => {}
    }
}

/// Why this step or value?
pub fn why(desk: &mut Desk<'_>) {
    let Some((card, step)) = in_hand(desk) else { return };
    let part = step.about.as_deref().and_then(|id| card.part(id));
    let adjuster = step.about.as_deref().and_then(|id| card.adjuster(id));
    let why = step
        .why
        .clone()
        .or_else(|| part.and_then(|part| part.why.clone().or_else(|| part.critical.clone())))
        .or_else(|| adjuster.and_then(|adjuster| adjuster.why.clone()))
        .or_else(|| cautions::cards(desk, &step).first().map(|caution| caution.full.clone()));
    desk.say(match why {
        Some(why) => Part::Fact(Fact::Why(why)),
        None => Part::Unknown { what: "why".to_owned() },
    });
}

/// How many steps, and what, remain?
pub fn left(desk: &mut Desk<'_>) {
    let Some((card, _)) = in_hand(desk) else { return };
    let (Some(procedure), Some(place)) = (desk.procedure(), desk.place()) else { return };
    let judge = Judge { rules: desk.rules, state: &desk.state, now: desk.now };
    let ahead = judge.ahead(&procedure, place);
    let next = ahead.iter().take(3).map(|step| present::title(&card, step)).collect();
    let steps = ahead.len();
    desk.say(Part::Remaining { steps, next });
}

/// What can I say?
pub fn help(desk: &mut Desk<'_>) {
    let kind = waiting(desk.rules, &desk.state, desk.now, desk.by_ear()).kind;
    let now: &[&str] = match kind {
        WaitingFor::Done | WaitingFor::Tool => &["done", "not done yet"],
        WaitingFor::YesOrNo => &["yes", "no"],
        WaitingFor::Text => &["the words to write down"],
        WaitingFor::Nothing => &[],
        _ => &["the value, with its unit where it is another than the card's"],
    };
    let always =
        ["what's next", "which tool", "how tight", "which way", "how many clicks back", "scratch that"];
    let begin = job::beginning(desk).filter(|_| kind == WaitingFor::Nothing);
    let phrases = now.iter().chain(&always).map(|phrase| (*phrase).to_owned());
    let phrases = begin.into_iter().chain(phrases).collect();
    desk.say(Part::Fact(Fact::Help { phrases }));
}

//! Questions about the step in hand and the ones after it.

use crate::act::WaitingFor;
use crate::bench::desk::Desk;
use crate::bench::entries::job;
use crate::bench::flow::{self, Judge};
use crate::bench::{Fact, Part, StepCard, cautions, present, waiting};
use crate::event::Pending;
use crate::rulebase::{Deed, Step, UnitCard};
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
    if matches!(desk.state.progress.pending, Some(Pending::Work { .. })) {
        // A calculation's open question never hides the step.
        present::step(desk, &step);
    }
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
            // One sentence, and not the form of a step: nobody takes it for the one in hand.
            let sheet = present::sheet(desk, &card, &procedure, &after);
            let mut text = sheet.text.clone();
            if let Some(first) = text.get_mut(0..1) {
                first.make_ascii_lowercase();
            }
            desk.say(Part::Sentence(format!("Next: {text}")));
            if sheet.tool.is_some() || sheet.size.is_some() {
                let StepCard { name, tool, size, hold, .. } = sheet;
                desk.say(Part::Fact(Fact::Tool { name, tool, size, hold }));
            }
        }
        None => desk.say(Part::Remaining { steps: 0, next: Vec::new() }),
    }
}

/// What can go wrong here?
pub fn caution(desk: &mut Desk<'_>) {
    let Some((card, step)) = in_hand(desk) else { return };
    let unproved = not_proved(desk);
    let any = cautions::again(desk, &step) || unproved;
    let part = step.about.as_deref().and_then(|id| card.part(id));
    let words = part.and_then(|part| part.critical.clone().or_else(|| part.never.clone()));
    match words {
        Some(words) => desk.say(Part::Sentence(words)),
        None if !any => desk.say(Part::Unknown { what: "a caution for this step".to_owned() }),
        None => {}
    }
}

/// Says what still has to be proved before the unit is safe to undo; false when all of it is, or nothing has to be.
fn not_proved(desk: &mut Desk<'_>) -> bool {
    let (Some(card), Some(procedure), Some(place)) = (desk.card(), desk.procedure(), desk.place()) else {
        return false;
    };
    let judge = Judge { rules: desk.rules, state: &desk.state, now: desk.now };
    let open = judge.ahead(&procedure, place).into_iter().find(|step| {
        flow::makes_safe(&procedure, step) && matches!(step.deed, Deed::Prove | Deed::Inspect | Deed::Vent)
    });
    let Some(title) = open.map(|step| present::title(&card, step)) else { return false };
    desk.say(Part::Sentence(format!("It is not proved safe yet. Before anything is undone: {title}.")));
    true
}

/// Whether what the card tells of a part and its values bears on the step: it turns, sets, counts or measures it.
fn is_of_values(step: &Step) -> bool {
    step.read.is_some()
        || present::turns(step.deed)
        || matches!(step.deed, Deed::Zero | Deed::Set | Deed::Replace)
}

/// Why this step or value?
pub fn why(desk: &mut Desk<'_>) {
    if super::work::rests_on(desk) {
        return;
    }
    let Some((card, step)) = in_hand(desk) else { return };
    let part = step.about.as_deref().and_then(|id| card.part(id));
    let adjuster = step.about.as_deref().and_then(|id| card.adjuster(id));
    let danger = || cautions::cards(desk, &step).first().map(|caution| caution.full.clone());
    let why = step
        .why
        .clone()
        .or_else(|| danger().filter(|_| !is_of_values(&step)))
        .or_else(|| part.and_then(|part| part.why.clone().or_else(|| part.critical.clone())))
        .or_else(|| adjuster.and_then(|adjuster| adjuster.why.clone()))
        .or_else(danger);
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

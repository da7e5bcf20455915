//! Random answers to every procedure, at the bench itself: in limits and out, no, back, skip, taking back. Whatever was
//! said, a technician who then answers rightly comes to the end; nothing panics.

use super::bench_walk::Walk;
use super::procedures::JOBS;
use super::technician::Dice;
use sparehand::act::{Act, ActName, Doubt, End, Heard, Slots, WaitingFor};

/// Lines of random talk before the rest is answered rightly.
const RANDOM: u64 = 180;
/// Lines in which a job must be finished from any state.
const FINISH: u32 = 900;

/// Says something at random.
fn anything(walk: &mut Walk, dice: &mut Dice) {
    walk.ear = dice.of_hundred(50);
    match dice.below(100) {
        0..58 => {
            walk.answer_rightly();
        }
        58..66 => said(walk, ActName::Deny, Slots::default()),
        66..73 => said(walk, ActName::Undo, Slots::default()),
        73..78 => said(walk, ActName::Back, Slots::default()),
        78..84 => out_of_limits(walk, dice),
        84..88 => skipped(walk, dice),
        88..91 => ahead(walk, dice),
        91..93 => doubtful(walk, dice),
        93 => said(walk, ActName::Pause, Slots::default()),
        94 => said(walk, ActName::Resume, Slots::default()),
        95 => wish(walk, dice),
        96 => said(walk, ActName::Correct, number(dice)),
        97 => said(walk, ActName::Trouble, words("it will not move")),
        98 => said(walk, ActName::By, words(dice.one(&["Ida", "Tom"]))),
        _ => said(walk, ActName::AskBack, Slots::default()),
    }
}

fn said(walk: &mut Walk, act: ActName, slots: Slots) {
    walk.act(act, slots);
}

fn words(text: &str) -> Slots {
    Slots { text: Some(text.into()), reason: Some(text.into()), ..Slots::default() }
}

fn number(dice: &mut Dice) -> Slots {
    let from = dice.of_hundred(20).then_some(End::FullOut);
    Slots { value: Some(dice.below(40) as f64), from, ..Slots::default() }
}

fn out_of_limits(walk: &mut Walk, dice: &mut Dice) {
    let slots = number(dice);
    said(walk, ActName::Reading, slots);
}

fn skipped(walk: &mut Walk, dice: &mut Dice) {
    let slots = if dice.of_hundred(50) { words("no time today") } else { Slots::default() };
    said(walk, ActName::Skip, slots);
}

/// A part of the unit, drawn at random.
fn part(walk: &Walk, dice: &mut Dice) -> Option<String> {
    let card = walk.pack.unit(&walk.state.place()?.unit)?.clone();
    let ids: Vec<String> = card.ids().map(str::to_owned).collect();
    ids.get(dice.below(ids.len() as u64) as usize).cloned()
}

fn ahead(walk: &mut Walk, dice: &mut Dice) {
    let slots = Slots { about: part(walk, dice), ..Slots::default() };
    said(walk, ActName::Confirm, slots);
}

fn wish(walk: &mut Walk, dice: &mut Dice) {
    let slots = Slots { about: part(walk, dice), ..number(dice) };
    said(walk, ActName::Want, slots);
}

fn doubtful(walk: &mut Walk, dice: &mut Dice) {
    let reading =
        |value: f64| Act { act: ActName::Reading, slots: Slots { value: Some(value), ..Slots::default() } };
    let acts = vec![reading(dice.below(20) as f64), reading(dice.below(20) as f64 + 20.0)];
    walk.hear(Heard::ask(acts, Doubt::Number, 0.5));
}

/// Answers rightly to the end; what cannot be within limits any more is left as a deviation with a reason.
fn finish(walk: &mut Walk) -> Result<u32, String> {
    let (mut step, mut stuck) = (String::new(), 0);
    for line in 0..FINISH {
        if walk.state.progress.closed {
            return Ok(line);
        }
        if walk.state.progress.paused {
            walk.act(ActName::Resume, Slots::default());
        }
        let now = walk.step();
        stuck = if now == step { stuck + 1 } else { 0 };
        step = now;
        let asks = walk.last.waiting.kind;
        if stuck > 3 && stuck % 3 == 0 && !matches!(asks, WaitingFor::Nothing) {
            walk.act(ActName::Skip, words("left as it is, the customer knows"));
        } else {
            walk.answer_rightly();
        }
    }
    let waiting = &walk.last.waiting;
    Err(format!("at {:?}, waiting for {waiting:?}: {:#?}", walk.step(), walk.last.answer))
}

fn job(seed: u64, job: (&str, &str, sparehand::act::Corner)) -> Result<(), String> {
    let mut dice = Dice::new(seed);
    let mut walk = Walk::new();
    walk.start_with(job.0, job.1, job.2);
    for line in 0..RANDOM {
        if walk.state.progress.closed {
            return Ok(());
        }
        anything(&mut walk, &mut dice);
        // From the middle of it too, and not only from where it happens to end.
        if line == 90 {
            finish(&mut walk.clone()).map_err(|what| format!("{job:?} seed {seed} line {line}: {what}"))?;
        }
    }
    finish(&mut walk).map(|_| ()).map_err(|what| format!("{job:?} seed {seed}: {what}"))
}

fn hundred(of: (&str, &str, sparehand::act::Corner)) {
    let failed: Vec<String> = (0..100).filter_map(|seed| job(seed, of).err()).collect();
    assert!(failed.is_empty(), "{} of 100 came to a stand; the first:\n{}", failed.len(), failed[0]);
}

#[test]
fn random_answers_to_the_birch_44_re_spring_always_come_to_the_end() {
    hundred(JOBS[0]);
}

#[test]
fn random_answers_to_the_birch_60_re_spring_always_come_to_the_end() {
    hundred(JOBS[1]);
}

#[test]
fn random_answers_to_the_full_service_always_come_to_the_end() {
    hundred(JOBS[2]);
}

#[test]
fn random_answers_to_the_lark_re_spring_always_come_to_the_end() {
    hundred(JOBS[3]);
}

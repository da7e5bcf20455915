//! Entries to the bench, one mechanism a test: taking back, denial, deviation, running ahead, two units in one job.

use crate::bench_walk::Walk;
use sparehand::act::{Act, ActName, Corner, Doubt, End, Heard, Slots, WaitingFor};
use sparehand::bench::state::{Closing, Fitting, Position};
use sparehand::bench::{Ack, Part, Question, Refusal};

fn slots() -> Slots {
    Slots::default()
}

/// A job answered rightly until that step is in hand.
fn at(step: &str) -> Walk {
    let mut walk = Walk::new();
    walk.start();
    for _ in 0..400 {
        if walk.step() == step {
            return walk;
        }
        walk.answer_rightly();
    }
    panic!("never came to {step}");
}

fn closed(walk: &Walk, step: &str) -> bool {
    walk.state.place().unwrap().closed.contains_key(step)
}

fn said(walk: &Walk, wanted: impl Fn(&Part) -> bool) -> bool {
    walk.last.answer.parts.iter().any(wanted)
}

#[test]
fn taking_back_goes_further_each_time_and_says_what_the_metal_is() {
    let mut walk = at("strip/rock-rebound-range");
    assert!(closed(&walk, "strip/remove-clicker-knob"));
    walk.act(ActName::Undo, slots());
    assert_eq!(walk.step(), "strip/set-needle-back");
    walk.act(ActName::Undo, slots());
    assert_eq!(walk.step(), "strip/remove-clicker-knob");
    let metal = walk.last.answer.parts.iter().find_map(|part| match part {
        Part::Ack(Ack::TakenBack { metal, .. }) => Some(metal.join(" ")),
        _ => None,
    });
    assert!(metal.unwrap().contains("still off"));
    assert_ne!(
        walk.state.place().unwrap().parts.get("clicker-knob").map(|part| part.fitting),
        Some(Fitting::Off)
    );
}

#[test]
fn a_make_safe_taken_back_is_unsafe_until_it_is_proved_again() {
    let mut walk = at("make-safe/inspect-gas-plug");
    assert!(walk.state.place().unwrap().parts["spring"].safe);
    walk.act(ActName::Undo, slots());
    assert!(!walk.state.place().unwrap().parts.get("spring").is_some_and(|part| part.safe));
    assert_eq!(walk.step(), "make-safe/prove-spring");
    walk.act(ActName::Skip, Slots { reason: Some("in a hurry".into()), ..slots() });
    assert!(said(&walk, |part| matches!(part, Part::Refused(Refusal::NeverSkipped { .. }))));
    assert_eq!(walk.step(), "make-safe/prove-spring");
}

#[test]
fn a_reading_by_ear_is_said_back_and_a_denial_opens_it_again() {
    let mut walk = at("found/count-slow-rebound-found");
    walk.ear = true;
    walk.value(14.0);
    assert!(said(&walk, |part| matches!(part, Part::SaidBack(_))));
    assert_eq!(walk.step(), "found/count-slow-rebound-travel");
    walk.act(ActName::Deny, slots());
    assert_eq!(walk.step(), "found/count-slow-rebound-found");
    assert!(said(&walk, |part| matches!(part, Part::Question(Question::WhatWasIt { .. }))));
    walk.value(15.0);
    walk.value(24.0);
    assert_eq!(walk.state.place().unwrap().adjusters["slow-rebound"].found, Some(15.0));
    assert_eq!(walk.state.place().unwrap().adjusters["slow-rebound"].travel, Some(24.0));
}

#[test]
fn a_typed_reading_is_not_said_back_and_a_later_no_is_only_a_no() {
    let mut walk = at("found/count-slow-rebound-found");
    walk.value(14.0);
    assert!(!said(&walk, |part| matches!(part, Part::SaidBack(_))));
    walk.act(ActName::Deny, slots());
    assert_eq!(walk.step(), "found/count-slow-rebound-travel");
}

#[test]
fn short_travel_is_counted_again_and_then_is_a_finding() {
    let mut walk = at("found/count-slow-rebound-travel");
    walk.value(23.0);
    assert!(!closed(&walk, "found/count-slow-rebound-travel"), "one short count is counted again");
    walk.value(23.0);
    assert!(closed(&walk, "found/count-slow-rebound-travel"));
    assert_eq!(walk.state.record.findings.len(), 1);
    assert_eq!(walk.state.place().unwrap().adjusters["slow-rebound"].travel, Some(23.0));
}

#[test]
fn a_count_from_full_out_is_converted_with_the_travel_of_this_unit() {
    let mut walk = at("found/count-slow-rebound-found");
    walk.act(ActName::Reading, Slots { value: Some(10.0), from: Some(End::FullOut), ..slots() });
    assert_eq!(walk.state.place().unwrap().adjusters["slow-rebound"].found, None);
    walk.value(23.0);
    walk.value(23.0);
    assert_eq!(
        walk.state.place().unwrap().adjusters["slow-rebound"].found,
        Some(13.0),
        "23 less 10, not 24 less 10"
    );
}

#[test]
fn a_critical_value_in_another_unit_is_closed_by_a_second_utterance() {
    let mut walk = at("rebuild/tighten-foot-nut");
    walk.confirm();
    let step = walk.step();
    walk.act(ActName::Reading, Slots { value: Some(24.0), unit: Some("lbf.ft".into()), ..slots() });
    assert!(!closed(&walk, &step), "24 lbf.ft is 32.54 N.m, said back first");
    assert!(said(&walk, |part| matches!(part, Part::Question(Question::Value(_)))));
    walk.confirm();
    assert!(closed(&walk, &step));
    let kept = walk.state.place().unwrap().readings[&("foot-nut".into(), "torque".into())];
    // 24 lbf.ft x 1.355817948 N.m (NIST SP 811, table B.8)
    assert!((kept - 32.5396).abs() < 1e-3, "{kept}");
}

#[test]
fn out_of_limits_is_redone_or_left_as_a_deviation_with_reason_and_second_utterance() {
    let mut walk = at("rebuild/tighten-foot-nut");
    walk.confirm();
    let step = walk.step();
    walk.value(36.0);
    assert!(!closed(&walk, &step));
    walk.act(ActName::Skip, slots());
    assert!(said(&walk, |part| matches!(part, Part::Question(Question::Reason { deviation: true, .. }))));
    walk.note("no other wrench");
    assert!(!closed(&walk, &step), "the reason alone does not close it");
    walk.confirm();
    assert_eq!(walk.state.place().unwrap().closed[&step], Closing::Deviated);
}

#[test]
fn a_critical_step_is_left_out_only_with_a_reason_said_back() {
    let mut walk = at("rebuild/tighten-foot-nut");
    walk.confirm();
    let step = walk.step();
    walk.act(ActName::Skip, Slots { reason: Some("wrench is away".into()), ..slots() });
    assert!(!closed(&walk, &step));
    walk.act(ActName::Deny, slots());
    assert!(!closed(&walk, &step));
    walk.act(ActName::Skip, Slots { reason: Some("wrench is away".into()), ..slots() });
    walk.confirm();
    assert_eq!(walk.state.place().unwrap().closed[&step], Closing::Skipped { critical: true });
}

#[test]
fn running_ahead_closes_named_steps_and_never_passes_a_critical_one() {
    let mut walk = at("strip/loosen-knob-grub");
    let named = |id: &str| Act::new(ActName::Confirm).about(id);
    walk.hear(Heard::take(vec![named("knob-grub"), named("clicker-knob")], 1.0));
    assert!(closed(&walk, "strip/loosen-knob-grub") && closed(&walk, "strip/remove-clicker-knob"));
    let mut walk = at("rebuild/align-foot-nut");
    walk.hear(Heard::take(vec![named("foot-grub")], 1.0));
    assert!(!closed(&walk, "rebuild/tighten-foot-grub"));
    assert!(said(&walk, |part| matches!(part, Part::Refused(Refusal::NotPast { .. }))));
}

#[test]
fn several_dones_in_one_line_close_one_step() {
    let mut walk = at("strip/loosen-knob-grub");
    walk.hear(Heard::take(vec![Act::new(ActName::Confirm), Act::new(ActName::Confirm)], 1.0));
    assert_eq!(walk.step(), "strip/remove-clicker-knob");
}

#[test]
fn a_warning_wants_its_own_acknowledgement() {
    let mut walk = at("rebuild/tighten-foot-nut");
    assert_eq!(walk.last.waiting.kind, WaitingFor::YesOrNo);
    walk.value(32.0);
    assert!(!closed(&walk, "rebuild/tighten-foot-nut"), "a value does not acknowledge");
    walk.confirm();
    assert_eq!(walk.last.waiting.kind, WaitingFor::Torque);
    walk.value(32.0);
    assert!(closed(&walk, "rebuild/tighten-foot-nut"));
}

#[test]
fn a_stopped_job_is_not_moved_until_it_goes_on() {
    let mut walk = at("strip/loosen-knob-grub");
    walk.act(ActName::Pause, slots());
    walk.confirm();
    assert_eq!(walk.step(), "strip/loosen-knob-grub");
    walk.act(ActName::Resume, slots());
    assert_eq!(
        walk.step(),
        "make-safe/prove-spring",
        "a spring proved loose before the break is proved again"
    );
    walk.confirm();
    assert_eq!(walk.step(), "strip/loosen-knob-grub");
    walk.confirm();
    assert!(closed(&walk, "strip/loosen-knob-grub"));
}

#[test]
fn going_back_keeps_what_was_recorded() {
    let mut walk = at("strip/remove-clicker-knob");
    walk.act(ActName::Back, slots());
    assert_eq!(walk.step(), "strip/loosen-knob-grub");
    assert!(closed(&walk, "strip/loosen-knob-grub"));
    walk.confirm();
    assert_eq!(walk.step(), "strip/remove-clicker-knob");
}

#[test]
fn a_correction_stands_and_its_step_is_judged_again() {
    let mut walk = at("found/count-rebound-range-found");
    walk.act(ActName::Correct, Slots { value: Some(12.0), about: Some("slow-rebound".into()), ..slots() });
    // The last count of the slow rebound was its travel: 12 of 24 opens it again.
    assert_eq!(walk.step(), "found/count-slow-rebound-travel");
    walk.value(24.0);
    assert_eq!(walk.state.place().unwrap().adjusters["slow-rebound"].travel, Some(24.0));
}

#[test]
fn a_wish_is_kept_from_full_in_and_refused_beyond_the_travel() {
    let mut walk = at("found/record-settings-wanted");
    let want =
        |value: f64, from| Slots { about: Some("slow-rebound".into()), value: Some(value), from, ..slots() };
    walk.act(ActName::Want, want(6.0, Some(End::FullOut)));
    assert_eq!(walk.state.place().unwrap().adjusters["slow-rebound"].target(), Some(18.0));
    walk.act(ActName::Want, want(25.0, None));
    assert_eq!(walk.state.place().unwrap().adjusters["slow-rebound"].target(), Some(18.0));
    assert!(said(&walk, |part| matches!(part, Part::Refused(Refusal::NotASetting { .. }))));
}

#[test]
fn apart_makes_the_position_unknown() {
    let walk = at("strip/set-needle-back");
    assert_eq!(walk.state.place().unwrap().adjusters["slow-rebound"].position, Position::Lost);
}

#[test]
fn another_unit_of_the_job_is_taken_in_hand_by_its_serial() {
    let mut walk = at("book-in/record-complaint");
    let start = Slots {
        procedure: Some("re-spring".into()),
        unit: Some("birch-44".into()),
        corner: Some(Corner::FrontRight),
        ..slots()
    };
    walk.act(ActName::Start, start);
    assert_eq!(walk.state.progress.current.as_deref(), Some("front-right"));
    walk.act(ActName::Switch, Slots { corner: Some(Corner::FrontLeft), ..slots() });
    assert!(said(&walk, |part| matches!(part, Part::Question(Question::Serial { .. }))));
    walk.note("nine nine nine");
    assert_eq!(
        walk.state.progress.current.as_deref(),
        Some("front-right"),
        "the wrong serial changes nothing"
    );
    walk.note("four one seven");
    assert_eq!(walk.state.progress.current.as_deref(), Some("front-left"));
    assert_eq!(walk.step(), "book-in/record-complaint");
}

#[test]
fn an_open_question_is_answered_or_overtaken_and_blocks_nothing() {
    let mut walk = at("found/count-slow-rebound-found");
    let reading = |value| Act { act: ActName::Reading, slots: Slots { value: Some(value), ..slots() } };
    walk.hear(Heard::ask(vec![reading(13.0), reading(30.0)], Doubt::Number, 0.5));
    assert_eq!(walk.last.waiting.asked.len(), 2);
    walk.act(ActName::AskRange, slots());
    assert_eq!(walk.last.waiting.asked.len(), 2, "a question leaves it open");
    walk.value(13.0);
    assert_eq!(walk.state.place().unwrap().adjusters["slow-rebound"].found, Some(13.0));
    assert!(walk.last.waiting.asked.is_empty());
}

#[test]
fn closing_says_what_is_open_and_wants_a_second_utterance() {
    let mut walk = at("strip/remove-clicker-knob");
    walk.act(ActName::Finish, slots());
    assert!(said(
        &walk,
        |part| matches!(part, Part::OpenEnds { items } if items.iter().any(|item| item.contains("not tightened")))
    ));
    assert!(walk.state.progress.open);
    walk.confirm();
    assert!(walk.state.progress.closed);
}

/// The stiffer spring on the card: 80 for 70 N/mm, both 200 mm free.
#[test]
fn a_spring_of_another_rate_asks_once_what_is_to_stay_the_same() {
    let mut walk = at("swap/record-rate-fitted");
    let was = walk.state.place().unwrap().adjusters["preload"].found.unwrap();
    walk.value(80.0);
    let options = walk.last.answer.parts.iter().find_map(|part| match part {
        Part::Question(Question::SpringRate { options, .. }) => Some(options.clone()),
        _ => None,
    });
    let options = options.expect("it is asked");
    assert_eq!(options[0].1.map(|turns| turns.value), Some(was), "the same turns");
    // The same force (Hooke's law): 70 x p = 80 x p', to a flat of a sixth of a turn.
    let force = options[1].1.unwrap().value;
    assert!((force - was * 70.0 / 80.0).abs() <= 1.0 / 12.0 + 1e-9, "{force} for {was}");
    assert_eq!(options[2].1, None, "without the load on the spring nobody knows the height");
    walk.act(ActName::Note, Slots { text: Some("keep the same force".into()), ..slots() });
    assert_eq!(walk.state.place().unwrap().adjusters["preload"].target(), Some(force));
    assert_eq!(walk.step(), "swap/replace-shaft-seal-batch", "and it is not asked again");
}

//! Two units in one job, and corners mixed up: nothing is taken over from one unit to the other.

use super::bench_walk::Walk;
use super::procedures::open_ends;
use sparehand::act::{ActName, Corner, Slots, WaitingFor};
use sparehand::bench::{Ack, Part, Question, Refusal};

fn to(corner: Corner) -> Slots {
    Slots { corner: Some(corner), ..Slots::default() }
}

fn here(walk: &Walk) -> &str {
    walk.state.progress.current.as_deref().unwrap()
}

fn until(walk: &mut Walk, step: &str) {
    for _ in 0..400 {
        if walk.step() == step {
            return;
        }
        walk.answer_rightly();
    }
    panic!("never came to {step}");
}

/// A front strut and a rear coil-over of one car, both booked in, the coil-over in hand.
fn two_units() -> Walk {
    let mut walk = Walk::new();
    walk.start_with("re-spring", "birch-44", Corner::FrontLeft);
    until(&mut walk, "book-in/record-serial");
    walk.note("B44 0417");
    walk.start_with("full-service", "birch-60", Corner::RearRight);
    until(&mut walk, "book-in/record-serial");
    walk.note("B60 0932");
    walk
}

fn switch(walk: &mut Walk, corner: Corner, digits: &str) {
    walk.act(ActName::Switch, to(corner));
    walk.note(digits);
}

#[test]
fn a_switch_names_the_corner_asks_for_the_serial_and_then_says_both() {
    let mut walk = two_units();
    walk.act(ActName::Switch, to(Corner::FrontLeft));
    let asked = walk.last.answer.parts.iter().find_map(|part| match part {
        Part::Question(Question::Serial { place }) => Some(place.clone()),
        _ => None,
    });
    assert_eq!(asked.as_deref(), Some("front left, Birch forty four"));
    assert_eq!(here(&walk), "rear-right", "asked only");
    walk.note("nine three two");
    assert_eq!(here(&walk), "rear-right", "that is the serial of the one in hand");
    assert!(walk.last.answer.parts.iter().any(|part| matches!(part, Part::Refused(Refusal::NotNow { .. }))));
    walk.note("417");
    assert_eq!(here(&walk), "front-left");
    let said = walk.last.answer.parts.iter().find_map(|part| match part {
        Part::Ack(Ack::Switched(name)) => Some(name.clone()),
        _ => None,
    });
    assert_eq!(said.as_deref(), Some("front left, Birch forty four, serial B44 0417"));
}

#[test]
fn a_denied_or_unanswered_switch_changes_nothing() {
    let mut walk = two_units();
    let step = walk.step();
    walk.act(ActName::Switch, to(Corner::FrontLeft));
    walk.act(ActName::Deny, Slots::default());
    assert_eq!((here(&walk), walk.step()), ("rear-right", step.clone()));
    walk.act(ActName::Switch, to(Corner::FrontLeft));
    walk.act(ActName::AskNow, Slots::default());
    assert_eq!((here(&walk), walk.step()), ("rear-right", step));
}

#[test]
fn a_corner_that_is_not_on_the_bench_begins_nothing_by_itself() {
    let mut walk = two_units();
    for corner in [Corner::FrontRight, Corner::RearLeft] {
        walk.act(ActName::Switch, to(corner));
        assert_eq!(walk.last.waiting.kind, WaitingFor::YesOrNo, "{corner:?}");
        assert_eq!(walk.state.progress.places.len(), 2);
        walk.act(ActName::Deny, Slots::default());
        assert_eq!((here(&walk), walk.state.progress.places.len()), ("rear-right", 2));
    }
    walk.act(ActName::Switch, to(Corner::RearRight));
    assert_eq!((here(&walk), walk.state.progress.places.len()), ("rear-right", 2), "it is the one in hand");
}

/// A bare side is the unit of that side, whichever end of the car it sits at.
#[test]
fn a_bare_side_finds_its_unit() {
    let mut walk = two_units();
    switch(&mut walk, Corner::Left, "417");
    assert_eq!(here(&walk), "front-left");
    switch(&mut walk, Corner::Right, "932");
    assert_eq!(here(&walk), "rear-right");
}

#[test]
fn counts_and_wishes_stay_with_their_unit() {
    let mut walk = two_units();
    until(&mut walk, "found/count-slow-bump-found");
    walk.value(9.0);
    switch(&mut walk, Corner::FrontLeft, "417");
    until(&mut walk, "found/count-slow-rebound-found");
    walk.value(14.0);
    walk.value(24.0);
    let places = &walk.state.progress.places;
    assert_eq!(places["rear-right"].adjusters["slow-bump"].found, Some(9.0));
    assert!(!places["front-left"].adjusters.contains_key("slow-bump"));
    assert_eq!(places["front-left"].adjusters["slow-rebound"].found, Some(14.0));
    assert!(!places["rear-right"].adjusters.contains_key("slow-rebound"));
}

/// Taking back reaches the unit in hand only.
#[test]
fn taking_back_never_reaches_the_other_unit() {
    let mut walk = two_units();
    until(&mut walk, "found/count-slow-bump-found");
    walk.value(9.0);
    switch(&mut walk, Corner::FrontLeft, "417");
    for _ in 0..12 {
        walk.act(ActName::Undo, Slots::default());
    }
    let known =
        walk.state.progress.places.get("rear-right").and_then(|place| place.adjusters.get("slow-bump"));
    assert_eq!(known.and_then(|known| known.found), Some(9.0));
}

#[test]
fn both_units_are_worked_to_the_end_in_turns_and_one_is_told_of_while_the_other_closes() {
    let mut walk = two_units();
    let serials = [("front-left", Corner::FrontLeft, "417"), ("rear-right", Corner::RearRight, "932")];
    let mut turns = 0;
    for line in 0..900 {
        let waits = walk.last.waiting.kind;
        // Every step of the unit in hand is worked: the other one, or the end.
        let worked = walk.state.progress.places[here(&walk)].said_back.contains("left")
            && walk.state.progress.pending.is_some();
        let other = serials.iter().find(|(place, ..)| *place != here(&walk)).unwrap();
        let other_open = !walk.state.progress.places[other.0].said_back.contains("left");
        let at_rest = walk.state.progress.pending.is_none() && waits == WaitingFor::Done;
        if other_open && (worked || at_rest && line % 17 == 0) {
            let (_, corner, digits) = *other;
            switch(&mut walk, corner, digits);
            assert_eq!(here(&walk), other.0);
            turns += 1;
        } else if !walk.answer_rightly() {
            break;
        }
    }
    assert!(walk.state.progress.closed, "at {} {}: {:#?}", here(&walk), walk.step(), walk.last);
    assert!(turns > 4, "{turns} switches");
    // The threadlocker of the strut cures after the job; nothing else is open.
    let open = open_ends(&walk);
    assert!(open.iter().all(|end| end.contains("threadlocker")), "{open:?}");
}

//! What the bench does for these procedures, as general mechanisms: waits, charges, screws with stops, springs in series.

use super::bench_walk::Walk;
use sparehand::act::{ActName, Corner, End, Slots, WaitingFor};
use sparehand::bench::state::Position;
use sparehand::bench::{Part, Question, Refusal};

fn at(procedure: &str, unit: &str, step: &str) -> Walk {
    let mut walk = Walk::new();
    walk.start_with(procedure, unit, Corner::Left);
    for _ in 0..600 {
        // The caution of a step is acknowledged before the step is there.
        if walk.step() == step && walk.state.progress.pending.is_none() {
            return walk;
        }
        walk.answer_rightly();
    }
    panic!("never came to {step}");
}

fn closed(walk: &Walk, step: &str) -> bool {
    walk.state.place().unwrap().closed.contains_key(step)
}

#[test]
fn a_wait_is_not_closed_before_its_time_and_is_left_out_with_a_reason_only() {
    let step = "rebuild/wait-oil-to-stand";
    let mut walk = at("re-spring", "lark-43", step);
    walk.confirm();
    assert!(!closed(&walk, step));
    let why = walk.last.answer.parts.iter().find_map(|part| match part {
        Part::Refused(Refusal::NotNow { why }) => Some(why.clone()),
        _ => None,
    });
    assert!(why.as_deref().is_some_and(|why| why.contains("ten minutes")), "{why:?}");
    let mut early = walk.clone();
    early.act(ActName::Skip, Slots { reason: Some("in a hurry".into()), ..Slots::default() });
    assert!(closed(&early, step) && early.state.record.reasons.len() == 1);
    walk.now += chrono::Duration::minutes(10);
    walk.confirm();
    assert!(closed(&walk, step));
}

#[test]
fn a_charge_is_the_cards_unless_another_is_wanted_whatever_was_found() {
    let mut walk = at("re-spring", "birch-60", "found/count-reservoir-charge-found");
    walk.value(9.0);
    assert_eq!(walk.step(), "found/record-gas-was-low", "low gas is asked about");
    let mut own = walk.clone();
    go(&mut own, "rebuild/charge-reservoir-charge");
    own.value(9.0);
    assert!(!closed(&own, "rebuild/charge-reservoir-charge"), "9 bar as found is no target");
    own.value(13.5);
    assert!(closed(&own, "rebuild/charge-reservoir-charge"), "limits are inclusive");

    go(&mut walk, "found/record-settings-wanted");
    let want = Slots { about: Some("reservoir-charge".into()), value: Some(13.0), ..Slots::default() };
    walk.act(ActName::Want, want);
    go(&mut walk, "rebuild/charge-reservoir-charge");
    walk.value(14.0);
    assert!(!closed(&walk, "rebuild/charge-reservoir-charge"), "13 bar is wanted, to within half a bar");
    walk.value(13.0);
    assert!(closed(&walk, "rebuild/charge-reservoir-charge"));
}

fn go(walk: &mut Walk, step: &str) {
    for _ in 0..600 {
        if walk.step() == step && walk.state.progress.pending.is_none() {
            return;
        }
        walk.answer_rightly();
    }
    panic!("never came to {step}");
}

/// Good gas is not asked about.
#[test]
fn gas_within_its_band_asks_nothing() {
    let mut walk = at("re-spring", "birch-60", "found/count-reservoir-charge-found");
    walk.value(13.5);
    assert_eq!(walk.step(), "found/measure-preload-datum");
}

#[test]
fn a_screw_with_stops_has_a_travel_and_its_nought_is_full_out() {
    let mut walk = at("re-spring", "lark-43", "found/count-preload-found");
    walk.act(ActName::Reading, Slots { value: Some(4.0), from: Some(End::FullOut), ..Slots::default() });
    let known = |walk: &Walk| walk.state.place().unwrap().adjusters["preload"].clone();
    assert_eq!(known(&walk).found, Some(4.0), "turns in from full out are the turns of preload");
    assert_eq!(known(&walk).position, Position::At(0.0));
    walk.value(10.0);
    assert_eq!(walk.step(), "found/count-preload-travel", "a short travel is counted again");
    walk.value(12.0);
    assert_eq!(known(&walk).position, Position::At(12.0), "counted to the other stop, it stands there");
    assert_eq!(walk.step(), "found/record-settings-as-found");
    assert!(walk.state.record.findings.is_empty());
}

/// With preload on, the spring is under load: it is not asked to turn freely after a break.
#[test]
fn a_spring_proved_loose_is_proved_again_only_while_it_should_be_loose() {
    for unit in ["birch-44", "birch-60"] {
        let mut walk = at("re-spring", unit, "restore/set-preload");
        let mut before = walk.clone();
        before.act(ActName::Pause, Slots::default());
        before.act(ActName::Resume, Slots::default());
        assert_eq!(before.step(), "make-safe/prove-spring", "{unit}");
        walk.value(2.0);
        let step = walk.step();
        walk.act(ActName::Pause, Slots::default());
        walk.act(ActName::Resume, Slots::default());
        assert_eq!(walk.step(), step, "{unit}");
    }
}

/// With the valve core out there is nothing to prove; while it is in, the gas is proved again after a break.
#[test]
fn gas_is_not_proved_again_with_the_core_out() {
    let mut walk = at("full-service", "birch-60", "strip/drain-oil");
    walk.act(ActName::Pause, Slots::default());
    walk.act(ActName::Resume, Slots::default());
    assert_eq!(walk.step(), "strip/drain-oil");
    assert!(closed(&walk, "make-safe/prove-reservoir-charge"));
}

/// Springs in series: 1/k = 1/k1 + 1/k2 (any textbook of mechanics). 2 turns of 1.5 mm on 60 and 25 N/mm are
/// 3 x 17.647 = 52.94 N; on 70 and 25 N/mm (18.421) that is 2.874 mm, 1.916 turns, 1 5/6 or 2 by flats of a sixth;
/// the main springs alone would have said 1 2/3. So few turns do not tell: 12 turns are 317.6 N, 17.24 mm, 11.5 turns,
/// against 10.33 by the main springs alone.
#[test]
fn the_same_preload_force_counts_the_tender_in() {
    let mut walk = at("re-spring", "birch-60", "found/count-preload-found");
    walk.value(12.0);
    go(&mut walk, "swap/record-rate-fitted");
    walk.value(70.0);
    assert_eq!(walk.last.waiting.kind, WaitingFor::Text);
    let options = walk.last.answer.parts.iter().find_map(|part| match part {
        Part::Question(Question::SpringRate { options, .. }) => Some(options.clone()),
        _ => None,
    });
    let force = options.unwrap().into_iter().find(|(name, _)| name.contains("force")).unwrap().1.unwrap();
    assert!((force.value - 11.5).abs() < 1e-9, "{force:?}");
}

/// A spring that closes too early is asked about: 12 turns found, perch to keeper 240 mm, stroke 100 mm, closed
/// 126 + 40 + 5 = 171 mm.
#[test]
fn a_spring_without_room_at_full_stroke_is_asked_about() {
    let mut walk = at("re-spring", "birch-60", "found/measure-preload-datum");
    walk.value(240.0);
    go(&mut walk, "swap/record-rate-fitted");
    walk.value(70.0);
    walk.note("same turns");
    assert_eq!(walk.step(), "swap/record-coil-bind");

    let mut walk = at("re-spring", "birch-60", "found/measure-preload-datum");
    walk.value(329.0);
    go(&mut walk, "swap/record-rate-fitted");
    walk.value(70.0);
    walk.note("same turns");
    assert_eq!(walk.step(), "rebuild/refit-tender");
}

/// `hold` beside another deed says how it is held; alone it is what the step does.
#[test]
fn a_step_may_say_how_it_is_held() {
    let walk = Walk::new();
    let procedure = walk.pack.procedure("re-spring", "lark-43").unwrap();
    let all = procedure.all_steps();
    let step = |id: &str| (*all.iter().find(|step| step.id == id).unwrap()).clone();
    assert_eq!(
        step("hand-over/look-axle-clamp/loosen-axle-clamp").hold.as_deref(),
        Some("the clamp, by hand")
    );
    let plate = step("make-safe/hold-spring");
    assert_eq!((plate.deed, plate.hold), (sparehand::rulebase::Deed::Hold, None));
}

/// What was undone comes off by hand: the tool and the way of holding were for the undoing.
#[test]
fn what_was_undone_comes_off_by_hand() {
    let walk = at("full-service", "birch-60", "strip/remove-seal-head");
    let sheet = walk.last.answer.parts.iter().find_map(|part| match part {
        Part::Step(sheet) => Some(sheet.clone()),
        _ => None,
    });
    let sheet = sheet.unwrap();
    assert_eq!((sheet.tool, sheet.size, sheet.hold), (None, None, None));
    assert!(sheet.way.is_some());
}

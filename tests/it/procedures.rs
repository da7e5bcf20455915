//! The procedures of the built-in pack, walked act by act to a closed job; and the steps that each must have.

use super::bench_walk::Walk;
use super::harness::PACK;
use sparehand::act::{Corner, WaitingFor};
use sparehand::bench::state::{Closing, Fitting};
use sparehand::event::Event;
use sparehand::rulebase::{AdjusterKind, Deed, Step};

/// Every procedure with a corner that its unit sits at.
pub const JOBS: [(&str, &str, Corner); 4] = [
    ("re-spring", "birch-44", Corner::FrontLeft),
    ("re-spring", "birch-60", Corner::RearLeft),
    ("full-service", "birch-60", Corner::RearRight),
    ("re-spring", "lark-43", Corner::FrontLeft),
];

/// The three that are walked here; the Birch 44's has its own tests.
pub const WALKED: [(&str, &str, Corner); 3] = [JOBS[1], JOBS[2], JOBS[3]];

/// A job walked rightly to its end, with the steps that were in hand.
fn walked(job: (&str, &str, Corner)) -> (Walk, Vec<String>) {
    let mut walk = Walk::new();
    walk.start_with(job.0, job.1, job.2);
    let mut seen = Vec::new();
    for _ in 0..600 {
        if seen.last() != Some(&walk.step()) {
            seen.push(walk.step());
        }
        if !walk.answer_rightly() {
            break;
        }
    }
    let stuck = (walk.step(), walk.last.waiting.clone(), walk.last.answer.clone());
    assert!(walk.state.progress.closed, "{job:?} stuck at {stuck:#?}");
    (walk, seen)
}

/// What closing said was still open.
pub fn open_ends(walk: &Walk) -> Vec<String> {
    let closed = walk.state.events.iter().rev().find_map(|envelope| match &envelope.event {
        Event::JobClosed { open } => Some(open.clone()),
        _ => None,
    });
    closed.expect("the job was closed")
}

fn steps(procedure: &str, unit: &str) -> Vec<Step> {
    let procedure = PACK.procedure(procedure, unit).unwrap();
    procedure.all_steps().into_iter().cloned().collect()
}

#[test]
fn the_pack_has_the_procedures_of_the_design() {
    let ids: Vec<(String, String)> = PACK.procedures.keys().cloned().collect();
    let mut wanted: Vec<(String, String)> = JOBS.iter().map(|job| (job.0.into(), job.1.into())).collect();
    wanted.sort();
    assert_eq!(ids, wanted);
}

#[test]
fn each_job_answered_rightly_ends_closed_with_nothing_open() {
    for job in WALKED {
        let (walk, seen) = walked(job);
        assert_eq!(open_ends(&walk), Vec::<String>::new(), "{job:?}");
        assert!(walk.state.record.findings.is_empty(), "{job:?}: {:?}", walk.state.record.findings);
        let place = walk.state.place().unwrap();
        assert!(place.closed.values().all(|closing| *closing == Closing::Done), "{job:?}");
        println!("{job:?}: {} steps", seen.len());
    }
}

#[test]
fn every_adjuster_is_found_travelled_set_and_its_travel_counted_again() {
    for job in WALKED {
        let (walk, _) = walked(job);
        let place = walk.state.place().unwrap();
        let card = PACK.unit(job.1).unwrap();
        for adjuster in &card.adjusters {
            let known = &place.adjusters[&adjuster.id];
            let id = &adjuster.id;
            assert!(known.found.is_some() && known.left.is_some(), "{job:?} {id}");
            assert_eq!(known.left_where_it_stands(), known.left, "{job:?} {id}");
            let ends = match &adjuster.kind {
                AdjusterKind::Clicker { .. } => true,
                AdjusterKind::Screw { turns, .. } => turns.is_some(),
                AdjusterKind::Ring { .. } | AdjusterKind::Charge { .. } => false,
            };
            if ends {
                assert!(known.travel.is_some() && known.travel_again == known.travel, "{job:?} {id}");
            } else if matches!(adjuster.kind, AdjusterKind::Screw { .. }) {
                let measured = |role: &str| place.readings.contains_key(&(id.clone(), role.to_owned()));
                assert!(
                    measured("datum") && measured("datum-left"),
                    "{job:?} {id}: to its datum, both times"
                );
            }
        }
        for list in ["found", "wanted", "left"] {
            assert!(place.said_back.contains(list), "{job:?}: settings {list} said back");
        }
    }
}

/// One adjuster is finished before the next is touched, and a perch is measured before its turns are counted.
#[test]
fn one_adjuster_is_finished_before_the_next_and_a_datum_comes_before_turns() {
    for (procedure, unit, _) in JOBS {
        let steps = steps(procedure, unit);
        let counted: Vec<&Step> = steps.iter().filter(|step| step.id.starts_with("found/")).collect();
        let mut order: Vec<&str> = Vec::new();
        for step in counted.iter().filter(|step| matches!(step.deed, Deed::Count)) {
            let about = step.about.as_deref().unwrap();
            if order.last() != Some(&about) {
                assert!(!order.contains(&about), "{procedure} {unit}: {about} is taken up twice");
                order.push(about);
            }
        }
        let at = |id: &str| counted.iter().position(|step| step.id == id);
        if let Some(datum) = at("found/measure-preload-datum") {
            assert!(Some(datum) < at("found/count-preload-found"), "{procedure} {unit}");
        }
    }
}

#[test]
fn single_use_parts_that_came_off_are_renewed_and_all_that_came_off_is_on() {
    for job in WALKED {
        let (walk, _) = walked(job);
        let place = walk.state.place().unwrap();
        let card = PACK.unit(job.1).unwrap();
        for (id, known) in &place.parts {
            assert_ne!(known.fitting, Fitting::Off, "{job:?} {id}");
            if let Some(part) = card.part(id).filter(|part| part.single_use && known.disturbed) {
                assert!(known.new, "{job:?}: {} is renewed", part.id);
            }
            if card.part(id).is_some_and(|part| part.torque.is_some()) && known.disturbed {
                assert_eq!(known.fitting, Fitting::Torqued, "{job:?} {id}");
            }
        }
    }
}

/// Steps that must exist, in this order: issue 2's pack bullets and the design's tables, by name.
const MUST: [(&str, &str, &[&str]); 3] = [
    (
        "re-spring",
        "birch-60",
        &[
            "book-in/record-serial",
            "book-in/record-tag-and-tray",
            "book-in/record-spring-rate-rate-found",
            "found/count-slow-bump-found",
            "found/count-slow-bump-travel",
            "found/count-fast-bump-found",
            "found/count-fast-bump-travel",
            "found/count-rebound-found",
            "found/count-rebound-travel",
            "found/remove-gas-cap",
            "found/count-reservoir-charge-found",
            "found/measure-preload-datum",
            "found/count-preload-found",
            "found/record-settings-as-found",
            "found/record-settings-wanted",
            "make-safe/prove-spring",
            "make-safe/align-the-valve",
            "make-safe/vent-reservoir-charge",
            "make-safe/measure-reservoir-charge-gauge-at-zero",
            "make-safe/remove-gas-valve",
            "make-safe/prove-reservoir-charge",
            "strip/remove-spring",
            "inspect/measure-run-out-of-the-shaft",
            "swap/replace-spring",
            "swap/record-rate-fitted",
            "rebuild/refit-spring",
            "rebuild/replace-gas-valve-batch",
            "rebuild/tighten-gas-valve",
            "rebuild/measure-reservoir-charge-temperature",
            "rebuild/charge-reservoir-charge",
            "rebuild/wait-leak-check",
            "rebuild/inspect-gas-valve",
            "rebuild/tighten-gas-cap",
            "restore/set-slow-bump",
            "restore/set-fast-bump",
            "restore/set-rebound",
            "restore/set-preload",
            "restore/measure-preload-datum-left",
            "restore/record-left-against-right",
            "hand-over/record-settings-as-left",
            "hand-over/record-told-at-hand-over",
        ],
    ),
    (
        "full-service",
        "birch-60",
        &[
            "book-in/record-serial",
            "found/count-reservoir-charge-found",
            "found/record-settings-as-found",
            "found/record-settings-wanted",
            "make-safe/prove-spring",
            "make-safe/vent-reservoir-charge",
            "make-safe/measure-reservoir-charge-gauge-at-zero",
            "make-safe/remove-gas-valve",
            "make-safe/prove-reservoir-charge",
            "strip/remove-cap-ring",
            "strip/remove-reservoir-cap",
            "strip/remove-floating-piston",
            "strip/loosen-seal-head",
            "strip/drain-oil",
            "strip/remove-piston-nut",
            "strip/remove-shim-stack",
            "strip/record-shim-count",
            "strip/measure-shim-stack-stack",
            "strip/remove-shaft-eye",
            "strip/remove-piston-band",
            "strip/remove-o-rings",
            "inspect/inspect-shim-stack",
            "inspect/measure-run-out-of-the-shaft",
            "rebuild/refit-o-rings",
            "rebuild/refit-piston-band",
            "rebuild/rebound-full-out",
            "rebuild/tighten-shaft-eye",
            "rebuild/align-seal-head-on-the-shaft",
            "rebuild/refit-shim-stack",
            "rebuild/look-shim-stack",
            "rebuild/measure-shims-again",
            "rebuild/replace-piston-nut-batch",
            "rebuild/tighten-piston-nut",
            "rebuild/fill-oil",
            "rebuild/refit-floating-piston",
            "rebuild/bleed-oil",
            "rebuild/stroke-shaft-full-out",
            "rebuild/tighten-seal-head",
            "rebuild/measure-floating-piston-depth",
            "rebuild/refit-reservoir-cap",
            "rebuild/refit-cap-ring",
            "rebuild/inspect-seat-of-the-ring",
            "rebuild/prove-reservoir-cap",
            "rebuild/refit-spring",
            "rebuild/charge-reservoir-charge",
            "rebuild/wait-leak-check",
            "restore/set-slow-bump",
            "restore/set-rebound",
            "restore/set-preload",
            "restore/record-trace",
            "restore/record-left-against-right",
            "hand-over/record-settings-as-left",
        ],
    ),
    (
        "re-spring",
        "lark-43",
        &[
            "book-in/record-serial",
            "found/count-rebound-found",
            "found/count-rebound-travel",
            "found/count-bump-found",
            "found/count-bump-travel",
            "found/count-preload-found",
            "found/count-preload-travel",
            "found/record-settings-as-found",
            "found/record-settings-wanted",
            "make-safe/zero-preload",
            "make-safe/loosen-fork-cap",
            "make-safe/prove-spring",
            "make-safe/loosen-rod-nut",
            "make-safe/cap-off-the-rod",
            "strip/remove-spring",
            "strip/drain-oil",
            "strip/remove-seal",
            "inspect/measure-run-out-of-the-inner-tube",
            "swap/replace-seal-batch",
            "rebuild/align-seal-on-the-tube",
            "rebuild/press-seal",
            "rebuild/refit-rod-nut",
            "rebuild/fill-oil",
            "rebuild/bleed-oil",
            "rebuild/stroke-leg-together",
            "rebuild/wait-oil-to-stand",
            "rebuild/measure-oil-level-level",
            "rebuild/refit-spring",
            "rebuild/rebound-full-out",
            "rebuild/cap-onto-the-rod",
            "rebuild/tighten-rod-nut",
            "rebuild/tighten-fork-cap",
            "restore/set-rebound",
            "restore/set-bump",
            "restore/count-preload-travel-again",
            "restore/set-preload",
            "restore/record-left-against-right",
            "hand-over/look-axle-clamp",
            "hand-over/record-axle-clamp-told",
            "hand-over/record-settings-as-left",
        ],
    ),
];

#[test]
fn the_steps_of_the_trade_are_there_in_order() {
    for (procedure, unit, wanted) in MUST {
        let ids: Vec<String> = steps(procedure, unit).into_iter().map(|step| step.id).collect();
        let mut from = 0;
        for id in wanted {
            let Some(at) = ids.iter().skip(from).position(|found| found == id) else {
                panic!("{procedure} {unit}: `{id}` is not there, or too early");
            };
            from += at;
        }
    }
}

/// Gas, spring and air are proved in phases whose steps are never skipped; the core stays in until the gauge is at zero.
#[test]
fn make_safe_is_never_skipped() {
    for (procedure, unit, _) in JOBS {
        let procedure = PACK.procedure(procedure, unit).unwrap();
        for step in procedure.all_steps().iter().filter(|step| step.id.starts_with("make-safe/")) {
            assert!(procedure.phase_of(&step.id).unwrap().makes_safe, "{}", step.id);
        }
        let safe = procedure.phases.iter().find(|phase| phase.makes_safe).expect("a phase that makes safe");
        assert!(safe.steps.iter().any(|step| step.deed == Deed::Prove), "{unit}");
    }
}

/// The figures of the design's tables (section 7), as the bench would ask for them.
#[test]
fn the_critical_figures_are_the_designs() {
    let limits = |procedure: &str, unit: &str, id: &str| {
        let found = steps(procedure, unit).into_iter().find(|step| step.id == id);
        let step = found.unwrap_or_else(|| panic!("no {id}"));
        let read = step.read.unwrap_or_else(|| panic!("{id} reads nothing"));
        let limit = read.limit.unwrap();
        (limit.lo.unwrap(), limit.hi.unwrap(), read.critical)
    };
    let service = |id| limits("full-service", "birch-60", id);
    let lark = |id| limits("re-spring", "lark-43", id);
    // Torque bands are 6 % from 10 N.m where the design gives none.
    assert_eq!(service("rebuild/tighten-piston-nut"), (26.32, 29.68, true));
    assert_eq!(service("rebuild/tighten-seal-head"), (47.0, 53.0, false));
    assert_eq!(service("rebuild/tighten-shaft-eye"), (56.4, 63.6, false));
    assert_eq!(service("rebuild/measure-floating-piston-depth"), (41.5, 42.5, false));
    assert_eq!(service("rebuild/charge-reservoir-charge"), (13.5, 14.5, true));
    assert_eq!(lark("rebuild/tighten-rod-nut"), (18.8, 21.2, true));
    assert_eq!(lark("rebuild/tighten-fork-cap"), (23.5, 26.5, false));
    assert_eq!(lark("rebuild/measure-oil-level-level"), (108.0, 112.0, false));
    assert_eq!(lark("found/count-preload-found"), (0.0, 12.0, false));
}

/// ASD-STE100: a step sentence has 20 words at the most and no contraction.
#[test]
fn sentences_are_short_and_whole() {
    for (procedure, unit, _) in JOBS {
        for step in steps(procedure, unit) {
            let texts = [step.text, step.question, step.stop, step.note, step.why];
            for sentence in texts
                .into_iter()
                .flatten()
                .flat_map(|text| text.split(". ").map(str::to_owned).collect::<Vec<_>>())
            {
                let words = sentence.split_whitespace().count();
                assert!(words <= 20, "{}: {words} words: {sentence}", step.id);
                assert!(!sentence.contains('\''), "{}: {sentence}", step.id);
            }
        }
    }
}

/// Done alone closes no reading of a critical value, on any of the procedures.
#[test]
fn critical_values_are_closed_by_the_value_alone() {
    for job in WALKED {
        let mut walk = Walk::new();
        walk.start_with(job.0, job.1, job.2);
        let mut critical = 0;
        for _ in 0..600 {
            let reads = walk.current().and_then(|step| step.read).filter(|read| read.critical);
            let open = !matches!(walk.last.waiting.kind, WaitingFor::YesOrNo | WaitingFor::Text);
            if reads.is_some() && open {
                let step = walk.step();
                walk.confirm();
                assert!(!walk.state.place().unwrap().closed.contains_key(&step), "{step}");
                critical += 1;
            }
            if !walk.answer_rightly() {
                break;
            }
        }
        assert!(walk.state.progress.closed && critical >= 3, "{job:?}: {critical} critical values");
    }
}

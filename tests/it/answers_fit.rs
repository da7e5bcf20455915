//! Answers that fit what was asked and where the job stands; figures worked by hand from the design's section 7.

use super::harness::{Bench, data};
use sparehand::front::transcript::{Kind, Transcript};

/// The Birch 44 as far as its turns, with a perch length of that many millimetres.
fn counted(length: &str) -> Bench {
    let lines = [
        "start a re-spring on the Birch 44, front left",
        "Plover team",
        "car 17",
        "B44-1",
        "tops out",
        "forty hours",
        "none",
        "70 newtons per millimetre",
        "11 clicks",
        "24 clicks",
        "2",
        length,
        "split ring's loose",
        "understood",
        "6 turns",
    ];
    Bench::typed().say(&lines)
}

/// The same as far as the blow on the foot nut.
fn at_the_blow() -> Bench {
    counted("191 millimetres").say(&[
        "yes",
        "yes",
        "yes",
        "understood",
        "yes",
        "done",
        "knob grub's loose",
        "knob's off",
        "yes",
        "range ring's off",
        "collar's out",
        "done",
        "foot grub's loose",
        "foot nut's loose",
        "yes",
        "2.2 mm",
        "understood",
    ])
}

/// 200 mm free less 6 turns of 1.5 mm is 191 mm: 182 mm does not fit, and is said not to.
#[test]
fn a_length_that_does_not_fit_the_turns_is_asked_about() {
    let fits = counted("191 millimetres");
    assert!(fits.shown().contains("Settings as found"), "{}", fits.shown());
    let wrong = counted("182 millimetres").hears("6 turns is not accepted");
    assert!(wrong.shown().contains("Say why the perch length and the turns do not fit"), "{}", wrong.shown());
    wrong.say(&["the seat is worn", "6 turns"]).hears("kept as a finding");
}

/// 200 - 9 - 85 - 100 = 6 mm at 191 mm; 200 - 18 - 85 - 100 = -3 mm at 182 mm. The answer and the step that is asked for
/// then go by the same working.
#[test]
fn the_calculation_and_the_guard_agree_about_coil_bind() {
    let ask = "how far off coil bind am I at full stroke on the eighty";
    counted("191 millimetres").say(&[ask]).hears("6 mm").hears("does not bind");
    let short = counted("182 millimetres").say(&["the seat is worn", "6 turns", ask]);
    short.hears("-3 mm").hears("binds before full stroke").hears("measured on this job");
}

#[test]
fn what_is_not_proved_is_not_called_safe() {
    let unproved = counted("191 millimetres").say(&["yes", "yes", "is it safe to undo"]);
    let unproved = unproved.hears("not proved safe yet").hears("prove spring");
    unproved.say(&["why"]).hears("carries no load");
}

#[test]
fn what_comes_next_does_not_look_like_the_step_in_hand() {
    let next = counted("191 millimetres").say(&["what's next"]).hears("Next: ");
    assert!(!next.shown().contains("Step "), "{}", next.shown());
}

#[test]
fn a_blow_has_no_torque_and_a_torque_has_the_unit_that_was_asked_for() {
    let blow = at_the_blow().say(&["how hard do I hit"]).hears("one sharp blow").hears("no figure");
    // 32 N.m is 23.6 lbf.ft (NIST SP 811, appendix B.8: 1 lbf.ft = 1.355818 N.m) and 283.2 lbf.in.
    let feet = blow.say(&["how many foot pounds is that"]).hears("23.6 lbf.ft");
    feet.say(&["how tight is the foot nut in inch pounds"]).hears("283.2 lbf.in");
}

/// 3/32 in is 2.38125 mm, 0.18 mm more than 2.2 mm.
#[test]
fn a_fraction_of_an_inch_says_how_far_it_is_off() {
    let off = at_the_blow().say(&["2.2 millimetres in inches"]);
    off.hears("the nearest 64th is 3/32, 0.1812 mm more");
    at_the_blow().say(&["12.7 millimetres in inches"]).hears("(1/2)");
}

#[test]
fn a_question_of_holding_is_answered_with_the_hold() {
    at_the_blow().say(&["how do I hold the shaft"]).hears("Hold 12 mm flats on the shaft");
}

#[test]
fn a_calculation_s_open_question_hides_no_step() {
    let bench =
        at_the_blow().say(&["what is the preload for the stiffer spring"]).hears("load on the spring");
    let bench = bench.say(&["what am I doing"]).hears("Strike the drift once").hears("load on the spring");
    let bench = bench.say(&["note, the drift is new"]);
    assert!(bench.shown().contains("Strike the drift once"), "{}", bench.shown());
}

/// At most twelve lines, the figure first.
#[test]
fn a_calculation_is_told_in_twelve_lines() {
    let asked = at_the_blow().say(&["what does the stiffer spring do to the preload", "5 kilonewtons"]);
    let shown = asked.shown();
    assert!(shown.lines().count() <= 12 && shown.starts_with("Preload three ways: same turns"), "{shown}");
    asked.say(&["why"]).hears("same force: k_old x / k_new");
}

/// A wish below the charge's band (14 bar +/- 0.5) is said back with it, and kept by a second utterance.
#[test]
fn a_wish_below_the_band_of_the_charge_wants_a_second_word() {
    let book_in =
        ["Plover team", "car 17", "B60 0932", "tag six", "knocks over bumps", "34", "no leaks", "60", "9"];
    let bench = Bench::typed().say(&["start a re-spring on the Birch 60, rear left"]).say(&book_in);
    let bench = bench.say(&["customer wants the gas at 12 bar"]).hears("13.5 to 14.5 bar");
    let wanted = |bench: &Bench| {
        bench.session.state().place().unwrap().adjusters.get("reservoir-charge").and_then(|own| own.wanted)
    };
    assert_eq!(wanted(&bench), None);
    let bench = bench.say(&["yes"]);
    assert_eq!(wanted(&bench), Some(12.0));
}

/// Too low is done again; too high may have spoilt the shaft.
#[test]
fn too_tight_says_what_comes_before_it_is_done_again() {
    let name = "whole-job.txt";
    let text = std::fs::read_to_string(data("transcripts-demo").join(name)).unwrap();
    let mut bench = Bench::typed().by_ear();
    for item in Transcript::parse(name, &text).unwrap().items {
        let Kind::Said(line) = &item.kind else { continue };
        bench = bench.say(&[line]);
        if bench.last.last().unwrap().step.as_deref() == Some("rebuild/tighten-foot-nut") {
            break;
        }
    }
    let low = bench.say(&["twenty eight newton metres"]).hears("too low").hears("do it again");
    let high = low.say(&["thirty six newton metres"]).hears("too high").hears("do not use the shaft");
    assert!(!high.said().to_lowercase().contains("do it again"), "{}", high.said());
    let pack = &super::harness::PACK;
    let cards = [
        ("birch-44", "foot-nut"),
        ("birch-44", "needle-collar"),
        ("birch-60", "piston-nut"),
        ("birch-60", "shaft-eye"),
        ("lark-43", "rod-nut"),
    ];
    for (unit, id) in cards {
        let text = pack.units[unit].part(id).unwrap().too_tight.clone().unwrap();
        assert!(text.starts_with("Stop") && text.contains("renewed"), "{unit} {id}: {text}");
    }
}

#[test]
fn long_lines_are_broken_between_words_and_tables_are_not() {
    use sparehand::front::wrapped;
    let text = "WARNING: The shaft pushes out by itself, and it can crush a finger of the hand.";
    let broken = wrapped(text, 40);
    assert!(broken.lines().all(|line| line.chars().count() <= 40), "{broken}");
    assert_eq!(broken.replace('\n', " "), text);
    let labelled = "  do      Turn the perch anticlockwise until the spring is loose in its seat.";
    assert!(wrapped(labelled, 40).lines().skip(1).all(|line| line.starts_with("          ")));
    let table = "  Slow rebound  11 clicks   24 clicks   one more column of the table";
    assert_eq!(wrapped(table, 40), table);
}

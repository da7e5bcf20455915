//! The sentences of replies: what an everyday step, a caution, a way back and a refusal sound and look like.

use crate::reply_support::each::all;
use crate::reply_support::generate::Draw;
use sparehand::act::{Doubt, End, Waiting, WaitingFor};
use sparehand::bench::{
    Ack, Answer, Asks, CautionCard, Fact, Part, Question, Refusal, RestoreCard, SettingRow, SettingsCard,
    StepCard, Value,
};
use sparehand::quantity::{Limit, Quantity, Unit};
use sparehand::reply::{Reply, reply};
use sparehand::rulebase::{ReadBack, Signal};
use sparehand::workings::adjusters::Way;

fn q(text: &str) -> Quantity {
    Quantity::parse(text).unwrap()
}

fn of(parts: Vec<Part>) -> Reply {
    reply(&Answer { parts }, &Waiting { kind: WaitingFor::Torque, ..Waiting::default() })
}

fn say(part: Part) -> String {
    of(vec![part]).say
}

fn foot_nut(way: Way) -> StepCard {
    StepCard {
        id: "rebuild/tighten-foot-nut".into(),
        number: (31, 54),
        text: "Tighten the foot nut.".into(),
        name: "foot nut".into(),
        size: Some(q("21 mm")),
        way: Some(way),
        ..StepCard::default()
    }
}

fn back(name: &str, wanted: Quantity) -> RestoreCard {
    RestoreCard {
        name: name.into(),
        wanted,
        to_stop: None,
        turn: None,
        passes: Vec::new(),
        length: None,
        datum: None,
        also: None,
        seen_from: None,
        by_hand: None,
    }
}

/// The design's own example of an everyday step (section 6).
#[test]
fn an_everyday_step_is_part_tool_way() {
    let got = say(Part::Step(Box::new(foot_nut(Way::Anticlockwise))));
    assert_eq!(got, "Foot nut, twenty one, anticlockwise.");
}

#[test]
fn a_critical_step_gives_its_torque_and_asks_without_leading() {
    let card = StepCard {
        seen_from: Some("from below".into()),
        hold: Some("12 mm flats on the shaft".into()),
        limit: Some(Limit::around(q("32 N.m"), 2.0)),
        asks: Some(Asks::Value("What did it click at?".into())),
        ..foot_nut(Way::Clockwise)
    };
    let got = of(vec![Part::Ack(Ack::Done(Vec::new())), Part::Step(Box::new(card))]);
    assert_eq!(
        got.say,
        "Foot nut, twenty one, clockwise, seen from below. Thirty two newton metres, thirty to thirty four. \
         Hold twelve millimetre flats on the shaft. What did it click at?"
    );
    assert_eq!(
        got.show,
        "Step 31 of 54: foot nut  [rebuild/tighten-foot-nut]\n  do      Tighten the foot nut.\n  tool    21 mm\n  \
         turn    clockwise, seen from below\n  hold    12 mm flats on the shaft\n  limit   32 N.m, 30 to 34\n  \
         asks    What did it click at? (a torque)"
    );
}

#[test]
fn a_step_without_a_way_is_its_sentence() {
    let card = StepCard { text: "Wipe the shaft dry.".into(), name: "shaft".into(), ..StepCard::default() };
    assert_eq!(say(Part::Step(Box::new(card))), "Wipe the shaft dry.");
}

/// What only explains gives way before what must be kept to.
#[test]
fn a_long_step_keeps_to_35_words_and_drops_its_note_first() {
    let card = StepCard {
        hold: Some("12 mm flats on the shaft".into()),
        limit: Some(Limit::around(q("32 N.m"), 2.0)),
        never: Some("on the shaft's polished face".into()),
        note: Some("The nut is the weak point of the whole strut and it has been known to let go".into()),
        asks: Some(Asks::Value("What did it click at?".into())),
        ..foot_nut(Way::Clockwise)
    };
    let got = of(vec![Part::Step(Box::new(card))]);
    assert!(got.say.split_whitespace().count() <= 35, "{}", got.say);
    assert!(got.say.contains("Never on the shaft's polished face.") && got.say.ends_with("click at?"));
    assert!(!got.say.contains("weak point") && got.show.contains("weak point"));
}

/// Signal words by ANSI Z535.6, the gravest first (danger, warning, caution, notice): from memory of the standard's
/// definitions; ISO 3864-2 has the first three in the same order.
#[test]
fn a_caution_begins_with_its_signal_word() {
    let order = ["Danger. ", "Warning. ", "Caution. ", "Notice. "];
    let mut signals = [Signal::Notice, Signal::Danger, Signal::Caution, Signal::Warning];
    signals.sort_unstable();
    for (signal, word) in signals.into_iter().zip(order) {
        let card = CautionCard { signal, text: "the spring is under load".into(), acknowledge: true };
        let got = of(vec![Part::Caution(card)]);
        assert_eq!(got.say, format!("{word}The spring is under load. Understood, yes or no?"));
        assert!(got.show.starts_with(&word.trim().trim_end_matches('.').to_uppercase()), "{}", got.show);
    }
}

#[test]
fn two_cautions_are_acknowledged_once_and_before_any_step() {
    let card = |text: &str| CautionCard { signal: Signal::Warning, text: text.into(), acknowledge: true };
    let step = StepCard { asks: Some(Asks::Value("How many?".into())), ..foot_nut(Way::Clockwise) };
    let got =
        of(vec![Part::Caution(card("Gas.")), Part::Caution(card("Spring.")), Part::Step(Box::new(step))]);
    assert_eq!(got.say.matches("Understood").count(), 1);
    assert!(got.say.ends_with("Understood, yes or no?"), "{}", got.say);
}

#[test]
fn a_clicker_is_set_from_its_stop() {
    let mut card = back("slow rebound", q("14 click"));
    card.to_stop = Some((End::FullIn, Way::Clockwise));
    card.turn = Some((Way::Anticlockwise, q("14 click")));
    card.also = Some((q("10 click"), End::FullOut));
    assert_eq!(
        say(Part::Restore(card)),
        "Slow rebound, close it clockwise to the stop, then fourteen clicks out, anticlockwise. That is ten clicks in \
         from full out."
    );
}

/// Common practice, no source: a one-way ring of 0 to 3 at 2, wanted 1, goes on through 3 and 0.
#[test]
fn a_ring_names_the_positions_it_passes() {
    let mut card = back("range ring", Quantity::new(1.0, Unit::PositionStep));
    card.turn = Some((Way::Clockwise, Quantity::new(3.0, Unit::PositionStep)));
    card.passes = vec![3, 0];
    let got = of(vec![Part::Restore(card)]);
    assert_eq!(got.say, "Range ring, clockwise three positions, through three and nought, to position one.");
    assert!(got.show.ends_with("3 -> 0 -> 1"), "{}", got.show);
}

#[test]
fn a_screw_has_turns_and_the_length_to_its_datum() {
    let mut card = back("preload", q("38.5 mm"));
    card.turn = Some((Way::Clockwise, q("2.25 turn")));
    card.length = Some(card.wanted);
    card.datum = Some("perch to collar".into());
    assert_eq!(
        say(Part::Restore(card.clone())),
        "Preload, two and a quarter turns clockwise, to thirty eight point five millimetres, perch to collar."
    );
    card.turn = Some((Way::Clockwise, Quantity::new(7.0 / 6.0, Unit::Turn)));
    assert!(say(Part::Restore(card.clone())).starts_with("Preload, one turn and one flat clockwise, to"));
    card.turn = None;
    assert!(
        say(Part::Restore(card)).contains("set it until it measures thirty eight point five millimetres")
    );
}

#[test]
fn a_screw_counted_from_its_stop_is_checked_by_its_length() {
    let mut card = back("preload", q("3 turn"));
    card.to_stop = Some((End::FullOut, Way::Anticlockwise));
    card.turn = Some((Way::Clockwise, q("3 turn")));
    card.length = Some(q("38.5 mm"));
    card.datum = Some("perch to collar".into());
    assert_eq!(
        say(Part::Restore(card.clone())),
        "Preload, wind it anticlockwise to the stop, then three turns clockwise. Check it measures thirty eight point \
         five millimetres, perch to collar."
    );
    (card.to_stop, card.turn) = (None, None);
    assert!(
        say(Part::Restore(card)).starts_with("Preload, it already stands at three turns, leave it. Check")
    );
}

#[test]
fn a_ring_with_ends_is_counted_from_its_lowest() {
    let mut card = back("range ring", Quantity::new(2.0, Unit::PositionStep));
    card.to_stop = Some((End::FullIn, Way::Anticlockwise));
    card.turn = Some((Way::Clockwise, Quantity::new(2.0, Unit::PositionStep)));
    card.passes = vec![1];
    assert_eq!(
        say(Part::Restore(card)),
        "Range ring, turn it anticlockwise to the stop, then clockwise two positions, through one, to position two."
    );
}

#[test]
fn what_stands_there_already_is_left() {
    let card = back("slow rebound", q("14 click"));
    assert_eq!(say(Part::Restore(card)), "Slow rebound, it already stands at fourteen clicks out, leave it.");
}

/// A clicker obeyed by the words of `say` alone ends at the wanted setting, over all travels and settings, from either stop.
#[test]
fn a_clicker_obeyed_by_ear_ends_where_it_should() {
    for travel in 1..=40u32 {
        for wanted in 0..=travel {
            for end in [End::FullIn, End::FullOut] {
                let card = clicker(travel, wanted, end);
                let words = say(Part::Restore(card));
                assert_eq!(obey(&words, travel, 7 % (travel + 1)), Some(wanted), "{travel} {wanted} {words}");
            }
        }
    }
}

fn clicker(travel: u32, wanted: u32, end: End) -> RestoreCard {
    let clicks = |n: u32| Quantity::new(f64::from(n), Unit::Click);
    let mut card = back("slow rebound", clicks(wanted));
    let (to_stop, onward, far) = match end {
        End::FullIn => (Way::Clockwise, Way::Anticlockwise, wanted),
        End::FullOut => (Way::Anticlockwise, Way::Clockwise, travel - wanted),
    };
    card.to_stop = Some((end, to_stop));
    card.turn = (far > 0).then(|| (onward, clicks(far)));
    card
}

/// A clicker that knows only words: "close ... to the stop", "open ... to the stop", "N clicks out", "N clicks in".
fn obey(words: &str, travel: u32, at: u32) -> Option<u32> {
    let mut at = at;
    for clause in words.trim_end_matches('.').split(", ") {
        let tokens: Vec<String> = clause.split(' ').map(str::to_owned).chain(["|".to_owned()]).collect();
        let has = |word: &str| tokens.iter().any(|token| token == word);
        if has("close") && has("stop") {
            at = 0;
        } else if has("open") && has("stop") {
            at = travel;
        } else if let Some(then) = tokens.iter().position(|token| token == "then") {
            let (far, _) = crate::reply_support::figures::number(&tokens[then + 1..])?;
            at = if has("out") { at + far as u32 } else { at.checked_sub(far as u32)? };
        }
        if at > travel {
            return None;
        }
    }
    Some(at)
}

#[test]
fn settings_stand_side_by_side_and_equal_ones_are_said_once() {
    let row = |name: &str, unit: &str, found, wanted, left| SettingRow {
        name: name.into(),
        unit: unit.into(),
        found: Some(found),
        wanted: Some(wanted),
        left: Some(left),
        travel: None,
        words: None,
    };
    let rows =
        vec![row("slow rebound", "click", 15.0, 14.0, 14.0), row("range ring", "position", 2.0, 2.0, 2.0)];
    let got = of(vec![Part::Settings(SettingsCard { which: ReadBack::Left, rows, asks: true })]);
    assert_eq!(
        got.say,
        "Settings as left. Slow rebound, found fifteen clicks, wanted and left fourteen clicks. Range ring, found, wanted \
         and left position two. Is that so, yes or no?"
    );
    assert_eq!(
        got.show,
        "Settings as left\n                found       wanted      left\n  Slow rebound  15 clicks   14 clicks   14 clicks\n  \
         Range ring    position 2  position 2  position 2\nIs that so, yes or no?"
    );
}

#[test]
fn a_value_with_a_sound_alike_is_said_digit_by_digit() {
    let value = Value {
        name: "slow rebound".into(),
        kept: q("15 click"),
        from: Some(End::FullIn),
        said: None,
        digits: true,
    };
    assert_eq!(say(Part::SaidBack(value)), "Slow rebound, fifteen clicks out, one five.");
    let options = vec!["15 clicks".into(), "50 clicks".into()];
    let question = Question::Which { options, doubt: Doubt::Number, wanted: String::new() };
    assert_eq!(say(Part::Question(question)), "Which, fifteen clicks, one five, or fifty clicks, five zero?");
}

#[test]
fn a_converted_value_asks_yes_or_no() {
    let value = Value {
        name: "foot nut".into(),
        kept: q("32.54 N.m"),
        from: None,
        said: Some((q("24 lbf.ft"), None)),
        digits: false,
    };
    assert_eq!(
        say(Part::Question(Question::Value(value))),
        "Foot nut, twenty four foot pounds, that is thirty two point five four newton metres, yes or no?"
    );
}

#[test]
fn what_is_never_granted_is_one_plain_sentence() {
    let refused = |what: &str| say(Part::Refused(Refusal::NotGranted { what: what.into() }));
    assert_eq!(refused("cautions"), "Cautions cannot be switched off.");
    assert_eq!(refused("everything"), "Steps are closed one by one.");
    assert_eq!(refused("records"), "Records are not wiped.");
}

#[test]
fn a_pack_question_that_leads_is_put_plainly() {
    for (written, said) in [
        ("Is the mark on zero, right?", "Is the mark on zero, yes or no?"),
        ("Is the mark on zero?", "Is the mark on zero, yes or no?"),
        ("Is it on the right?", "Is it on the right, yes or no?"),
        ("Is it in, yes or no?", "Is it in, yes or no?"),
    ] {
        let card = StepCard { asks: Some(Asks::YesOrNo(written.into())), ..StepCard::default() };
        assert_eq!(say(Part::Step(Box::new(card))), said);
    }
}

#[test]
fn escape_codes_in_names_do_not_reach_the_screen() {
    let got = of(vec![Part::Ack(Ack::By("Ann\u{1b}[31m\u{7}\u{202e}".into()))]);
    assert!(got.show.chars().all(|c| !c.is_control() && c != '\u{202e}'), "{:?}", got.show);
}

#[test]
fn what_is_not_known_is_said_so() {
    assert_eq!(
        say(Part::Unknown { what: "a torque for the spring".into() }),
        "I have no torque for the spring."
    );
    assert_eq!(say(Part::Unknown { what: "why".into() }), "I do not know why.");
    let fact = Fact::Setting { name: "range ring".into(), which: "now".into(), value: None, text: None };
    assert_eq!(say(Part::Fact(fact)), "I do not know where the range ring stands, now.");
}

/// Only what holds a pack's own words in full, a list or a caution may be longer than about 35 words.
#[test]
fn answers_are_short() {
    for seed in 0..200 {
        for part in all(&mut Draw(seed)) {
            let long =
                matches!(part, Part::Caution(_) | Part::Settings(_) | Part::OpenEnds { .. } | Part::Step(_));
            let words = say(part.clone()).split_whitespace().count();
            assert!(long || words <= 45, "{words}: {}", say(part));
        }
    }
}

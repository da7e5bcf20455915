//! Replies: the sentences for ear and screen.
use sparehand::act::{End, Waiting, WaitingFor, Doubt};
use sparehand::bench::*;
use sparehand::quantity::{Limit, Quantity, Unit};
use sparehand::reply::reply;
use sparehand::rulebase::{ReadBack, Signal};
use sparehand::workings::adjusters::Way;

#[test]
fn print() {
    let q = |t: &str| Quantity::parse(t).unwrap();
    let w = Waiting { kind: WaitingFor::Torque, ..Waiting::default() };
    let step = StepCard { id: "rebuild/tighten-foot-nut".into(), number: (31, 54), text: "Tighten the foot nut.".into(), name: "foot nut".into(), size: Some(q("21 mm")), way: Some(Way::Clockwise), seen_from: Some("from below".into()), hold: Some("12 mm flats on the shaft".into()), limit: Some(Limit::around(q("32 N.m"), 2.0)), asks: Some(Asks::Value("What did it click at?".into())), ..StepCard::default() };
    let set = StepCard { id: "restore/set-slow-rebound".into(), number: (31, 54), text: "Set the slow rebound.".into(), name: "slow rebound".into(), asks: Some(Asks::Value("How many clicks?".into())), ..StepCard::default() };
    let rc = RestoreCard { name: "slow rebound".into(), wanted: q("14 click"), to_stop: Some((End::FullIn, Way::Clockwise)), turn: Some((Way::Anticlockwise, q("14 click"))), passes: vec![], length: None, datum: None, also: Some((q("10 click"), End::FullOut)), seen_from: None, by_hand: Some("finger and thumb, never forced".into()) };
    let ring = RestoreCard { name: "range ring".into(), wanted: Quantity::new(1.0, Unit::PositionStep), to_stop: None, turn: Some((Way::Clockwise, Quantity::new(4.0, Unit::PositionStep))), passes: vec![3, 4, 0, 1], also: None, by_hand: None, ..rc.clone() };
    let screw = RestoreCard { name: "preload".into(), wanted: q("38.5 mm"), to_stop: None, turn: Some((Way::Clockwise, q("2.25 turn"))), passes: vec![], length: Some(q("38.5 mm")), datum: Some("top face of the perch to the carrier's collar".into()), also: None, by_hand: None, ..rc.clone() };
    let grub = StepCard { id: "strip/loosen-knob-grub".into(), number: (9, 54), text: "Loosen the knob grub.".into(), name: "knob grub".into(), size: Some(q("2.5 mm")), tool: Some("hex key".into()), way: Some(Way::Anticlockwise), amount: Some("a full turn frees it".into()), asks: Some(Asks::Done), ..StepCard::default() };
    let row = |n: &str, u: &str, f: f64, wn: f64, l: f64| SettingRow { name: n.into(), unit: u.into(), found: Some(f), wanted: Some(wn), left: Some(l), travel: Some(24.0), words: None };
    let list = vec![
        vec![Part::Caution(CautionCard { signal: Signal::Warning, text: "The spring holds energy. A carrier let go flies off (up to 3 m). Wind the perch down first.".into(), acknowledge: true })],
        vec![Part::Ack(Ack::Done(vec![])), Part::Step(Box::new(step))],
        vec![Part::Step(Box::new(grub))],
        vec![Part::Step(Box::new(set)), Part::Restore(rc)],
        vec![Part::Restore(ring)], vec![Part::Restore(screw)],
        vec![Part::Settings(SettingsCard { which: ReadBack::Left, rows: vec![row("slow rebound", "click", 15.0, 14.0, 14.0), row("range ring", "position", 2.0, 1.0, 1.0), row("preload", "mm", 38.5, 38.5, 38.5)], asks: true })],
        vec![Part::SaidBack(Value { name: "slow rebound".into(), kept: q("15 click"), from: Some(End::FullIn), said: None, digits: true })],
        vec![Part::Question(Question::Value(Value { name: "foot nut".into(), kept: q("32.54 N.m"), from: None, said: Some((q("24 lbf.ft"), None)), digits: false }))],
        vec![Part::Question(Question::Which { options: vec!["15 clicks".into(), "50 clicks".into()], doubt: Doubt::Number, wanted: String::new() })],
        vec![Part::Refused(Refusal::OutOfLimits { name: "foot nut".into(), value: q("36 N.m"), limit: Limit::around(q("32 N.m"), 2.0), then: Consequence::StaysOpen })],
        vec![Part::Fact(Fact::Range { name: "slow rebound".into(), first: 0.0, last: 24.0, unit: "click".into(), from: "full in is 0".into(), counted: Some(23.0), only: None })],
        vec![Part::Sentence("Release the nut with a 1/2 in drive, M14 x 1, 0.05 mm run-out, 20 degC, ISO 4032; 2-3 turns (e.g. 2 1/4 turns), 32 N.m +/- 2 N.m at 09:05 on 2026-11-03, 5 in the tray, 12 mm flats.".into())],
    ];
    for parts in list {
        let r = reply(&Answer { parts }, &w);
        println!("SAY  {}\nSHOW {}\n", r.say, r.show);
    }
}

//! Calculations asked for in plain words: the case files under `tests/cases/workings`, written by someone who had not
//! seen the code, through the one-shot question and on the bench.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::indexing_slicing, clippy::panic)]

use crate::harness::{Bench, PACK, RULES, data};
use serde_json::Value;
use sparehand::act::WaitingFor;
use sparehand::bench::state::{Progress, State};
use sparehand::event::Event;
use sparehand::front::transcript::{Kind, Transcript};
use sparehand::quantity::{Quantity, Unit};
use sparehand::session::{Asked, Told, as_if_on_bench};
use sparehand::workings::registry::{Answer, Worked};

fn cases(name: &str) -> Vec<Value> {
    let path = format!("{}/tests/cases/workings/{name}", env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(path).unwrap();
    text.lines()
        .filter(|line| !line.trim().is_empty() && !line.starts_with('#'))
        .map(|line| serde_json::from_str(line).unwrap())
        .collect()
}

fn ask(case: &Value) -> Told {
    let now = chrono::DateTime::parse_from_rfc3339("2026-03-02T08:00:00+00:00").unwrap();
    let state: State =
        case["unit"].as_str().map(|unit| as_if_on_bench(&PACK, unit, now).unwrap()).unwrap_or_default();
    Asked { rules: &RULES, state, now }.answer(case["said"].as_str().unwrap()).unwrap()
}

/// Every figure of an answer, in a unit; a figure without a dimension whatever unit is wanted.
fn figures(worked: &[Worked], unit: Option<&str>) -> Vec<f64> {
    let wanted = unit.and_then(Unit::parse);
    let numbers = |value: &Answer, own: Option<Unit>| -> Vec<f64> {
        let convert = |value: f64| match (own, wanted) {
            (Some(own), Some(wanted)) => own.convert(value, wanted).ok(),
            _ => Some(value),
        };
        match value {
            Answer::Number(value) => convert(*value).into_iter().collect(),
            Answer::List(values) => values.iter().filter_map(|value| convert(*value)).collect(),
            _ => Vec::new(),
        }
    };
    worked
        .iter()
        .flat_map(|one| {
            let mut all = numbers(&one.value, one.unit);
            // A verdict's figure stands beside it.
            if matches!(one.value, Answer::Text(_)) {
                all.extend(one.more.first().map(|more| numbers(&more.value, more.unit)).unwrap_or_default());
            }
            all
        })
        .collect()
}

/// What is wrong with the answer to a case; none when it is right.
fn wrong(case: &Value, told: &Told) -> Option<String> {
    let expect = &case["expect"];
    let seen = format!(
        "heard {:?} {:?}; said: {}",
        told.heard.outcome,
        told.heard.acts.iter().map(|a| a.act.as_str()).collect::<Vec<_>>(),
        told.reply.say
    );
    if let Some(words) = expect["says"].as_array() {
        let say = told.reply.say.to_lowercase();
        let missing =
            words.iter().find(|word| !word.as_str().unwrap().split('|').any(|word| say.contains(word)));
        return missing.map(|word| format!("{word} is missing; {seen}"));
    }
    let value = expect["value"].as_f64()?;
    let tolerance = expect["tolerance"]["rel"].as_f64().unwrap() * value.abs();
    let found = figures(&told.worked, expect["unit"].as_str());
    let right = told.answered && found.iter().any(|own| (own - value).abs() <= tolerance);
    (!right).then(|| format!("wanted {value} {}, found {found:?}; {seen}", expect["unit"]))
}

#[test]
fn questions_of_all_families_are_answered_right() {
    let wrong: Vec<String> = [cases("questions.jsonl"), cases("variants.jsonl")]
        .concat()
        .iter()
        .filter_map(|case| Some(format!("{} {}\n    {}", case["id"], case["said"], wrong(case, &ask(case))?)))
        .collect();
    assert!(wrong.is_empty(), "{} wrong\n{}", wrong.len(), wrong.join("\n"));
}

#[test]
fn malformed_questions_get_a_question_or_a_plain_refusal() {
    let mut wrong = Vec::new();
    for case in [cases("malformed.jsonl"), cases("malformed-more.jsonl")].concat() {
        let told = ask(&case);
        let crib = case["expect"].as_str().unwrap().contains("crib");
        let right =
            if crib { told.reply.say.contains("crib") } else { !told.answered && !told.reply.say.is_empty() };
        if !right {
            wrong.push(format!(
                "{} {}\n    {:?} {}",
                case["id"], case["said"], told.heard.outcome, told.reply.show
            ));
        }
    }
    assert!(wrong.is_empty(), "{} wrong\n{}", wrong.len(), wrong.join("\n"));
}

/// A job on a unit as far as the first step that does not wait for words: the lines are those of a demo.
fn in_mid_step(unit: &str) -> Bench {
    let name = match unit {
        "birch-60" => "re-spring-birch-60.txt",
        "lark-43" => "re-spring-lark-43.txt",
        _ => "whole-job.txt",
    };
    let text = std::fs::read_to_string(data("transcripts-demo").join(name)).unwrap();
    let transcript = Transcript::parse(name, &text).unwrap();
    let mut bench = if transcript.head.ear { Bench::typed().by_ear() } else { Bench::typed() };
    for item in &transcript.items {
        let Kind::Said(line) = &item.kind else { continue };
        bench = bench.say(&[line]);
        let turn = bench.last.last().unwrap();
        let waits = turn.waiting.kind;
        if turn.step.is_some()
            && !matches!(waits, WaitingFor::Text | WaitingFor::YesOrNo | WaitingFor::Nothing)
        {
            return bench;
        }
    }
    panic!("{name} never waits for a value");
}

/// The answer to a case on the bench, and the figure that the record kept of it.
fn on_the_bench(case: &Value) -> (String, Option<Quantity>) {
    let bench = in_mid_step(case["unit"].as_str().unwrap_or("birch-44"));
    let before = bench.session.state().progress.clone();
    let bench = bench.say(&[case["said"].as_str().unwrap()]);
    let figure = bench.last.iter().flat_map(|turn| &turn.events).find_map(|envelope| match &envelope.event {
        Event::Answered { said, .. } => {
            let plain = || Some(Quantity::new(said.parse().ok()?, Unit::One));
            Quantity::parse(said).ok().or_else(plain)
        }
        _ => None,
    });
    let after = bench.session.state().progress.clone();
    let still = Progress { pending: None, ..after } == Progress { pending: None, ..before };
    let moved = if still { "" } else { "MOVED " };
    (format!("{moved}{}\n{}", bench.said(), bench.shown()), figure)
}

#[test]
fn the_same_questions_are_answered_in_mid_step_and_move_nothing() {
    let mut wrong = Vec::new();
    for case in cases("questions.jsonl") {
        let (answer, figure) = on_the_bench(&case);
        let expect = &case["expect"];
        let right = if let Some(words) = expect["says"].as_array() {
            let answer = answer.to_lowercase();
            words.iter().all(|word| word.as_str().unwrap().split('|').any(|word| answer.contains(word)))
        } else {
            let value = expect["value"].as_f64().unwrap();
            let unit = expect["unit"].as_str().and_then(Unit::parse);
            let figure =
                figure.and_then(|figure| unit.map_or(Some(figure.value), |unit| figure.in_unit(unit).ok()));
            // What is kept is rounded for the bench to four figures; several figures are told in words alone.
            let room = expect["tolerance"]["rel"].as_f64().unwrap().max(1e-3) * value.abs();
            figure.map_or_else(|| answer.contains(&value.to_string()), |own| (own - value).abs() <= room)
        };
        if !right || answer.starts_with("MOVED") {
            wrong.push(format!("{} {}\n    {answer}", case["id"], case["said"]));
        }
    }
    assert!(wrong.is_empty(), "{} wrong\n{}", wrong.len(), wrong.join("\n"));
}

#[test]
fn a_missing_input_is_asked_for_one_at_a_time() {
    let bench = in_mid_step("birch-44")
        .say(&["what rate is it with ten mil wire and six coils"])
        .hears("mean coil diameter");
    // T L / (L + E) and the like are checked elsewhere; here G d^4 / (8 D^3 n) with the usual 81500 MPa by hand.
    bench.say(&["seventy millimetres"]).hears("49.5").hears("81500");
}

#[test]
fn an_open_question_of_a_calculation_blocks_nothing_and_takes_no_wish() {
    let bench = in_mid_step("birch-44").say(&["what's the ride frequency"]).hears("wheel rate");
    let bench = bench.say(&["how tight is the foot nut"]).hears("32");
    let bench = bench.say(&["fifty six point seven newtons per millimetre"]).hears("sprung mass");
    let bench = bench.say(&["he wants the slow rebound at eight"]);
    assert!(!bench.said().contains("hertz"), "{}", bench.said());
}

#[test]
fn that_is_the_figure_last_worked_out() {
    // 60 x 400 / 450 = 53.33 N.m, which is 39.34 lbf.ft (pint).
    let line = "what do I set on the wrench for sixty with a fifty mil crow foot straight out, wrench is four hundred long";
    in_mid_step("birch-60").say(&[line]).hears("53.3").say(&["what's that in foot pounds"]).hears("39.3");
}

#[test]
fn the_cards_own_data_answer_lines_of_the_bench() {
    // VDI 2230 and von Mises at friction 0.12, worked by hand in the case file W-20.
    in_mid_step("birch-44").say(&["what's the margin on the hollow shaft"]).hears("2.1").hears("assumed");
    // 50 x 320 / (320 + 45): the crib's middle wrench and pin spanner.
    in_mid_step("birch-60")
        .say(&["what do I set on the wrench for the seal head with the pin spanner"])
        .hears("43.8");
    // Isothermal, W-43.
    in_mid_step("birch-60").say(&["how much does the gas pressure rise at full bump"]).hears("6.18");
}

#[test]
fn a_load_is_told_once() {
    // 2800 / 70 - 9 = 31 and 2800 / 80 - 9 = 26: the question about the load is answered once for the job.
    let bench =
        in_mid_step("birch-44").say(&["where does it sag to on the seventy with nine mil of preload"]);
    let bench = bench
        .hears("what is the load")
        .say(&["twenty eight hundred newtons"])
        .hears("thirty one millimetres");
    let bench = bench.say(&["where does it sag to on the eighty with nine mil of preload"]);
    bench.hears("twenty six millimetres").hears("told on this job");
}

#[test]
fn a_card_that_knows_the_force_of_a_click_gives_clicks() {
    let mut files = PACK.files().clone();
    let card = files.get_mut("units/birch-44.yaml").unwrap();
    *card = card.replacen("clicker: 24 clicks", "clicker: 24 clicks\n    force per click: 25 N", 1);
    let pack = std::sync::Arc::new(sparehand::rulebase::Pack::from_files(files).unwrap());
    let now = chrono::DateTime::parse_from_rfc3339("2026-03-02T08:00:00+00:00").unwrap();
    let state = as_if_on_bench(&pack, "birch-44", now).unwrap();
    let rules = sparehand::session::Rules::new(pack);
    let answer =
        |said: &str| Asked { rules: &rules, state: state.clone(), now }.answer(said).unwrap().reply.say;
    let asked = answer("what starting point for the rebound from the seventy to the eighty");
    assert!(asked.contains("force now"), "{asked}");
    // 1200 N (sqrt(80 / 70) - 1) / 25 N = 3.31 clicks, by hand.
    let told = answer(
        "what starting point for the rebound from the seventy to the eighty, it makes twelve hundred newtons",
    );
    assert!(told.contains("starting point") && told.contains("three point three one"), "{told}");
}

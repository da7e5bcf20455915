//! Hearing on lines that the pack's examples do not hold: floors, order, hostile text.

use proptest::prelude::*;
use serde_json::Value;
use sparehand::act::{ActName, Heard, Outcome, Waiting};
use sparehand::hearing::{Ear, Line};
use sparehand::rulebase::Pack;
use std::collections::BTreeMap;
use std::sync::LazyLock;

static EAR: LazyLock<Ear> = LazyLock::new(|| Ear::new(&Pack::built_in().expect("the built-in pack loads")));

/// What an example waits for and says, heard.
fn heard(row: &Value) -> Heard {
    let waiting: Waiting = serde_json::from_value(serde_json::json!({
        "waiting_for": row["waiting_for"], "about": row.get("about").cloned().unwrap_or(Value::Null),
    }))
    .unwrap();
    EAR.hear(&Line { said: row["said"].as_str().unwrap(), unit: row["unit"].as_str(), waiting: &waiting })
}

fn say(said: &str, unit: &str, waiting_for: &str, about: Option<&str>) -> Heard {
    heard(&serde_json::json!({"said": said, "unit": unit, "waiting_for": waiting_for, "about": about}))
}

fn rows(text: &str) -> Vec<Value> {
    text.lines()
        .filter(|line| !line.starts_with('#') && !line.trim().is_empty())
        .map(|line| serde_json::from_str(line).unwrap())
        .collect()
}

fn readings(row: &Value) -> Vec<&Value> {
    std::iter::once(row).chain(row["also_ok"].as_array().into_iter().flatten()).collect()
}

/// The acts by name: the scorer beside the collection compares the slots too.
fn right(row: &Value, heard: &Heard) -> bool {
    let outcome = serde_json::to_value(heard.outcome).unwrap();
    readings(row).into_iter().filter(|reading| reading["outcome"] == outcome).any(|reading| {
        let wanted: Vec<&str> = reading["acts"]
            .as_array()
            .into_iter()
            .flatten()
            .map(|act| act["act"].as_str().unwrap())
            .collect();
        heard.outcome != Outcome::Take
            || wanted == heard.acts.iter().map(|act| act.act.as_str()).collect::<Vec<_>>()
    })
}

/// An act that moves the job and that no accepted reading holds.
fn harms(row: &Value, heard: &Heard) -> bool {
    let fine: Vec<&str> = readings(row)
        .into_iter()
        .filter(|reading| reading["outcome"] == "take")
        .flat_map(|reading| {
            reading["acts"].as_array().into_iter().flatten().map(|act| act["act"].as_str().unwrap())
        })
        .collect();
    let valued = |name: &str| matches!(name, "reading" | "correct");
    heard.acts.iter().any(|act| {
        let name = act.act.as_str();
        !act.act.is_question() && !fine.iter().any(|ok| *ok == name || (valued(ok) && valued(name)))
    })
}

fn floor(text: &str, least: f64, most_harm: usize) {
    let rows = rows(text);
    let all: Vec<(&Value, Heard)> = rows.iter().map(|row| (row, heard(row))).collect();
    let good = all.iter().filter(|(row, heard)| right(row, heard)).count();
    let harm: Vec<&Value> =
        all.iter().filter(|(row, heard)| harms(row, heard)).map(|(row, _)| &row["said"]).collect();
    assert!(good as f64 >= least * rows.len() as f64, "{good} of {} right", rows.len());
    assert!(harm.len() <= most_harm, "harmful: {harm:?}");
}

// The quarter of the labelled collection that was handed out (labelled twice, independently; source: the collection).
#[test]
fn the_visible_quarter_keeps_its_floor() {
    floor(include_str!("../data/hearing/examples.jsonl"), 0.94, 1);
}

// Written before the rules they try and kept out of the pack (source: ours; see `heldout.txt`).
#[test]
fn our_own_lines_keep_their_floor() {
    floor(include_str!("../data/hearing/heldout.jsonl"), 0.92, 3);
}

// Small talk and other assistants' business (source: ours), with whatever a step may wait for.
#[test]
fn chatter_is_let_pass() {
    let kinds = ["done", "torque", "clicks", "nothing", "yes_or_no", "pressure", "length", "tool", "turns"];
    let lines: Vec<&str> =
        include_str!("../data/hearing/chatter.txt").lines().filter(|line| !line.is_empty()).collect();
    let mut taken = BTreeMap::new();
    for (count, line) in lines.iter().enumerate() {
        let heard = say(line, "birch-60", kinds[count % kinds.len()], Some("seal-head"));
        if heard.outcome == Outcome::Take {
            taken.insert(*line, heard.acts);
        }
    }
    // A floor against falling back, and not the target, which is 1 %.
    assert!(taken.len() * 100 <= lines.len() * 8, "{} of {} taken: {taken:#?}", taken.len(), lines.len());
}

#[test]
fn the_order_of_lines_never_matters() {
    let rows = rows(include_str!("../data/hearing/heldout.jsonl"));
    let forward: Vec<Heard> = rows.iter().map(heard).collect();
    let mut backward: Vec<Heard> = rows.iter().rev().map(heard).collect();
    backward.reverse();
    assert_eq!(forward, backward);
}

#[test]
fn what_denies_or_doubts_never_confirms() {
    for said in [
        "not done",
        "not done yet",
        "don't go on",
        "I think so",
        "nearly",
        "nearly there",
        "it's not off",
        "half done",
        "almost done",
        "maybe",
        "he says it's done",
        "if it was done",
        "is it done",
        "done, I think",
        "that's not right",
        "no, not yet",
        "don't move on",
        "probably off",
        "it should be out",
        "hopefully that's it",
        "never",
        "not a chance",
        "hardly",
    ] {
        let heard = say(said, "birch-44", "done", Some("foot-nut"));
        assert!(!heard.acts.iter().any(|act| act.act == ActName::Confirm), "`{said}` gave {heard:?}");
    }
}

#[test]
fn what_is_never_granted_is_refused_by_name() {
    for (said, what) in [
        ("turn off the cautions", "cautions"),
        ("stop warning me", "cautions"),
        ("mark everything done", "everything"),
        ("tick the lot off", "everything"),
        ("wipe the records", "records"),
        ("delete the log", "records"),
    ] {
        assert_eq!(
            say(said, "birch-44", "done", Some("foot-nut")).refused.as_deref(),
            Some(what),
            "`{said}`"
        );
    }
}

#[test]
fn a_unit_that_does_not_fit_is_asked_back() {
    let heard = say("thirty two clicks", "birch-44", "torque", Some("foot-nut"));
    assert_eq!((heard.outcome, heard.doubt), (Outcome::Ask, Some(sparehand::act::Doubt::Unit)));
}

#[test]
fn a_part_of_another_unit_is_asked_back_with_the_nearest() {
    let heard = say("how tight is the rod nut", "birch-44", "done", None);
    assert_eq!((heard.outcome, heard.doubt), (Outcome::Ask, Some(sparehand::act::Doubt::Part)));
    assert!(heard.between.iter().all(|act| act.slots.about.as_deref().is_some_and(|id| id.ends_with("nut"))));
}

#[test]
fn why_shows_the_rule_that_spoke() {
    let waiting = Waiting::default();
    let why =
        EAR.explain(&Line { said: "how tight's the foot not", unit: Some("birch-44"), waiting: &waiting });
    assert_eq!(why.normalised, "how tight is the foot nut");
    assert!(why.clauses[0].fits[0].rule.as_deref().is_some_and(|rule| rule.contains("ask-torque")));
}

// Number words as general libraries read them (words2num, words2num2; source: check-values.json, topic 9).
#[test]
fn number_words_are_read_as_the_libraries_do() {
    let text = include_str!("../data/quantity/spoken-numbers.json");
    let rows: Vec<Value> = serde_json::from_str(text).unwrap();
    let rows = rows.iter().filter(|row| row["topic"] == "9 spoken numbers");
    let mut tried = 0;
    for row in rows {
        let (Some(phrase), quantity) = (row["inputs"]["phrase"].as_str(), row["quantity"].as_str().unwrap())
        else {
            continue;
        };
        // A length takes any number; a negative one is no length, and the bench says so.
        let heard = say(phrase, "lark-43", "length", Some("oil-level"));
        tried += 1;
        match row["expected"].as_f64() {
            Some(value) if quantity != "must be rejected" => {
                assert_eq!(
                    heard.acts.first().and_then(|act| act.slots.value),
                    Some(value),
                    "`{phrase}` gave {heard:?}"
                );
            }
            _ => assert_ne!(heard.outcome, Outcome::Take, "`{phrase}` gave {heard:?}"),
        }
    }
    assert!(tried > 30);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 120, ..ProptestConfig::default() })]

    #[test]
    fn no_text_breaks_it(said in "\\PC{0,120}", unit in prop::option::of("birch-(44|60)|lark-43|nonsense")) {
        let waiting = Waiting::default();
        let heard = EAR.hear(&Line { said: &said, unit: unit.as_deref(), waiting: &waiting });
        prop_assert!((0.0..=1.0).contains(&heard.sure));
    }

    #[test]
    fn bench_words_in_any_order_do_not_break_it(words in prop::collection::vec(prop::sample::select(vec![
        "not", "done", "the", "nut", "foot", "twelve", "clicks", "no", "and", "a", "half", "point", "-", "1/0", "...", "how", "tight", "is", "in", "out", "from", "½", "13mm", "N·m",
    ]), 0..24)) {
        let said = words.join(" ");
        let heard = say(&said, "birch-44", "clicks", Some("slow-rebound"));
        prop_assert!((0.0..=1.0).contains(&heard.sure));
    }
}

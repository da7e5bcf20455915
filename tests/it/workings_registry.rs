//! Calling workings by name: what is missing is asked for, what cannot be is refused with its reason.

use std::collections::{BTreeMap, BTreeSet};

use proptest::prelude::*;
use sparehand::quantity::{PressureBasis, Quantity, Unit};
use sparehand::workings::registry::{
    Answer, Kind, Refusal, Takes, Value, Worked, all, call, call_text, find, of_kind,
};

fn given(pairs: &[(&str, &str)]) -> BTreeMap<String, String> {
    pairs.iter().map(|(key, value)| ((*key).to_owned(), (*value).to_owned())).collect()
}

fn ask(name: &str, pairs: &[(&str, &str)]) -> Result<Worked, Refusal> {
    call_text(name, &given(pairs))
}

#[test]
fn every_working_is_listed_whole() {
    let names: BTreeSet<&str> = all().iter().map(|working| working.name).collect();
    assert_eq!(names.len(), all().len(), "a name stands twice");
    assert!(all().len() >= 80, "{}", all().len());
    for working in all() {
        assert!(
            !working.about.is_empty() && !working.method.is_empty() && !working.source.is_empty(),
            "{}",
            working.name
        );
        assert!(!working.outputs.is_empty(), "{}", working.name);
        assert_eq!(find(working.name).map(|found| found.name), Some(working.name));
        let mut seen = BTreeSet::new();
        for input in &working.inputs {
            assert!(!input.what.is_empty() && !input.ask().is_empty() && !input.dimension_words().is_empty());
            for name in input.also.iter().chain([&input.name]) {
                assert!(seen.insert(*name), "{} takes `{name}` twice", working.name);
                assert!(!["as", "want"].contains(name));
            }
        }
    }
    for kind in Kind::ALL {
        assert!(of_kind(kind).next().is_some(), "nothing answers `{}`", kind.name());
        assert_eq!(Kind::parse(kind.name()), Some(kind));
    }
}

/// With nothing given, a working asks for its first required input or answers from usual values.
#[test]
fn what_is_missing_is_asked_for_by_name() {
    for working in all() {
        match call(working.name, &BTreeMap::new()) {
            Ok(worked) => assert!(working.inputs.iter().all(|input| !input.required), "{worked:?}"),
            Err(Refusal::Missing { working: name, input, ask, .. }) => {
                assert_eq!(name, working.name);
                assert!(working.input(&input).is_some(), "{name} asks for `{input}`");
                assert!(ask.ends_with('?'), "{ask}");
            }
            Err(other) => panic!("{}: {other}", working.name),
        }
    }
    let refused = ask("wrench-setting", &[("T", "50 N.m")]).unwrap_err();
    assert_eq!(
        refused.to_string(),
        "`L` is missing: what is the wrench length, from the square drive to the middle of the grip?"
    );
}

#[test]
fn a_listed_working_says_what_it_takes_and_gives() {
    let listed = serde_json::to_value(find("wrench-setting").unwrap().listed()).unwrap();
    assert_eq!(listed["kind"], "wrench");
    let theta =
        listed["inputs"].as_array().unwrap().iter().find(|input| input["name"] == "theta").unwrap().clone();
    assert_eq!(
        (&theta["unit"], &theta["usual"], &theta["required"]),
        (&"deg".into(), &"0 deg".into(), &false.into())
    );
    assert_eq!(listed["outputs"][0]["unit"], "N.m");
}

/// Case file `tests/cases/workings/malformed-calls.jsonl`.
#[test]
fn malformed_calls_of_the_case_file_are_refused_with_the_reason() {
    let mut wrong = Vec::new();
    let file = include_str!("../cases/workings/malformed-calls.jsonl");
    for line in file.lines().filter(|line| !line.starts_with('#')) {
        let case: serde_json::Value = serde_json::from_str(line).unwrap();
        let given = case["given"].as_object().unwrap();
        let given =
            given.iter().map(|(key, text)| (key.clone(), text.as_str().unwrap().to_owned())).collect();
        let said = call_text(case["work"].as_str().unwrap(), &given)
            .map_or_else(|refusal| refusal.to_string(), |worked| format!("answered {:?}", worked.value));
        if said.starts_with("answered") || !said.contains(case["says"].as_str().unwrap()) {
            wrong.push(format!("{}: {said}", case["id"]));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn malformed_calls_are_refused_with_the_reason() {
    let said = |name: &str, pairs: &[(&str, &str)]| ask(name, pairs).unwrap_err().to_string();
    for (name, pairs, part) in [
        ("spring-rat", vec![], "did you mean `spring-rate`"),
        ("spring-rate", vec![("q", "3 mm")], "takes no `q`"),
        ("spring-rate", vec![("d", "10.8")], "no unit; write the unit after it, such as `10.8 mm`"),
        ("spring-rate", vec![("d", "10.8 N")], "a length"),
        ("spring-rate", vec![("d", "-1 mm")], "above 0 mm"),
        ("spring-rate", vec![("d", "nan mm")], "not a finite number"),
        ("spring-rate", vec![("d", "inf mm")], "not a finite number"),
        ("spring-rate", vec![("d", "10 mm"), ("D", "8 mm"), ("n", "6")], "cannot be wound"),
        ("wrench-setting", vec![("T", "50 J"), ("L", "1 m"), ("E", "0 mm")], "a torque"),
        (
            "wrench-setting",
            vec![("T", "50 N.m"), ("L", "100 mm"), ("E", "100 mm"), ("theta", "180 deg")],
            "no arm",
        ),
        ("charge-at-temperature", vec![("p", "-2 bar gauge"), ("T2", "60 degC")], "below a vacuum"),
        ("charge-at-temperature", vec![("p", "14 bar"), ("T2", "-300 degC")], "between -273.15 degC"),
        ("charge-at-temperature", vec![("p", "14 bar"), ("T2", "40 delta_K")], "a temperature"),
        (
            "charge-at-temperature",
            vec![("p", "14 bar"), ("T2", "900 degC"), ("model", "real")],
            "equation for real nitrogen",
        ),
        (
            "gas-rise",
            vec![("p", "14 bar"), ("V0", "10 ml"), ("rod", "14 mm"), ("stroke", "100 mm")],
            "strike the cap",
        ),
        (
            "hollow-shaft-margin",
            vec![("thread", "M14x1"), ("T", "32 N.m"), ("bore", "14 mm"), ("Rp", "640 MPa"), ("mu", "0.12")],
            "bore",
        ),
        (
            "hollow-shaft-margin",
            vec![("thread", "M14x1"), ("T", "32 N.m"), ("bore", "6 mm"), ("Rp", "640 MPa")],
            "friction",
        ),
        ("proof-load", vec![("thread", "M8"), ("class", "11.9")], "no property class"),
        ("stress-area", vec![("thread", "Q8")], "a thread"),
        ("hex-key", vec![("thread", "M5"), ("head", "spoon")], "found `spoon`"),
        ("hex-key", vec![("thread", "M7"), ("head", "set")], "no M7"),
        ("cure-time", vec![("T", "-10 degC")], "not to be counted on"),
        ("viscosity-at", vec![("v40", "5 mm2/s"), ("v100", "15 mm2/s"), ("T", "20 degC")], "wrong way round"),
        (
            "oil-blend-share",
            vec![("v1", "10 mm2/s"), ("v2", "32 mm2/s"), ("target", "46 mm2/s")],
            "between the two",
        ),
        (
            "preload-change",
            vec![("k_old", "70 N/mm"), ("k_new", "80 N/mm"), ("x_old", "5 mm")],
            "what stays the same",
        ),
        (
            "preload-change",
            vec![("k_old", "70 N/mm"), ("k_new", "80 N/mm"), ("x_old", "5 mm"), ("keep", "luck")],
            "one of",
        ),
        ("pair-difference", vec![("left", "100 N"), ("right", "-100 N")], "one velocity"),
        ("convert", vec![("value", "32 N.m"), ("to", "J")], "an energy"),
        ("convert", vec![("value", "32 N.m"), ("to", "furlongs")], "unknown unit"),
        ("spring-rate", vec![("d", "10 mm"), ("D", "70 mm"), ("n", "6"), ("as", "N.m")], "a spring rate"),
        ("clicker-path", vec![("wanted", "25 click"), ("travel", "24 click")], "more than the 24"),
        (
            "ring-path",
            vec![("at", "2 position"), ("wanted", "7 position"), ("max", "3 position")],
            "no position",
        ),
        ("log-decrement", vec![("zeta", "1.2")], "nothing swings"),
        ("friction-effect", vec![("thread", "M8"), ("T", "20 N.m"), ("mu_before", "0.14")], "friction after"),
        (
            "coil-bind",
            vec![("free", "200 mm"), ("block", "210 mm"), ("preload", "5 mm"), ("stroke", "85 mm")],
            "block",
        ),
    ] {
        let text = said(name, &pairs);
        assert!(text.contains(part), "{name} {pairs:?}: {text}");
    }
}

#[test]
fn values_come_as_quantities_texts_or_keys_with_units() {
    let worked =
        ask("spring-rate", &[("d_mm", "7"), ("D", "42 mm"), ("N_active", "8"), ("G_MPa", "81370")]).unwrap();
    let typed: BTreeMap<String, Value> = [
        ("d".to_owned(), Value::from(Quantity::new(7.0, Unit::Millimetre))),
        ("D".to_owned(), Value::from(Quantity::new(4.2, Unit::Centimetre))),
        ("n".to_owned(), Value::from(Quantity::new(8.0, Unit::One))),
        ("G".to_owned(), Value::from(Quantity::new(81.37, Unit::Gigapascal))),
    ]
    .into();
    let again = call("spring-rate", &typed).unwrap().quantity().unwrap().value;
    assert!((worked.quantity().unwrap().value - again).abs() < 1e-9);
    assert_eq!(
        ask("spring-rate", &[("d", "7 mm"), ("d_mm", "7")]).unwrap_err().to_string(),
        "`d`: given twice, under two names"
    );
}

/// Gauge is not absolute: without a word it is gauge, with one it is what it says (design, section 2).
#[test]
fn pressures_keep_their_basis() {
    let value = |p: &str| {
        ask("charge-at-temperature", &[("p", p), ("T2", "60 degC")]).unwrap().quantity().unwrap().value
    };
    assert_eq!(value("10 bar"), value("10 bar gauge"));
    assert_eq!(value("10 bar"), value("10 barg"));
    assert!((value("11.01325 bar abs") - 1.01325 - value("10 bar")).abs() < 1e-9);
    let typed: BTreeMap<String, Value> = [
        ("p".to_owned(), Value::Pressure(Quantity::new(11.01325, Unit::Bar), PressureBasis::Absolute)),
        ("T2".to_owned(), Value::from(Quantity::new(60.0, Unit::Celsius))),
    ]
    .into();
    let absolute = call("charge-at-temperature", &typed).unwrap().quantity().unwrap().value;
    assert!((absolute - value("11.01325 bar abs")).abs() < 1e-12);
}

#[test]
fn an_answer_carries_all_that_it_rests_on() {
    let worked =
        ask("charge-at-temperature", &[("p", "300 psi"), ("T2", "120 degC"), ("model", "real")]).unwrap();
    assert_eq!(worked.unit, Some(Unit::Psi));
    assert!(worked.inputs.iter().any(|told| told.name == "T1" && told.usual));
    assert!(worked.inputs.iter().any(|told| told.name == "p" && !told.usual && told.unit == Some(Unit::Psi)));
    assert!(worked.cautions.iter().any(|caution| caution.contains("real nitrogen")), "{:?}", worked.cautions);
    let json = serde_json::to_value(&worked).unwrap();
    for key in ["value", "unit", "inputs", "method", "source", "cautions", "more"] {
        assert!(json.get(key).is_some(), "{key}");
    }
    assert_eq!(json["unit"], "psi");
    let shown = (worked.show(), worked.say());
    assert!(shown.0.ends_with(" psi") && shown.1.ends_with("p s i"), "{shown:?}");
    let ideal =
        ask("charge-at-temperature", &[("p", "300 psi"), ("T2", "120 degC"), ("want", "ideal")]).unwrap();
    assert_ne!(ideal.value, worked.value);
}

/// The demo cards' own questions (design, section 7), worked by hand from VDI 2230 and Boyle's law.
#[test]
fn the_demo_cards_own_questions_are_answered() {
    // Foot nut of the Birch 44 at 32 N.m, mu 0.12: arm 0.16 + 0.58 x 13.350 x 0.12 + 17.57 / 2 x 0.12 = 2.1434 mm,
    // F 14.93 kN on pi/4 (11.5^2 - 8^2) = 53.6 mm2: 278.5 MPa; 71.2 MPa of torsion; together 304.6; 640 / 304.6.
    let pairs = [
        ("thread", "M14x1"),
        ("T", "32 N.m"),
        ("relief", "11.5 mm"),
        ("bore", "8 mm"),
        ("Rp", "640 MPa"),
        ("mu", "0.12"),
    ];
    let margin = ask("hollow-shaft-margin", &pairs).unwrap();
    assert!((margin.quantity().unwrap().value - 2.10).abs() < 0.01, "{margin:?}");
    // Seal head of the Birch 60: pins on a 45 mm circle, so the spanner reaches 22.5 mm; 450 mm wrench: 50 x 450 / 472.5.
    let wrench = ask("wrench-setting", &[("T", "50 N.m"), ("L", "450 mm"), ("E", "22.5 mm")]).unwrap();
    assert!((wrench.quantity().unwrap().value - 47.619).abs() < 1e-3);
    // Gas of the Birch 60: bore 40, face 42 below the rim, cap 14 in: 35.19 ml; rod 14 over 100: 15.39 ml;
    // 15.01325 x 35.186 / 19.792 - 1.01325 = 25.68 bar gauge.
    let pairs = [
        ("p", "14 bar"),
        ("bore", "40 mm"),
        ("depth", "42 mm"),
        ("cap", "14 mm"),
        ("rod", "14 mm"),
        ("stroke", "100 mm"),
    ];
    let gas = ask("gas-rise", &pairs).unwrap();
    assert!((gas.quantity().unwrap().value - 25.68).abs() < 0.01, "{gas:?}");
}

proptest! {
    /// Whatever is given, a working answers with finite figures or refuses; it never falls over.
    #[test]
    fn any_call_is_answered_or_refused(at in 0..200usize, sizes in prop::collection::vec(-1e7f64..1e7, 12), small: bool, skip in 0..14usize) {
        let working = &all()[at % all().len()];
        let mut values: BTreeMap<String, Value> = BTreeMap::new();
        for (n, input) in working.inputs.iter().enumerate() {
            if n == skip { continue; }
            let size = sizes[n % sizes.len()] * if small { 1e-6 } else { 1.0 };
            let value = match input.takes {
                Takes::Quantity { unit, .. } => Value::from(Quantity::new(size, unit)),
                Takes::Pressure(_) | Takes::Any => Value::from(Quantity::new(size, Unit::Bar)),
                Takes::Text([]) => Value::from(["M8", "12.9", "1/2 in", "psi", "steel", "cap"][n % 6]),
                Takes::Text(choices) => Value::from(choices[n % choices.len()]),
            };
            values.insert(input.name.to_owned(), value);
        }
        match call(working.name, &values) {
            Ok(worked) => {
                let answers = worked.more.iter().map(|more| &more.value).chain([&worked.value]);
                for answer in answers {
                    match answer {
                        Answer::Number(value) => prop_assert!(value.is_finite()),
                        Answer::List(values) => prop_assert!(values.iter().all(|value| value.is_finite())),
                        Answer::Text(_) | Answer::Nothing => {}
                    }
                }
            }
            Err(refusal) => prop_assert!(!refusal.to_string().is_empty()),
        }
    }
}

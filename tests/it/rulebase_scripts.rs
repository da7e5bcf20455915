//! Scripts at run time: what they see, what comes of a failure, and that nothing they do takes long.

use sparehand::rulebase::Pack;
use sparehand::rulebase::script::{AdjusterView, FaultKind, PartView, View};
use sparehand::source::Problem;
use std::collections::BTreeMap;
use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};
use std::time::{Duration, Instant};

const CARD: &str = "\
unit: birch-44
called: [Birch forty four]
what: A strut of few parts
sizes: {stroke: 85 mm}
adjusters:
  slow-rebound: {called: [slow rebound], clicker: 24 clicks, closes: clockwise}
  preload: {called: [perch], screw: 1.5 mm a turn, adds: clockwise}
parts:
  foot-nut:
    called: [foot nut]
    torque: 32 N.m +/- 2 N.m
    sizes: {gap: 2 mm}
    limits: {drift: 16 mm to 20 mm}
    locker: {grade: medium, put: one drop, open: 5 min}
  spring:
    called: [spring]
    springs:
      - {rate: 70 N/mm, free: 200 mm, block: 95 mm}
";

/// A pack whose first step is guarded by an expression, with functions beside it.
fn pack(guard: &str, functions: &str) -> Pack {
    read(guard, functions).unwrap_or_else(|problems| panic!("{guard}: {problems:?}"))
}

fn read(guard: &str, functions: &str) -> Result<Pack, Vec<Problem>> {
    let procedure = format!(
        "procedure: p\ncalled: [p]\nunit: birch-44\nphases:\n  strip:\n    - count: slow-rebound\n      as: found\n    - \
         measure: preload\n      as: datum\n    - record: leaks\n    - loosen: foot-nut\n      when: >-\n        {guard}\n"
    );
    let files = [
        ("pack.yaml", "name: Test\nformat: 1\n"),
        ("units/birch-44.yaml", CARD),
        ("procedures/p.yaml", &procedure),
        ("scripts/all.rhai", functions),
    ];
    let files = files.map(|(path, text)| (path.to_owned(), text.to_owned()));
    Pack::from_files(files.into())
}

fn view(pack: &Pack) -> View {
    View {
        unit: "birch-44".to_owned(),
        corner: "front left".to_owned(),
        card: pack.units.get("birch-44").map(Arc::clone),
        readings: BTreeMap::from([(("preload".to_owned(), "datum".to_owned()), 186.5)]),
        texts: BTreeMap::from([("leaks".to_owned(), "none".to_owned())]),
        adjusters: BTreeMap::from([(
            "slow-rebound".to_owned(),
            AdjusterView { found: Some(9.0), travel: Some(23.0), ..AdjusterView::default() },
        )]),
        parts: BTreeMap::from([(
            "foot-nut".to_owned(),
            PartView { off: true, locked: true, locked_minutes: Some(3.5), ..PartView::default() },
        )]),
        failed: BTreeMap::from([("strip/loosen-foot-nut".to_owned(), 2)]),
    }
}

fn holds(guard: &str) -> bool {
    let pack = pack(guard, "");
    pack.scripts().guard(guard, &view(&pack)).unwrap_or_else(|fault| panic!("{guard}: {fault}"))
}

#[test]
fn a_guard_sees_card_readings_adjusters_parts_attempts_and_words() {
    for guard in [
        "found(\"slow-rebound\") == 9",
        "travel(\"slow-rebound\") < clicks(\"slow-rebound\")",
        "pitch(\"preload\") == 1.5",
        "reading(\"preload\", \"datum\") > 186",
        "has_reading(\"preload\", \"datum\") && !has_reading(\"slow-rebound\", \"found\")",
        "text(\"leaks\") == \"none\" && has_text(\"leaks\")",
        "is_off(\"foot-nut\") && is_locked(\"foot-nut\") && !is_tight(\"foot-nut\") && !is_loose(\"foot-nut\")",
        "!is_marked(\"foot-nut\") && !is_clean(\"foot-nut\") && !is_new(\"foot-nut\") && !is_safe(\"spring\")",
        "locked_minutes(\"foot-nut\") == 3.5 && open_left(\"foot-nut\") == 1.5",
        "failed(\"strip/loosen-foot-nut\") == 2",
        "corner() == \"front left\" && unit() == \"birch-44\"",
        "torque(\"foot-nut\") == 32 && size(\"foot-nut\", \"gap\") == 2 && unit_size(\"stroke\") == 85",
        "limit_low(\"foot-nut\", \"drift\") == 16 && limit_high(\"foot-nut\", \"drift\") == 20",
        "springs(\"spring\") == 1 && spring_rate(\"spring\", 0) == 70 && spring_free(\"spring\", 0) == 200",
        "spring_block(\"spring\", 0) == 95",
        "!is_known(\"slow-rebound\")",
        "(found(\"slow-rebound\") - 10).abs() == 1.0 && max(1, 2) == 2",
    ] {
        assert!(holds(guard), "{guard}");
        assert!(!holds(&format!("!({guard})")), "the other way round: {guard}");
    }
}

#[test]
fn what_is_not_known_yet_is_a_fault_with_its_place() {
    let pack = pack("found(\"slow-rebound\") > 3", "");
    let card = pack.units.get("birch-44").map(Arc::clone);
    let fault =
        pack.scripts().guard("found(\"slow-rebound\") > 3", &View { card, ..View::default() }).unwrap_err();
    assert_eq!(fault.kind, FaultKind::Missing);
    assert_eq!(fault.found, "`slow-rebound` has no setting as found yet");
    assert_eq!(&*fault.place.file, "procedures/p.yaml");
    assert!(fault.place.line > 0, "{}", fault.place);
}

#[test]
fn a_fault_in_a_function_names_the_script_and_its_line() {
    let functions = "// Some words.\nfn share(a) {\n    let b = 10;\n    b / (a - 7)\n}\n";
    let guard = "share(failed(\"strip/loosen-foot-nut\") + 3) < 100";
    let pack = pack(guard, functions);
    let mut view = view(&pack);
    view.failed.insert("strip/loosen-foot-nut".to_owned(), 4);
    let fault = pack.scripts().guard(guard, &view).unwrap_err();
    assert_eq!(
        (fault.kind, &*fault.place.file, fault.place.line),
        (FaultKind::Broken, "scripts/all.rhai", 4)
    );
    assert!(fault.found.contains("division by zero"), "{}", fault.found);
}

#[test]
fn what_runs_on_at_the_bench_only_is_stopped_and_the_next_runs() {
    // The made-up views never have this corner, so only the bench meets the loop.
    let functions =
        "fn turn() {\n    let i = 0;\n    while corner() == \"rear right\" { i += 1; }\n    i == 0\n}\n";
    let pack = pack("turn()", functions);
    let begun = Instant::now();
    let endless = View { corner: "rear right".to_owned(), ..view(&pack) };
    let fault = pack.scripts().guard("turn()", &endless).unwrap_err();
    assert_eq!(fault.kind, FaultKind::Overran);
    assert!(begun.elapsed() < Duration::from_secs(1), "{:?}", begun.elapsed());
    assert!(pack.scripts().guard("turn()", &view(&pack)).unwrap(), "the job goes on");
}

#[test]
fn a_clock_stops_what_takes_long_before_it_has_done_much() {
    let functions = "fn turn() {\n    let i = 0;\n    while corner() == \"rear right\" && i < 2000 { i += 1; }\n    true\n}\n";
    let pack = pack("turn()", functions);
    let long = View { corner: "rear right".to_owned(), ..view(&pack) };
    assert!(pack.scripts().guard("turn()", &long).unwrap(), "within its operations");
    // A clock that runs 10 ms at every look.
    let ticks = AtomicU64::new(0);
    pack.scripts().watch(Arc::new(move || Duration::from_millis(10 * ticks.fetch_add(1, Ordering::Relaxed))));
    let fault = pack.scripts().guard("turn()", &long).unwrap_err();
    assert_eq!((fault.kind, fault.found.as_str()), (FaultKind::Overran, "this script takes too long"));
}

#[test]
fn an_expression_of_no_pack_is_a_fault() {
    let pack = pack("true", "");
    let fault = pack.scripts().guard("1 == 1", &view(&pack)).unwrap_err();
    assert_eq!(fault.kind, FaultKind::Missing);
}

#[test]
fn a_function_computes_a_number() {
    let pack = pack("true", "fn twice(a) { a * 2 }\nfn none(a) { a / 0.0 }\n");
    assert_eq!(pack.scripts().compute("twice", &[21.0], &view(&pack)).unwrap(), 42.0);
    assert_eq!(pack.scripts().compute("none", &[1.0], &view(&pack)).unwrap_err().kind, FaultKind::Broken);
    assert!(pack.scripts().compute("thrice", &[1.0], &view(&pack)).is_err());
}

#[test]
fn big_and_deep_scripts_are_refused_fast() {
    let load = |functions: String| {
        let files = [("pack.yaml", "name: Test\nformat: 1\n".to_owned()), ("scripts/all.rhai", functions)];
        let begun = Instant::now();
        let loaded = Pack::from_files(files.map(|(path, text)| (path.to_owned(), text)).into());
        assert!(begun.elapsed() < Duration::from_secs(2), "{:?}", begun.elapsed());
        loaded.expect_err("refused").iter().map(ToString::to_string).collect::<String>()
    };
    assert!(load("// x\n".repeat(2 << 20)).contains("bytes"));
    assert!(load(format!("fn f() {{ {} }}", "(".repeat(16_000))).contains("this is no Rhai"));
    assert!(load(format!("fn f() {{ {}1 }}", "1+".repeat(7_000))).contains("this is no Rhai"));
    assert!(load(format!("fn f() {{ {}true }}", "!".repeat(16_000))).contains("this is no Rhai"));
    assert!(load("fn f() { [".repeat(1_500)).contains("this is no Rhai"));
}

#[test]
fn every_calculation_can_be_called() {
    // 200 - 95 - 10 - 85 = 10, by hand; 60 x 400 / 450 = 53.33, by hand (lever law, Army TM 9-254).
    let bind = r#"work("coil-bind", #{free: "200 mm", block: spring_block("spring", 0), preload: 10, stroke: unit_size("stroke")})"#;
    assert!(holds(&format!("({bind} - 10.0).abs() < 0.001")));
    assert!(holds(
        r#"(work("wrench-setting", #{T: "60 N.m", L: 400.0, E: "50 mm"}) - 53.333).abs() < 0.001"#
    ));
    assert!(holds(r#"work("stand-in", #{tool: "19 mm", hex: "19 mm"}) == "fits""#));
}

#[test]
fn a_calculation_called_wrongly_is_found_as_the_pack_loads() {
    let found = |guard: &str| read(guard, "").unwrap_err().remove(0).found;
    assert!(found(r#"work("coil-bind", #{free: "200 mm"}) > 0.0"#).contains("`block` is missing"));
    assert!(found(r#"work("coil-bound", #{free: "200 mm"}) > 0.0"#).contains("coil-bound"));
    assert!(found(r#"work("sag", #{k: "70 N/mm", load: "5 N.m"}) > 0.0"#).contains("torque"));
}

//! A small, fixed choice of mutants: one edit each of the clean pack, and the finding that is meant for it. The large
//! count is `scripts/mutate-pack`'s.

use sparehand::check::check;
use sparehand::rulebase::Pack;
use std::path::Path;

/// File, what stands there, what stands there instead, the finding meant; `form` for what does not load.
const MUTANTS: [(&str, &str, &str, &str); 38] = [
    ("procedures/strut.yaml", "    - refit: spring\n", "", "left off"),
    ("procedures/strut.yaml", "    - refit: carrier\n", "", "left off"),
    ("procedures/shock.yaml", "    - refit: cap\n", "", "tightened while it is off"),
    ("procedures/shock.yaml", "    - tighten: cap\n", "", "not tightened"),
    (
        "procedures/strut.yaml",
        "    - remove: foot-nut\n    - remove: carrier\n",
        "    - remove: carrier\n    - remove: foot-nut\n",
        "taken off too soon",
    ),
    (
        "procedures/strut.yaml",
        "    - press: seal\n      say: Press the new seal in.\n      before: [cut lip]\n",
        "",
        "left off",
    ),
    (
        "procedures/strut.yaml",
        "      - prove: spring\n",
        "      - inspect: spring\n",
        "let go before it is safe",
    ),
    (
        "procedures/shock.yaml",
        "      - vent: charge\n        before: [gas]\n",
        "",
        "let go before it is safe",
    ),
    ("procedures/shock.yaml", "    makes safe: yes\n", "", "let go before it is safe"),
    ("procedures/shock.yaml", "    - charge: charge\n      before: [gas]\n", "", "not charged again"),
    (
        "procedures/strut.yaml",
        "    - tighten: foot-nut\n      before: [hollow shaft]\n    - look",
        "    - tighten: foot-nut\n    - look",
        "caution missing",
    ),
    (
        "procedures/strut.yaml",
        "    - look: foot-nut\n      stop: Stop. The mark does not stay.\n",
        "    - clean: foot-nut\n      id: wipe it\n  more:\n    - look: clamp\n      question: Is it so?\n      stop: Stop. It is not.\n",
        "mark not looked at",
    ),
    (
        "procedures/strut.yaml",
        "          when: open_left(\"foot-nut\") <= 0\n",
        "          when: open_left(\"foot-nut\") <= 0 - 100000\n",
        "threadlocker too late",
    ),
    ("procedures/strut.yaml", "accept: deep_enough(value)", "accept: deep_enouhg(value)", "form"),
    ("procedures/strut.yaml", "accept: deep_enough(value)", "accept: value < 0.0", "no way on"),
    ("scripts/judge.rhai", "depth >= 2.2", "1 / (1 - 1) > 2", "form"),
    ("units/strut.yaml", "torque: 32 N.m +/- 2 N.m", "torque: 320 N.m", "torque out of reach"),
    ("units/strut.yaml", "torque: 32 N.m +/- 2 N.m", "torque: 32", "form"),
    ("units/strut.yaml", "torque: 6 N.m", "torque: 60 N.m", "torque out of proportion"),
    ("units/strut.yaml", "across: 21 mm", "across: 18 mm", "tool does not fit"),
    ("units/strut.yaml", "bore: 6 mm", "bore: 13 mm", "torque out of proportion"),
    ("units/strut.yaml", "12 mm flats on the shaft", "14 mm flats on the shaft", "tool not in the crib"),
    ("units/strut.yaml", "what: M14 nut", "what: M12 nut", "two values for one fact"),
    ("units/strut.yaml", "stroke: 85 mm", "stroke: 110 mm", "spring closes in the stroke"),
    ("units/strut.yaml", "over: [spring, seal]", "over: [spring, seal, foot-nut]", "under itself"),
    ("units/shock.yaml", "ends:\n  cap: from the cap\n", "ends:\n  top: from the cap\n", "form"),
    ("cautions.yaml", "signal: danger", "signal: notice", "signal word does not fit"),
    ("tools.yaml", "range: 5 N.m to 60 N.m", "range: 40 N.m to 60 N.m", "torque out of reach"),
    (
        "talk/talk.jsgf",
        " * @example undo\n",
        " * @example undo\n * @example that is done\n",
        "phrases that fight",
    ),
    ("procedures/strut.yaml", "    - set: clicker\n", "", "setting not restored"),
    (
        "units/strut.yaml",
        "what: M14 nut at the foot",
        "what: left-hand nut at the foot",
        "two values for one fact",
    ),
    ("units/strut.yaml", "    critical: the shaft is hollow\n", "", "not marked as critical"),
    ("units/strut.yaml", "    single use: yes\n", "", "renewed each time"),
    ("units/strut.yaml", "open: 5 min", "open: 5 h", "times of the threadlocker"),
    ("units/strut.yaml", "called: [knob]", "called: [knob, done]", "name that is an act"),
    ("cautions.yaml", "brief: gloves on", "brief: \"\"", "form"),
    (
        "procedures/shock.yaml",
        "    - refit: core\n    - tighten: core\n    - charge: charge\n      before: [gas]\n",
        "    - charge: charge\n      before: [gas]\n    - refit: core\n    - tighten: core\n",
        "charged while it is open",
    ),
    (
        "talk/talk.jsgf",
        "public <undo> = undo | scratch that {undo};",
        "public <undo> = undo | scratch that | done {undo};",
        "phrases that fight",
    ),
];

/// Edits of which nothing wrong may be said.
const CLEAN: [(&str, &str, &str); 6] = [
    ("units/strut.yaml", "clicker: 24 clicks", "clicker: 20 clicks"),
    ("units/strut.yaml", "torque: 32 N.m +/- 2 N.m", "torque: 31 N.m +/- 2 N.m"),
    ("units/shock.yaml", "charge: 14 bar +/- 0.5 bar", "charge: 10 bar +/- 1 bar"),
    (
        "procedures/strut.yaml",
        "    - remove: spring\n    - remove: seal\n",
        "    - remove: seal\n    - remove: spring\n",
    ),
    ("procedures/shock.yaml", "    - refit: core\n", "    - refit: core\n      note: By hand alone.\n"),
    ("tools.yaml", "sizes: [2.5 mm, 4 mm]", "sizes: [2 mm, 2.5 mm, 4 mm]"),
];

fn found(file: &str, old: &str, new: &str) -> Vec<(&'static str, bool)> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/findings/base");
    let mut files = Pack::load(&root).unwrap().files().clone();
    let text = files.get_mut(file).unwrap();
    assert!(text.contains(old), "{file} has no {old:?}");
    *text = text.replacen(old, new, 1);
    match Pack::from_files(files) {
        Err(_) => vec![("form", true)],
        Ok(pack) => check(&pack)
            .found
            .iter()
            .map(|found| (found.finding.name, found.problem.level == sparehand::source::Level::Wrong))
            .collect(),
    }
}

#[test]
fn each_mutant_is_found_by_the_finding_meant_for_it() {
    let mut wrong = Vec::new();
    for (file, old, new, meant) in MUTANTS {
        let names: Vec<&str> = found(file, old, new).into_iter().map(|(name, _)| name).collect();
        if !names.contains(&meant) {
            wrong.push(format!("{old:?} -> {new:?}: {meant} is meant, found {names:?}"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn nothing_wrong_is_said_of_clean_variations() {
    for (file, old, new) in CLEAN {
        let wrong: Vec<&str> =
            found(file, old, new).into_iter().filter(|(_, wrong)| *wrong).map(|(name, _)| name).collect();
        assert!(wrong.is_empty(), "{old:?} -> {new:?}: {wrong:?}");
    }
}

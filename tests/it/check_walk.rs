//! The walk: what it reaches, that it is bounded and grows no worse than linearly, and what it hands to findings.

use sparehand::check::{check, check_within};
use sparehand::rulebase::Pack;
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

fn base() -> BTreeMap<String, String> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/findings/base");
    Pack::load(&root).unwrap().files().clone()
}

fn pack(files: BTreeMap<String, String>) -> Pack {
    Pack::from_files(files).unwrap_or_else(|problems| panic!("{problems:?}"))
}

/// The clean pack with its strut's procedure under so many names.
fn copies(count: usize) -> Pack {
    let mut files = base();
    let own = files["procedures/strut.yaml"].clone();
    for n in 1..count {
        let text = own.replacen("procedure: service", &format!("procedure: service-{n}"), 1);
        files.insert(format!("procedures/strut-{n}.yaml"), text);
    }
    pack(files)
}

/// The clean pack with so many more steps in the strut's procedure.
fn longer(by: usize) -> Pack {
    let mut files = base();
    let more: String = (0..by)
        .map(|n| format!("    - clean: knob\n      id: clean {n}\n      say: Wipe the knob.\n"))
        .collect();
    let text =
        files["procedures/strut.yaml"].replacen("  restore:\n", &format!("  clean:\n{more}  restore:\n"), 1);
    files.insert("procedures/strut.yaml".to_owned(), text);
    pack(files)
}

#[test]
fn every_path_of_the_clean_pack_is_walked_to_its_end() {
    let walked = check(&pack(base())).walked;
    assert_eq!((walked.procedures, walked.cut), (2, 0));
    assert!(walked.ended >= 2 && walked.paths > 50 && walked.states > 100, "{walked:?}");
}

#[test]
fn work_grows_with_procedures_and_steps_no_worse_than_linearly() {
    let decisions = |pack: &Pack| check(pack).walked.decisions;
    let one = decisions(&copies(1));
    let ten = decisions(&copies(10));
    assert!(ten <= 10 * one, "{one} for one procedure, {ten} for ten");
    let (short, long) = (decisions(&longer(20)), decisions(&longer(80)));
    let each = (long - short) as f64 / 60.0;
    assert!(each < 20.0, "{each} decisions for each step more");
}

#[test]
fn a_walk_that_is_cut_short_says_so() {
    let report = check_within(&copies(2), 2.0);
    assert!(report.walked.cut > 0, "{:?}", report.walked);
    assert!(
        report.found.is_empty(),
        "a short walk raised {:?}",
        report.found.first().map(|found| found.named())
    );
}

#[test]
fn the_checker_is_no_longer_than_it_must_be_to_read() {
    let findings = fs::read_dir(Path::new(env!("CARGO_MANIFEST_DIR")).join("src/check/findings")).unwrap();
    let long: Vec<String> = findings
        .map(|entry| entry.unwrap().path())
        .filter(|path| fs::read_to_string(path).unwrap().lines().count() > 150)
        .map(|path| path.display().to_string())
        .collect();
    assert!(long.is_empty(), "{long:?}");
}

//! Each finding has a pack that shows it and one like it that does not; what is printed for both is compared.
//! `UPDATE_FINDINGS=1` writes the outputs anew; `scripts/make-findings` makes the packs.

use sparehand::check::{FINDINGS, Finding, check};
use sparehand::front::check::{drawn, explained};
use sparehand::rulebase::Pack;
use std::fs;
use std::path::{Path, PathBuf};

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/findings")
}

/// Checks the pack of a folder; gives the names of what was found, and compares what is printed.
fn checked(folder: &Path) -> Vec<&'static str> {
    let pack = Pack::load(folder).unwrap_or_else(|problems| {
        let texts: Vec<String> = problems.iter().map(ToString::to_string).collect();
        panic!("{} does not load:\n{}", folder.display(), texts.join("\n"))
    });
    let report = check(&pack);
    let text = drawn(&pack, &report, false) + "\n";
    let kept = folder.with_extension("txt");
    if std::env::var_os("UPDATE_FINDINGS").is_some() {
        fs::write(&kept, &text).unwrap();
    }
    let wanted = fs::read_to_string(&kept).unwrap_or_default();
    assert_eq!(text, wanted, "{} prints something else", folder.display());
    report.found.iter().map(|found| found.finding.name).collect()
}

fn one(finding: &Finding) -> Vec<String> {
    let own = folder().join(finding.slug());
    let (shows, clean) = (checked(&own.join("shows")), checked(&own.join("clean")));
    let mut wrong = Vec::new();
    if !shows.contains(&finding.name) {
        wrong.push(format!("{}: its pack does not show it, but {shows:?}", finding.name));
    }
    if clean.contains(&finding.name) {
        wrong.push(format!("{}: the pack that is clean of it shows it", finding.name));
    }
    wrong
}

#[test]
fn each_finding_is_shown_by_its_pack_and_not_by_the_one_like_it() {
    let wrong: Vec<String> = FINDINGS.iter().flat_map(|finding| one(finding)).collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn every_folder_belongs_to_a_finding() {
    for entry in fs::read_dir(folder()).unwrap() {
        let name = entry.unwrap().file_name().to_string_lossy().into_owned();
        assert!(
            name == "base" || FINDINGS.iter().any(|one| one.slug() == name),
            "{name} belongs to no finding"
        );
    }
}

#[test]
fn every_heading_is_filled_in() {
    for one in FINDINGS {
        let headings = [one.name, one.what, one.why, one.example, one.mend];
        assert!(headings.iter().all(|text| text.trim().len() > 3), "{} has an empty heading", one.name);
        assert!(
            one.what.ends_with('.') && one.why.ends_with('.'),
            "{}: a sentence ends in a full stop",
            one.name
        );
        let same = FINDINGS.iter().filter(|other| other.name == one.name).count();
        assert_eq!(same, 1, "{} is declared twice", one.name);
        assert!(explained(one).contains("## How to mend it"));
    }
}

#[test]
fn the_packs_that_are_built_in_and_made_from_are_clean() {
    let base = check(&Pack::load(&folder().join("base")).unwrap());
    assert!(
        base.found.is_empty(),
        "{:?}",
        base.found.iter().map(|found| found.named().to_string()).collect::<Vec<_>>()
    );
    let own = check(&Pack::built_in().unwrap());
    let wrong: Vec<String> = own
        .found
        .iter()
        // Of talk only what is wrong: some lines wait for the ear to tell them apart.
        .filter(|found| {
            let wrong = found.problem.level == sparehand::source::Level::Wrong;
            wrong || !found.problem.place.file.starts_with("talk/")
        })
        .map(|found| found.named().to_string())
        .collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn the_same_pack_gives_the_same_report() {
    let pack = Pack::load(&folder().join("left-off/shows")).unwrap();
    let (first, second) = (check(&pack), check(&pack));
    assert_eq!(drawn(&pack, &first, false), drawn(&pack, &second, false));
}

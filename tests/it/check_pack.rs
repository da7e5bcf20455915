//! `pack schema`, `pack new` and `pack show`, and the schema held against the packs that we have.

use super::harness::sparehand;
use sparehand::check::check;
use sparehand::front::pack_schema::{FILES, schema};
use sparehand::front::pack_show::pages;
use sparehand::rulebase::Pack;
use sparehand::source::Level;

/// A pack begun in an empty folder.
fn begun() -> tempfile::TempDir {
    let folder = tempfile::TempDir::new().unwrap();
    let rules = folder.path().join("mine").display().to_string();
    sparehand(&["pack", "new", "unit", "oak-20", "--rules", &rules]).run().code(0);
    sparehand(&["pack", "new", "procedure", "refresh", "--rules", &rules]).run().code(0);
    folder
}

#[test]
fn what_is_begun_checks_clean_apart_from_what_it_marks() {
    let folder = begun();
    let report = check(&Pack::load(&folder.path().join("mine")).unwrap());
    let other: Vec<String> = report
        .found
        .iter()
        .filter(|found| found.finding.name != "still to be filled in")
        .map(|found| found.named().to_string())
        .collect();
    assert!(other.is_empty(), "{}", other.join("\n"));
    assert!(report.found.len() > 5, "nothing is marked");
    assert_eq!(report.count(Level::Wrong), 0);
}

#[test]
fn nothing_is_overwritten_and_odd_names_are_refused() {
    let folder = begun();
    let rules = folder.path().join("mine").display().to_string();
    sparehand(&["pack", "new", "unit", "oak-20", "--rules", &rules])
        .run()
        .code(2)
        .complains("is there already");
    sparehand(&["pack", "new", "unit", "../oak", "--rules", &rules]).run().code(2).complains("is no id");
    sparehand(&["pack", "new", "procedure", "strip", "--unit", "elm", "--rules", &rules])
        .run()
        .code(2)
        .complains("no unit `elm`");
}

#[test]
fn a_procedure_is_shown_in_the_order_of_a_procedural_data_module() {
    // S1000D, procedural data module: preliminary requirements (conditions, support equipment, supplies, spares, safety),
    // main procedure, closing requirements. Headings from memory of the specification.
    let pack = Pack::built_in().unwrap();
    let page = pages(&pack, "re-spring birch-44").remove(0);
    let order = [
        "Conditions",
        "Support equipment",
        "Supplies",
        "Spares",
        "Safety",
        "Main procedure",
        "Requirements after the job",
    ];
    let places: Vec<usize> =
        order.iter().map(|heading| page.find(&format!("# {heading}\n")).expect(heading)).collect();
    assert!(places.is_sorted(), "{places:?}");
    assert!(page.contains("32 N.m") && page.contains("21 mm"), "figures are missing");
    let none =
        Pack::load(&std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/findings/base")).unwrap();
    let page = pages(&none, "recharge").remove(0);
    assert!(page.contains("### Spares\n\nNone.\n"), "{page}");
    assert_eq!(pages(&pack, "birch-44").len(), 1);
}

#[test]
fn the_schema_knows_every_field_that_the_reader_knows() {
    let whole = schema(None).unwrap();
    let defs = whole["$defs"].as_object().unwrap();
    for (name, form) in [
        ("part", "torque"),
        ("step", "loosen"),
        ("step", "reads back"),
        ("unit-card", "adjusters"),
        ("caution", "signal"),
    ] {
        assert!(defs[name]["properties"].get(form).is_some(), "{name} has no {form}");
    }
    for (name, _) in FILES {
        let own = schema(Some(name)).unwrap();
        let at = own["$ref"].as_str().unwrap().trim_start_matches("#/$defs/").to_owned();
        assert!(own["$defs"][&at].is_object(), "{name} names {at}");
    }
    assert!(schema(Some("spanner")).is_none());
}

#[test]
fn the_page_of_keys_is_current_and_every_key_is_explained() {
    let page = sparehand::front::pack_keys::page();
    let kept = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/pack-keys.md");
    let kept = std::fs::read_to_string(kept).unwrap();
    assert_eq!(kept.trim_end(), page.trim_end(), "write it anew: sparehand pack keys > tests/pack-keys.md");
    for deed in sparehand::rulebase::Deed::ALL {
        assert!(deed.what().len() > 15 && page.contains(deed.what()), "{deed:?} is not explained");
    }
    let empty: Vec<&str> = page.lines().filter(|line| line.contains("|  |")).collect();
    assert!(empty.is_empty(), "{empty:?}");
}

#[test]
fn what_is_begun_is_worked_with_at_once() {
    // A pack without talk of its own is lent that of the built-in one, or nothing said to it would be heard.
    let folder = begun();
    let rules = folder.path().join("mine");
    let book = folder.path().join("try.sqlite").display().to_string();
    let lines = "start a refresh on the oak 20, front left\nPlover team\nA 12\n5\n20\n";
    let done = std::process::Command::new(env!("CARGO_BIN_EXE_sparehand"))
        .args(["--rules", &rules.display().to_string(), "--book", &book, "pipe", "--typed"])
        .stdin(std::process::Stdio::piped())
        .stdout(std::process::Stdio::piped())
        .spawn()
        .and_then(|mut child| {
            std::io::Write::write_all(child.stdin.as_mut().unwrap(), lines.as_bytes())?;
            child.wait_with_output()
        })
        .unwrap();
    let said = String::from_utf8_lossy(&done.stdout);
    assert!(said.contains("Say whose unit it is.") && said.contains("found five clicks"), "{said}");
}

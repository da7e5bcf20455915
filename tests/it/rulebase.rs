//! Packs, whole: the one that is built in, those under `tests/packs/valid` that must load, and those under
//! `tests/packs/invalid` that must not, each with the exact words of its refusal in `expected.txt`.

use sparehand::rulebase::Pack;
use sparehand::source::{Problem, render};
use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// Every problem drawn as an author sees it.
fn drawn(problems: &[Problem], files: &BTreeMap<String, String>) -> String {
    let drawn = problems.iter().map(|problem| {
        let text = files.get(&*problem.place.file).map(String::as_str);
        render(problem, text, false)
    });
    drawn.collect::<Vec<_>>().join("\n\n") + "\n"
}

fn folders(kind: &str) -> Vec<PathBuf> {
    let all = fs::read_dir(root().join("tests/packs").join(kind)).expect("a folder of packs");
    let mut all: Vec<PathBuf> = all.map(|entry| entry.expect("an entry").path()).collect();
    all.sort();
    assert!(!all.is_empty(), "no packs under {kind}");
    all
}

fn files(folder: &Path) -> BTreeMap<String, String> {
    fn gather(root: &Path, folder: &Path, out: &mut BTreeMap<String, String>) {
        for entry in fs::read_dir(folder).expect("a folder") {
            let path = entry.expect("an entry").path();
            if path.is_dir() {
                gather(root, &path, out);
            } else {
                let name = path.strip_prefix(root).expect("within").to_string_lossy().into_owned();
                out.insert(name, fs::read_to_string(&path).expect("UTF-8"));
            }
        }
    }
    let mut out = BTreeMap::new();
    gather(folder, folder, &mut out);
    out.remove("expected.txt");
    out
}

#[test]
fn the_built_in_pack_loads() {
    let pack = Pack::built_in()
        .unwrap_or_else(|problems| panic!("{}", drawn(&problems, &files(&root().join("rules")))));
    let units: Vec<&str> = pack.units.keys().map(String::as_str).collect();
    assert_eq!(units, ["birch-44", "birch-60", "lark-43"]);
    assert_eq!(pack.files(), &files(&root().join("rules")), "what is built in is what stands under rules/");
}

#[test]
fn what_is_valid_loads() {
    for folder in folders("valid") {
        let files = files(&folder);
        if let Err(problems) = Pack::from_files(files.clone()) {
            panic!("{} is refused:\n{}", folder.display(), drawn(&problems, &files));
        }
    }
}

#[test]
fn what_is_invalid_is_refused_in_these_words() {
    let mut wrong = Vec::new();
    for folder in folders("invalid") {
        let files = files(&folder);
        let found = match Pack::from_files(files.clone()) {
            Ok(_) => "it loads\n".to_owned(),
            Err(problems) => drawn(&problems, &files),
        };
        let expected = folder.join("expected.txt");
        // A case without its expectation gets one to be looked at, and fails until it is kept.
        match fs::read_to_string(&expected) {
            Ok(text) if text == found => {}
            Ok(text) => wrong.push(format!("{}\n--- expected\n{text}--- found\n{found}", folder.display())),
            Err(_) => {
                fs::write(&expected, &found).expect("written");
                wrong.push(format!("{} had no expected.txt; look at the one written", folder.display()));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

//! The one-way order of the modules, and the rules that keep the code readable, read from the sources themselves.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

/// Module -> modules it may import.
const TABLE: [(&str, &[&str]); 13] = [
    ("source", &[]),
    ("quantity", &["source"]),
    ("workings", &["source", "quantity"]),
    ("act", &["source", "quantity", "workings"]),
    ("rulebase", &["source", "quantity", "workings", "act"]),
    ("hearing", &["source", "quantity", "workings", "act", "rulebase"]),
    // Not hearing: what the book keeps does not depend on how it was heard.
    ("event", &["source", "quantity", "workings", "act", "rulebase"]),
    // Not hearing: the bench takes acts, whoever heard them.
    ("bench", &["source", "quantity", "workings", "act", "rulebase", "event"]),
    ("check", &["source", "quantity", "workings", "act", "rulebase", "hearing", "event", "bench"]),
    ("reply", &["source", "quantity", "workings", "act", "rulebase", "event", "bench"]),
    // Events and texts alone: a book outlives rules and bench.
    ("book", &["source", "event"]),
    (
        "session",
        &["source", "quantity", "workings", "act", "rulebase", "hearing", "event", "bench", "reply", "book"],
    ),
    (
        "front",
        &[
            "source", "quantity", "workings", "act", "rulebase", "hearing", "event", "bench", "check",
            "reply", "book", "session",
        ],
    ),
];

/// A folder that is tighter still: what it alone may import.
const TIGHTER: [(&str, &[&str]); 1] = [("bench/state", &["act", "event"])];

/// The longest file.
const LINES: usize = 400;

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

fn sources(under: &str) -> Vec<(String, String)> {
    let mut found = Vec::new();
    walk(&root().join(under), &mut found);
    found.sort();
    assert!(!found.is_empty(), "no sources under {under}");
    found
}

fn walk(folder: &Path, found: &mut Vec<(String, String)>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            walk(&path, found);
        } else if path.extension().is_some_and(|ext| ext == "rs") {
            let name = path.strip_prefix(root()).unwrap().display().to_string();
            found.push((name, fs::read_to_string(&path).unwrap()));
        }
    }
}

/// The text without comments and without the insides of strings, so that only code is read.
fn code(text: &str) -> String {
    let mut out = String::new();
    let mut chars = text.chars().peekable();
    while let Some(c) = chars.next() {
        match c {
            '/' if chars.peek() == Some(&'/') => while chars.next_if(|c| *c != '\n').is_some() {},
            '"' => {
                while let Some(inner) = chars.next() {
                    match inner {
                        '\\' => drop(chars.next()),
                        '"' => break,
                        _ => {}
                    }
                }
                out.push_str("\"\"");
            }
            // A quote in a char literal does not open a string.
            '\'' if chars.peek() == Some(&'"') => {
                chars.next();
                chars.next();
            }
            _ => out.push(c),
        }
    }
    out
}

/// The names after `crate::` in the code: of one path, or of a group in braces.
fn imports(code: &str) -> BTreeSet<String> {
    let mut names = BTreeSet::new();
    for (at, found) in code.match_indices("crate::") {
        let rest = &code[at + found.len()..];
        match rest.strip_prefix('{') {
            Some(group) => names.extend(group_heads(group)),
            None => names.extend(head(rest)),
        }
    }
    names
}

fn head(path: &str) -> Option<String> {
    let name: String = path.chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect();
    Some(name).filter(|name| !name.is_empty())
}

/// The first names in a group: what stands at its own depth after a brace or a comma.
fn group_heads(group: &str) -> Vec<String> {
    let (mut depth, mut fresh, mut heads) = (0, true, Vec::new());
    for (at, c) in group.char_indices() {
        match c {
            '{' => depth += 1,
            '}' if depth == 0 => break,
            '}' => depth -= 1,
            ',' if depth == 0 => fresh = true,
            c if fresh && c.is_alphabetic() => {
                heads.extend(head(&group[at..]));
                fresh = false;
            }
            _ => {}
        }
    }
    heads
}

/// How many `super::` in a row the code has at most: as many as the file is deep would leave its module.
fn supers(code: &str) -> usize {
    let mut most = 0;
    let mut rest = code;
    while let Some(at) = rest.find("super::") {
        let mut run = 0;
        rest = &rest[at..];
        while let Some(next) = rest.strip_prefix("super::") {
            (run, rest) = (run + 1, next);
        }
        most = most.max(run);
    }
    most
}

/// The module of a file under `src/`, and how many modules deep the file's own module is.
fn module(name: &str) -> (String, usize) {
    let parts: Vec<&str> = name.trim_start_matches("src/").trim_end_matches(".rs").split('/').collect();
    let deep = if parts.last() == Some(&"mod") { parts.len() - 1 } else { parts.len() };
    (parts[0].to_owned(), deep)
}

#[test]
fn modules_import_only_from_their_left() {
    let table: BTreeMap<&str, &[&str]> = TABLE.into_iter().collect();
    let mut wrong = Vec::new();
    for (name, text) in sources("src") {
        let (module, deep) = module(&name);
        if module == "lib" || module == "main" {
            continue;
        }
        let code = code(&text);
        let may = table.get(module.as_str()).unwrap_or_else(|| panic!("{module} is not in the table"));
        let tighter = TIGHTER.iter().find(|(folder, _)| name.starts_with(&format!("src/{folder}/")));
        for import in imports(&code) {
            let allowed = match tighter {
                // Its own folder is named by `super`.
                Some((_, only)) => only.contains(&import.as_str()),
                None => import == module || may.contains(&import.as_str()),
            };
            if !allowed {
                wrong.push(format!("{name} imports {import}"));
            }
        }
        // Inner test modules stand one deeper than their file.
        if supers(&code) >= deep + usize::from(text.contains("#[cfg(test)]")) {
            wrong.push(format!("{name} leaves its module by `super`"));
        }
        if let Some((folder, _)) = tighter {
            let above = deep.saturating_sub(folder.split('/').count());
            assert!(supers(&code) <= above, "{name} leaves {folder} by `super`");
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn the_reader_of_imports_reads_them() {
    let text = "use crate::{act::{Act, Slots}, event, quantity::Unit};\nfn f() { crate::bench::x(); } // crate::no\nlet s = \"crate::nor\";";
    let found: Vec<String> = imports(&code(text)).into_iter().collect();
    assert_eq!(found, ["act", "bench", "event", "quantity"]);
    assert_eq!(supers("use super::super::x; super::y"), 2);
    assert_eq!(module("src/bench/state/apply.rs"), ("bench".to_owned(), 3));
    assert_eq!(module("src/bench/state/mod.rs"), ("bench".to_owned(), 2));
}

#[test]
fn files_are_short_and_say_what_they_are() {
    let all = sources("src").into_iter().chain(sources("tests"));
    let mut wrong = Vec::new();
    for (name, text) in all {
        if text.lines().count() > LINES {
            wrong.push(format!("{name} has {} lines, {LINES} at most", text.lines().count()));
        }
        if !text.starts_with("//!") {
            wrong.push(format!("{name} does not begin by saying what it is"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn no_test_file_is_forgotten() {
    let main = fs::read_to_string(root().join("tests/it/main.rs")).unwrap();
    let registered: BTreeSet<&str> =
        main.lines().filter_map(|line| line.strip_prefix("mod ")?.strip_suffix(';')).collect();
    for (name, _) in sources("tests/it") {
        let parts: Vec<&str> =
            name.trim_start_matches("tests/it/").trim_end_matches(".rs").split('/').collect();
        // A folder is its `mod.rs`'s affair.
        assert!(parts[0] == "main" || registered.contains(parts[0]), "{name} is not in tests/it/main.rs");
    }
}

#[test]
fn clock_ids_environment_and_folders_are_sessions() {
    let barred = [
        "Utc::now",
        "Local::now",
        "SystemTime::now",
        "Instant::now",
        "now_v7",
        "new_v4",
        "env::var",
        "env::current_dir",
        "env::temp_dir",
        "env::home_dir",
    ];
    for (name, text) in sources("src") {
        if name.starts_with("src/session/") {
            continue;
        }
        let code = code(&text);
        for bar in barred {
            assert!(!code.contains(bar), "{name} uses {bar}: it is session's to hand it in");
        }
    }
}

#[test]
fn only_the_book_knows_its_database_and_only_source_the_yaml_parser() {
    for (name, text) in sources("src") {
        let code = code(&text);
        assert!(
            !code.contains("rusqlite::") || name.starts_with("src/book/sqlite/"),
            "{name} knows rusqlite"
        );
        assert!(
            !code.contains("saphyr_parser::") || name.starts_with("src/source/yaml"),
            "{name} knows saphyr"
        );
    }
}

//! The YAML guard: what it reads as it stands, what it refuses, and that hostile files are answered fast.
//! Which texts plain scalars are is checked against YAML 1.2.2 (yaml.org/spec/1.2.2): everything stays a text here.

use sparehand::source::yaml::{Kind, Node, parse};
use std::sync::Arc;
use std::time::{Duration, Instant};

fn read(text: &str) -> Node {
    parse(&Arc::from("a.yaml"), text).expect("it reads")
}

fn refused(text: &str) -> String {
    let problems = parse(&Arc::from("a.yaml"), text).expect_err("it is refused");
    problems.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n")
}

#[test]
fn what_other_readers_take_for_numbers_or_truths_stays_as_written() {
    let root = read("a: no\nb: on\nc: 010\nd: 1e3\ne: 0x1F\nf: 2026-01-02\ng: y\nh: null\ni: \"\"\n");
    let texts: Vec<_> = root.map().unwrap().iter().map(|(_, node)| node.text()).collect();
    let expected = ["no", "on", "010", "1e3", "0x1F", "2026-01-02", "y", "null", ""];
    assert_eq!(texts, expected.map(Some));
}

#[test]
fn nothing_is_nothing() {
    let root = read("a:\nb: ~\n");
    assert!(root.map().unwrap().iter().all(|(_, node)| node.kind == Kind::Empty));
    assert_eq!(read("").kind, Kind::Empty);
    assert_eq!(read("# only a comment\n").kind, Kind::Empty);
}

#[test]
fn every_value_knows_where_it_stands() {
    let root = read(
        "\u{feff}parts:\n  foot-nut:\n    torque: 32 N.m  # tight\n    called: [foot nut, 'bottom nut']\n",
    );
    assert_eq!(root.span_at("parts/foot-nut/torque").start, (3, 13));
    assert_eq!(root.span_at("parts/foot-nut/torque").end, (3, 19));
    assert_eq!(root.span_at("parts/foot-nut/called/1").start, (4, 24));
    assert_eq!(
        root.span_at("parts/foot-nut/colour").start,
        root.span_at("parts/foot-nut").start,
        "as far as it goes"
    );
}

#[test]
fn places_count_characters_and_not_bytes() {
    let root = read("a: {é: ü, 日本: x}\n");
    assert_eq!(root.span_at("a/日本").start, (1, 15));
}

#[test]
fn anchors_aliases_tags_and_second_documents_are_refused() {
    assert!(refused("a: &b 1\n").contains("a.yaml:1:4: wrong: an anchor"));
    assert!(refused("a: *b\n").contains("an anchor or an alias"));
    assert!(refused("<<: *b\n").contains("an anchor or an alias"));
    assert!(refused("a: !!int 3\n").contains("a tag"));
    assert!(refused("a: !thing {b: c}\n").contains("a tag"));
    assert!(refused("a: 1\n---\nb: 2\n").contains("a second document"));
    assert!(refused("a: 1\na: 2\n").contains("a.yaml:2:1: wrong: `a` stands twice"));
    assert!(refused("{a: {b: 1, c: 2, b: 3}}\n").contains("`b` stands twice"));
    assert!(refused("? [a, b]\n: c\n").contains("where a key is wanted"));
}

#[test]
fn numbers_that_are_none_are_refused_in_any_case_but_not_in_quotes() {
    for text in [".nan", ".NaN", ".inf", "-.inf", "+.INF"] {
        assert!(refused(&format!("a: {text}\n")).contains("no number a bench can use"), "{text}");
        assert_eq!(read(&format!("a: '{text}'\n")).get("a").unwrap().text(), Some(text));
    }
}

#[test]
fn hostile_files_are_answered_fast() {
    let deep_flow = "[".repeat(100_000);
    let deep_map = "{a: ".repeat(100_000);
    let deep_block = (0..2_000).map(|depth| format!("{}a:\n", " ".repeat(depth))).collect::<String>();
    let dashes = "- ".repeat(100_000);
    let colons = "a: ".repeat(100_000);
    let wide = "- a\n".repeat(250_000);
    let questions = "? ".repeat(100_000);
    let quotes = format!("a: \"{}", "\\".repeat(900_000));
    let bangs = format!("a: {}", "!".repeat(900_000));
    let big = "a".repeat(10 << 20);
    let cases = [deep_flow, deep_map, deep_block, dashes, colons, wide, questions, quotes, bangs, big];
    for text in &cases {
        let begun = Instant::now();
        let problems = parse(&Arc::from("a.yaml"), text).expect_err("refused");
        let took = begun.elapsed();
        let head: String = text.chars().take(12).collect();
        assert!(took < Duration::from_millis(1500), "{head:?} took {took:?}");
        assert!(!problems.is_empty() && problems.len() < 10, "{head:?}: {} problems", problems.len());
    }
}

#[test]
fn any_bytes_are_read_or_refused_but_never_bring_the_reader_down() {
    // A small generator of its own, so that the run is the same everywhere.
    let mut seed: u64 = 26;
    let mut next = move || {
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (seed >> 33) as usize
    };
    let pieces = [
        "a", ":", " ", "\n", "-", "[", "]", "{", "}", "&", "*", "!", "|", ">", "'", "\"", "#", "%", "@", "`",
        "?", ",", "\t", "\r", "\u{feff}", "é", "\0", "---", "...", "<<", "\\", "~", ".nan", "  ",
    ];
    for _ in 0..20_000 {
        let text: String = (0..next() % 24).map(|_| pieces[next() % pieces.len()]).collect();
        if let Err(problems) = parse(&Arc::from("a.yaml"), &text) {
            assert!(!problems.is_empty(), "{text:?} is refused without a reason");
            assert!(!problems[0].found.contains("gave up"), "{text:?} brought the reader down");
        }
    }
}

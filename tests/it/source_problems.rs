//! Problems and their one renderer: excerpt, caret, what is expected, how to mend it.

use sparehand::source::{Level, Place, Problem, nearest, render};

fn problem(file: &str, line: u32, column: u32, end: u32) -> Problem {
    Problem::wrong(Place::new(file, line, column).to(line, end), "`32` has no unit")
        .expected("a torque such as `32 N.m`")
        .mend("write `32 N.m`")
}

#[test]
fn an_excerpt_stands_with_a_caret_under_what_is_meant() {
    let text = "parts:\n  foot-nut:\n    torque: 32\n";
    let drawn = render(&problem("units/a.yaml", 3, 13, 15), Some(text), false);
    let expected = "\
wrong: `32` has no unit
 --> units/a.yaml:3:13
  |
3 |     torque: 32
  |             ^^ expected a torque such as `32 N.m`
  |
  = mend: write `32 N.m`";
    assert_eq!(drawn, expected);
}

#[test]
fn grammars_and_scripts_are_drawn_alike() {
    let grammar = render(&problem("talk/acts.jsgf", 1, 16, 20), Some("public <done> = dnoe;\n"), false);
    assert!(grammar.contains("1 | public <done> = dnoe;\n  |                ^^^^ expected"), "{grammar}");
    let script = render(&problem("scripts/a.rhai", 2, 5, 10), Some("fn f() {\n    sleep(1)\n}\n"), false);
    assert!(script.contains("2 |     sleep(1)\n  |     ^^^^^ expected"), "{script}");
}

#[test]
fn without_a_text_or_a_line_the_file_is_named() {
    let drawn = render(
        &Problem::wrong(Place::file("pack.yaml"), "there is no `pack.yaml`").mend("add it"),
        None,
        false,
    );
    assert_eq!(drawn, "wrong: there is no `pack.yaml`\n--> pack.yaml\n = mend: add it");
    // A line that the text does not have.
    let drawn = render(&problem("a.yaml", 9, 1, 2), Some("one\n"), false);
    assert!(drawn.contains("--> a.yaml:9:1"), "{drawn}");
}

#[test]
fn one_line_says_it_all_for_a_list() {
    let line = problem("a.yaml", 3, 13, 15).to_string();
    assert_eq!(
        line,
        "a.yaml:3:13: wrong: `32` has no unit; expected a torque such as `32 N.m`; write `32 N.m`"
    );
}

#[test]
fn places_in_very_long_lines_and_odd_characters_are_drawn_short() {
    let long = format!("{}x{}", "é".repeat(500_000), "é".repeat(500_000));
    let drawn = render(&problem("a.yaml", 1, 500_001, 500_002), Some(&long), false);
    assert!(drawn.chars().count() < 1_000, "{} characters", drawn.chars().count());
    assert!(drawn.contains('^') && drawn.contains('x'), "{drawn}");
    let odd = Problem::wrong(Place::new("a.yaml", 1, 1), "`\u{1b}[31m\u{7}` is no unit");
    let drawn = render(&odd, Some("\u{1b}[31m\u{7}\t日本\n"), false);
    assert!(!drawn.contains('\u{1b}') && !drawn.contains('\u{7}'), "{drawn:?}");
}

#[test]
fn colour_only_when_asked_for() {
    let problem = problem("a.yaml", 1, 1, 2);
    assert!(!render(&problem, Some("32"), false).contains('\u{1b}'));
    assert!(render(&problem, Some("32"), true).contains('\u{1b}'));
}

#[test]
fn problems_come_in_the_order_of_files_and_lines() {
    let mut all = [problem("b.yaml", 1, 1, 2), problem("a.yaml", 10, 1, 2), problem("a.yaml", 9, 5, 6)];
    all.sort();
    let places: Vec<String> = all.iter().map(|problem| problem.place.to_string()).collect();
    assert_eq!(places, ["a.yaml:9:5", "a.yaml:10:1", "b.yaml:1:1"]);
    assert!(Level::Wrong < Level::Doubtful && Level::Doubtful < Level::Style);
}

#[test]
fn the_nearest_name_is_offered_and_a_far_one_is_not() {
    let known = ["foot-nut", "foot-grub", "needle-collar"];
    assert_eq!(nearest("foot nut", known), Some("foot-nut"));
    assert_eq!(nearest("foot-nutt", known), Some("foot-nut"));
    assert_eq!(nearest("Foot_Grub", known), Some("foot-grub"));
    assert_eq!(nearest("neddle-collar", known), Some("needle-collar"));
    assert_eq!(nearest("carburettor", known), None);
    assert_eq!(nearest(&"foot".repeat(100_000), known), None);
    assert_eq!(nearest("", []), None);
}

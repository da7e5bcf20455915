//! Talk files: the grammar format, its errors with their places, and that one line adds a way of saying.

use sparehand::rulebase::talk::{Expr, Talk, parse_grammar};

const HEAD: &str = "#JSGF V1.0;\ngrammar t;\n";

// JSpeech Grammar Format, W3C Note of 5 June 2000: alternatives, groups, options, repeats, weights, tags, quotes, comments.
#[test]
fn the_format_is_read() {
    let text = format!(
        "{HEAD}// a comment\nimport <other.*>;\n/** what it is\n * @example off it comes\n */\npublic <off> = (/2/ off | /1/ \"all off\") [now] <end>* {{confirm}};\n<end> = then+;\n"
    );
    let rules = parse_grammar("t.jsgf", &text).unwrap();
    assert_eq!(
        (rules[0].name.as_str(), rules[0].public, rules[0].tag.as_deref(), rules[0].line),
        ("off", true, Some("confirm"), 8)
    );
    assert_eq!(rules[0].examples, vec![(6, "off it comes".to_owned())]);
    assert_eq!(rules[1].body, Expr::Repeat(Box::new(Expr::Word("then".to_owned())), true));
}

#[test]
fn problems_have_their_place_and_a_way_to_mend_them() {
    for (body, message, line) in [
        ("public <a> = b {confirm}", "is wanted here", 3),
        ("public <a> = (b {confirm};", "is wanted here", 3),
        ("public <a> = b;", "has no tag", 3),
        ("public <a> = <nowhere> {confirm};", "is used and defined nowhere", 3),
        ("public <a> = b {confirm} | c {deny};", "several tags", 3),
        ("<a> = b;\n<a> = c;", "defined twice", 3),
        ("<a> = b <a>;", "uses itself", 3),
        ("public <a> = b {confirm\n};", "does not end", 3),
    ] {
        let problems = Talk::load([("t.jsgf", format!("{HEAD}{body}\n").as_str())]).unwrap_err();
        let found = problems.iter().find(|problem| problem.message.contains(message));
        assert!(
            found.is_some_and(|problem| problem.line >= line && !problem.mend.is_empty()),
            "{body}: {problems:?}"
        );
    }
    assert!(Talk::load([("t.jsgf", "grammar t;")]).unwrap_err()[0].mend.contains("#JSGF V1.0;"));
    assert_eq!(Talk::load([("words.yaml", "fillres: [er]")]).unwrap_err()[0].file, "words.yaml");
}

#[test]
fn hostile_text_is_answered() {
    let deep = format!("{HEAD}public <a> = {}b{} {{confirm}};", "(".repeat(300), ")".repeat(300));
    for text in [
        "",
        "#JSGF",
        "#JSGF V1.0;<",
        "#JSGF V1.0;/*",
        "#JSGF V1.0; public",
        &deep,
        "#JSGF V1.0; <a> = \u{0};",
    ] {
        let _ = parse_grammar("t.jsgf", text);
    }
}

//! The command line: help, completions, exit codes, the one-shot commands. Exit codes by the design's table.

use super::harness::{Call, folder, sparehand};

#[test]
fn help_shows_every_command_and_examples() {
    let came = sparehand(&["--help"]).run().code(0);
    for command in ["pipe", "ask", "jobs", "log", "replay", "pack", "completions", "Examples:", "Exit codes:"]
    {
        assert!(came.stdout.contains(command), "no {command} in\n{}", came.stdout);
    }
    for command in ["pipe", "ask", "log", "replay"] {
        sparehand(&[command, "--help"]).run().code(0).holds("Examples:");
    }
    sparehand(&["--version"]).run().code(0).stdout(concat!("sparehand ", env!("CARGO_PKG_VERSION"), "\n"));
}

#[test]
fn a_wrong_call_is_2_with_what_is_accepted() {
    sparehand(&["pip"]).run().code(2).complains("pipe");
    sparehand(&["log"]).run().code(2).complains("<NUMBER>");
    sparehand(&["log", "three"]).run().code(2);
    sparehand(&["ask"]).run().code(2);
}

#[test]
fn without_a_book_there_are_no_jobs() {
    let home = folder();
    Call::within(&home, &["jobs"]).run().code(0).stdout("There are no jobs yet.\n");
    Call::within(&home, &["jobs", "--json"]).run().code(0).stdout("[]\n");
    Call::within(&home, &["log", "1"]).run().code(2).complains("there is no job 1");
    // Looking makes nothing.
    assert!(!home.path().join("data").exists());
}

#[test]
fn the_book_lies_in_the_data_folder_of_the_user() {
    let home = folder();
    Call::within(&home, &["pipe", "--typed"])
        .lines(&["start a re-spring on the birch 44, front left"])
        .run()
        .code(0);
    assert!(home.path().join("data/sparehand/book.sqlite").exists());
    // A relative path in the variable counts for nothing (XDG Base Directory Specification 0.8, "Basics").
    let other = folder();
    Call::within(&other, &["pipe"]).env("XDG_DATA_HOME", "here").lines(&["help"]).run().code(0);
    assert!(other.path().join(".local/share/sparehand/book.sqlite").exists());
}

#[test]
fn a_folder_that_cannot_be_made_is_3() {
    let home = folder();
    std::fs::write(home.path().join("file"), "").unwrap();
    Call::within(&home, &["pipe", "--book", "file/book.sqlite"])
        .lines(&["help"])
        .run()
        .code(3)
        .complains("mend:");
}

#[test]
fn a_held_book_is_3_and_can_still_be_read() {
    use sparehand::book::{Access, SqliteBook};
    let home = folder();
    let begun = ["start a re-spring on the birch 44, front left"];
    Call::within(&home, &["pipe", "--typed", "--book", "b"]).lines(&begun).run().code(0);
    let held = SqliteBook::open(&home.path().join("b"), Access::Write, "").unwrap();
    Call::within(&home, &["pipe", "--book", "b"])
        .lines(&["help"])
        .run()
        .code(3)
        .complains("held by another console");
    Call::within(&home, &["--book", "b"]).lines(&["help"]).run().code(3).complains("held by another console");
    Call::within(&home, &["jobs", "--book", "b"]).run().code(0).holds("birch-44");
    Call::within(&home, &["log", "1", "--book", "b"]).run().code(0).holds("job 1 opened");
    drop(held);
    Call::within(&home, &["pipe", "--book", "b"]).lines(&["help"]).run().code(0);
}

#[test]
fn completions_are_made_from_the_command_line() {
    for shell in ["bash", "zsh", "fish", "elvish", "powershell"] {
        sparehand(&["completions", shell]).run().code(0).holds("replay");
    }
}

#[test]
fn the_pack_is_written_out_and_works_as_rules() {
    let home = folder();
    Call::within(&home, &["pack", "copy", "mine"]).run().code(0).holds("--rules mine");
    assert!(home.path().join("mine/pack.yaml").exists());
    Call::within(&home, &["pack", "copy", "mine"]).run().code(2).complains("holds something already");
    let lines = ["start a re-spring on the birch 44, front left"];
    let own = Call::within(&home, &["pipe", "--typed", "--rules", "mine", "--book", "a"])
        .lines(&lines)
        .run()
        .code(0);
    let built_in = Call::within(&home, &["pipe", "--typed", "--book", "b"]).lines(&lines).run().code(0);
    assert_eq!(own.stdout, built_in.stdout);
    Call::within(&home, &["pipe", "--rules", "nowhere"]).lines(&["help"]).run().code(2).complains("nowhere");
}

#[test]
fn replay_compares_and_rewrites_answers_but_not_musts() {
    let home = folder();
    let at = home.path().join("t.txt");
    let text = "clock: 2026-03-02 08:00 +00:00\nlines: typed\n\n# Kept.\n> start a re-spring on the birch 44, front left\n< not this\nmust: front left\n";
    std::fs::write(&at, text).unwrap();
    Call::within(&home, &["replay", "t.txt"]).run().code(1).complains("t.txt:5: the answer differs");
    Call::within(&home, &["replay", "t.txt", "--update"]).run().code(0).holds("answers rewritten");
    Call::within(&home, &["replay", "t.txt"]).run().code(0).holds("holds");
    let updated = std::fs::read_to_string(&at).unwrap();
    assert!(updated.contains("# Kept.\n> start") && updated.contains("\nmust: front left\n"), "{updated}");
    assert!(!updated.contains("not this"), "{updated}");
    std::fs::write(&at, updated.replace("must: front left", "must: 9999")).unwrap();
    let broken = Call::within(&home, &["replay", "t.txt", "--update"])
        .run()
        .code(1)
        .complains("`9999` is not in the answer");
    assert_eq!(broken.stdout, "");
    assert!(std::fs::read_to_string(&at).unwrap().contains("must: 9999"));
    Call::within(&home, &["replay", "nowhere.txt"]).run().code(2).complains("nowhere.txt");
}

#[test]
fn asking_records_nothing() {
    let home = folder();
    Call::within(&home, &["ask", "how tight is the foot nut on the birch 44"]).run().code(0).holds("32");
    Call::within(&home, &["ask", "--unit", "birch-44", "how tight is the foot nut", "--json"])
        .run()
        .code(0)
        .holds("\"ask_torque\"");
    Call::within(&home, &["ask", "--unit", "birch-99", "how tight is the foot nut"])
        .run()
        .code(2)
        .complains("birch-44");
    Call::within(&home, &["ask", "start a re-spring on the birch 44"]).run().code(1);
    Call::within(&home, &["ask", "what won the hill climb"]).run().code(1);
    assert!(!home.path().join("data").exists());
}

#[test]
fn nobody_reading_is_no_failure() {
    for args in [&["--help"][..], &["completions", "bash"], &["pipe", "--json"], &["jobs"]] {
        let came = sparehand(args).lines(&["help"; 50]).output_closed().run();
        assert_eq!(came.stderr, "", "{args:?}");
        assert_eq!(came.code, 0, "{args:?}");
    }
}

#[test]
fn a_calculation_is_called_by_its_name() {
    // 1 lbf.ft = 1.355817948 N.m, NIST SP 811, appendix B.8.
    let args = ["ask", "--work", "convert", "--given", "value=32N.m", "--given", "to=lbf.ft"];
    sparehand(&args).run().code(0).holds("convert: 23.6 lbf.ft").holds("source: NIST SP 811");
    let json = sparehand(&[&args[..], &["--json"]].concat()).run().code(0).json().remove(0);
    assert!((json["value"].as_f64().unwrap() - 32.0 / 1.355_817_948).abs() < 1e-6, "{json}");
    for key in ["value", "unit", "inputs", "method", "source", "cautions"] {
        assert!(json.get(key).is_some(), "no {key} in {json}");
    }
    let list = sparehand(&["ask", "--work", "list", "--json"]).run().code(0).json().remove(0);
    assert!(list.as_array().unwrap().len() > 20);
}

#[test]
fn a_calculation_refused_is_1_and_one_that_is_not_there_is_2() {
    sparehand(&["ask", "--work", "convert", "--given", "value=32N.m"])
        .run()
        .code(1)
        .complains("`to` is missing");
    let wrong = ["ask", "--work", "convert", "--given", "value=32N.m", "--given", "to=bar", "--json"];
    let refused = sparehand(&wrong).run().code(1);
    assert!(refused.json()[0]["error"].as_str().unwrap().contains("torque"), "{}", refused.stdout);
    sparehand(&["ask", "--work", "konvert"]).run().code(2).complains("did you mean `convert`");
    sparehand(&["ask", "--work", "convert", "--given", "value"]).run().code(2).complains("gives nothing");
}

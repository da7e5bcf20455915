//! The tutorial holds: what it gives is a pack that checks clean, its commands run from a blank folder, its job is worked
//! to the end with the answers that it prints, and what it says of the check and the bench is so.

use super::harness::{Call, data, folder};
use sparehand::book::MemoryBook;
use sparehand::check::check;
use sparehand::front::transcript::{Transcript, run};
use sparehand::rulebase::Pack;
use sparehand::session::{Clock, Line, LinesClock, Rules, SeededIds, Session, Setup, read_time};
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::sync::Arc;
use tempfile::TempDir;

const PROCEDURE: &str = "procedures/reseal.heron-30.yaml";
const CARD: &str = "units/heron-30.yaml";

fn tutorial() -> String {
    fs::read_to_string(data("tests/tutorial/tutorial.md")).unwrap()
}

/// The fenced blocks of that kind, each with the text before it.
fn blocks(kind: &str) -> Vec<(String, String)> {
    let text = tutorial();
    let opens = format!("```{kind}\n");
    let mut out = Vec::new();
    let mut rest = text.as_str();
    while let Some((before, after)) = rest.split_once(opens.as_str()) {
        let (block, behind) = after.split_once("```").unwrap();
        out.push((before.to_owned(), block.to_owned()));
        rest = behind;
    }
    out
}

/// The files that the tutorial gives, by their path in the pack: each is named on the last line before its block.
fn files() -> BTreeMap<String, String> {
    let named = |before: &str| {
        let line = before.trim_end().lines().last()?;
        Some(line.strip_prefix("`mine/")?.split_once('`')?.0.to_owned())
    };
    blocks("yaml").into_iter().filter_map(|(before, block)| Some((named(&before)?, block))).collect()
}

/// A block of text of the tutorial that begins so.
fn printed(begins: &str) -> Vec<String> {
    let (_, block) = blocks("text").into_iter().find(|(_, block)| block.starts_with(begins)).unwrap();
    block.lines().map(str::to_owned).collect()
}

fn said<'a>(lines: &'a [String], mark: &str) -> Vec<&'a str> {
    lines.iter().filter_map(|line| line.strip_prefix(mark)).collect()
}

/// The pack in a folder of its own, with edits: file, what stands there, what stands there instead.
fn edited(edits: &[(&str, &str, &str)]) -> TempDir {
    let home = TempDir::new().unwrap();
    for (path, mut text) in files() {
        for (_, old, new) in edits.iter().filter(|(file, _, _)| *file == path) {
            assert!(text.contains(old), "{path} has no {old:?}");
            text = text.replacen(old, new, 1);
        }
        write(&home.path().join(path), &text);
    }
    home
}

fn write(path: &Path, text: &str) {
    fs::create_dir_all(path.parent().unwrap()).unwrap();
    fs::write(path, text).unwrap();
}

/// What the check says of the pack with these edits.
fn found(edits: &[(&str, &str, &str)]) -> Vec<String> {
    let home = edited(edits);
    let report = check(&Pack::load(home.path()).unwrap());
    report.found.iter().map(|found| format!("{}: {}", found.finding.name, found.problem.found)).collect()
}

#[test]
fn the_pack_that_is_kept_is_the_one_that_it_gives() {
    let kept = data("tests/tutorial/mine");
    let given = files();
    assert_eq!(given.len(), 5, "{:?}", given.keys());
    for (path, text) in &given {
        assert_eq!(&fs::read_to_string(kept.join(path)).unwrap_or_default(), text, "{path}");
    }
    let mut found = 0;
    for entry in [".", "units", "procedures"].iter().flat_map(|under| fs::read_dir(kept.join(under)).unwrap())
    {
        found += usize::from(entry.unwrap().path().is_file());
    }
    assert_eq!(found, given.len(), "a file of the pack is not in the tutorial");
}

#[test]
fn its_commands_run_from_a_blank_folder_to_the_record() {
    let home = folder();
    fs::create_dir(home.path().join("mine")).unwrap();
    let commands: Vec<String> =
        blocks("sh").iter().flat_map(|(_, block)| block.lines()).map(str::to_owned).collect();
    let mut told = Vec::new();
    for command in commands.iter().filter(|line| line.starts_with("sparehand ")) {
        let line = command.split(" || ").next().unwrap();
        let args: Vec<&str> = line.split(' ').skip(1).collect();
        let call = Call::within(&home, &args);
        match args.as_slice() {
            ["check", ..] if command.contains("||") => {
                // The scaffold runs, and tells what is still to be given. Then come the files of the tutorial.
                call.run().code(1).holds("still to be filled in");
                for (path, text) in files() {
                    assert!(home.path().join("mine").join(&path).is_file(), "`pack new` writes no {path}");
                    write(&home.path().join("mine").join(path), &text);
                }
            }
            ["check", ..] => {
                let came = call.run().code(0);
                assert_eq!(came.stdout.trim_end(), printed("0 wrong").join("\n"));
            }
            ["pipe", ..] => {
                let talk = printed("< ");
                let came = call.lines(&said(&talk, "> ")).run().code(0);
                assert_eq!(came.stdout.lines().collect::<Vec<_>>(), said(&talk, "< "));
            }
            ["log", ..] => {
                let came = call.run().code(0);
                let lines: Vec<String> = came.stdout.lines().map(str::to_owned).collect();
                let (came, told) = (untimed(&lines), untimed(&printed("Job 1")));
                assert_eq!(came[..told.len()], told);
                assert_eq!(
                    came[told.len() + 1],
                    "Steps and how long they took",
                    "left out, as the tutorial says"
                );
            }
            _ => _ = call.run().code(0),
        }
        told.push(args[0].to_owned());
    }
    assert_eq!(told, ["pack", "pack", "check", "check", "pipe", "log"]);
}

/// The lines of a log without the times of the day.
fn untimed(lines: &[String]) -> Vec<String> {
    let time = |line: &str| line.get(..8).is_some_and(|head| head.matches(':').count() == 2);
    let lines = lines.iter().filter(|line| !line.starts_with("Job 1"));
    lines.map(|line| line.get(if time(line) { 8 } else { 0 }..).unwrap().trim_end().to_owned()).collect()
}

#[test]
fn its_job_is_a_transcript_that_holds() {
    let text = fs::read_to_string(data("tests/tutorial/job.txt")).unwrap();
    let lines: Vec<String> = text.lines().map(str::to_owned).collect();
    let talk = printed("< ");
    assert_eq!(said(&lines, "> "), said(&talk, "> "));
    let rules = Rules::new(Arc::new(Pack::load(&data("tests/tutorial/mine")).unwrap()));
    let outcome = run(&Transcript::parse("job.txt", &text).unwrap(), &rules).unwrap();
    assert!(outcome.holds(), "{}", outcome.report("job.txt"));
}

#[test]
fn a_seal_that_is_forgotten_is_found_with_and_without_steps_of_its_own() {
    let off = (PROCEDURE, "    - remove: o-ring\n      say: Lift the old O-ring out of its groove.\n", "");
    let new = (PROCEDURE, "    - replace: o-ring\n      as: batch\n", "");
    let on = (
        PROCEDURE,
        "    - refit: o-ring\n      say: Lay the new O-ring in its groove.\n      note: The groove is clean and has no nicks.\n",
        "",
    );
    assert_eq!(found(&[]), [""; 0]);
    assert_eq!(
        found(&[new]),
        ["single-use part used again: the O-ring is new each time, and the old one goes on again"]
    );
    let under =
        "single-use part used again: the O-ring is new each time, and the cap goes on over the old one";
    assert_eq!(found(&[off, new, on]), [under]);
    assert_eq!(found(&[off, on]), [""; 0], "renewed, without steps of its own for off and on");
    let cap = [
        (PROCEDURE, "    - remove: cap\n      before: [oil in the eyes]\n", ""),
        (PROCEDURE, "    - refit: cap\n    - tighten: cap\n", ""),
        (
            PROCEDURE,
            "    - loosen: lock-screw\n",
            "    - loosen: lock-screw\n      before: [oil in the eyes]\n",
        ),
    ];
    let closed: Vec<_> = [off, new, on].into_iter().chain(cap).collect();
    assert!(!found(&closed).iter().any(|one| one.contains("O-ring")), "the cap never came off");
}

#[test]
fn an_amount_is_held_against_the_volume_of_the_card() {
    let says = |amount: &str| {
        let new = format!("    - fill: oil\n      amount: {amount}\n");
        found(&[(PROCEDURE, "    - fill: oil\n", &new)])
    };
    assert_eq!(says("28 ml"), [""; 0]);
    assert_eq!(says("twenty eight millilitres"), [""; 0]);
    assert_eq!(says("31 ml"), ["two values for one fact: 31 ml here agrees with nothing that is given"]);
    let topped = "    - fill: oil\n      id: half of it\n      amount: 14 ml\n      tool: syringe\n    - fill: oil\n      amount: 14 ml\n";
    assert_eq!(found(&[(PROCEDURE, "    - fill: oil\n", topped)]), [""; 0], "in two portions");
}

#[test]
fn a_cap_without_a_bore_is_told_to_give_one_and_bubbles_are_asked_after() {
    let found_ = found(&[(CARD, "    bore: 16 mm\n", "")]);
    assert_eq!(found_, ["torque out of proportion: 18 N.m is next to nothing for the cap"]);
    let home = edited(&[(CARD, "    bore: 16 mm\n", "")]);
    let report = check(&Pack::load(home.path()).unwrap());
    assert!(report.found[0].problem.expected.as_ref().unwrap().contains("`bore:`"));
    assert!(report.found[0].problem.mend.as_ref().unwrap().contains("`bore:`"));
    let asks = (PROCEDURE, "      question: Are there no more bubbles?\n", "");
    let stop = (PROCEDURE, "      stop: Stop. Air still gets in. Look for the leak.\n", "");
    assert_eq!(found(&[asks, stop]).len(), 1);
    assert_eq!(found(&[stop]), ["not filled and bled: air that stays in, and nothing follows"]);
}

#[test]
fn one_word_after_a_deed_is_an_id_and_the_mend_says_so() {
    let home = edited(&[(PROCEDURE, "hold: whole unit", "hold: unit")]);
    let problems = Pack::load(home.path()).unwrap_err();
    assert_eq!(problems.len(), 1, "{problems:?}");
    assert!(problems[0].mend.as_ref().unwrap().contains("two or more"), "{problems:?}");
}

/// A bench on the pack with these edits, typed at.
struct Talk(Session, LinesClock);

impl Talk {
    fn on(edits: &[(&str, &str, &str)]) -> Self {
        let home = edited(edits);
        let clock = LinesClock::at(read_time("2026-11-25T19:40:00+00:00").unwrap());
        let setup = Setup {
            rules: Rules::new(Arc::new(Pack::load(home.path()).unwrap())),
            book: Box::new(MemoryBook::new("tutorial")),
            clock: Box::new(clock.clone()),
            ids: Box::new(SeededIds::new(1)),
            ear: false,
            by: None,
            job: None,
        };
        Self(Session::open(setup).unwrap().0, clock)
    }

    /// Says a line; gives what was spoken in answer.
    fn say(&mut self, line: &str) -> String {
        self.1.set(self.1.now() + chrono::Duration::seconds(10));
        let turns = self.0.line(&Line::new(line));
        turns.iter().map(|turn| turn.reply.say.as_str()).collect::<Vec<_>>().join(" ")
    }

    /// Says the lines of the tutorial's job, up to the one before this.
    fn up_to(mut self, line: &str) -> Self {
        let talk = printed("< ");
        for before in said(&talk, "> ").into_iter().take_while(|said| *said != line) {
            self.say(before);
        }
        self
    }
}

#[test]
fn a_part_that_is_off_is_not_therefore_clean() {
    let drain = "    - drain: oil\n      say: Pour the old oil into the tray.\n";
    let clean = format!("{drain}    - clean: cap\n      say: Clean the thread of the cap.\n");
    let mut talk = Talk::on(&[(PROCEDURE, drain, &clean)]).up_to("O-ring's out");
    talk.say("O-ring's out");
    for again in ["cap's off", "the cap is off"] {
        let answer = talk.say(again);
        assert!(!answer.contains("clean") && answer.contains("Already"), "{again}: {answer}");
    }
    assert!(talk.say("done").contains("Clean the thread of the cap"), "its cleaning is still to come");
    assert!(talk.say("cap's clean").contains("Measure the rod"));
}

#[test]
fn yes_and_done_are_no_serial_and_no_batch() {
    let mut talk = Talk::on(&[]);
    talk.say("start a reseal on the Heron 30");
    for nothing in ["yes", "done", "yeah", "okay"] {
        assert!(!talk.say(nothing).contains("clicks"), "`{nothing}` taken for a serial");
        assert!(talk.say("what am I doing").contains("serial number"));
    }
    assert!(talk.say("H30 0042").contains("How many clicks"));
    let mut talk = Talk::on(&[]).up_to("411");
    for nothing in ["yes", "done"] {
        let answer = talk.say(nothing);
        assert!(answer.contains("Which batch"), "{nothing}: {answer}");
    }
    assert!(talk.say("411").contains("Lay the new O ring"));
}

#[test]
fn a_corner_is_asked_for_with_its_answers_and_not_where_there_is_none() {
    let start = "start a reseal on the Heron 30";
    assert!(Talk::on(&[]).say(start).contains("Read the serial number"));
    let all = Talk::on(&[(CARD, "axle: none\n", "")]).say(start);
    assert_eq!(all, "Which corner, front left, front right, rear left or rear right?");
    let mut front = Talk::on(&[(CARD, "axle: none\n", "axle: front\n")]);
    assert_eq!(front.say(start), "Which corner, front left or front right?");
    assert!(front.say("left").contains("front left"));
}

#[test]
fn help_names_the_job_of_the_pack_in_use() {
    let answer = Talk::on(&[]).say("help");
    assert!(answer.contains("start reseal, Heron thirty"), "{answer}");
}

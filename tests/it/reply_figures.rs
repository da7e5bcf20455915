//! Eye and ear get the same figures, in the spoken set, over every kind of part.

use crate::reply_support::each::all;
use crate::reply_support::figures::figures;
use crate::reply_support::generate::Draw;
use proptest::prelude::*;
use sparehand::act::Waiting;
use sparehand::bench::{Ack, Answer, Part, Question, Value};
use sparehand::reply::{Reply, reply};

fn replied(part: &Part) -> Reply {
    reply(&Answer::of(part.clone()), &Waiting::default())
}

/// A value said digit by digit as well.
fn doubled(part: &Part) -> Option<&Value> {
    match part {
        Part::SaidBack(value)
        | Part::Ack(Ack::Corrected(value) | Ack::Wanted(value))
        | Part::Question(Question::Value(value)) => Some(value).filter(|value| value.digits),
        _ => None,
    }
}

/// The digits of a figure as spoken, by a table of its own.
fn spelled(value: f64) -> String {
    let names = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];
    let text = format!("{value}");
    let said: Vec<&str> =
        text.chars().map(|c| c.to_digit(10).map_or("point", |digit| names[digit as usize])).collect();
    said.join(" ")
}

/// The screen's text without what is only for the eye: the step's place in the procedure and its id.
fn for_figures(part: &Part, show: &str) -> String {
    match part {
        Part::Step(card) => show.replacen(&format!("Step {} of {}:", card.number.0, card.number.1), "", 1),
        _ => show.to_owned(),
    }
}

/// A step said by its short form leaves its sentence to the screen: its figures may be more there, never fewer.
fn shows_more(part: &Part) -> bool {
    matches!(part, Part::Step(_))
}

fn same_figures(part: &Part) {
    let got = replied(part);
    let mut say = got.say.clone();
    if let Some(value) = doubled(part) {
        let digits = format!(", {}", spelled(value.kept.value));
        assert!(say.contains(&digits), "no `{digits}` in `{say}`");
        let at = say.rfind(&digits).unwrap();
        say.replace_range(at..at + digits.len(), "");
    }
    let (eye, ear) = (figures(&for_figures(part, &got.show)), figures(&say));
    if shows_more(part) {
        assert!(ear.is_subset(&eye), "{part:?}\n{say}\n{}\n{ear:?} not in {eye:?}", got.show);
        let must: Vec<&str> = got.show.lines().skip(2).filter(|line| !line.starts_with("  do ")).collect();
        let must = figures(&must.join("\n"));
        assert!(must.is_subset(&ear), "{part:?}\n{say}\n{}\n{must:?} not in {ear:?}", got.show);
    } else {
        assert_eq!(eye, ear, "{part:?}\n{say}\n{}", got.show);
    }
}

fn spoken_set(part: &Part) {
    let say = replied(part).say;
    let fine = |c: char| c.is_ascii_alphabetic() || matches!(c, ' ' | ',' | '.' | '?' | '\'');
    assert!(say.chars().all(fine), "{say:?}");
    assert!(!say.contains("  ") && !say.contains(" ,") && !say.contains(" ."), "{say:?}");
    assert!(say.is_empty() || say.ends_with(['.', '?']), "{say:?}");
    assert!(!say.to_lowercase().ends_with("right?"), "{say:?}");
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn figures_of_say_and_show_are_the_same(seed in any::<u64>()) {
        for part in all(&mut Draw(seed)) {
            same_figures(&part);
        }
    }

    #[test]
    fn say_keeps_to_the_spoken_set(seed in any::<u64>()) {
        for part in all(&mut Draw(seed)) {
            spoken_set(&part);
        }
    }

    #[test]
    fn answers_of_several_parts_ask_once_at_their_end(seed in any::<u64>()) {
        let mut draw = Draw(seed);
        let parts = all(&mut draw);
        let some: Vec<Part> = (0..3).map(|_| parts[draw.below(parts.len() as u64) as usize].clone()).collect();
        let got = reply(&Answer { parts: some.clone() }, &Waiting::default());
        prop_assert!(got.say.matches("yes or no").count() <= 1, "{}", got.say);
        let escapes = got.show.chars().any(|c| c.is_control() && c != '\n');
        prop_assert!(!escapes);
    }
}

/// The reader of figures itself, against the words of num2words 0.5.14 (PyPI), lang="en": 0 to 999.
#[test]
fn the_reader_of_figures_reads_num2words() {
    let table = include_str!("../data/quantity/num2words.tsv");
    let rows = table.lines().filter(|line| !line.starts_with('#')).filter_map(|line| line.split_once('\t'));
    let mut read = 0;
    for (number, words) in rows {
        let value: f64 = number.parse().unwrap();
        if (0.0..1000.0).contains(&value) && value.fract() == 0.0 {
            let want = std::iter::once((value * 1000.0) as i64).collect();
            assert_eq!(figures(&words.replace('-', " ")), want, "{words}");
            read += 1;
        }
    }
    assert!(read > 100, "{read}");
}

//! Spoken figures out and in, against num2words, the words2num test lists and the design.

use proptest::prelude::*;
use serde_json::Value;
use sparehand::quantity::Unit;
use sparehand::quantity::figures::{
    Form, Kind, Reading, digits, needs_digits, read_all, read_number, sounds_like, words,
};

fn tokens(text: &str) -> Vec<&str> {
    text.split_whitespace().collect()
}

fn all(text: &str) -> Option<Reading> {
    read_all(&tokens(text))
}

/// Sources stand in each row of `tests/data/quantity/spoken-numbers.json`.
#[test]
fn spoken_numbers_agree_with_the_published_lists() {
    let rows: Vec<Value> =
        serde_json::from_str(include_str!("../data/quantity/spoken-numbers.json")).unwrap();
    assert_eq!(rows.len(), 43);
    for row in rows {
        let phrase = row["inputs"]["phrase"].as_str().unwrap_or_default();
        let got = all(phrase);
        match row["quantity"].as_str().unwrap() {
            "phrase to number" | "fraction phrase" => {
                let got = got.unwrap_or_else(|| panic!("{phrase}: not read"));
                assert_eq!(got.kind, Kind::Sure, "{phrase}: {got:?}");
                assert!((got.value - row["expected"].as_f64().unwrap()).abs() < 1e-12, "{phrase}: {got:?}");
            }
            "must be rejected" | "ambiguous: ask, do not guess" => {
                assert!(got.as_ref().is_none_or(|got| got.kind == Kind::Ambiguous), "{phrase}: {got:?}");
                // No shorter piece passes for a sure number either.
                for piece in read_number(&tokens(phrase)) {
                    assert_ne!(piece.kind, Kind::Sure, "{phrase}: {piece:?}");
                }
            }
            "number to phrase" => {
                let said = words(row["inputs"]["n"].as_f64().unwrap());
                assert_eq!(said, row["expected"].as_str().unwrap().replace('-', " "));
            }
            other => panic!("{other}"),
        }
    }
}

/// The version of num2words stands in the head of the table. Ours speaks no hyphen.
#[test]
fn words_agree_with_num2words_and_read_back() {
    let table = include_str!("../data/quantity/num2words.tsv");
    let mut seen = 0;
    for line in table.lines().filter(|line| !line.starts_with('#')) {
        let (number, said) = line.split_once('\t').unwrap();
        let number: f64 = number.parse().unwrap();
        assert_eq!(words(number), said.replace('-', " "));
        for text in [said.replace('-', " "), said.to_owned()] {
            let back = all(&text).unwrap_or_else(|| panic!("{text}"));
            assert_eq!((back.kind, back.value), (Kind::Sure, number), "{text}");
        }
        seen += 1;
    }
    assert!(seen > 10_100, "{seen}");
}

/// Common practice, no source: how numbers are said across a bench.
#[test]
fn bench_numbers_are_read() {
    for (text, value) in [
        ("an inch and five eighths", 1.625),
        ("an eighth", 0.125),
        ("half", 0.5),
        ("half a", 0.5),
        ("three quarters", 0.75),
        ("three quarters of an", 0.75),
        ("a quarter", 0.25),
        ("hundred and ten", 110.0),
        ("a dozen", 12.0),
        ("two dozen", 24.0),
        ("nought", 0.0),
        ("nil", 0.0),
        ("oh", 0.0),
        ("nought point five", 0.5),
        ("point five", 0.5),
        ("13.8", 13.8),
        ("2 1/4", 2.25),
        ("1/2", 0.5),
        ("½", 0.5),
        ("2½", 2.5),
        ("twelve and a half", 12.5),
        ("a hundred and ten and a half", 110.5),
        ("fourteen one four", 14.0),
        ("fourteen, one four", 14.0),
        ("one five fifteen", 15.0),
        ("twenty two point five two two point five", 22.5),
        ("minus five", -5.0),
        ("-5", -5.0),
        ("1,500", 1500.0),
        ("two turns and a half", 2.5),
        ("thirteen point eight", 13.8),
        ("one and three eighths", 1.375),
        ("eleven sixteenths", 0.6875),
        ("three thirty seconds", 0.09375),
        ("13 point 8", 13.8),
        ("a half", 0.5),
        ("two and three quarters", 2.75),
        ("a thousand", 1000.0),
        ("one thousand and fifty", 1050.0),
    ] {
        let got = all(text).unwrap_or_else(|| panic!("{text}: not read"));
        assert_eq!(got.kind, Kind::Sure, "{text}: {got:?}");
        assert!((got.value - value).abs() < 1e-12, "{text}: {got:?}");
    }
    assert_eq!(all("an inch and five eighths").unwrap().unit, Some(Unit::Inch));
}

/// Common practice, no source.
#[test]
fn loose_numbers_are_vague() {
    for (text, value) in [
        ("two and a bit", 2.0),
        ("about twenty", 20.0),
        ("twenty ish", 20.0),
        ("twenty-ish", 20.0),
        ("ten or so", 10.0),
        ("a couple", 2.0),
        ("a couple of", 2.0),
        ("nearly three", 3.0),
        ("a few", 3.0),
        ("just over two and a half", 2.5),
    ] {
        let got = all(text).unwrap_or_else(|| panic!("{text}: not read"));
        assert_eq!((got.kind, got.value), (Kind::Vague, value), "{text}");
    }
}

/// Numbers with two meanings come back with both, never settled.
#[test]
fn doubtful_numbers_are_ambiguous_with_their_candidates() {
    for (text, among) in [
        ("one twenty", vec![120.0, 1.2]),
        ("two fifty", vec![250.0, 2.5]),
        ("four fifteen", vec![415.0, 4.15]),
        ("seven eleven", vec![711.0]),
        ("one oh five", vec![105.0]),
        ("two or three", vec![2.0, 3.0]),
        ("four four point five", vec![44.5]),
        ("six thousand a hundred and twenty", vec![6120.0]),
        ("two quarter", vec![0.5]),
        ("one four", vec![14.0]),
        ("one point", vec![1.0]),
        ("fourteen four one", vec![]),
        ("thirteen thirty", vec![1330.0]),
    ] {
        let got = all(text).unwrap_or_else(|| panic!("{text}: not read"));
        assert_eq!(got.kind, Kind::Ambiguous, "{text}: {got:?}");
        for value in among {
            assert!(got.candidates.contains(&value), "{text}: {got:?}");
        }
    }
    assert_eq!(all("one four").unwrap().form, Form::Digits);
}

#[test]
fn what_is_no_number_is_not_read() {
    for text in ["spanner", "and", "point", "a", "to", "third", "the nut", "", "hundreds", "1/0", "four nuts"]
    {
        assert_eq!(all(text), None, "{text}");
    }
    // "three and four" is two numbers, not thirty four.
    assert_eq!(all("three and four"), None);
    assert_eq!(read_number(&tokens("three and four"))[0].value, 3.0);
    assert_eq!(read_number(&tokens("a click out"))[0].form, Form::Article);
}

#[test]
fn readings_come_longest_first() {
    let found = read_number(&tokens("two and a half turns"));
    assert_eq!((found[0].value, found[0].len), (2.5, 4));
    assert!(found.windows(2).all(|pair| pair[0].len > pair[1].len), "{found:?}");
}

/// Aviation practice (ICAO Doc 9432): figures one by one where a word may be misheard.
#[test]
fn sound_alikes_are_known_both_ways() {
    for (teen, ten) in [
        (13.0, 30.0),
        (14.0, 40.0),
        (15.0, 50.0),
        (16.0, 60.0),
        (17.0, 70.0),
        (18.0, 80.0),
        (19.0, 90.0),
        (115.0, 150.0),
        (15000.0, 50000.0),
        (13.5, 30.5),
    ] {
        assert_eq!(sounds_like(teen), vec![ten]);
        assert_eq!(sounds_like(ten), vec![teen]);
    }
    for clear in [0.0, 5.0, 10.0, 11.0, 12.0, 20.0, 22.0, 33.0, 110.0, 512.0, 35.0] {
        assert!(!needs_digits(clear), "{clear}");
    }
    assert_eq!(digits(15.0), "one five");
    assert_eq!(digits(22.5), "two two point five");
    assert_eq!(digits(-30.0), "minus three zero");
}

proptest! {
    #[test]
    fn words_and_digits_read_back(n in 0u32..1_000_000, tenths in 0u32..1000) {
        let value = f64::from(n) + f64::from(tenths) / 1000.0;
        let back = all(&words(value)).unwrap();
        prop_assert_eq!((back.kind, back.value), (Kind::Sure, value));
        if n >= 10 {
            let digits = all(&digits(value)).unwrap();
            prop_assert_eq!(digits.candidates, vec![value]);
            prop_assert_ne!(digits.kind, Kind::Sure);
        }
    }

    #[test]
    fn any_words_are_read_or_left(text in "(one|two|twenty|fifty|hundred|thousand|point|and|a|half|quarters|oh|1/4|13|x| ){0,16}") {
        for reading in read_number(&tokens(&text)) {
            prop_assert!(reading.value.is_finite() && reading.len >= 1);
        }
    }

    #[test]
    fn sound_alikes_are_mutual(n in 0u32..1_000_000) {
        for other in sounds_like(f64::from(n)) {
            prop_assert!(sounds_like(other).contains(&f64::from(n)), "{} {}", n, other);
        }
    }
}

//! Written text to speakable text.

use proptest::prelude::*;
use sparehand::reply::speakable;

/// Number to words against num2words 0.5.14 (PyPI), lang="en", which hyphenates and puts commas after thousands.
#[test]
fn figures_before_a_unit_are_the_words_of_num2words() {
    let table = include_str!("../data/quantity/num2words.tsv");
    let mut read = 0;
    for (number, words) in
        table.lines().filter(|line| !line.starts_with('#')).filter_map(|line| line.split_once('\t'))
    {
        let value: f64 = number.parse().unwrap();
        if value.fract() == 0.0 && (0.0..1e9).contains(&value) {
            let unit = if value == 1.0 { "millimetre" } else { "millimetres" };
            assert_eq!(speakable(&format!("{number} mm")), format!("{} {unit}", words.replace('-', " ")));
            read += 1;
        }
    }
    assert!(read > 100, "{read}");
}

/// Unit names in words: the SI brochure (9th edition, tables 2 and 4: newton metre, millimetre, degree Celsius, bar in
/// table 8) with British spelling; plural as in section 5.4.5 of the same; how a fraction is put is common practice, no source.
#[test]
fn written_units_and_signs_become_words() {
    for (written, spoken) in [
        ("32 N.m", "thirty two newton metres"),
        ("32Nm", "thirty two newton metres"),
        ("1 N.m", "one newton metre"),
        ("0.05 mm", "zero point zero five millimetres"),
        ("0.05 mm run-out", "zero point zero five millimetre run out"),
        ("12 mm flats on the shaft", "twelve millimetre flats on the shaft"),
        ("M14 x 1", "M fourteen by one"),
        ("M8 x 0.75", "M eight by zero point seven five"),
        ("20 degC", "twenty degrees Celsius"),
        ("-40 °C", "minus forty degrees Celsius"),
        ("32 N.m +/- 2 N.m", "thirty two newton metres plus or minus two newton metres"),
        ("30 to 34 N.m", "thirty to thirty four newton metres"),
        ("30-34 N.m", "thirty to thirty four newton metres"),
        ("0 to 4", "nought to four"),
        ("1/2 in drive", "half inch drive"),
        ("1/2 in", "half an inch"),
        ("3/8 in", "three eighths of an inch"),
        ("2 1/4 turns", "two and a quarter turns"),
        ("1/2 turn", "half a turn"),
        ("5 in the tray", "five in the tray"),
        ("10 clicks in from full out", "ten clicks in from full out"),
        ("640 MPa", "six hundred and forty megapascals"),
        ("15 mm2/s at 40 degC", "fifteen centistokes at forty degrees Celsius"),
        ("70 N/mm", "seventy newtons per millimetre"),
        ("3 bar gauge", "three bar gauge"),
        ("5%", "five per cent"),
        ("ISO 4032", "ISO four zero three two"),
        ("serial 0117", "serial zero one one seven"),
        ("the 3rd thread", "the third thread"),
        ("C-spanner (hook spanner): seat it!", "C spanner, hook spanner, seat it."),
        ("nuts & bolts, e.g. M5", "nuts and bolts, for example M five"),
        ("at 09:05", "at nine zero five"),
        ("due 2026-11-03", "due the third of November, two zero two six"),
        ("Zoë's pad", "Zoe's pad"),
        ("set the torque in N.m.", "set the torque in newton metres."),
    ] {
        assert_eq!(speakable(written), spoken, "{written}");
    }
}

#[test]
fn what_is_speakable_stays_as_it_is() {
    for text in
        ["Foot nut, twenty one, anticlockwise.", "Understood, yes or no?", "Don't force it. Never.", ""]
    {
        assert_eq!(speakable(text), text);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 3000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn anything_comes_out_in_the_spoken_set(text in any::<String>()) {
        in_the_set(&speakable(&text))?;
    }

    #[test]
    fn bench_like_text_comes_out_in_the_spoken_set(words in prop::collection::vec(WORD, 0..12)) {
        holds(&words.join(" "))?;
    }
}

/// Figures, units, signs and words as a pack has them.
const WORD: &str = "[0-9]{1,5}( ?(N\\.m|mm|in|turns|°C|%|bar|lbf\\.ft))?|[0-9]{1,2}\\.[0-9]{1,2}|M[0-9]{1,2} x 1|[0-9]-[0-9]|½|±|\\+/-|[a-z]{1,6}[.,:;!?]?|\\([a-z]{1,6}\\)";

/// In the spoken set, with single spaces.
fn in_the_set(said: &str) -> Result<(), TestCaseError> {
    let fine = |c: char| c.is_ascii_alphabetic() || matches!(c, ' ' | ',' | '.' | '?' | '\'');
    prop_assert!(said.chars().all(fine), "{said:?}");
    prop_assert!(!said.contains("  ") && said.trim() == said, "{said:?}");
    Ok(())
}

/// The same, and a second time changes nothing.
fn holds(text: &str) -> Result<(), TestCaseError> {
    let said = speakable(text);
    in_the_set(&said)?;
    prop_assert_eq!(speakable(&said), said);
    Ok(())
}

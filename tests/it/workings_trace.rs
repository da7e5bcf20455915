//! Force-velocity traces: the file format, comparison, band and plot.

use proptest::prelude::*;
use sparehand::workings::pair::compare::{compare, outside, share};
use sparehand::workings::pair::plot::plot;
use sparehand::workings::pair::trace::Trace;

const FOUND: &str = "# as found\nvelocity (mm/s),force (N)\n-200,-900\n-100,-520\n0,60\n100,300\n200,480\n";

#[test]
fn a_spreadsheets_file_is_read() {
    let trace = Trace::read(FOUND).unwrap();
    assert_eq!(trace.points().len(), 5);
    assert_eq!(trace.force_at(150.0), Some(390.0));
    assert_eq!(trace.force_at(201.0), None);
    // The same in inches and pounds, with semicolons and decimal commas, in another order and column order.
    let other = "force (lbf);speed (in/s)\n107,9083;7,874016\n13,48854;0\n";
    let trace = Trace::read(other).unwrap();
    assert!((trace.force_at(200.0).unwrap() - 480.0).abs() < 1e-2, "{:?}", trace.points());
    let marked = format!("\u{feff}{}", FOUND.replace('\n', "\r\n"));
    assert_eq!(Trace::read(&marked).unwrap(), Trace::read(FOUND).unwrap());
}

#[test]
fn a_bad_file_is_refused_with_its_line() {
    for (text, line, part) in [
        ("", 1, "empty"),
        ("v,f\n1,2\n", 1, "a head such as"),
        ("velocity (mm/s),force\n1,2\n", 1, "found the unit ``"),
        ("velocity (mm/s),force (N.m)\n1,2\n", 1, "N.m"),
        ("velocity (mm/s),force (N)\n1,2\n3,many\n", 3, "`many`"),
        ("velocity (mm/s),force (N)\n1,2\n3\n", 3, "``"),
        ("velocity (mm/s),force (N)\n1,2\n1,3\n", 1, "two rows"),
        ("velocity (mm/s),force (N)\n1,inf\n2,3\n", 2, "`inf`"),
    ] {
        let error = Trace::read(text).unwrap_err();
        assert!(error.line == line && error.to_string().contains(part), "{text:?}: {error}");
    }
}

#[test]
fn found_and_left_are_compared() {
    let found = Trace::read(FOUND).unwrap();
    let left = Trace::new(found.points().iter().map(|(v, f)| (*v, f * 1.06)).collect()).unwrap();
    let rows = compare(&found, &left, &[-150.0, 100.0, 500.0]);
    assert_eq!(rows.len(), 2);
    // 6 % on one of the two is 5.83 % of their mean (identity).
    assert!(rows.iter().all(|row| (row.share.abs() - 0.06 / 1.03).abs() < 1e-9), "{rows:?}");
    assert_eq!(outside(&left, &found, 0.07), []);
    assert_eq!(outside(&left, &found, 0.05).len(), 5);
    // Gas of 60 N off: nothing at rest, more rebound, less compression.
    let bare = found.without_gas(60.0);
    assert_eq!(
        (bare.force_at(0.0), bare.force_at(100.0), bare.force_at(-100.0)),
        (Some(0.0), Some(240.0), Some(-580.0))
    );
}

#[test]
fn a_plot_shows_both_axes() {
    let trace = Trace::read(FOUND).unwrap();
    let drawn = plot(&[('o', &trace)], 41, 11);
    let lines: Vec<&str> = drawn.lines().collect();
    assert_eq!(lines.len(), 13);
    assert_eq!(lines[0], "480 N");
    assert_eq!(lines[12], "-900 N, -200 to 200 mm/s");
    assert!(lines[1..12].iter().all(|line| line.chars().count() <= 41));
    assert!(lines[1].ends_with('o') && lines[11].starts_with('o'));
    assert!(drawn.contains('|') && drawn.contains('-'));
    assert_eq!(plot(&[], 40, 10), "");
    assert_eq!(plot(&[('o', &trace)], 4, 2), "");
}

proptest! {
    #[test]
    fn any_text_is_a_trace_or_a_refusal(text in "(velocity|force|speed|\\(mm/s\\)|\\(N\\)|,|;|\n|1|-2.5|x| ){0,40}") {
        if let Ok(trace) = Trace::read(&text) {
            prop_assert!(trace.points().windows(2).all(|pair| pair[0].0 < pair[1].0));
            prop_assert!(!plot(&[('x', &trace)], 20, 8).is_empty());
        }
    }

    #[test]
    fn shares_are_mutual(a in 1.0f64..1e4, b in 1.0f64..1e4) {
        prop_assert!((share(a, b) + share(b, a)).abs() < 1e-12);
        prop_assert!(share(a, b).abs() <= 2.0);
    }
}

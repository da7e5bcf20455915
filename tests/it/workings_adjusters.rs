//! Adjuster paths against models written apart from them. Facts of the trade: common practice, no source.

use proptest::prelude::*;
use sparehand::quantity::Unit;
use sparehand::workings::adjusters::{Clicker, NoPath, Path, Ring, Screw, Setting, Stop, Travel, Way};

/// A clicker that knows only how to be turned: it stops by itself at its ends.
fn turn_clicker(at: i64, travel: i64, closes: Way, path: &Path) -> i64 {
    let mut out = at;
    if let Some(stop) = path.to_stop {
        out = if stop.way == closes { 0 } else { travel };
    }
    let step = if path.then.way == closes { -1 } else { 1 };
    (out + step * path.then.amount as i64).clamp(0, travel)
}

#[test]
fn every_clicker_setting_is_reached_from_everywhere() {
    for closes in [Way::Clockwise, Way::Anticlockwise] {
        for travel in 0..=40u32 {
            let clicker = Clicker { travel, closes };
            assert_eq!(clicker.settings(), travel + 1);
            for count in 0..=travel {
                for (from, ends_at) in [(Stop::FullIn, count), (Stop::FullOut, travel - count)] {
                    let path = clicker.path(Setting { count: f64::from(count), from }).unwrap();
                    for at in 0..=travel {
                        let end = turn_clicker(i64::from(at), i64::from(travel), closes, &path);
                        assert_eq!(end, i64::from(ends_at), "{travel} {count} {from:?} {at}");
                    }
                }
            }
        }
    }
}

/// A 20-click clicker is set from its hard stop by counting clicks out.
#[test]
fn a_clicker_is_set_from_its_hard_stop() {
    let clicker = Clicker { travel: 20, closes: Way::Clockwise };
    let path = clicker.path(Setting { count: 8.0, from: Stop::FullIn }).unwrap();
    let stop = path.to_stop.unwrap();
    assert_eq!((stop.way, stop.stop), (Way::Clockwise, Stop::FullIn));
    assert_eq!((path.then.way, path.then.amount, path.then.unit), (Way::Anticlockwise, 8.0, Unit::Click));
    let other = clicker.counted_from(Setting { count: 8.0, from: Stop::FullIn }, Stop::FullOut).unwrap();
    assert_eq!((other.count, other.from), (12.0, Stop::FullOut));
}

#[test]
fn impossible_clicks_are_refused() {
    let clicker = Clicker { travel: 23, closes: Way::Clockwise };
    let path = |count| clicker.path(Setting { count, from: Stop::FullIn });
    assert_eq!(path(24.0), Err(NoPath::BeyondTravel { wanted: 24.0, travel: 23.0 }));
    assert_eq!(path(-1.0), Err(NoPath::Negative { wanted: -1.0 }));
    assert_eq!(path(8.5), Err(NoPath::NotWhole { wanted: 8.5 }));
    assert!(matches!(path(f64::NAN), Err(NoPath::NotWhole { .. })));
}

/// A one-way ring of 0 to 3 at 2, wanted 1, goes on through 3 and 0.
#[test]
fn a_one_way_ring_goes_the_long_way_round() {
    let ring = Ring { min: 0, max: 3, rises: Way::Clockwise, only: Some(Way::Clockwise), wraps: true };
    let path = ring.path(Some(2.0), 1.0).unwrap();
    assert_eq!((path.then.way, path.then.amount, path.then.unit), (Way::Clockwise, 3.0, Unit::PositionStep));
    assert_eq!(path.passes, [3, 0]);
    let two_way = Ring { only: None, wraps: false, ..ring };
    let back = two_way.path(Some(2.0), 1.0).unwrap();
    assert_eq!((back.then.way, back.then.amount, back.passes.len()), (Way::Anticlockwise, 1.0, 0));
}

#[test]
fn impossible_positions_are_refused() {
    let ring = Ring { min: 0, max: 4, rises: Way::Clockwise, only: Some(Way::Clockwise), wraps: true };
    assert_eq!(ring.path(Some(1.0), 5.0), Err(NoPath::NoPosition { wanted: 5.0, min: 0, max: 4 }));
    assert_eq!(ring.path(Some(-1.0), 2.0), Err(NoPath::NoPosition { wanted: -1.0, min: 0, max: 4 }));
    assert_eq!(ring.path(Some(1.0), 2.5), Err(NoPath::NotWhole { wanted: 2.5 }));
    assert_eq!(ring.path(None, 2.0), Err(NoPath::Unknown));
    let stopped = Ring { wraps: false, ..ring };
    assert_eq!(stopped.path(Some(3.0), 1.0), Err(NoPath::WrongWay { only: Way::Clockwise }));
    assert!(stopped.path(Some(1.0), 3.0).is_ok());
}

proptest! {
    /// Walks each ring a detent at a time and checks where it ends, what it passes, and that it never turns a forbidden way.
    #[test]
    fn rings_arrive_and_never_turn_the_wrong_way(min in -3i32..3, span in 1i32..12, at in 0i32..13, wanted in 0i32..13,
        up_clockwise: bool, one_way in 0..3u8, wraps: bool)
    {
        let max = min + span;
        let (at, wanted) = (min + at % (span + 1), min + wanted % (span + 1));
        let rises = if up_clockwise { Way::Clockwise } else { Way::Anticlockwise };
        let only = match one_way { 0 => None, 1 => Some(rises), _ => Some(rises.opposite()) };
        let ring = Ring { min, max, rises, only, wraps };
        match ring.path(Some(f64::from(at)), f64::from(wanted)) {
            Ok(path) => {
                let mut here = at;
                let mut seen = Vec::new();
                for _ in 0..path.then.amount as i32 {
                    let up = path.then.way == rises;
                    prop_assert!(only.is_none_or(|only| only == path.then.way));
                    here += if up { 1 } else { -1 };
                    if here > max { prop_assert!(wraps && only.is_some()); here = min; }
                    if here < min { prop_assert!(wraps && only.is_some()); here = max; }
                    seen.push(here);
                }
                prop_assert_eq!(here, wanted);
                seen.pop();
                prop_assert_eq!(&path.passes, &seen);
                if only.is_none() { prop_assert_eq!(path.then.amount as i32, (wanted - at).abs()); }
            }
            Err(refused) => prop_assert!(!wraps && only.is_some(), "{}", refused),
        }
    }

    /// Turns and length agree through the pitch, and going back undoes the way there.
    #[test]
    fn screws_agree_in_turns_and_length(pitch in 0.25f64..3.0, at in 0.0f64..12.0, wanted in 0.0f64..12.0, adds_clockwise: bool, lengthens: bool) {
        let adds = if adds_clockwise { Way::Clockwise } else { Way::Anticlockwise };
        let screw = Screw { pitch, adds, adding_lengthens: lengthens, travel: Some(12.0) };
        let there = screw.by_turns(Some(at), wanted).unwrap();
        let back = screw.by_turns(Some(wanted), at).unwrap();
        prop_assert!((there.then.amount - back.then.amount).abs() < 1e-9);
        let moved = there.length.unwrap().value;
        prop_assert!((moved.abs() - (wanted - at).abs() * pitch).abs() < 1e-9);
        let sign = if lengthens { 1.0 } else { -1.0 };
        prop_assert!(moved * (wanted - at) * sign >= 0.0);
        let by_length = screw.by_length(100.0, 100.0 + moved).unwrap();
        prop_assert!((by_length.then.amount - there.then.amount).abs() < 1e-9);
        if there.then.amount > 1e-9 { prop_assert_eq!(by_length.then.way, there.then.way); }
    }
}

#[test]
fn impossible_screws_are_refused() {
    let screw = Screw { pitch: 1.5, adds: Way::Clockwise, adding_lengthens: true, travel: Some(12.0) };
    assert_eq!(screw.by_turns(Some(2.0), 13.0), Err(NoPath::BeyondTravel { wanted: 13.0, travel: 12.0 }));
    assert_eq!(screw.by_turns(Some(2.0), -1.0), Err(NoPath::Negative { wanted: -1.0 }));
    assert!(matches!(screw.by_length(100.0, 130.0), Err(NoPath::BeyondTravel { .. })));
    assert_eq!(Screw { pitch: 0.0, ..screw }.by_turns(Some(1.0), 2.0), Err(NoPath::NoPitch { pitch: 0.0 }));
    assert_eq!(Screw { travel: None, ..screw }.by_turns(None, 2.0), Err(NoPath::Unknown));
    let from_stop = screw.by_turns(None, 2.0).unwrap();
    assert_eq!((from_stop.to_stop.unwrap().way, from_stop.then.amount), (Way::Anticlockwise, 2.0));
}

#[test]
fn a_short_travel_is_told_from_a_full_one() {
    assert_eq!(
        (Travel::of(24, 24), Travel::of(23, 24), Travel::of(26, 24)),
        (Travel::Agrees, Travel::Short(1), Travel::Long(2))
    );
    assert!(Travel::Short(1).means().contains("detent"));
}

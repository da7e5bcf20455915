//! Corners of the vehicle, as seen from the seat.

use super::mention::{Mention, What};
use crate::act::Corner;

/// A corner of the vehicle.
pub(super) fn corner(texts: &[&str], at: usize) -> Option<Mention> {
    let word = |n: usize| texts.get(at + n).copied().unwrap_or_default();
    let side = |n: usize| match (word(n), word(n + 1)) {
        ("left" | "right", "hand") => Some((word(n) == "left", 2)),
        ("left" | "nearside" | "ns" | "lh" | "l", _) => Some((true, 1)),
        ("right" | "offside" | "os" | "rh" | "r", _) => Some((false, 1)),
        ("near", "side") => Some((true, 2)),
        ("off", "side") => Some((false, 2)),
        _ => None,
    };
    let end = |n: usize| match word(n) {
        "front" => Some(true),
        "rear" | "back" => Some(false),
        _ => None,
    };
    let done =
        |what: Corner, len: usize| Some(Mention { start: at, end: at + len, what: What::Corner(Some(what)) });
    let both = |front: bool, left: bool| match (front, left) {
        (true, true) => Corner::FrontLeft,
        (true, false) => Corner::FrontRight,
        (false, true) => Corner::RearLeft,
        (false, false) => Corner::RearRight,
    };
    match (word(0), word(1)) {
        ("driver" | "drivers" | "passenger" | "passengers", _) => {
            let len = (1..4)
                .find(|n| matches!(word(*n), "side" | "corner" | "front" | "rear"))
                .map_or(1, |n| n + 1);
            return Some(Mention { start: at, end: at + len, what: What::Corner(None) });
        }
        ("fl", _) => return done(Corner::FrontLeft, 1),
        ("fr", _) => return done(Corner::FrontRight, 1),
        ("rl", _) => return done(Corner::RearLeft, 1),
        ("rr", _) => return done(Corner::RearRight, 1),
        _ => {}
    }
    if let Some(front) = end(0)
        && let Some((left, len)) = side(1)
    {
        return done(both(front, left), len + 1);
    }
    let (left, len) = side(0)?;
    if let Some(front) = end(len) {
        return done(both(front, left), len + 1);
    }
    let article = at
        .checked_sub(1)
        .and_then(|before| texts.get(before))
        .is_some_and(|word| matches!(*word, "the" | "my" | "his" | "other" | "to"));
    let noun = matches!(
        word(len),
        "side"
            | "one"
            | "corner"
            | "unit"
            | "leg"
            | "damper"
            | "strut"
            | "shock"
            | "rear"
            | "front"
            | "sixty"
            | "forty"
    );
    let whole = len == 2 || matches!(word(0), "nearside" | "offside");
    (article || noun || whole).then_some(())?;
    done(if left { Corner::Left } else { Corner::Right }, len)
}

//! An adjuster that knows nothing but the words of `say` ends at the wanted setting and is never turned a forbidden way:
//! over all travels, positions, conventions, short travels and unknown positions.
//!
//! The hand below is written apart from the program: it reads words, keeps a stop, and breaks when it is forced.
//! Facts of the trade (common practice, no source): a one-way ring of 0 to 3 at 2, wanted 1, goes on through 3 and 0; a
//! 20-click clicker is set from its hard stop by counting clicks out; 26 N.m is the ceiling on one hollow adjuster shaft.

use chrono::DateTime;
use proptest::prelude::*;
use sparehand::act::{Act, ActName, End, Heard};
use sparehand::bench::state::{AdjusterState, Place, Position, State};
use sparehand::bench::{Input, Past, decide};
use sparehand::event::Utterance;
use sparehand::quantity::{Limit, Quantity, Unit};
use sparehand::reply::reply;
use sparehand::rulebase::Pack;
use std::collections::BTreeMap;

/// A pack of one unit with that adjuster, and a procedure of one step.
fn pack(adjuster: &str) -> Pack {
    let card = format!(
        "unit: test-1\ncalled: [test one]\nwhat: A unit with one adjuster\naxle: front\nends: {{foot: from below}}\nsource: demo\n\
         adjusters:\n  dial:\n    called: [dial]\n    end: foot\n    hold: nothing\n{adjuster}\nparts:\n  knob:\n    called: [knob]\n"
    );
    let procedure = "procedure: re-spring\ncalled: [re-spring]\nunit: test-1\nwhat: A test\nphases:\n  restore:\n    - set: dial\n";
    let files: BTreeMap<String, String> = [
        ("pack.yaml", "name: test\nformat: 1\n"),
        ("cautions.yaml", "{}\n"),
        ("tools.yaml", "{}\n"),
        ("units/test-1.yaml", card.as_str()),
        ("procedures/re-spring.test-1.yaml", procedure),
    ]
    .into_iter()
    .map(|(path, text)| (path.to_owned(), text.to_owned()))
    .collect();
    Pack::from_files(files).unwrap_or_else(|problems| panic!("{problems:#?}"))
}

/// What the bench says to "how many clicks back", with the adjuster known so.
fn said(pack: &Pack, known: AdjusterState) -> String {
    let place = Place {
        unit: "test-1".into(),
        procedure: "re-spring".into(),
        adjusters: BTreeMap::from([("dial".to_owned(), known)]),
        ..Place::default()
    };
    let mut state = State::default();
    state.progress.open = true;
    state.progress.current = Some("front-left".into());
    state.progress.places.insert("front-left".into(), place);
    let utterance = Utterance { id: "u".into(), heard: None, understood: Vec::new(), ear: true };
    let heard = Heard::take(vec![Act::new(ActName::AskBack).about("dial")], 1.0);
    let now = DateTime::parse_from_rfc3339("2026-11-25T09:00:00+00:00").unwrap();
    let decision = decide(pack, &Past::default(), &state, &Input::Heard { utterance, heard }, now);
    reply(&decision.answer, &decision.waiting).say
}

/// A number in words, whole or with halves, quarters and sixths; and how many words it took.
fn number(words: &[&str]) -> Option<(f64, usize)> {
    const ONES: [&str; 20] = [
        "nought",
        "one",
        "two",
        "three",
        "four",
        "five",
        "six",
        "seven",
        "eight",
        "nine",
        "ten",
        "eleven",
        "twelve",
        "thirteen",
        "fourteen",
        "fifteen",
        "sixteen",
        "seventeen",
        "eighteen",
        "nineteen",
    ];
    let ones = |word: &str| ONES.iter().position(|one| *one == word).map(|at| at as f64);
    let tens = |word: &str| {
        ["twenty", "thirty", "forty"].iter().position(|ten| *ten == word).map(|at| (at as f64 + 2.0) * 10.0)
    };
    let first = words.first()?;
    let (mut value, mut used) = match (tens(first), words.get(1).and_then(|word| ones(word))) {
        (Some(ten), Some(one)) if one > 0.0 && one < 10.0 => (ten + one, 2),
        (Some(ten), _) => (ten, 1),
        (None, _) => (ones(first)?, 1),
    };
    if words.get(used) == Some(&"point") {
        let mut scale = 0.1;
        used += 1;
        while let Some(digit) = words.get(used).and_then(|word| ones(word)).filter(|digit| *digit < 10.0) {
            value += digit * scale;
            scale /= 10.0;
            used += 1;
        }
    }
    Some((value, used))
}

/// A hand on an adjuster.
struct Hand {
    at: f64,
    travel: f64,
    /// What one turn the closing way does to the count: -1 for a clicker (closing counts down), +1 for a ring's rise.
    closing: &'static str,
    only: Option<&'static str>,
    ring: Option<(f64, f64)>,
    unit: &'static str,
    broken: Option<String>,
}

impl Hand {
    /// Obeys one `say`, sentence by sentence until the way is told.
    fn obey(&mut self, say: &str) {
        let text = say.to_lowercase().replace(['.', ','], " ");
        let words: Vec<&str> = text.split_whitespace().collect();
        let mut at = 0;
        while at < words.len() {
            let rest = &words[at..];
            if rest.starts_with(&["to", "the", "stop"]) {
                let way = words[..at].iter().rev().find(|word| word.ends_with("clockwise")).copied().unwrap();
                self.turn(way, f64::MAX);
            }
            if let Some((amount, used)) = number(rest)
                && let Some(kind) = rest.get(used).filter(|kind| kind.starts_with(self.unit))
            {
                let before = words[..at].iter().rev().take(2).any(|word| *word == "to" || *word == "at");
                let way_after = rest[used + 1..].iter().take(3).find(|word| word.ends_with("clockwise"));
                let way_before =
                    at.checked_sub(1).map(|before| words[before]).filter(|word| word.ends_with("clockwise"));
                let _ = kind;
                if let Some(way) = way_after.copied().or(way_before)
                    && !before
                {
                    self.turn(way, amount);
                    if self.ring.is_none() {
                        return;
                    }
                }
            }
            if rest.starts_with(&["that", "is"]) || rest.starts_with(&["check"]) {
                return;
            }
            at += 1;
        }
    }

    fn turn(&mut self, way: &str, amount: f64) {
        if self.only.is_some_and(|only| only != way) {
            self.broken = Some(format!("turned {way}"));
        }
        let closes = way == self.closing;
        match self.ring {
            Some((first, last)) => {
                let size = last - first + 1.0;
                let step = if closes { amount } else { -amount };
                self.at = first + (self.at - first + step).rem_euclid(size);
            }
            None => {
                let wanted = if closes { self.at - amount } else { self.at + amount };
                let stopped = wanted.clamp(0.0, self.travel);
                if amount < 1e9 && (wanted - stopped).abs() > 1e-9 {
                    self.broken = Some(format!("forced past a stop: {wanted}"));
                }
                self.at = stopped;
            }
        }
    }
}

fn clicker(closes: &str, clicks: u32) -> String {
    format!("    clicker: {clicks} clicks\n    closes: {closes}")
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_clicker_is_set_from_its_stop(
        card in 4_u32..40, short in 0_u32..4, seed in any::<u32>(), stands in any::<u32>(), known in 0_usize..3, from_out in any::<bool>(),
        anti in any::<bool>(),
    ) {
        let closing = if anti { "anticlockwise" } else { "clockwise" };
        let travel = card - short.min(card - 1);
        let wanted = seed % (travel + 1);
        let stands = f64::from(stands % (travel + 1));
        let state = AdjusterState {
            wanted: Some(f64::from(wanted)),
            wanted_from: from_out.then_some(End::FullOut),
            travel: Some(f64::from(travel)),
            position: [Position::At(stands), Position::Lost, Position::Uncounted][known],
            ..AdjusterState::default()
        };
        let say = said(&pack(&clicker(closing, card)), state);
        let mut hand = Hand { at: stands, travel: f64::from(travel), closing, only: None, ring: None, unit: "click", broken: None };
        hand.obey(&say);
        prop_assert_eq!(hand.broken.as_ref(), None, "{}", say);
        prop_assert_eq!(hand.at, f64::from(wanted), "{}", say);
        if from_out && wanted != travel {
            prop_assert!(say.contains("full out"), "the customer's own count is said too: {}", say);
        }
    }

    #[test]
    fn a_one_way_ring_goes_on_the_long_way_round(last in 1_u32..9, stands in any::<u32>(), wanted in any::<u32>(), anti in any::<bool>()) {
        let only = if anti { "anticlockwise" } else { "clockwise" };
        let (stands, wanted) = (stands % (last + 1), wanted % (last + 1));
        let card = format!("    ring: 0 to {last}\n    only: {only}\n    rises: {only}\n    goes round: yes");
        let state = AdjusterState {
            wanted: Some(f64::from(wanted)),
            position: Position::At(f64::from(stands)),
            ..AdjusterState::default()
        };
        let say = said(&pack(&card), state);
        let ring = Some((0.0, f64::from(last)));
        let mut hand =
            Hand { at: f64::from(stands), travel: 0.0, closing: only, only: Some(only), ring, unit: "position", broken: None };
        hand.obey(&say);
        prop_assert_eq!(hand.broken.as_ref(), None, "{}", say);
        prop_assert_eq!(hand.at, f64::from(wanted), "{}", say);
    }

    #[test]
    fn a_screw_is_turned_from_where_it_stands(turns in 2_u32..14, stands in any::<u32>(), wanted in any::<u32>()) {
        let (stands, wanted) = (f64::from(stands % (turns + 1)), f64::from(wanted % (turns + 1)));
        let card = format!("    screw: 1 mm a turn\n    turns: {turns} turns\n    adds: clockwise");
        let state = AdjusterState { wanted: Some(wanted), position: Position::At(stands), ..AdjusterState::default() };
        let say = said(&pack(&card), state);
        let travel = f64::from(turns);
        let mut hand =
            Hand { at: stands, travel, closing: "anticlockwise", only: None, ring: None, unit: "turn", broken: None };
        hand.obey(&say);
        prop_assert_eq!(hand.broken.as_ref(), None, "{}", say);
        prop_assert_eq!(hand.at, wanted, "{}", say);
    }
}

#[test]
fn a_ring_of_0_to_3_at_2_wanted_1_goes_on_through_3_and_0() {
    let pack = pack("    ring: 0 to 3\n    only: clockwise\n    rises: clockwise\n    goes round: yes");
    let state = AdjusterState { wanted: Some(1.0), position: Position::At(2.0), ..AdjusterState::default() };
    let say = said(&pack, state);
    assert!(say.contains("clockwise three positions, through three and nought, to position one"), "{say}");
    assert!(!say.contains("anticlockwise"), "{say}");
}

#[test]
fn a_20_click_clicker_is_set_from_its_hard_stop_by_counting_clicks_out() {
    let state = AdjusterState { found: Some(12.0), position: Position::At(5.0), ..AdjusterState::default() };
    let say = said(&pack(&clicker("clockwise", 20)), state);
    assert!(say.contains("to the stop") && say.contains("twelve clicks out"), "{say}");
}

#[test]
fn a_hollow_shaft_with_a_ceiling_of_26_refuses_30() {
    let limit = Limit::parse("at most 26 N.m").unwrap();
    assert!(limit.holds(Quantity::new(26.0, Unit::NewtonMetre)).unwrap());
    assert!(!limit.holds(Quantity::new(30.0, Unit::NewtonMetre)).unwrap());
}

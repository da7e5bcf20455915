//! One of every part of an answer, its figures and names drawn from a seed.

use sparehand::act::{Doubt, End};
use sparehand::bench::{
    Ack, Asks, CautionCard, Consequence, Fact, Part, Question, Refusal, RestoreCard, SettingRow,
    SettingsCard, StepCard, Value,
};
use sparehand::quantity::{Limit, Quantity, Unit};
use sparehand::rulebase::{ReadBack, Signal};
use sparehand::workings::adjusters::Way;

/// A small generator (splitmix64, Steele and others 2014), so that a seed gives one answer.
pub struct Draw(pub u64);

impl Draw {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// From 0 to below `n`.
    pub fn below(&mut self, n: u64) -> u64 {
        self.next() % n
    }

    pub fn yes(&mut self) -> bool {
        self.below(2) == 0
    }

    fn pick<'a>(&mut self, from: &[&'a str]) -> &'a str {
        from[self.below(from.len() as u64) as usize]
    }

    pub fn name(&mut self) -> String {
        self.pick(&[
            "foot nut",
            "slow rebound",
            "range ring",
            "preload",
            "C-spanner seat",
            "Birch 44",
            "knob (grub)",
        ])
        .to_owned()
    }

    /// Words of a pack, with figures and symbols in them.
    pub fn text(&mut self) -> String {
        let number = self.below(90) + 1;
        match self.below(7) {
            0 => format!("Torque to {number} N.m; then wait."),
            1 => format!("At most 0.{:02} mm run-out", number + 9),
            2 => format!("Thread M{number} x 1.5, at 20 degC"),
            3 => format!("a gap of {number} mm +/- 0.5 mm"),
            4 => "the thread relief is the weak spot".to_owned(),
            5 => format!("{number}-95 mm of shaft/tube"),
            _ => format!("turn it 2 1/4 turns, {number} clicks"),
        }
    }

    fn maybe(&mut self, text: impl FnOnce(&mut Self) -> String) -> Option<String> {
        if self.yes() { Some(text(self)) } else { None }
    }

    pub fn quantity(&mut self) -> Quantity {
        let units = [
            Unit::NewtonMetre,
            Unit::PoundFoot,
            Unit::Millimetre,
            Unit::Bar,
            Unit::Psi,
            Unit::Celsius,
            Unit::Millilitre,
            Unit::NewtonPerMillimetre,
            Unit::Click,
            Unit::Turn,
            Unit::Minute,
            Unit::Inch,
            Unit::Kilogram,
        ];
        let unit = units[self.below(units.len() as u64) as usize];
        match unit {
            Unit::Click => self.clicks(),
            Unit::Turn => Quantity::new(self.below(40) as f64 / 4.0, unit),
            _ if self.yes() => Quantity::new(self.below(999) as f64, unit),
            _ => Quantity::new(self.below(9999) as f64 / 100.0, unit),
        }
    }

    pub fn clicks(&mut self) -> Quantity {
        Quantity::new(self.below(40) as f64, Unit::Click)
    }

    fn limit(&mut self) -> Limit {
        let middle = Quantity::new(self.below(80) as f64 + 10.0, Unit::NewtonMetre);
        match self.below(4) {
            0 => Limit { lo: None, ..Limit::around(middle, 2.0) },
            1 => Limit { hi: None, ..Limit::around(middle, 2.0) },
            2 => Limit::exactly(middle),
            _ => Limit::around(middle, 1.5),
        }
    }

    fn way(&mut self) -> Way {
        if self.yes() { Way::Clockwise } else { Way::Anticlockwise }
    }

    pub fn value(&mut self) -> Value {
        let setting = self.yes();
        Value {
            name: self.name(),
            kept: if setting { self.clicks() } else { self.quantity() },
            from: setting.then_some(if self.yes() { End::FullIn } else { End::FullOut }),
            said: self.yes().then(|| (self.quantity(), None)),
            digits: self.yes(),
        }
    }

    fn step(&mut self) -> StepCard {
        StepCard {
            id: "strip/loosen".to_owned(),
            number: (self.below(50) as usize + 1, 54),
            text: self.text(),
            name: self.name(),
            brief: self.maybe(Self::name),
            tool: self
                .maybe(|draw| draw.pick(&["hex key", "C-spanner", "pin spanner, 5 mm pins"]).to_owned()),
            size: self.yes().then(|| Quantity::new(self.below(40) as f64 / 2.0 + 1.0, Unit::Millimetre)),
            way: self.yes().then(|| self.way()),
            seen_from: self.maybe(|_| "from below".to_owned()),
            amount: self.maybe(|_| "a full turn".to_owned()),
            hold: self.maybe(|_| "12 mm flats on the shaft".to_owned()),
            limit: self.yes().then(|| self.limit()),
            nip: self.maybe(|_| "short arm, finger and thumb".to_owned()),
            locker: self.maybe(|_| "medium strength, 1 drop on the last 3 threads".to_owned()),
            never: self.maybe(|_| "out past the collar's face".to_owned()),
            note: self.maybe(Self::text),
            asks: self.yes().then(|| self.asks()),
        }
    }

    fn asks(&mut self) -> Asks {
        match self.below(4) {
            0 => Asks::YesOrNo("Is the mark on zero, right?".to_owned()),
            1 => Asks::Value("What did it click at?".to_owned()),
            2 => Asks::Words("What is the complaint?".to_owned()),
            _ => Asks::Done,
        }
    }

    /// A card as the bench makes them: a clicker from a stop, a ring, a screw by length, a charge, one that stands there.
    fn restore(&mut self) -> RestoreCard {
        let mut card = RestoreCard {
            name: self.name(),
            wanted: self.clicks(),
            to_stop: None,
            turn: None,
            passes: Vec::new(),
            length: None,
            datum: None,
            also: None,
            seen_from: self.maybe(|_| "below".to_owned()),
            by_hand: self.maybe(|_| "finger and thumb, never forced".to_owned()),
        };
        match self.below(5) {
            0 => {
                card.to_stop = Some((End::FullIn, Way::Clockwise));
                card.turn = (card.wanted.value > 0.0).then_some((Way::Anticlockwise, card.wanted));
                card.also = self.yes().then(|| (self.clicks(), End::FullOut));
            }
            1 => {
                card.wanted = Quantity::new(1.0, Unit::PositionStep);
                card.passes = vec![3, 4, 0];
                card.turn = Some((Way::Clockwise, Quantity::new(4.0, Unit::PositionStep)));
            }
            2 => {
                card.wanted = Quantity::new(38.5, Unit::Millimetre);
                card.length = Some(card.wanted);
                card.datum = Some("perch to collar".to_owned());
                card.turn =
                    self.yes().then(|| (self.way(), Quantity::new(self.below(60) as f64 / 12.0, Unit::Turn)));
            }
            3 => card.wanted = Quantity::new(14.0, Unit::Bar),
            _ => {}
        }
        card
    }

    fn row(&mut self) -> SettingRow {
        let unit = self.pick(&["click", "position", "mm", "turn", "bar"]).to_owned();
        SettingRow {
            name: self.name(),
            unit,
            found: self.yes().then(|| self.below(40) as f64),
            wanted: self.yes().then(|| self.below(40) as f64),
            left: self.yes().then(|| self.below(40) as f64 / 4.0),
            travel: self.yes().then(|| self.below(40) as f64),
            words: self.maybe(|_| "as on the wet sheet".to_owned()),
        }
    }

    fn settings(&mut self, which: ReadBack) -> SettingsCard {
        SettingsCard { which, rows: (0..3).map(|_| self.row()).collect(), asks: self.yes() }
    }
}

/// One of every part, acknowledgement, question, fact and refusal.
pub fn all(draw: &mut Draw) -> Vec<Part> {
    let mut parts = plain(draw);
    parts.extend(acks(draw).into_iter().map(Part::Ack));
    parts.extend(questions(draw).into_iter().map(Part::Question));
    parts.extend(facts(draw).into_iter().map(Part::Fact));
    parts.extend(refusals(draw).into_iter().map(Part::Refused));
    parts
}

fn plain(draw: &mut Draw) -> Vec<Part> {
    let mut parts = vec![
        Part::Step(Box::new(draw.step())),
        Part::SaidBack(draw.value()),
        Part::Restore(draw.restore()),
        Part::Remaining { steps: draw.below(60) as usize, next: vec!["foot nut".into(), "spring".into()] },
        Part::OpenEnds { items: vec![draw.text(), draw.text()] },
        Part::OpenEnds { items: Vec::new() },
        Part::Sentence(draw.text()),
        Part::Unknown { what: "a torque for the spring".into() },
        Part::TimerEnded { what: draw.text() },
    ];
    for signal in [Signal::Danger, Signal::Warning, Signal::Caution, Signal::Notice] {
        parts.push(Part::Caution(CautionCard { signal, text: draw.text(), acknowledge: draw.yes() }));
    }
    for which in [ReadBack::Found, ReadBack::Wanted, ReadBack::Left] {
        parts.push(Part::Settings(draw.settings(which)));
    }
    parts
}

fn acks(draw: &mut Draw) -> Vec<Ack> {
    vec![
        Ack::Done(Vec::new()),
        Ack::Done(vec![draw.name(), draw.name(), draw.name()]),
        Ack::Stays,
        Ack::Noted,
        Ack::Troubled,
        Ack::Skipped(draw.name()),
        Ack::Deviated(draw.name()),
        Ack::TakenBack { what: draw.name(), metal: vec!["the gas is still out".into()] },
        Ack::NothingToTakeBack,
        Ack::Corrected(draw.value()),
        Ack::Paused,
        Ack::GoingOn { last: draw.maybe(Draw::name), again: vec![draw.name(), draw.name()] },
        Ack::TimerSet { what: draw.text(), lasts: draw.quantity() },
        Ack::By("Ann".into()),
        Ack::Wanted(draw.value()),
        Ack::WantedWords(draw.text()),
        Ack::Fitted(draw.text()),
        Ack::ReadBack(ReadBack::Left),
        Ack::Started {
            number: draw.below(200) as u32,
            unit: draw.name(),
            corner: draw.maybe(|_| "front left".into()),
            procedure: "re-spring".into(),
        },
        Ack::Switched("front right".into()),
        Ack::Closed { number: draw.below(200) as u32 },
        Ack::Dropped,
        Ack::Understood,
        Ack::Already(draw.name()),
    ]
}

fn questions(draw: &mut Draw) -> Vec<Question> {
    let doubts =
        [Doubt::Number, Doubt::Vague, Doubt::Part, Doubt::Meaning, Doubt::Hedged, Doubt::Unit, Doubt::Side];
    let mut questions = vec![
        Question::Value(draw.value()),
        Question::Reason { name: draw.name(), deviation: draw.yes() },
        Question::Sure { name: draw.name(), reason: draw.text(), deviation: draw.yes() },
        Question::Serial { place: "front right".into() },
        Question::Finish { number: draw.below(99) as u32 },
        Question::Start { missing: "unit".into(), options: vec!["Birch 44".into(), "Lark 43".into()] },
        Question::Start { missing: "corner".into(), options: Vec::new() },
        Question::Acknowledge,
        Question::SpringRate {
            was: draw.quantity(),
            now: draw.quantity(),
            options: vec![
                ("the same turns".into(), None),
                ("the same preload force".into(), Some(draw.quantity())),
            ],
        },
        Question::WhatWasIt { name: draw.name() },
        Question::WhichJob {
            jobs: vec![(3, "Birch 44, front left".into()), (draw.below(99) as u32, "Lark 43".into())],
        },
    ];
    for doubt in doubts {
        for options in
            [vec![], vec!["two clicks".to_owned()], vec!["two clicks".to_owned(), "ten clicks".to_owned()]]
        {
            let wanted = draw.maybe(|_| "tighten foot nut".into()).unwrap_or_default();
            questions.push(Question::Which { options, doubt: doubt.clone(), wanted });
        }
    }
    questions
}

fn facts(draw: &mut Draw) -> Vec<Fact> {
    let sizes = draw.quantity();
    vec![
        Fact::Tool {
            name: draw.name(),
            tool: draw.maybe(|_| "hex key".into()),
            size: draw.yes().then(|| draw.quantity()),
            hold: draw.maybe(Draw::text),
        },
        Fact::Swap {
            tool: "13 mm".into(),
            part: draw.name(),
            verdict: draw.pick(&["fits", "marginal", "loose", "no"]).to_owned(),
            why: draw.text(),
        },
        Fact::Torque {
            name: draw.name(),
            limit: draw.yes().then(|| draw.limit()),
            nip: draw.maybe(|_| "short arm".into()),
            critical: draw.maybe(|_| "the shaft is hollow".into()),
        },
        Fact::Turn {
            name: draw.name(),
            doing: draw.pick(&["to undo", "one way only", "to count up"]).to_owned(),
            way: draw.way(),
            seen_from: draw.maybe(|_| "from below".into()),
        },
        Fact::Locker {
            name: draw.name(),
            grade: draw.maybe(|_| "medium".into()),
            put: draw.maybe(Draw::text),
            never: draw.maybe(|_| "on the needle".into()),
            open: draw.yes().then(|| draw.quantity()),
        },
        Fact::Setting {
            name: draw.name(),
            which: draw.pick(&["found", "now", "last time"]).to_owned(),
            value: draw.yes().then(|| draw.quantity()),
            text: draw.maybe(Draw::text),
        },
        Fact::Range {
            name: draw.name(),
            first: 0.0,
            last: draw.below(40) as f64,
            unit: draw.pick(&["click", "position", "turn", "bar"]).to_owned(),
            from: draw.pick(&["full in", "full in is 0", ""]).to_owned(),
            counted: draw.yes().then(|| draw.below(40) as f64),
            only: draw.yes().then(|| draw.way()),
        },
        Fact::Mark { name: draw.name(), lines_up: draw.text() },
        Fact::Why(draw.text()),
        Fact::Source { name: draw.name(), source: draw.text() },
        Fact::Stuck { name: draw.name(), rung: draw.text(), last: draw.yes() },
        Fact::Sizes { name: draw.name(), rows: vec![("bore".into(), sizes.say(), sizes.show())] },
        Fact::Time {
            what: "this step".into(),
            minutes: draw.yes().then(|| draw.below(500) as f64),
            to_go: draw.yes(),
        },
        Fact::Log { rows: vec![(format!("14:{:02}", draw.below(40) + 10), draw.text())] },
        Fact::Log { rows: Vec::new() },
        Fact::Worked { name: "conversion".into(), say: sizes.say(), show: vec![sizes.show()] },
        Fact::Help { phrases: vec!["done".into(), "how tight".into()] },
    ]
}

fn refusals(draw: &mut Draw) -> Vec<Refusal> {
    let mut refusals = vec![
        Refusal::WrongKind { said: draw.quantity(), wanted: "a torque".into() },
        Refusal::NotASetting { name: draw.name(), value: draw.quantity(), why: draw.text() },
        Refusal::NeedsValue { asks: "What did it click at?".into() },
        Refusal::NeverSkipped { name: draw.name() },
        Refusal::NotPast { name: draw.name(), first: draw.name() },
        Refusal::NotNow { why: draw.text() },
    ];
    for what in ["cautions", "everything", "records", "elsewhat"] {
        refusals.push(Refusal::NotGranted { what: what.into() });
    }
    for then in [
        Consequence::Recount,
        Consequence::Finding,
        Consequence::StaysOpen,
        Consequence::Branch,
        Consequence::Stop("Fetch the senior".into()),
    ] {
        let value = Quantity::new(draw.below(99) as f64, Unit::NewtonMetre);
        refusals.push(Refusal::OutOfLimits { name: draw.name(), value, limit: draw.limit(), then });
    }
    refusals
}

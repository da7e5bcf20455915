//! Figures, names, texts and cards drawn from a seed.

use sparehand::act::End;
use sparehand::bench::{Asks, RestoreCard, SettingRow, SettingsCard, StepCard, Value};
use sparehand::quantity::{Limit, Quantity, Unit};
use sparehand::rulebase::ReadBack;
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

    pub fn pick<'a>(&mut self, from: &[&'a str]) -> &'a str {
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

    pub fn maybe(&mut self, text: impl FnOnce(&mut Self) -> String) -> Option<String> {
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

    pub fn limit(&mut self) -> Limit {
        let middle = Quantity::new(self.below(80) as f64 + 10.0, Unit::NewtonMetre);
        match self.below(4) {
            0 => Limit { lo: None, ..Limit::around(middle, 2.0) },
            1 => Limit { hi: None, ..Limit::around(middle, 2.0) },
            2 => Limit::exactly(middle),
            _ => Limit::around(middle, 1.5),
        }
    }

    pub fn way(&mut self) -> Way {
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

    pub fn step(&mut self) -> StepCard {
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
    pub fn restore(&mut self) -> RestoreCard {
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
        match self.below(7) {
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
            4 => {
                card.wanted = Quantity::new(self.below(40) as f64 / 4.0, Unit::Turn);
                card.to_stop = self.yes().then_some((End::FullOut, Way::Anticlockwise));
                card.turn = self.yes().then_some((Way::Clockwise, card.wanted));
                card.length = Some(Quantity::new(41.5, Unit::Millimetre));
                card.datum = Some("perch to collar".to_owned());
            }
            5 => {
                card.wanted = Quantity::new(3.0, Unit::PositionStep);
                card.to_stop = Some((End::FullIn, Way::Anticlockwise));
                card.turn = Some((Way::Clockwise, Quantity::new(3.0, Unit::PositionStep)));
                card.passes = vec![1, 2];
            }
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

    pub fn settings(&mut self, which: ReadBack) -> SettingsCard {
        SettingsCard { which, rows: (0..3).map(|_| self.row()).collect(), asks: self.yes() }
    }
}

//! What the technician says next, from what the job waits for and what was said.

use super::{Technician, word};

/// Questions that anybody asks in mid-step.
const QUESTIONS: [&str; 10] = [
    "which way",
    "how tight",
    "what's next",
    "which tool",
    "what am I doing",
    "why",
    "what can go wrong",
    "say that again",
    "what is left",
    "help",
];
/// What is written down in between.
const NOTES: [&str; 4] = [
    "note the boot is torn",
    "note a stone chip on the carrier",
    "note old tape on the spring",
    "note it smells of fuel",
];
/// Answers in words.
const WORDS: [&str; 5] =
    ["Plover team", "hill climb saloon, car 17", "B44 0071", "knocks over bumps", "none"];

impl Technician {
    pub(super) fn next_line(&mut self) -> String {
        // A wish stands once the bench has said it back.
        if let Some((about, wanted)) = self.wishing.take()
            && self.last().contains("wanted, ")
        {
            self.hands.want(&about, wanted);
        }
        if self.paused {
            self.paused = false;
            return "resume".to_owned();
        }
        let waits = word(&self.now, "waiting_for").to_owned();
        let open_question = self.last().contains("yes or no");
        if !open_question && waits != "text" && self.dice.of_hundred(self.manner.between) {
            return self.something_between();
        }
        if let Some(line) = self.ahead(&waits).or_else(|| self.wish()).or_else(|| self.leave_it()) {
            return line;
        }
        self.entry(&waits)
    }

    /// Two steps in one breath, once it is known what the next one is: "knob grub's loose, knob's off".
    fn ahead(&mut self, waits: &str) -> Option<String> {
        let asked = self.said.last().is_some_and(|line| line == "what's next");
        if !asked || waits != "done" {
            return None;
        }
        let (here, next) = (Card::of(&self.step_card())?, Card::next(&self.last_as_said())?);
        (here.name.to_lowercase() != next.name).then(|| format!("{}, {}", here.closed(), next.closed()))
    }

    /// What the customer wants, while the wanted settings are read back: once for each adjuster at most.
    fn wish(&mut self) -> Option<String> {
        let asks = self.last().contains("settings wanted") && self.last().contains("yes or no");
        if !asks || !self.dice.of_hundred(self.manner.between) {
            return None;
        }
        let seen = self.hands.seen();
        let about =
            seen.iter().find(|about| about.contains("rebound") && !self.wished.contains(about))?.clone();
        let adjuster = self.hands.adjuster(&about, None);
        let wanted = self.dice.below(adjuster.travel as u64 + 1) as f64;
        self.wishing = Some((about.clone(), wanted));
        self.wished.push(about.clone());
        Some(format!("the customer wants {} at {wanted}", about.replace('-', " ")))
    }

    /// Out of limits, it is left as it is with a reason: now and then, and only where the bench offers it.
    fn leave_it(&mut self) -> Option<String> {
        let offered = self.last().contains("leave it and say why");
        let ways = [
            "leave it because the thread is worn",
            "leave it, the thread is worn",
            "skip it because the thread is worn",
        ];
        (offered && self.dice.of_hundred(15)).then(|| self.dice.one(&ways).to_owned())
    }

    fn something_between(&mut self) -> String {
        match self.dice.below(10) {
            0 => {
                self.paused = true;
                "pause".to_owned()
            }
            1 if self.taken_back < 12 => {
                self.taken_back += 1;
                "scratch that".to_owned()
            }
            2 | 3 => self.dice.one(&NOTES).to_owned(),
            4 => "the weather was fine at the hill on sunday".to_owned(),
            5 | 6 if Card::of(&self.step_card()).is_some() => "what's next".to_owned(),
            _ => self.dice.one(&QUESTIONS).to_owned(),
        }
    }

    fn entry(&mut self, waits: &str) -> String {
        match waits {
            "yes_or_no" => self.yes_or_no(),
            "text" => self.words(),
            "done" | "tool" => "done".to_owned(),
            "nothing" => "finish the job".to_owned(),
            _ => self.reading(waits),
        }
    }

    fn yes_or_no(&mut self) -> String {
        let no = self.step_asks() && self.dice.of_hundred(self.manner.out);
        if no { "no" } else { "yes" }.to_owned()
    }

    /// Whether it is the step's own question, and not one about what was said.
    fn step_asks(&self) -> bool {
        let last = self.last();
        !last.contains("understood") && !last.contains("close job") && !last.contains("settings")
    }

    fn words(&mut self) -> String {
        let last = self.last();
        if last.contains("why?") {
            return "the customer wants it so".to_owned();
        }
        if last.contains("serial") && last.contains("last three") {
            return "071".to_owned();
        }
        if last.contains("same turns") || last.contains("same force") || last.contains("ride height") {
            return "same turns".to_owned();
        }
        if last.contains("serial") {
            return "B44 0071".to_owned();
        }
        self.dice.one(&WORDS).to_owned()
    }

    fn reading(&mut self, waits: &str) -> String {
        let about = word(&self.now, "about").to_owned();
        let out = self.stuck < 20 && self.dice.of_hundred(self.manner.out);
        let other = self.dice.of_hundred(self.manner.other_unit);
        match waits {
            "torque" => {
                let wanted = self.limit().or_else(|| self.figure(&["n.m", "newton metres"])).unwrap_or(32.0);
                let value = if out { wanted * 1.5 } else { wanted };
                if other {
                    spoken(value / 1.355_818, 2, "foot pounds")
                } else {
                    spoken(value, 2, "newton metres")
                }
            }
            "length" => {
                let value = self.length(out);
                if other { spoken(value / 25.4, 4, "inches") } else { spoken(value, 2, "millimetres") }
            }
            "rate" => {
                let value = self.figure(&["n/mm", "newtons per millimetre"]);
                // A coil-over's spring, or where that is none of the card's, a fork's.
                let value =
                    value.filter(|_| self.stuck < 3).unwrap_or(if self.stuck < 3 { 70.0 } else { 4.8 });
                spoken(value, 1, "newtons per millimetre")
            }
            "pressure" => {
                let value = self.limit().or_else(|| self.figure(&["bar"])).unwrap_or(3.0);
                let value = if out { value + 1.5 } else { value };
                if other { spoken(value * 14.503_774, 1, "psi") } else { spoken(value, 2, "bar") }
            }
            "temperature" => spoken(if out { 38.0 } else { 20.0 }, 1, ""),
            "clicks" | "position" | "turns" => self.count(waits, &about, out),
            _ => spoken(self.figure(&[""]).unwrap_or(20.0), 1, ""),
        }
    }

    /// A length that the replies named, or one that a rule would show.
    fn length(&mut self, out: bool) -> f64 {
        let what =
            self.step_card().lines().find(|line| line.contains("  do ")).unwrap_or_default().to_owned();
        let before = self.hands.measured(&what).filter(|_| self.stuck < 9);
        let named = before.or_else(|| self.limit()).or_else(|| self.figure(&["mm", "millimetres"]));
        let value = named.unwrap_or(match self.stuck {
            0..=2 => 0.02,
            3..=5 => 2.0,
            _ => 120.0,
        });
        // Nobody can know of a length that is out where none was told.
        if out && named.is_some() {
            return value * 3.0;
        }
        self.hands.measure(&what, value);
        value
    }

    /// The card of the step in hand, and not what was answered in between.
    fn step_card(&self) -> String {
        let name = format!("[{}]", self.step);
        self.told.iter().rev().find(|text| text.contains(&name)).cloned().unwrap_or_default()
    }

    fn count(&mut self, waits: &str, about: &str, out: bool) -> String {
        let most = self.most();
        let known = self.hands.seen().iter().any(|seen| seen == about);
        if !known && most.is_none() && self.stuck < 3 {
            let name = about.replace('-', " ");
            return format!("how many {waits} has {name}");
        }
        if let Some(most) = self.no_setting() {
            self.hands.narrow(about, most);
        }
        let adjuster = self.hands.adjuster(about, most);
        let step = self.step_card().to_lowercase();
        let (value, set) = if step.contains("to its stop") {
            (adjuster.travel, false)
        } else if step.contains("seats")
            || step.contains("read the number")
            || step.contains("loose")
            || step.contains("until it stops")
        {
            (adjuster.found, false)
        } else {
            (adjuster.wanted, true)
        };
        // Beyond its travel, or, where it is to be set, off by a few: nobody can know of a count that is off by a few.
        let off = if set && self.dice.of_hundred(50) { 3.0 } else { 60.0 };
        // Turns have no end that a count could be beyond.
        let out = out && (set || waits != "turns");
        let value = if out { value + off } else { value };
        spoken(value, 2, if self.dice.of_hundred(30) && waits != "position" { waits } else { "" })
    }

    /// The highest setting there is, when the last one was none.
    fn no_setting(&self) -> Option<f64> {
        let text = self.told.iter().rev().find(|text| text.contains("no setting"))?;
        let (_, range) = text.rsplit_once("no setting")?;
        numbers(range).into_iter().map(|(value, _)| value).reduce(f64::max)
    }

    /// The most that was said of an adjuster's range, in answer to a question.
    fn most(&self) -> Option<f64> {
        let text = self
            .told
            .iter()
            .rev()
            .find(|text| text.contains("counted from") || text.contains("from full in"))?;
        numbers(text).into_iter().map(|(value, _)| value).reduce(f64::max)
    }

    /// The last answer as it came.
    fn last_as_said(&self) -> String {
        self.told.last().cloned().unwrap_or_default()
    }

    /// What a refusal says would have been right, on this step.
    fn limit(&self) -> Option<f64> {
        self.told.iter().rev().find_map(|text| {
            let text = text.to_lowercase();
            let (_, after) = text.rsplit_once("limit is ")?;
            let sentence = after.split(['\n']).next()?;
            numbers(sentence).first().map(|(value, _)| *value)
        })
    }

    /// The last number told on this step that stands before one of these words.
    fn figure(&self, units: &[&str]) -> Option<f64> {
        self.told.iter().rev().find_map(|text| {
            let text = text.to_lowercase();
            numbers(&text)
                .into_iter()
                .find(|(_, after)| units.iter().any(|unit| after.trim_start().starts_with(unit)))
                .map(|(value, _)| value)
        })
    }
}

/// A step's card, as far as closing it in few words goes.
struct Card {
    name: String,
    closed: &'static str,
}

impl Card {
    /// The card in an answer, if it is one of a part loosened or taken off.
    fn of(text: &str) -> Option<Self> {
        let (_, rest) = text.split_once("Step ")?;
        let (_, rest) = rest.split_once(": ")?;
        let (name, rest) = rest.split_once("  [")?;
        let (id, _) = rest.split_once(']')?;
        let deed = id.split_once('/')?.1;
        let closed = match deed.split('-').next()? {
            "loosen" => "loose",
            "remove" => "off",
            _ => return None,
        };
        Some(Self { name: name.to_owned(), closed })
    }

    /// The card of what comes next: "Next: loosen the foot nut."
    fn next(text: &str) -> Option<Self> {
        let sentence = text.split_once("Next: ")?.1.split(['.', ',', '\n']).next()?;
        let (verb, name) = sentence.split_once(" the ")?;
        let closed = match verb {
            "loosen" => "loose",
            "remove" | "unscrew" | "pull" | "lift" | "draw" => "off",
            _ => return None,
        };
        // "... the knob straight off": the name ends where the way begins.
        let way = |word: &&str| !matches!(*word, "straight" | "off" | "out" | "over" | "together");
        let name: Vec<&str> = name.split(' ').take_while(way).collect();
        Some(Self { name: name.join(" "), closed })
    }

    fn closed(&self) -> String {
        format!("{}'s {}", self.name, self.closed)
    }
}

/// Numbers in figures, each with the text after it.
fn numbers(text: &str) -> Vec<(f64, &str)> {
    let mut found = Vec::new();
    let mut rest = text;
    while let Some(at) = rest.find(|c: char| c.is_ascii_digit()) {
        let tail = &rest[at..];
        let end = tail.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(tail.len());
        let (figures, after) = tail.split_at(end);
        if let Ok(value) = figures.trim_end_matches('.').parse() {
            found.push((value, after));
        }
        rest = after;
    }
    found
}

/// A figure with its unit, in so many places at most.
fn spoken(value: f64, places: usize, unit: &str) -> String {
    let text = format!("{value:.places$}");
    let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    format!("{text} {unit}").trim_end().to_owned()
}

//! A transcript's text into its lines.

use super::Must;
use crate::session::{Moment, read_time};
use crate::source::{Place, Problem};

/// Which forms of the answers a transcript holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Answers {
    /// What is spoken.
    #[default]
    Said,
    /// What is shown.
    Shown,
    /// Both.
    Both,
}

/// What stands at its head.
#[derive(Debug, Clone, PartialEq)]
pub struct Head {
    /// When it begins.
    pub clock: Moment,
    /// Whether lines come by ear; typed otherwise.
    pub ear: bool,
    /// Which answers are written down.
    pub answers: Answers,
    /// Who works.
    pub by: Option<String>,
}

/// One line of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Item {
    /// Its number in the file, from 1.
    pub line: u32,
    /// As written.
    pub raw: String,
    /// What it is.
    pub kind: Kind,
}

/// What a line of a transcript is.
#[derive(Debug, Clone, PartialEq)]
pub enum Kind {
    /// Blank, a comment, or part of the head.
    Quiet,
    /// A line said.
    Said(String),
    /// Spoken in answer.
    Spoken(String),
    /// Shown in answer.
    Shown(String),
    /// What the answer must hold.
    Must(Must),
    /// The clock is set.
    At(Moment),
    /// The bench is dropped where it stands, and opened anew.
    Kill,
    /// The input ends, and the bench is opened anew.
    Reopen,
}

/// A transcript.
#[derive(Debug, Clone, PartialEq)]
pub struct Transcript {
    /// Its name, for messages.
    pub name: String,
    /// What stands at its head.
    pub head: Head,
    /// Its lines.
    pub items: Vec<Item>,
}

impl Transcript {
    /// Reads a transcript.
    ///
    /// # Errors
    /// Every line that is none of its kinds, with its place.
    pub fn parse(name: &str, text: &str) -> Result<Self, Vec<Problem>> {
        let mut reader = Reader::new(name);
        let items: Vec<Item> =
            (1..).zip(text.lines()).map(|(number, raw)| reader.item(number, raw)).collect();
        let head = reader.head();
        if reader.problems.is_empty() {
            Ok(Self { name: name.to_owned(), head, items })
        } else {
            Err(reader.problems)
        }
    }
}

/// Reads line by line: the clock goes on from what was said before.
struct Reader<'a> {
    name: &'a str,
    head: Option<Moment>,
    clock: Option<Moment>,
    ear: bool,
    answers: Answers,
    by: Option<String>,
    problems: Vec<Problem>,
}

impl<'a> Reader<'a> {
    fn new(name: &'a str) -> Self {
        let (answers, problems) = (Answers::Said, Vec::new());
        Self { name, head: None, clock: None, ear: false, answers, by: None, problems }
    }

    fn head(&mut self) -> Head {
        let clock = self.head.unwrap_or_else(|| {
            self.wrong(1, "no `clock:` at the head", "clock: 2026-03-02 08:00 +00:00");
            Moment::default()
        });
        Head { clock, ear: self.ear, answers: self.answers, by: self.by.clone() }
    }

    fn wrong(&mut self, line: u32, found: &str, expected: &str) {
        self.problems
            .push(Problem::wrong(Place::new(self.name, line, 1), found).expected(format!("`{expected}`")));
    }

    fn item(&mut self, line: u32, raw: &str) -> Item {
        Item { line, raw: raw.to_owned(), kind: self.kind(line, raw.trim()) }
    }

    fn kind(&mut self, line: u32, text: &str) -> Kind {
        if text.is_empty() || text.starts_with('#') {
            return Kind::Quiet;
        }
        let mut chars = text.chars();
        let mark = chars.next();
        let rest = || chars.as_str().trim_start().to_owned();
        match (mark, text) {
            (Some('>'), _) => Kind::Said(rest()),
            (Some('<'), _) => Kind::Spoken(rest()),
            (Some('|'), _) => Kind::Shown(rest()),
            (_, "kill") => Kind::Kill,
            (_, "reopen") => Kind::Reopen,
            _ => self.named(line, text),
        }
    }

    fn named(&mut self, line: u32, text: &str) -> Kind {
        if let Some(must) = Must::parse(text) {
            return Kind::Must(must);
        }
        if let Some(when) = text.strip_prefix("at ") {
            return self.at(line, when.trim());
        }
        match text.split_once(':').map(|(name, value)| (name, value.trim())) {
            Some(("clock", value)) => self.set_clock(line, value),
            Some(("lines", "by ear")) => self.ear = true,
            Some(("lines", "typed")) => self.ear = false,
            Some(("answers", "said")) => self.answers = Answers::Said,
            Some(("answers", "shown")) => self.answers = Answers::Shown,
            Some(("answers", "both")) => self.answers = Answers::Both,
            Some(("by", who)) => self.by = Some(who.to_owned()),
            _ => self.wrong(line, &format!("a line that is nothing known: `{text}`"), "> what is said"),
        }
        Kind::Quiet
    }

    fn set_clock(&mut self, line: u32, value: &str) {
        let read = read_time(&value.replacen(" +", "+", 1).replacen(" -", "-", 1)).or_else(|| short(value));
        match read {
            Some(clock) => (self.head, self.clock) = (Some(clock), Some(clock)),
            None => self.wrong(
                line,
                &format!("a time that cannot be read: `{value}`"),
                "clock: 2026-03-02 08:00 +00:00",
            ),
        }
    }

    fn at(&mut self, line: u32, when: &str) -> Kind {
        let moved = self.clock.and_then(|clock| moved(clock, when));
        match moved {
            Some(clock) => {
                self.clock = Some(clock);
                Kind::At(clock)
            }
            None => {
                self.wrong(line, &format!("a time that cannot be read: `{when}`"), "at 09:05` or `at +5 min");
                Kind::Quiet
            }
        }
    }
}

/// "2026-03-02 08:00 +00:00".
fn short(text: &str) -> Option<Moment> {
    Moment::parse_from_str(text, "%Y-%m-%d %H:%M %:z").ok()
}

/// The clock moved to a time of the same day, or on by a duration.
fn moved(clock: Moment, when: &str) -> Option<Moment> {
    let Some(by) = when.strip_prefix('+') else {
        let time = chrono::NaiveTime::parse_from_str(when, "%H:%M").ok()?;
        return clock.with_time(time).single();
    };
    let (figure, unit) = by.trim().split_once(' ')?;
    let figure: i64 = figure.parse().ok()?;
    let lasts = match unit.trim() {
        "s" => chrono::Duration::try_seconds(figure)?,
        "min" => chrono::Duration::try_minutes(figure)?,
        "h" => chrono::Duration::try_hours(figure)?,
        "d" => chrono::Duration::try_days(figure)?,
        _ => return None,
    };
    clock.checked_add_signed(lasts)
}

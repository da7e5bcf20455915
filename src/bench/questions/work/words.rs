//! The words of a question, with the figures, units and threads that stand among them.

use crate::quantity::{PressureBasis, Unit, figures};

/// A figure among the words.
#[derive(Debug, Clone, PartialEq)]
pub struct Figure {
    /// Its first word.
    pub start: usize,
    /// One past its last word, unit included.
    pub end: usize,
    /// The number.
    pub value: f64,
    /// The unit said.
    pub unit: Option<Unit>,
    /// Whether it was said as a fraction: of a tool's size that means inches.
    pub fraction: bool,
    /// Gauge or absolute, where it was said of a pressure.
    pub basis: Option<PressureBasis>,
    /// Words that look like a unit and are none ("newton metres a millimetre").
    pub strange: Option<String>,
}

/// A question's words.
#[derive(Debug, Clone, Default)]
pub struct Words {
    /// Lower case, without punctuation; an empty word stands for a break in the sentence.
    pub tokens: Vec<String>,
    /// Figures in the order said.
    pub figures: Vec<Figure>,
    /// Units that belong to no figure, each with its first word.
    pub units: Vec<(usize, Unit)>,
    /// Threads, each with its first word ("M10 x 1").
    pub threads: Vec<(usize, String)>,
}

/// The longest spoken number, in words.
const LONGEST: usize = 10;

impl Words {
    /// Reads a question.
    #[must_use]
    pub fn of(text: &str) -> Self {
        let mut words = Self { tokens: tokens(text), ..Self::default() };
        let mut at = 0;
        while at < words.tokens.len() {
            at = words
                .take_thread(at)
                .or_else(|| words.take_figure(at))
                .or_else(|| words.take_unit(at))
                .unwrap_or(at + 1);
        }
        words
    }

    /// The word at a place; empty at a break and outside.
    #[must_use]
    pub fn at(&self, place: usize) -> &str {
        self.tokens.get(place).map_or("", String::as_str)
    }

    /// Where a phrase stands, breaks passed over.
    #[must_use]
    pub fn find(&self, phrase: &str) -> Option<usize> {
        let wanted: Vec<&str> = phrase.split_whitespace().collect();
        (0..self.tokens.len()).find(|start| self.stands(*start, &wanted))
    }

    /// Whether these words stand from a place on.
    #[must_use]
    pub fn stands(&self, start: usize, wanted: &[&str]) -> bool {
        let mut place = start;
        !wanted.is_empty()
            && wanted.iter().enumerate().all(|(n, word)| {
                if n > 0 && self.at(place).is_empty() {
                    place += 1;
                }
                place += 1;
                same(self.at(place - 1), word)
            })
    }

    /// How many words of a cue stand in the question: 0 when one of its parts does not.
    #[must_use]
    pub fn cue(&self, cue: &str) -> usize {
        let parts: Vec<&str> = cue.split(" + ").collect();
        let all = parts.iter().all(|part| self.find(part).is_some());
        if all { parts.iter().map(|part| part.split_whitespace().count()).sum() } else { 0 }
    }

    fn slices(&self, at: usize, len: usize) -> Vec<&str> {
        self.tokens
            .get(at..(at + len).min(self.tokens.len()))
            .unwrap_or_default()
            .iter()
            .map(String::as_str)
            .collect()
    }

    fn take_thread(&mut self, at: usize) -> Option<usize> {
        let body = self.at(at).strip_prefix('m')?.to_owned();
        let (size, mut end) = match body.parse::<f64>() {
            Ok(size) => (size, at + 1),
            Err(_) if body.is_empty() => {
                number(&self.slices(at + 1, 3)).map(|(value, len)| (value, at + 1 + len))?
            }
            Err(_) => return self.written_thread(at, &body),
        };
        let mut text = format!("M{size}");
        if matches!(self.at(end), "by" | "x")
            && let Some((pitch, len)) = number(&self.slices(end + 1, 4))
        {
            text = format!("{text} x {pitch}");
            end += 1 + len;
        }
        self.threads.push((at, text));
        Some(end)
    }

    /// `m10x1`, as it is typed.
    fn written_thread(&mut self, at: usize, body: &str) -> Option<usize> {
        let (size, pitch) = body.split_once('x')?;
        let text = format!("M{} x {}", size.parse::<f64>().ok()?, pitch.parse::<f64>().ok()?);
        self.threads.push((at, text));
        Some(at + 1)
    }

    fn take_figure(&mut self, at: usize) -> Option<usize> {
        if counts_nothing(self.at(at)) || (self.at(at) == "one" && points(self.at(at.wrapping_sub(1)))) {
            return None;
        }
        let (tail, head) =
            self.at(at).char_indices().find(|(_, c)| c.is_alphabetic()).map_or((None, None), |(cut, _)| {
                let (head, tail) = self.at(at).split_at(cut);
                (Some(tail.to_owned()), head.parse::<f64>().ok())
            });
        if let (Some(value), Some(unit)) = (head, tail.as_deref().and_then(Unit::parse)) {
            return Some(self.keep(at, at + 1, value, Some(unit), false));
        }
        let tokens = self.slices(at, LONGEST);
        let reading = figures::read_number(&tokens).into_iter().next()?;
        let end = at + reading.len;
        let fraction = reading.form == figures::Form::Fraction;
        if let Some(unit) = reading.unit {
            return Some(self.keep(at, end, reading.value, Some(unit), fraction));
        }
        let skip = if fraction { self.joints(end) } else { 0 };
        let unit = self.unit_at(end + skip);
        if reading.form == figures::Form::Article && unit.is_none() {
            return None;
        }
        match unit {
            Some((unit, len)) => Some(self.keep(at, end + skip + len, reading.value, Some(unit), fraction)),
            None => Some(self.keep(at, end, reading.value, None, fraction)),
        }
    }

    /// The words between a fraction and its unit ("of an").
    fn joints(&self, at: usize) -> usize {
        (at..at + 2).take_while(|place| matches!(self.at(*place), "of" | "an" | "a")).count()
    }

    fn keep(&mut self, start: usize, end: usize, value: f64, unit: Option<Unit>, fraction: bool) -> usize {
        let (basis, strange, end) = (self.basis(end), unit.and_then(|unit| self.strange(unit, end)), end);
        self.figures.push(Figure { start, end, value, unit, fraction, basis, strange });
        end
    }

    fn basis(&self, end: usize) -> Option<PressureBasis> {
        (end..end + 3).find_map(|place| basis_word(self.at(place)))
    }

    /// A unit per unit that is not a unit of the table.
    fn strange(&self, unit: Unit, end: usize) -> Option<String> {
        if !matches!(self.at(end), "per" | "a" | "an" | "each") {
            return None;
        }
        let (below, _) = self.unit_at(end + 1)?;
        Some(format!("{} per {}", unit.words(2.0), below.words(1.0)))
    }

    fn take_unit(&mut self, at: usize) -> Option<usize> {
        let (unit, len) = self.unit_at(at)?;
        self.units.push((at, unit));
        Some(at + len)
    }

    /// The longest unit from a place on. A letter alone is no unit, and "in" is a little word.
    fn unit_at(&self, at: usize) -> Option<(Unit, usize)> {
        (1..=5).rev().find_map(|len| {
            let words = self.slices(at, len);
            if words.len() < len || words.iter().any(|word| word.is_empty()) {
                return None;
            }
            if let [only] = words.as_slice()
                && !self.may_be_unit(at, only)
            {
                return None;
            }
            Some((unit_of(&words)?, len))
        })
    }

    fn may_be_unit(&self, at: usize, word: &str) -> bool {
        match word {
            "in" => at + 1 >= self.tokens.len() || self.at(at + 1).is_empty(),
            "ratio" | "pos" | "second" => false,
            "n" | "c" | "f" | "k" | "h" => self.figures.last().is_none_or(|figure| figure.end <= at),
            one => one.len() > 1,
        }
    }
}

/// A unit of words; "mil" is a millimetre here, and "a" between two units is "per".
fn unit_of(words: &[&str]) -> Option<Unit> {
    let said = words.join(" ");
    let spelt = |between: &str| {
        let one = |word: &&str| match *word {
            "mil" | "mils" | "mm" => "millimetre".to_owned(),
            "a" | "an" | "each" => between.to_owned(),
            "kilos" | "kilo" if words.len() > 1 => "kilograms".to_owned(),
            "newton" if words.len() > 1 => "newtons".to_owned(),
            other => other.to_owned(),
        };
        words.iter().map(one).collect::<Vec<_>>().join(" ")
    };
    let plural = |text: String| text.replacen("millimetre per", "millimetres per", 1);
    Unit::parse(&said).or_else(|| Unit::parse(&plural(spelt("per")))).or_else(|| Unit::parse(&spelt("a")))
}

fn number(words: &[&str]) -> Option<(f64, usize)> {
    let found = figures::read_number(words).into_iter().next()?;
    (found.form != figures::Form::Article).then_some((found.value, found.len))
}

/// Numbers of order or of nobody.
fn counts_nothing(word: &str) -> bool {
    matches!(word, "" | "second" | "third" | "oh" | "o" | "about" | "around" | "just" | "maybe")
}

/// Words after which "one" is no number ("each one", "the other one", "this one").
fn points(word: &str) -> bool {
    matches!(
        word,
        "each" | "every" | "other" | "this" | "that" | "the" | "which" | "same" | "new" | "old" | "stiffer"
    )
}

/// A word that tells gauge from absolute.
pub fn basis_word(word: &str) -> Option<PressureBasis> {
    match word {
        "absolute" | "abs" => Some(PressureBasis::Absolute),
        "gauge" => Some(PressureBasis::Gauge),
        _ => None,
    }
}

/// The words, lower case; a comma or stop becomes a break, and "spring's" becomes "spring is".
fn tokens(text: &str) -> Vec<String> {
    let mut out = Vec::new();
    for raw in text.to_lowercase().replace('’', "'").replace(['–', '—'], " , ").split_whitespace() {
        let word = raw.trim_matches(|c: char| matches!(c, ',' | ';' | ':' | '?' | '!' | '(' | ')' | '"'));
        let word = word.trim_end_matches('.');
        match word.strip_suffix("'s") {
            Some(stem) => out.extend([stem.to_owned(), "is".to_owned()]),
            None if word.is_empty() => {}
            None => out.extend(hyphens(word)),
        }
        if raw.ends_with([',', ';', ':', '.', '?', '!']) {
            out.push(String::new());
        }
    }
    out
}

/// "thirty-two" is two words; "m10-1" and "-3" are one.
fn hyphens(word: &str) -> Vec<String> {
    if word.starts_with('-') || word.chars().any(|c| c.is_ascii_digit()) {
        return vec![word.to_owned()];
    }
    word.split('-').filter(|piece| !piece.is_empty()).map(str::to_owned).collect()
}

/// Whether two words are the same but for a plural.
fn same(a: &str, b: &str) -> bool {
    let stem = |word: &str| -> String {
        match word.strip_suffix('s') {
            Some(stem) if stem.len() > 2 && !stem.ends_with('s') => stem.to_owned(),
            _ => word.to_owned(),
        }
    };
    a == b || stem(a) == stem(b)
}

/// Figures as hearing took them, when the words are not there.
#[must_use]
pub fn spoken(said: &[crate::act::Said]) -> Vec<Figure> {
    let figure = |(n, said): (usize, &crate::act::Said)| Figure {
        start: 2 * n,
        end: 2 * n + 1,
        value: said.value,
        unit: said.unit.as_deref().and_then(Unit::parse),
        fraction: false,
        basis: None,
        strange: None,
    };
    said.iter().enumerate().map(figure).collect()
}

/// Whether hearing's figure is this one, in whichever unit it was put.
#[must_use]
pub fn same_figure(figure: &Figure, said: &crate::act::Said) -> bool {
    let near = |a: f64, b: f64| (a - b).abs() <= 1e-6 * b.abs().max(1.0);
    let unit = said.unit.as_deref().and_then(Unit::parse);
    let converted = figure.unit.zip(unit).and_then(|(own, unit)| own.convert(figure.value, unit).ok());
    near(figure.value, said.value) || converted.is_some_and(|value| near(value, said.value))
}

/// A figure as an act carries it.
#[must_use]
pub fn as_said(figure: &Figure) -> crate::act::Said {
    crate::act::Said { value: figure.value, unit: figure.unit.map(|unit| unit.name().to_owned()) }
}

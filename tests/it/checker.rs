//! Recomputes every figure of a job's log from the lines that went in. It imports nothing of the program: numbers,
//! units, limits and settings are read and worked out here a second time, from their definitions.
//!
//! Conversion factors: N.m from lbf.ft, 0.3048 m x 0.45359237 kg x 9.80665 m/s2; inch 25.4 mm (international yard and
//! pound agreement 1959; standard gravity, 3rd CGPM 1901); psi = lbf over square inch; bar = 100 kPa (NIST SP 811).

use serde_json::Value;
use std::collections::BTreeMap;

const POUND_FORCE: f64 = 0.453_592_37 * 9.806_65;
const FOOT: f64 = 0.3048;
const INCH_MM: f64 = 25.4;

/// What is wrong in a log, given the lines that went in; empty when all of it holds.
pub fn check(lines: &[String], log: &Value) -> Vec<String> {
    let mut wrong = Vec::new();
    let mut checker = Checker { lines, log, wrong: &mut wrong };
    checker.readings();
    checker.wishes();
    checker.settings();
    checker.times();
    checker.words();
    wrong
}

struct Checker<'a> {
    lines: &'a [String],
    log: &'a Value,
    wrong: &'a mut Vec<String>,
}

fn list<'a>(value: &'a Value, name: &str) -> &'a [Value] {
    value[name].as_array().map(Vec::as_slice).unwrap_or_default()
}

fn text<'a>(value: &'a Value, name: &str) -> &'a str {
    value[name].as_str().unwrap_or_default()
}

impl Checker<'_> {
    fn bad(&mut self, what: String) {
        self.wrong.push(what);
    }

    /// Every value in the lines of the log rests on the line that went in.
    fn readings(&mut self) {
        for line in list(self.log, "lines").to_vec() {
            let kept = match text(&line, "kind") {
                "reading" => line.clone(),
                "corrected" => line["now"].clone(),
                "deviated" if !line["value"].is_null() => line["value"].clone(),
                _ => continue,
            };
            if let Some(value) = kept["value"].as_f64() {
                self.value(&line, &kept, value);
                self.verdict(&kept, value);
            }
        }
    }

    fn value(&mut self, line: &Value, kept: &Value, value: f64) {
        let said = kept["said"].as_f64().unwrap_or(value);
        let heard = self.heard_for(line, said);
        let Some(heard) = heard else {
            return self.bad(format!("{said} is in no line before {}: {kept}", line["sequence"]));
        };
        let unit = text(kept, "unit");
        let said_unit = kept["said_unit"].as_str().unwrap_or(unit);
        let mut worked = convert(said, said_unit, unit);
        if text(kept, "said_from") == "full out" {
            let Some(travel) = kept["with_travel"].as_f64() else {
                return self.bad(format!("counted from full out without a travel: {kept}"));
            };
            worked = travel - said;
            if !heard.contains("out") {
                self.bad(format!("`{heard}` does not count from full out: {kept}"));
            }
        }
        if (worked - value).abs() > 1e-6 * value.abs().max(1.0) {
            self.bad(format!("`{heard}` is {worked} {unit}, kept as {value}: {kept}"));
        }
    }

    /// The line that brought a number: its own utterance, or one before it that it confirmed.
    fn heard_for(&self, line: &Value, said: f64) -> Option<String> {
        let own = text(line, "heard").to_owned();
        let before = list(self.log, "lines").iter().filter(|other| {
            other["sequence"].as_u64() < line["sequence"].as_u64() && !text(other, "heard").is_empty()
        });
        let earlier: Vec<String> = before.map(|other| text(other, "heard").to_owned()).collect();
        let mut all = std::iter::once(own).chain(earlier.into_iter().rev());
        all.find(|heard| self.went_in(heard) && numbers(heard).iter().any(|n| (n - said).abs() < 1e-9))
    }

    fn went_in(&self, heard: &str) -> bool {
        self.lines.iter().any(|line| line.split_whitespace().eq(heard.split_whitespace()))
    }

    fn verdict(&mut self, kept: &Value, value: f64) {
        let (lo, hi) = (kept["lo"].as_f64(), kept["hi"].as_f64());
        // Inclusive, and a figure that came through a conversion is not held to its last bit.
        let slack = 1e-9 * value.abs().max(1.0);
        let within = lo.is_none_or(|lo| value >= lo - slack) && hi.is_none_or(|hi| value <= hi + slack);
        let right: &[&str] = match (lo.or(hi).is_some(), within) {
            // Without a limit nothing is said of it, or a rule of the step's own has judged.
            (false, _) => &["free", "within", "out"],
            (true, true) => &["within"],
            (true, false) => &["out"],
        };
        if !right.contains(&text(kept, "verdict")) {
            self.bad(format!("verdict is {right:?}: {kept}"));
        }
    }

    fn wishes(&mut self) {
        for line in list(self.log, "lines").to_vec() {
            let Some(value) = line["value"].as_f64().filter(|_| text(&line, "kind") == "wanted") else {
                continue;
            };
            if text(&line, "whose") != "customer" {
                continue;
            }
            if text(&line, "said_from") == "full out" {
                continue;
            }
            if self.heard_for(&line, value).is_none() {
                self.bad(format!("a wish that nobody said: {line}"));
            }
        }
    }

    /// Found, wanted, left and travel are the last that stand in the lines.
    fn settings(&mut self) {
        let places = self.log["places"].as_object().cloned().unwrap_or_default();
        for (place, fields) in places {
            let stand = self.standing(&place);
            for row in list(&fields, "settings") {
                let about = text(row, "adjuster").to_owned();
                for (column, role) in [
                    ("found", "found"),
                    ("left", "left"),
                    ("travel", "travel"),
                    ("travel_again", "travel-again"),
                ] {
                    let wanted = stand.get(&(about.clone(), role.to_owned())).copied().flatten();
                    if row[column].as_f64() != wanted {
                        self.bad(format!(
                            "{about} {column}: {} in the table, {wanted:?} by the lines",
                            row[column]
                        ));
                    }
                }
                let wish = stand.get(&(about.clone(), "wanted".to_owned())).copied().flatten();
                let found = stand.get(&(about.clone(), "found".to_owned())).copied().flatten();
                if row["wanted"].as_f64() != wish.or(found) {
                    self.bad(format!("{about} wanted: {}, {:?} by the lines", row["wanted"], wish.or(found)));
                }
            }
        }
    }

    /// What stands at a place by the lines alone, those struck out left aside.
    fn standing(&self, place: &str) -> BTreeMap<(String, String), Option<f64>> {
        let mut stand = BTreeMap::new();
        for line in list(self.log, "lines") {
            if line["struck"] == true || text(line, "in_place") != place {
                continue;
            }
            let kept = match text(line, "kind") {
                "reading" => line,
                "corrected" => &line["now"],
                "deviated" => &line["value"],
                "wanted" => {
                    stand.insert(
                        (text(line, "about").to_owned(), "wanted".to_owned()),
                        line["value"].as_f64(),
                    );
                    continue;
                }
                _ => continue,
            };
            stand.insert(
                (text(kept, "about").to_owned(), text(kept, "role").to_owned()),
                kept["value"].as_f64(),
            );
        }
        stand
    }

    /// Durations are differences of the times that stand in the lines; numbers run on without a gap.
    fn times(&mut self) {
        for step in list(self.log, "steps").to_vec() {
            let (Some(shown), Some(closed)) = (seconds(text(&step, "shown")), seconds(text(&step, "closed")))
            else {
                continue;
            };
            let minutes = step["minutes"].as_f64().unwrap_or(f64::NAN);
            if ((closed - shown) / 60.0 - minutes).abs() > 1e-9 {
                self.bad(format!("{} took {} s: {step}", text(&step, "step"), closed - shown));
            }
        }
        for (at, line) in (1..).zip(list(self.log, "lines").to_vec()) {
            if line["sequence"].as_u64() != Some(at) {
                self.bad(format!("line {at} is numbered {}", line["sequence"]));
            }
        }
    }

    /// No words stand in the log that did not go in, and no event rests on a line that nobody said.
    fn words(&mut self) {
        for line in list(self.log, "lines").to_vec() {
            let heard = text(&line, "heard");
            if !heard.is_empty() && !self.went_in(heard) {
                self.bad(format!("`{heard}` never went in"));
            }
        }
    }
}

/// A value in another unit of its kind; the same when the units are.
fn convert(value: f64, from: &str, to: &str) -> f64 {
    if from == to { value } else { value * base(from) / base(to) }
}

/// One of a unit in N.m, mm, kPa, N/mm or turns.
fn base(unit: &str) -> f64 {
    match unit {
        "lbf.ft" => POUND_FORCE * FOOT,
        "lbf.in" => POUND_FORCE * FOOT / 12.0,
        "in" => INCH_MM,
        "bar" => 100.0,
        // N per square mm is MPa.
        "psi" => 1000.0 * POUND_FORCE / (INCH_MM * INCH_MM),
        "lbf/in" => POUND_FORCE / INCH_MM,
        "kgf/mm" => 9.806_65,
        "lb" => 0.453_592_37,
        "h" => 60.0,
        _ => 1.0,
    }
}

/// Seconds of an RFC 3339 time since some midnight long ago.
fn seconds(text: &str) -> Option<f64> {
    let (date, rest) = text.split_once('T')?;
    let mut date = date.split('-').map(|part| part.parse::<i64>());
    let (year, month, day) = (date.next()?.ok()?, date.next()?.ok()?, date.next()?.ok()?);
    let (time, offset) = match rest.find(['+', '-', 'Z']) {
        Some(at) => rest.split_at(at),
        None => (rest, ""),
    };
    let mut parts = time.split(':').map(|part| part.parse::<f64>());
    let seconds = parts.next()?.ok()? * 3600.0 + parts.next()?.ok()? * 60.0 + parts.next()?.ok()?;
    let sign = if offset.starts_with('-') { -1.0 } else { 1.0 };
    let mut offset =
        offset.trim_start_matches(['+', '-', 'Z']).split(':').filter_map(|part| part.parse::<f64>().ok());
    let ahead = sign * (offset.next().unwrap_or(0.0) * 3600.0 + offset.next().unwrap_or(0.0) * 60.0);
    Some(days(year, month, day) as f64 * 86_400.0 + seconds - ahead)
}

/// Days since 1 March of year 0, in the Gregorian calendar: a year that begins with March has its leap day last.
fn days(year: i64, month: i64, day: i64) -> i64 {
    let (year, month) = if month > 2 { (year, month - 3) } else { (year - 1, month + 9) };
    365 * year + year / 4 - year / 100 + year / 400 + (153 * month + 2) / 5 + day - 1
}

const SMALL: [&str; 20] = [
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
const TENS: [&str; 8] = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

/// Every number that a line says, in digits or in words, with "point" and "and a half".
pub fn numbers(line: &str) -> Vec<f64> {
    let lower = line.to_lowercase().replace([',', '?', '!'], " ");
    let words: Vec<&str> = lower.split_whitespace().collect();
    let (mut found, mut at) = (Vec::new(), 0);
    while at < words.len() {
        match number(&words[at..]) {
            Some((value, used)) => {
                found.push(value);
                at += used;
            }
            None => at += 1,
        }
    }
    found
}

fn number(words: &[&str]) -> Option<(f64, usize)> {
    let (mut value, mut used) = whole(words)?;
    if words.get(used) == Some(&"point") {
        let mut digits = String::from("0.");
        used += 1;
        while let Some(digit) =
            words.get(used).and_then(|word| SMALL[..10].iter().position(|name| name == word))
        {
            digits.push_str(&digit.to_string());
            used += 1;
        }
        value += digits.parse::<f64>().unwrap_or(0.0);
    }
    if words.get(used..used + 3) == Some(&["and", "a", "half"]) {
        return Some((value + 0.5, used + 3));
    }
    Some((value, used))
}

fn whole(words: &[&str]) -> Option<(f64, usize)> {
    let first = words.first()?;
    let figures: String = first.chars().take_while(|c| c.is_ascii_digit() || *c == '.').collect();
    if let Ok(value) = figures.trim_end_matches('.').parse() {
        return Some((value, 1));
    }
    if let Some(hundreds) = SMALL.iter().position(|name| name == first)
        && words.get(1) == Some(&"hundred")
    {
        let rest = if words.get(2) == Some(&"and") { 3 } else { 2 };
        let (below, used) = words.get(rest..).and_then(below_hundred).unwrap_or((0.0, 0));
        return Some((hundreds as f64 * 100.0 + below, if used == 0 { 2 } else { rest + used }));
    }
    below_hundred(words)
}

fn below_hundred(words: &[&str]) -> Option<(f64, usize)> {
    let first = words.first()?;
    if let Some(tens) = TENS.iter().position(|name| name == first) {
        let tens = (tens as f64 + 2.0) * 10.0;
        let one = words.get(1).and_then(|word| SMALL[..10].iter().position(|name| name == word));
        return Some(one.filter(|one| *one > 0).map_or((tens, 1), |one| (tens + one as f64, 2)));
    }
    let small = SMALL.iter().position(|name| name == first).or((*first == "zero").then_some(0))?;
    Some((small as f64, 1))
}

#[test]
fn the_checker_reads_numbers() {
    let read = numbers(
        "fourteen out, 32.5 newton metres, two and a half turns, one hundred and ten, six point two five",
    );
    assert_eq!(read, [14.0, 32.5, 2.5, 110.0, 6.25]);
    assert_eq!(numbers("twenty four, 32Nm, nought"), [24.0, 32.0, 0.0]);
}

#[test]
fn the_checker_knows_time_and_units() {
    // 1 March 2026 follows 28 February; an offset is taken off.
    assert_eq!(seconds("2026-03-01T00:00:00Z").unwrap() - seconds("2026-02-28T23:00:00Z").unwrap(), 3600.0);
    assert_eq!(
        seconds("2024-03-01T01:00:00+01:00").unwrap() - seconds("2024-02-28T00:00:00Z").unwrap(),
        2.0 * 86_400.0
    );
    // 1 lbf.ft = 1.355818 N.m and 1 psi = 6.894757 kPa, NIST SP 811, appendix B.8.
    assert!((convert(1.0, "lbf.ft", "N.m") - 1.355_818).abs() < 1e-6);
    assert!((convert(1.0, "psi", "kPa") - 6.894_757).abs() < 1e-6);
}

#[test]
fn the_checker_finds_what_is_wrong() {
    let lines = ["32 newton metres".to_owned()];
    let log = |value: f64, verdict: &str| {
        serde_json::json!({"lines": [{
            "sequence": 1, "kind": "reading", "heard": "32 newton metres", "value": value, "unit": "N.m", "lo": 30.0,
            "hi": 34.0, "verdict": verdict, "role": "torque", "about": "foot-nut",
        }]})
    };
    assert_eq!(check(&lines, &log(32.0, "within")), Vec::<String>::new());
    assert!(!check(&lines, &log(33.0, "within")).is_empty());
    assert!(!check(&lines, &log(32.0, "out")).is_empty());
    assert!(!check(&["33 newton metres".to_owned()], &log(32.0, "within")).is_empty());
}

//! A simulated technician. It knows what the job waits for, what about, and the words of the replies; the unit on its
//! bench is its own invention, with travels and settings that no card has. From that it works a job to its end.

mod dice;
mod hands;
mod process;
mod talk;

pub use dice::Dice;
pub use process::Process;

use hands::Hands;
use serde_json::Value;

/// A bench to talk to: takes a line, gives the answers as `pipe --json` prints them.
pub trait Bench {
    /// What was said when it was opened.
    fn opened(&mut self) -> Value;
    /// Says a line; the answers, the last of them its own.
    fn say(&mut self, line: &str) -> Vec<Value>;
    /// Ends the input and opens the bench anew.
    fn reopen(&mut self) -> Value;
}

/// How a technician goes about it.
#[derive(Debug, Clone, Copy)]
pub struct Manner {
    /// Speaks, and the ear hears; types otherwise.
    pub ear: bool,
    /// Of a hundred readings, how many are out of limits.
    pub out: u32,
    /// Of a hundred readings, how many come in another unit.
    pub other_unit: u32,
    /// Of a hundred lines, how many are something else in between: a question, a note, a taking back, a pause.
    pub between: u32,
}

/// A technician at work.
pub struct Technician {
    pub dice: Dice,
    pub manner: Manner,
    hands: Hands,
    /// Everything said, in order.
    pub said: Vec<String>,
    /// The conversation, both sides.
    pub heard: Vec<String>,
    /// The last answer.
    now: Value,
    /// What was said of the step in hand since it came up, oldest first.
    told: Vec<String>,
    step: String,
    stuck: u32,
    paused: bool,
    taken_back: u32,
    /// Adjusters that something was wished of.
    wished: Vec<String>,
    /// A wish that the bench has not said back yet.
    wishing: Option<(String, f64)>,
}

/// Lines after which a job that is not done never will be.
const MOST_LINES: usize = 1500;
/// Lines on one step after which something is wrong.
const MOST_ON_A_STEP: u32 = 60;

impl Technician {
    /// A technician of that seed.
    pub fn new(seed: u64, manner: Manner) -> Self {
        let mut dice = Dice::new(seed);
        let hands = Hands::new(&mut dice);
        let (now, step) = (Value::Null, String::new());
        let (said, heard, told) = (Vec::new(), Vec::new(), Vec::new());
        Self {
            dice,
            manner,
            hands,
            said,
            heard,
            now,
            told,
            step,
            stuck: 0,
            paused: false,
            taken_back: 0,
            wished: Vec::new(),
            wishing: None,
        }
    }

    /// Works a job from its start to its end.
    ///
    /// # Errors
    /// Where it came to a stand, with the last of what was said.
    pub fn work(&mut self, bench: &mut dyn Bench, start: &str) -> Result<(), String> {
        let opened = bench.opened();
        self.take(opened);
        self.speak(bench, start);
        while self.said.len() < MOST_LINES {
            if self.closed() {
                return Ok(());
            }
            if self.stuck > MOST_ON_A_STEP {
                return Err(self.stand(&format!("at a stand on {}", self.step)));
            }
            if self.dice.of_hundred(1) {
                let opened = bench.reopen();
                self.take(opened);
            }
            let line = self.next_line();
            self.speak(bench, &line);
        }
        Err(self.stand("no end"))
    }

    fn stand(&self, what: &str) -> String {
        let last = self.said.iter().rev().take(8).rev().cloned().collect::<Vec<_>>().join("\n  > ");
        format!("{what}\n  > {last}\n{:#}", self.now)
    }

    fn speak(&mut self, bench: &mut dyn Bench, line: &str) {
        self.said.push(line.to_owned());
        self.heard.push(format!("> {line}"));
        for answer in bench.say(line) {
            self.take(answer);
        }
    }

    /// Listens to an answer.
    fn take(&mut self, answer: Value) {
        let step = answer["step"].as_str().unwrap_or_default().to_owned();
        if step == self.step {
            self.stuck += 1;
        } else {
            (self.step, self.stuck) = (step, 0);
            self.told.clear();
        }
        self.heard.push(word(&answer, "show").to_owned());
        self.told.push(format!("{}\n{}", word(&answer, "say"), word(&answer, "show")));
        self.now = answer;
    }

    fn closed(&self) -> bool {
        let events = self.now["events"].as_array().map(Vec::as_slice).unwrap_or_default();
        events.iter().any(|event| event["kind"] == "job-closed")
    }

    /// What the last answer says and shows, in small letters.
    fn last(&self) -> String {
        self.told.last().map(|text| text.to_lowercase()).unwrap_or_default()
    }
}

fn word<'a>(answer: &'a Value, key: &str) -> &'a str {
    answer[key].as_str().unwrap_or_default()
}

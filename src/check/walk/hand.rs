//! The hand that drives the bench: an act or an opening in, the job after it out.

use super::trail::Trail;
use crate::act::{Act, ActName, Heard, Slots, Waiting};
use crate::bench::state::{Place, State};
use crate::bench::{Answer, Input, Past, worked};
use crate::event::{Event, Utterance};
use crate::rulebase::Pack;
use chrono::{DateTime, Duration, FixedOffset};

/// Time between two lines.
pub const PACE: i64 = 20;
/// Values kept for the judging of counts that are repeated.
const KEPT: usize = 6;

/// A job as it stands on a path.
#[derive(Clone)]
pub struct Node {
    /// The job.
    pub state: State,
    /// What it waits for.
    pub waiting: Waiting,
    /// The time.
    pub now: DateTime<FixedOffset>,
    /// What the path has done that the job does not keep.
    pub trail: Trail,
    /// Whether nothing was left out or done ahead on the way here.
    pub clean: bool,
}

impl Node {
    /// The step in hand.
    pub fn cursor(&self) -> Option<&str> {
        self.state.place()?.cursor.as_deref()
    }

    /// The unit on the bench.
    pub fn place(&self) -> Option<&Place> {
        self.state.place()
    }

    /// The same some seconds later.
    pub fn later(mut self, seconds: i64) -> Self {
        self.now += Duration::seconds(seconds);
        self
    }

    /// Lets go of what only the log tells: a path carries no more than its next steps need.
    fn slim(&mut self) {
        let record = &mut self.state.record;
        let spare = record.kept.len().saturating_sub(KEPT);
        record.kept.drain(..spare);
        record.shown.clear();
        record.closed.clear();
        record.findings.clear();
        record.reasons.clear();
        record.notes.clear();
        self.state.events.clear();
    }
}

/// What came of a line.
pub struct Step {
    /// The job after it.
    pub node: Node,
    /// The events, with the job before each that closed a step.
    pub events: Vec<Event>,
    /// The answer.
    pub answer: Answer,
}

/// The hand.
pub struct Hand<'a> {
    rules: &'a Pack,
    /// Whether the job carries its whole log, as taking back needs it.
    whole: bool,
    past: Past,
    lines: u64,
    /// Decisions asked of the bench.
    pub decisions: usize,
}

impl<'a> Hand<'a> {
    /// A hand on a pack's bench.
    pub fn new(rules: &'a Pack) -> Self {
        Self { rules, whole: false, past: Past { next_number: 1, last: None }, lines: 0, decisions: 0 }
    }

    /// The same with the whole log kept, or not.
    pub fn keep_log(&mut self, whole: bool) {
        self.whole = whole;
    }

    /// An empty bench.
    pub fn nothing() -> Node {
        Node {
            state: State::default(),
            waiting: Waiting::default(),
            now: DateTime::UNIX_EPOCH.fixed_offset(),
            trail: Trail::default(),
            clean: true,
        }
    }

    /// Says an act.
    pub fn act(&mut self, from: &Node, act: ActName, slots: Slots) -> Step {
        self.hear(from, Act { act, slots })
    }

    /// Says an act without slots.
    pub fn say(&mut self, from: &Node, act: ActName) -> Step {
        self.act(from, act, Slots::default())
    }

    fn hear(&mut self, from: &Node, act: Act) -> Step {
        let utterance = self.utterance();
        let heard = Heard::take(vec![act], 1.0);
        self.decide(from, Input::Heard { utterance, heard })
    }

    /// Opens the bench again on the job.
    pub fn opened(&mut self, from: &Node) -> Step {
        self.decide(from, Input::Opened)
    }

    fn utterance(&mut self) -> Utterance {
        self.lines += 1;
        Utterance { id: self.lines.to_string(), heard: None, understood: Vec::new(), ear: false }
    }

    fn decide(&mut self, from: &Node, input: Input) -> Step {
        self.decisions += 1;
        let now = from.now + Duration::seconds(PACE);
        let (decision, state) = worked(self.rules, &self.past, &from.state, &input, now);
        let (trail, clean) = (from.trail.clone(), from.clean);
        let mut node = Node { state, waiting: decision.waiting, now, trail, clean };
        if !self.whole {
            node.slim();
        }
        Step { node, events: decision.events, answer: decision.answer }
    }
}

//! The search: the main path, then every way of leaving it, each followed until it is back.

use super::answer::{self, rightly};
use super::candidates::Literals;
use super::deviate::{self, Leave};
use super::digest::digest;
use super::guards::note;
use super::hand::{Hand, Node, Step as Done};
use super::seen::{Both, Finish, Moment, Seen};
use crate::act::{ActName, Corner, Slots};
use crate::bench::state::{Place, Position};
use crate::check::finding::Look;
use crate::check::report::Walked;
use crate::check::run::each;
use crate::check::sink::Sink;
use crate::check::subject::OnProcedure;
use crate::event::{Event, Kept, Moved, Pending, Verdict};
use crate::rulebase::{ReadBack, Step};
use std::collections::{BTreeMap, BTreeSet, HashMap, HashSet, VecDeque};

/// Decisions for each step of a procedure, beside those for its steps: what the shortest needs.
const LEAST: usize = 40;

/// The walk of one procedure.
pub struct Explore<'a, 'b, 'c> {
    pub(super) on: OnProcedure<'a>,
    pub(super) hand: Hand<'a>,
    pub(super) literals: Literals,
    sink: &'b mut Sink<'c>,
    tops: Vec<&'a Step>,
    /// Every step by its id.
    by_id: HashMap<&'a str, &'a Step>,
    /// Digests of states seen.
    states: HashSet<u64>,
    /// Ways of leaving that were tried, by step.
    pub(super) tried: HashSet<(String, Leave)>,
    /// States whose ways of leaving are still to be tried.
    todo: VecDeque<Node>,
    /// The same, for the ways that are tried last.
    later: VecDeque<Node>,
    /// Steps that a state stands in `todo` for, and whether threadlocker stood in it.
    queued: HashSet<(String, bool)>,
    /// Decisions for each step.
    each: f64,
    shown: BTreeSet<String>,
    pub(super) guards: BTreeMap<String, Both>,
    accepts: BTreeMap<String, Both>,
    /// A value that each step has refused.
    pub(super) refused: BTreeMap<String, f64>,
    endless: BTreeSet<String>,
    pub(super) lost: BTreeSet<String>,
    pub(super) unstopped: BTreeSet<String>,
    walked: Walked,
    cut: bool,
    /// Whether a path came as far as the settings as left, which an adjuster held up.
    held_up: bool,
}

/// Walks a procedure, raising what the walk finds.
pub fn walk<'a>(on: &OnProcedure<'a>, each: f64, sink: &mut Sink<'_>) -> Walked {
    let mut explore = Explore {
        on: *on,
        hand: Hand::new(on.pack),
        literals: Literals::of(on),
        sink,
        tops: on.procedure.phases.iter().flat_map(|phase| &phase.steps).collect(),
        by_id: on.steps.iter().map(|step| (step.id.as_str(), *step)).collect(),
        states: HashSet::new(),
        tried: HashSet::new(),
        todo: VecDeque::new(),
        later: VecDeque::new(),
        queued: HashSet::new(),
        each,
        shown: BTreeSet::new(),
        guards: BTreeMap::new(),
        accepts: BTreeMap::new(),
        refused: BTreeMap::new(),
        endless: BTreeSet::new(),
        lost: BTreeSet::new(),
        unstopped: BTreeSet::new(),
        walked: Walked { procedures: 1, steps: on.steps.len(), ..Walked::default() },
        cut: false,
        held_up: false,
    };
    explore.run();
    explore.walked
}

impl<'a> Explore<'a, '_, '_> {
    fn run(&mut self) {
        if let Some(begun) = self.begin() {
            self.follow(begun);
            self.first();
            self.second();
        }
        self.walked.states = self.states.len();
        self.walked.decisions = self.hand.decisions;
        self.walked.cut = usize::from(self.cut);
        self.tell();
    }

    /// The ways on which harm can come.
    fn first(&mut self) {
        while let Some(node) = self.todo.pop_front() {
            if self.is_over() {
                return;
            }
            deviate::from(self, &node);
            self.later.push_back(node);
        }
    }

    /// The other ways; values that turn a guard last, and only while there is one to turn.
    fn second(&mut self) {
        let mut turning = Vec::new();
        while let Some(node) = self.later.pop_front() {
            if self.is_over() {
                return;
            }
            deviate::also(self, &node);
            self.first();
            turning.push(node);
        }
        for node in turning.iter().rev() {
            if self.is_undecided() && !self.is_over() {
                deviate::turned(self, node);
                self.first();
            }
        }
        for node in &turning {
            if !self.is_over() {
                deviate::refused(self, node);
            }
        }
        if !self.is_over() {
            deviate::undo(self);
        }
    }

    /// Whether a guard or a judgement was seen one way only.
    pub(super) fn is_undecided(&self) -> bool {
        let one_way = |both: Option<&Both>| both.is_none_or(|both| !(both.yes && both.no));
        self.on.steps.iter().any(|step| {
            step.when.is_some() && one_way(self.guards.get(&step.id))
                || step.accept.is_some() && one_way(self.accepts.get(&step.id))
        })
    }

    /// Whether the bound is reached.
    fn is_over(&mut self) -> bool {
        let over = self.hand.decisions > LEAST + (self.each * self.on.steps.len() as f64) as usize;
        self.cut |= over;
        over
    }

    fn begin(&mut self) -> Option<Node> {
        let done = self.start();
        done.node.place().is_some().then(|| self.arrive(&Hand::nothing(), done))
    }

    /// The job just begun, shown to no finding.
    pub(super) fn begun(&mut self) -> Option<Node> {
        Some(self.start().node).filter(|node| node.place().is_some())
    }

    fn start(&mut self) -> Done {
        let slots = Slots {
            procedure: Some(self.on.procedure.id.clone()),
            unit: Some(self.on.card.id.clone()),
            corner: Some(Corner::FrontLeft),
            ..Slots::default()
        };
        self.hand.act(&Hand::nothing(), ActName::Start, slots)
    }

    /// Keeps a state to be left in other ways, if it is the first at its step.
    fn keep(&mut self, node: Node) {
        let wet = !node.state.record.locked.is_empty();
        if let Some(cursor) = node.cursor().map(str::to_owned)
            && node.state.progress.pending.is_none()
            && self.queued.insert((cursor, wet))
        {
            self.todo.push_back(node);
        }
    }

    /// Takes what came of a line: moments are shown to the findings, and what was put in hand is noted.
    pub(super) fn arrive(&mut self, before: &Node, done: Done) -> Node {
        let mut node = done.node;
        for event in &done.events {
            match event {
                Event::StepDone { step, moved, .. } => self.closed(before, &mut node, step, moved),
                Event::Deviated { step, moved, .. } => {
                    node.clean = false;
                    self.closed(before, &mut node, step, moved);
                }
                Event::Skipped { .. } => node.clean = false,
                Event::Shown { step, .. } => {
                    self.shown.insert(step.clone());
                }
                Event::ReadBack { which } => {
                    node.trail.said_back.insert(which.clone());
                    if which == "left" {
                        node.trail.unsaid.clear();
                    }
                }
                Event::Reading(kept) => self.judged(kept),
                _ => {}
            }
        }
        self.passed(&node);
        node
    }

    fn judged(&mut self, kept: &Kept) {
        let Some(step) = &kept.step else { return };
        let both = self.accepts.entry(step.clone()).or_default();
        match kept.verdict {
            Verdict::Out => {
                both.no = true;
                if let Some(value) = kept.value {
                    self.refused.insert(step.clone(), value);
                }
            }
            Verdict::Within | Verdict::Free => both.yes = true,
        }
    }

    fn closed(&mut self, before: &Node, node: &mut Node, id: &str, moved: &[Moved]) {
        let Some(step) = self.step(id) else { return };
        if let Some(place) = before.place() {
            let locked = minutes(node);
            let moment = Moment {
                on: self.on,
                step,
                before: place,
                trail: &before.trail,
                locked: &locked,
                clean: node.clean,
            };
            each(self.sink, |look, sink| {
                if let Look::Closing(look) = look {
                    look(&moment, sink)
                }
            });
        }
        let safe = self.on.procedure.phase_of(&step.id).is_some_and(|phase| phase.makes_safe);
        node.trail.closed(self.on.card, step, safe, moved);
    }

    /// Notes which guards held and which were passed by.
    fn passed(&mut self, node: &Node) {
        let (Some(place), Some(cursor)) = (node.place(), node.cursor()) else { return };
        if !self.literals.eyes.any {
            return;
        }
        let (mut guards, mut here) = (std::mem::take(&mut self.guards), false);
        for phase in &self.on.procedure.phases {
            note(&phase.steps, place, cursor, &mut here, &mut guards);
        }
        self.guards = guards;
    }

    /// Follows right answers until a state that was seen, or the end. Gives the node where it stopped.
    pub(super) fn follow(&mut self, from: Node) -> Node {
        self.walked.paths += 1;
        let mut node = from;
        let most = 3 * self.on.steps.len() + 20;
        for turn in 0.. {
            if !node.state.progress.open {
                self.walked.ended += 1;
                break;
            }
            if !self.states.insert(digest(&node, &self.tops, &self.literals.eyes)) {
                break;
            }
            if matches!(node.state.progress.pending, Some(Pending::Finish)) {
                self.finished(&node);
            }
            if turn > most || self.is_over() {
                self.stuck(&node, turn > most);
                break;
            }
            let Some(done) = rightly(&mut self.hand, &self.on, &self.literals, &node) else {
                self.stuck(&node, true);
                break;
            };
            let still = done.events.iter().all(|event| !moves(event));
            let next = self.arrive(&node, done);
            if still && next.cursor() == node.cursor() {
                self.stuck(&node, true);
                break;
            }
            self.keep(std::mem::replace(&mut node, next));
        }
        node
    }

    fn stuck(&mut self, node: &Node, truly: bool) {
        // The bench takes no settings as left while an adjuster is not set: that is said of the adjuster.
        let left = node
            .cursor()
            .and_then(|id| self.step(id))
            .is_some_and(|step| step.reads_back == Some(ReadBack::Left));
        if truly && left && node.place().is_some_and(unset) {
            self.held_up = true;
            return self.finished(node);
        }
        if let (Some(cursor), true, true) = (node.cursor(), truly, node.clean) {
            self.endless.insert(cursor.to_owned());
        }
    }

    fn finished(&mut self, node: &Node) {
        let Some(place) = node.place() else { return };
        if node.clean {
            let finish = Finish { on: self.on, place, trail: &node.trail };
            each(self.sink, |look, sink| {
                if let Look::End(look) = look {
                    look(&finish, sink)
                }
            });
        }
    }

    fn tell(&mut self) {
        let seen = Seen {
            on: self.on,
            shown: &self.shown,
            guards: &self.guards,
            accepts: &self.accepts,
            endless: &self.endless,
            lost: &self.lost,
            unstopped: &self.unstopped,
            ended: self.walked.ended > 0 || self.held_up,
            cut: self.cut,
        };
        each(self.sink, |look, sink| {
            if let Look::Walk(look) = look {
                look(&seen, sink)
            }
        });
    }

    /// Whether a way of leaving a step was not tried yet; it counts as tried from here on.
    pub(super) fn fresh(&mut self, step: &str, leave: Leave) -> bool {
        self.tried.insert((step.to_owned(), leave))
    }

    /// The step of that id.
    pub(super) fn step(&self, id: &str) -> Option<&'a Step> {
        self.by_id.get(id).copied()
    }

    /// The value that closes a step rightly, where it wants one.
    pub(super) fn right_value(&mut self, node: &Node, step: &Step) -> Option<f64> {
        let done = rightly(&mut self.hand, &self.on, &self.literals, node)?;
        answer::closed_with(&done, step)
    }
}

/// Whether an adjuster was moved and stands nowhere that was chosen.
fn unset(place: &Place) -> bool {
    place
        .adjusters
        .values()
        .any(|known| known.position != Position::Uncounted && known.left_where_it_stands().is_none())
}

/// Whether an event moves the job on.
fn moves(event: &Event) -> bool {
    event.changes_job()
        || matches!(
            event,
            Event::Acknowledged { .. } | Event::JobClosed { .. } | Event::Opened { .. } | Event::Shown { .. }
        )
}

fn minutes(node: &Node) -> BTreeMap<String, f64> {
    let locked = node.state.record.locked.iter();
    locked
        .map(|((_, part), one)| (part.clone(), (node.now - one.at).num_milliseconds() as f64 / 60_000.0))
        .collect()
}

//! The ways of leaving a path, each tried once a step and followed until it is back.

use super::answer;
use super::candidates::others;
use super::explore::Explore;
use super::hand::Node;
use crate::act::{ActName, Slots, WaitingFor};
use crate::bench::Part as Said;
use crate::bench::state::{Fitting, PartState};
use crate::event::{Event, Pending};
use crate::rulebase::{Deed, Step};

/// A way of leaving a path.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Leave {
    /// No, then right answers.
    No,
    /// No, long after it should have been said.
    LateNo,
    /// No every time, until the bench says to stop; then left as it is, with a reason.
    Never,
    /// A value below the limit.
    Under,
    /// A value above the limit.
    Over,
    /// Another value that an expression can tell from the right one.
    Other(u8),
    /// Left out.
    Skip,
    /// The step before.
    Back,
    /// The last line taken back.
    Undo,
    /// A later step told first.
    Ahead,
    /// The bench opened again.
    Opened,
    /// The bench opened again the next day.
    NextDay,
    /// What to do when it will not move, to the end of its ladder.
    Stuck,
    /// The main answer, only later.
    Late,
}

/// How many steps of a procedure are left by ways that do not depend on what the pack says: they are tried at steps
/// spread over it.
const SAMPLED: usize = 8;
/// Long enough for any open time.
const LONG: i64 = 25 * 60 * 60;

/// Tries the ways of leaving a state on which harm can come: no, out of limits, too late, without what makes safe.
pub fn from(explore: &mut Explore<'_, '_, '_>, node: &Node) {
    let Some(step) = left(explore, node) else { return };
    no(explore, node, step);
    numbers(explore, node, step);
    if matches!(step.deed, Deed::Vent | Deed::Prove | Deed::Release) {
        skip(explore, node, step);
    }
}

/// Tries the other ways of leaving a state.
pub fn also(explore: &mut Explore<'_, '_, '_>, node: &Node) {
    let Some(step) = left(explore, node) else { return };
    opened(explore, node, step);
    late(explore, node, step);
    skip(explore, node, step);
    stuck(explore, node, step);
    if sampled(explore, step) {
        back(explore, node, step);
        ahead(explore, node, step);
    }
}

/// The step in hand, where it can be left: no question is open, and there is work to do.
fn left<'a>(explore: &Explore<'a, '_, '_>, node: &Node) -> Option<&'a Step> {
    if node.state.progress.pending.is_some() || node.waiting.kind == WaitingFor::Nothing {
        return None;
    }
    node.cursor().and_then(|id| explore.step(id))
}

/// Whether a step is one of those that are left by every way.
pub(super) fn sampled(explore: &Explore<'_, '_, '_>, step: &Step) -> bool {
    let all = explore.on.steps.len();
    let stride = all.div_ceil(SAMPLED).max(1);
    explore.on.steps.iter().position(|one| one.id == step.id).is_some_and(|at| at % stride == 0)
}

fn no(explore: &mut Explore<'_, '_, '_>, node: &Node, step: &Step) {
    if node.waiting.kind != WaitingFor::YesOrNo || step.reads_back.is_some() {
        return;
    }
    if explore.fresh(&step.id, Leave::No) {
        let lean = node.clone();
        let done = explore.hand.say(&lean, ActName::Deny);
        let next = explore.arrive(&lean, done);
        explore.follow(next);
    }
    if is_locked_up(node) && explore.fresh(&step.id, Leave::LateNo) {
        let lean = node.clone().later(LONG);
        let done = explore.hand.say(&lean, ActName::Deny);
        let next = explore.arrive(&lean, done);
        explore.follow(next);
    }
    if explore.fresh(&step.id, Leave::Never) {
        never(explore, node, step, &|explore, node| explore.hand.say(node, ActName::Deny));
    }
}

/// Whether threadlocker stands on something that is tight: a loop may undo it after its open time.
fn is_locked_up(node: &Node) -> bool {
    let tight = |part: &PartState| part.locked && matches!(part.fitting, Fitting::Torqued | Fitting::Nipped);
    node.place().is_some_and(|place| {
        place.parts.values().any(tight) && place.parts.values().all(|part| !part.locked || tight(part))
    })
}

/// Whether threadlocker stands on anything.
fn is_wet(node: &Node) -> bool {
    !node.state.record.locked.is_empty()
}

/// Fails a step until the bench says to stop or has no other steps to give, then leaves it as it is.
fn never(
    explore: &mut Explore<'_, '_, '_>,
    node: &Node,
    step: &Step,
    fail: &dyn Fn(&mut Explore<'_, '_, '_>, &Node) -> super::hand::Step,
) {
    let mut here = node.clone();
    for _ in 0..step.tries.max(2) + 2 {
        let done = fail(explore, &here);
        let stopped = done.events.iter().any(|event| match event {
            Event::Finding { text, .. } => step.stop.as_deref() == Some(text.as_str()),
            _ => false,
        });
        here = explore.arrive(&here, done);
        if stopped {
            return leave(explore, &here);
        }
        let Some(back) = to(explore, here.clone(), step) else { return };
        here = back;
    }
    if !step.fails.is_empty() {
        explore.unstopped.insert(step.id.clone());
    }
    leave(explore, &here);
}

/// Right answers until the step is in hand again.
fn to(explore: &mut Explore<'_, '_, '_>, from: Node, step: &Step) -> Option<Node> {
    let mut node = from;
    for _ in 0..4 * step.fails.len() + 8 {
        if node.cursor() == Some(step.id.as_str()) && node.state.progress.pending.is_none() {
            return Some(node);
        }
        let done = answer::rightly(&mut explore.hand, &explore.on, &explore.literals, &node)?;
        node = explore.arrive(&node, done);
    }
    None
}

/// Leaves the step in hand as it is, with a reason and a second utterance where they are asked for.
fn leave(explore: &mut Explore<'_, '_, '_>, node: &Node) {
    let done = explore.hand.say(node, ActName::Skip);
    let mut next = explore.arrive(node, done);
    for _ in 0..2 {
        if matches!(next.state.progress.pending, Some(Pending::Deviation { .. } | Pending::Skip { .. })) {
            let reason = matches!(next.waiting.kind, WaitingFor::Text);
            let done = if reason {
                answer::words(&mut explore.hand, &next)
            } else {
                explore.hand.say(&next, ActName::Confirm)
            };
            next = explore.arrive(&next, done);
        }
    }
}

fn numbers(explore: &mut Explore<'_, '_, '_>, node: &Node, step: &Step) {
    let Some(read) = step.read.as_ref().filter(|_| is_number(node.waiting.kind)) else { return };
    if let Some(limit) = read.limit {
        let wide = limit.hi.zip(limit.lo).map_or(10.0, |(hi, lo)| (hi - lo).max(1.0)) + 1.0;
        let under = limit.lo.map(|lo| lo - wide).filter(|under| *under >= 0.0);
        for (value, way) in [(under, Leave::Under), (limit.hi.map(|hi| hi + wide), Leave::Over)] {
            if let Some(value) = value
                && explore.fresh(&step.id, way)
            {
                out(explore, node, value);
            }
        }
        if let Some(value) = limit.hi.map(|hi| hi + wide)
            && !read.recount
            && explore.fresh(&step.id, Leave::Never)
        {
            never(explore, node, step, &|explore, node| answer::value(&mut explore.hand, node, value));
        }
    }
}

/// A value out of limits, and the right one after it.
fn out(explore: &mut Explore<'_, '_, '_>, node: &Node, value: f64) {
    let lean = node.clone();
    let done = answer::value(&mut explore.hand, &lean, value);
    let next = explore.arrive(&lean, done);
    explore.follow(next);
}

/// Other values that an expression may tell from the right one, while an expression has not been seen both ways.
pub fn turned(explore: &mut Explore<'_, '_, '_>, node: &Node) {
    let Some(step) = &left(explore, node).filter(|_| is_number(node.waiting.kind)) else { return };
    if !explore.fresh(&step.id, Leave::Other(u8::MAX)) {
        return;
    }
    let Some(right) = explore.right_value(node, step) else { return };
    let on = explore.on;
    for value in others(&on, node, step, &explore.literals.clone(), right) {
        if !explore.is_undecided() {
            break;
        }
        out(explore, node, value);
    }
}

/// A value that the step's own judgement refuses, every time.
pub fn refused(explore: &mut Explore<'_, '_, '_>, node: &Node) {
    let Some(step) = &left(explore, node) else { return };
    if step.accept.is_some()
        && let Some(value) = explore.refused.get(&step.id).copied()
        && explore.fresh(&step.id, Leave::Never)
    {
        never(explore, node, step, &|explore, node| answer::value(&mut explore.hand, node, value));
    }
}

/// The main answer after threadlocker has stood too long, or a guard's time has run.
fn late(explore: &mut Explore<'_, '_, '_>, node: &Node, step: &Step) {
    let matters = explore.literals.eyes.any && is_wet(node);
    if !matters || !explore.fresh(&step.id, Leave::Late) {
        return;
    }
    // What stands too long by the technician's own doing is told by the bench, and is no fault of the pack.
    let lean = Node { clean: false, ..node.clone().later(LONG) };
    if let Some(mut done) = answer::rightly(&mut explore.hand, &explore.on, &explore.literals, &lean) {
        done.node.clean = false;
        let next = explore.arrive(&lean, done);
        explore.follow(next);
    }
}

/// Leaves the step out. A path without a step that makes safe goes on to the end: nothing may be let go on it.
fn skip(explore: &mut Explore<'_, '_, '_>, node: &Node, step: &Step) {
    if !explore.fresh(&step.id, Leave::Skip) {
        return;
    }
    let lean = node.clone();
    let done = explore.hand.say(&lean, ActName::Skip);
    let mut next = explore.arrive(&lean, done);
    for _ in 0..2 {
        if matches!(next.state.progress.pending, Some(Pending::Skip { .. })) {
            let reason = matches!(next.waiting.kind, WaitingFor::Text);
            let done = if reason {
                answer::words(&mut explore.hand, &next)
            } else {
                explore.hand.say(&next, ActName::Confirm)
            };
            next = explore.arrive(&next, done);
        }
    }
    let left_out = next.place().is_some_and(|place| place.closed.contains_key(&step.id));
    if left_out && matches!(step.deed, Deed::Vent | Deed::Prove | Deed::Release) {
        explore.follow(next);
    }
}

/// The bench opened again, at once and the next day: it must know where it stands.
fn opened(explore: &mut Explore<'_, '_, '_>, node: &Node, step: &Step) {
    for (way, gone) in [(Leave::Opened, 0), (Leave::NextDay, LONG)] {
        let worth = gone == 0
            || is_wet(node)
            || node.place().is_some_and(|place| place.parts.values().any(|part| part.safe));
        if !worth || !explore.fresh(&step.id, way) {
            continue;
        }
        let lean = node.clone().later(gone);
        let done = explore.hand.opened(&lean);
        let told = done
            .answer
            .parts
            .iter()
            .any(|part| matches!(part, Said::Step(_) | Said::Question(_) | Said::Caution(_)));
        let next = explore.arrive(&lean, done);
        if !told || next.waiting.kind == WaitingFor::Nothing {
            explore.lost.insert(step.id.clone());
        }
        explore.follow(next);
    }
}

/// What to do when it will not move, rung by rung and once more.
fn stuck(explore: &mut Explore<'_, '_, '_>, node: &Node, step: &Step) {
    let Some(about) = &step.about else { return };
    let rungs = explore.on.card.stuck(about).len();
    if rungs == 0 || !explore.fresh(about, Leave::Stuck) {
        return;
    }
    let mut here = node.clone();
    for _ in 0..=rungs {
        let done = explore.hand.say(&here, ActName::AskStuck);
        here = explore.arrive(&here, done);
    }
    if here.cursor() != Some(step.id.as_str()) {
        explore.lost.insert(step.id.clone());
    }
}

/// The step before, and from there on.
fn back(explore: &mut Explore<'_, '_, '_>, node: &Node, step: &Step) {
    if !explore.fresh(&step.id, Leave::Back) {
        return;
    }
    let lean = node.clone();
    let done = explore.hand.say(&lean, ActName::Back);
    let next = explore.arrive(&lean, done);
    let known = next.cursor().is_some_and(|id| explore.step(id).is_some());
    if !known {
        explore.lost.insert(step.id.clone());
    }
}

/// The last line taken back, at steps spread over the main path: the job stands at a step and has something to say.
pub fn undo(explore: &mut Explore<'_, '_, '_>) {
    explore.hand.keep_log(true);
    let mut node = explore.begun();
    for _ in 0..2 * explore.on.steps.len() {
        let here = node.as_ref().filter(|node| node.state.progress.open);
        let Some(step) = here.and_then(|node| node.cursor()).and_then(|id| explore.step(id)) else {
            break;
        };
        let Some(from) = node else { break };
        if sampled(explore, step) && explore.fresh(&step.id, Leave::Undo) {
            let done = explore.hand.say(&from, ActName::Undo);
            if done.node.place().is_some_and(|place| place.cursor.is_none()) {
                explore.lost.insert(step.id.clone());
            }
        }
        node =
            answer::rightly(&mut explore.hand, &explore.on, &explore.literals, &from).map(|done| done.node);
    }
    explore.hand.keep_log(false);
}

/// The next step of another part told first: it is taken in its order, or refused.
fn ahead(explore: &mut Explore<'_, '_, '_>, node: &Node, step: &Step) {
    let here = explore.on.steps.iter().position(|one| one.id == step.id).unwrap_or_default();
    let later =
        explore.on.steps.iter().skip(here + 1).find(|one| one.about.is_some() && one.about != step.about);
    let Some(about) = later.and_then(|one| one.about.clone()) else { return };
    if !explore.fresh(&step.id, Leave::Ahead) {
        return;
    }
    let lean = node.clone();
    let mut done =
        explore.hand.act(&lean, ActName::Confirm, Slots { about: Some(about), ..Slots::default() });
    // In which order it is told is not the order in which it was done.
    done.node.clean = false;
    let next = explore.arrive(&lean, done);
    explore.follow(next);
}

fn is_number(kind: WaitingFor) -> bool {
    !matches!(
        kind,
        WaitingFor::Done | WaitingFor::YesOrNo | WaitingFor::Tool | WaitingFor::Text | WaitingFor::Nothing
    )
}

//! The flow of a procedure: which step comes next, what lies ahead, what came before.

use super::desk::Desk;
use super::state::{Place, State};
use super::{Part, cautions, present, view};
use crate::event::{Event, Pending};
use crate::rulebase::{Deed, Pack, Phase, Procedure, Step};
use chrono::{DateTime, FixedOffset};

/// The rules and the moment that guards are judged with.
pub struct Judge<'a> {
    /// The pack.
    pub rules: &'a Pack,
    /// The job.
    pub state: &'a State,
    /// Now.
    pub now: DateTime<FixedOffset>,
}

impl Judge<'_> {
    /// Whether the step applies now. A guard that fails to run leaves its step in: better once too often.
    pub fn applies(&self, step: &Step) -> bool {
        step.when.as_deref().is_none_or(|guard| view::guard(self, guard).unwrap_or(true))
    }

    /// The step to work now, the steps of an open branch before the step that asked for them.
    pub fn next<'p>(&self, procedure: &'p Procedure, place: &Place) -> Option<&'p Step> {
        procedure.phases.iter().find_map(|phase| self.first_open(&phase.steps, place))
    }

    fn first_open<'p>(&self, steps: &'p [Step], place: &Place) -> Option<&'p Step> {
        steps.iter().filter(|step| !place.closed.contains_key(&step.id)).find_map(|step| {
            if !self.applies(step) {
                return None;
            }
            let branch = place.branching.contains(&step.id);
            let inner = branch.then(|| self.first_open(&step.fails, place)).flatten();
            inner.or(Some(step))
        })
    }

    /// The first open step of the branch that is being worked for a step: it comes before the step is asked again.
    pub fn branch<'p>(&self, step: &'p Step, place: &Place) -> Option<&'p Step> {
        place.branching.contains(&step.id).then(|| self.first_open(&step.fails, place)).flatten()
    }

    /// The open steps from here on, branches only where they are being worked.
    pub fn ahead<'p>(&self, procedure: &'p Procedure, place: &Place) -> Vec<&'p Step> {
        let mut out = Vec::new();
        for phase in &procedure.phases {
            self.collect_open(&phase.steps, place, &mut out);
        }
        out
    }

    fn collect_open<'p>(&self, steps: &'p [Step], place: &Place, out: &mut Vec<&'p Step>) {
        for step in steps.iter().filter(|step| !place.closed.contains_key(&step.id)) {
            if self.applies(step) {
                if place.branching.contains(&step.id) {
                    self.collect_open(&step.fails, place, out);
                }
                out.push(step);
            }
        }
    }
}

/// The step worked before the one in hand, in the order of the procedure.
pub fn before<'p>(procedure: &'p Procedure, place: &Place) -> Option<&'p Step> {
    let steps = procedure.all_steps();
    let here = place.cursor.as_ref().and_then(|id| steps.iter().position(|step| step.id == *id));
    let upto = here.unwrap_or(steps.len());
    steps.into_iter().take(upto).rfind(|step| place.closed.contains_key(&step.id))
}

/// Whether the step belongs to a phase that makes the unit safe.
pub fn makes_safe(procedure: &Procedure, step: &Step) -> bool {
    procedure.phase_of(&step.id).is_some_and(|phase: &Phase| phase.makes_safe)
}

/// Puts the next step in hand and says it, unless a question is open or the job rests.
pub fn go_on(desk: &mut Desk<'_>) {
    let progress = &desk.state.progress;
    // A calculation may ask on, and hides no step.
    let asked = !matches!(progress.pending, None | Some(Pending::Work { .. }));
    if !desk.show_step || asked || progress.paused || !progress.open {
        return;
    }
    let (Some(procedure), Some(place)) = (desk.procedure(), desk.place()) else { return };
    if place.went_back && place.cursor.as_ref().is_some_and(|id| !was_closed_now(desk, id)) {
        return say_step(desk);
    }
    let judge = Judge { rules: desk.rules, state: &desk.state, now: desk.now };
    match judge.next(&procedure, place) {
        Some(step) => {
            if place.cursor.as_deref() != Some(step.id.as_str()) {
                show(desk, step, false);
            }
            if !just_refused(desk) && !was_said_now(desk, &step.id) {
                say_step(desk);
            }
        }
        None => super::entries::job::all_worked(desk),
    }
}

/// Whether the line was refused at the step in hand, which then needs no saying again.
fn just_refused(desk: &Desk<'_>) -> bool {
    desk.cursor() == desk.began_at && desk.parts.iter().any(|part| matches!(part, Part::Refused(_)))
}

/// Whether this line has said the step already: one act of it asked, another moved nothing.
fn was_said_now(desk: &Desk<'_>, id: &str) -> bool {
    desk.parts.iter().any(|part| matches!(part, Part::Step(card) if card.id == id))
}

fn was_closed_now(desk: &Desk<'_>, id: &str) -> bool {
    desk.events.iter().any(|event| matches!(event, Event::StepDone { step, .. } if step == id))
}

/// Puts a step in hand. A step that is a wait starts its clock as it is shown.
pub fn show(desk: &mut Desk<'_>, step: &Step, back: bool) {
    desk.emit(Event::Shown { step: step.id.clone(), back });
    if step.deed == Deed::Wait && !back {
        super::timers::start_for(desk, step);
    }
}

/// Says the step in hand, its cautions before it.
pub fn say_step(desk: &mut Desk<'_>) {
    let Some(procedure) = desk.procedure() else { return };
    let Some(step) = desk.cursor().and_then(|id| procedure.step(&id).cloned()) else { return };
    let just_said = std::mem::take(&mut desk.acknowledged);
    if !just_said && cautions::give(desk, &step) {
        return;
    }
    present::step(desk, &step);
}

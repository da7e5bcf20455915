//! The course of the job: back, again, pause, resume.

use super::resume;
use crate::bench::desk::Desk;
use crate::bench::{Ack, Part, cautions, flow};
use crate::event::Event;

/// Go to the step before, keeping what was recorded.
pub fn back(desk: &mut Desk<'_>) {
    let (Some(procedure), Some(place)) = (desk.procedure(), desk.place()) else {
        return super::job::none_open(desk);
    };
    match flow::before(&procedure, place) {
        Some(step) => {
            let step = step.clone();
            flow::show(desk, &step, true);
            flow::say_step(desk);
        }
        None => desk.say(Part::Ack(Ack::NothingToTakeBack)),
    }
}

/// Say that again: the cautions in full, and the step or the question that waits.
pub fn again(desk: &mut Desk<'_>) {
    if super::super::pending::say_again(desk) {
        return;
    }
    let Some(procedure) = desk.procedure() else { return super::job::none_open(desk) };
    let Some(step) = desk.cursor().and_then(|id| procedure.step(&id).cloned()) else { return };
    cautions::again(desk, &step);
    super::super::present::step(desk, &step);
}

/// Stop the job for now.
pub fn pause(desk: &mut Desk<'_>) {
    if !desk.state.progress.open {
        return super::job::none_open(desk);
    }
    if !desk.state.progress.paused {
        desk.emit(Event::Paused);
    }
    desk.show_step = false;
    desk.say(Part::Ack(Ack::Paused));
}

/// Go on.
pub fn resume(desk: &mut Desk<'_>) {
    if !desk.state.progress.open {
        return super::job::none_open(desk);
    }
    if desk.state.progress.paused {
        desk.emit(Event::Resumed);
    }
    resume::go_on(desk);
}

//! Going on with a job: the last thing kept, and what metal cannot keep.

use crate::bench::desk::Desk;
use crate::bench::state::Fitting;
use crate::bench::{Ack, Part, flow, present};
use crate::event::Event;
use crate::rulebase::{Deed, Procedure, Step, UnitCard};

/// Says where the job stands and opens again what cannot be trusted after a break.
pub fn go_on(desk: &mut Desk<'_>) {
    let (Some(card), Some(procedure)) = (desk.card(), desk.procedure()) else { return };
    let last = last_kept(desk, &card, &procedure);
    let mut again = Vec::new();
    for step in doubtful(desk, &procedure) {
        again.push(present::title(&card, &step));
        desk.emit(Event::Reopened { step: step.id });
    }
    let number = desk.state.progress.number;
    let corner = desk.place().and_then(|place| place.corner).map(|corner| corner.as_str().to_owned());
    desk.say(Part::Ack(Ack::GoingOn { number, corner, last, again }));
    desk.show_step = true;
}

fn last_kept(desk: &Desk<'_>, card: &UnitCard, procedure: &Procedure) -> Option<String> {
    let kept = desk.state.record.last_kept.as_ref()?;
    Some(procedure.step(kept).map_or_else(|| kept.clone(), |step| present::title(card, step)))
}

/// Closed steps whose result metal may not have kept: threadlocker past its open time on a joint that is not
/// tight (cleaned and done again), and gas or a spring proved safe that is still to be worked on.
fn doubtful(desk: &Desk<'_>, procedure: &Procedure) -> Vec<Step> {
    let Some(place) = desk.place() else { return Vec::new() };
    let closed = |step: &&Step| place.closed.contains_key(&step.id);
    let steps = procedure.all_steps();
    let spoilt = |id: &str| {
        let part = place.parts.get(id);
        let loose = part
            .is_some_and(|part| part.locked && !matches!(part.fitting, Fitting::Torqued | Fitting::Nipped));
        loose && past_open_time(desk, id)
    };
    let unsure = |id: &str| {
        let safe = place.parts.get(id).is_some_and(|part| part.safe && part.fitting != Fitting::Off);
        safe && !stands_open(desk, id)
    };
    steps
        .into_iter()
        .filter(closed)
        .filter(|step| {
            step.about.as_deref().is_some_and(|about| match step.deed {
                Deed::Threadlock | Deed::Refit => spoilt(about),
                Deed::Clean => spoilt(about),
                // Started by hand already, it comes off again to be cleaned.
                Deed::Remove => {
                    spoilt(about) && place.parts.get(about).is_some_and(|part| part.fitting == Fitting::On)
                }
                Deed::Prove => flow::makes_safe(procedure, step) && unsure(about),
                _ => false,
            })
        })
        .cloned()
        .collect()
}

/// Whether what held the charge is off, so that nothing can be under pressure.
fn stands_open(desk: &Desk<'_>, id: &str) -> bool {
    let (Some(card), Some(place)) = (desk.card(), desk.place()) else { return false };
    let through = card.adjuster(id).map(|adjuster| adjuster.through.clone()).unwrap_or_default();
    through.iter().any(|part| place.parts.get(part).is_some_and(|part| part.fitting == Fitting::Off))
}

fn past_open_time(desk: &Desk<'_>, part: &str) -> bool {
    let key = (desk.place_id(), part.to_owned());
    desk.state.record.locked.get(&key).is_some_and(|locking| {
        let minutes = (desk.now - locking.at).num_milliseconds() as f64 / 60_000.0;
        minutes > locking.open
    })
}

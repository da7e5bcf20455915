//! A wish outside the band of the card: said back with the band, and kept only by a second utterance.

use crate::act::{Act, Doubt};
use crate::bench::desk::Desk;
use crate::bench::{Part, Refusal, doubt};
use crate::event::Pending;
use crate::rulebase::{Adjuster, AdjusterKind};

/// What marks a wish that was said back with its band.
const SAID_BACK: &str = "outside the band of the card";

/// Whether the wish is outside the band of its charge and was not said back yet: then it is asked whether it is meant.
pub fn questioned(desk: &mut Desk<'_>, adjuster: &Adjuster, act: &Act, value: f64) -> bool {
    let AdjusterKind::Charge { limit, .. } = &adjuster.kind else { return false };
    let inside = limit.lo.is_none_or(|lo| value >= lo) && limit.hi.is_none_or(|hi| value <= hi);
    if inside || is_said_back(act) {
        return false;
    }
    let band = format!("The card gives {} for the {}", limit.show(), adjuster.name());
    if desk.state.progress.pending.is_some() {
        // A caution that waits for its acknowledgement stays the open question.
        desk.say(Part::Refused(Refusal::NotNow { why: band }));
        return true;
    }
    let mut meant = act.clone();
    meant.slots.about = Some(adjuster.id.clone());
    meant.slots.reason = Some(SAID_BACK.to_owned());
    desk.say(Part::Sentence(format!("{band}.")));
    let question = doubt::question(desk, std::slice::from_ref(&meant), Doubt::Meaning);
    desk.open(Pending::Between { acts: vec![meant], doubt: Doubt::Meaning, then: Vec::new() });
    desk.say(Part::Question(question));
    desk.show_step = false;
    true
}

/// Whether the wish was said back with its band.
pub fn is_said_back(act: &Act) -> bool {
    act.slots.reason.as_deref() == Some(SAID_BACK)
}

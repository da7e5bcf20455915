//! What a calculation rests on, asked for right after its answer: "why", "where does that come from".

use super::pick;
use super::words::Words;
use crate::act::ActName;
use crate::bench::Part;
use crate::bench::desk::Desk;
use crate::event::{Event, Pending};
use crate::workings::registry::{Kind, Working};

/// Says method and source of the calculation that was answered last; false when anything came after it.
pub fn rests_on(desk: &mut Desk<'_>) -> bool {
    let Some(last) = desk.state.events.last().cloned() else { return false };
    let asked = matches!(&last.event, Event::Answered { act, .. } if act == ActName::AskWork.as_str());
    if !asked {
        return false;
    }
    if let Some(working) = asked_on(desk, &last.utterance.id) {
        say(desk, working);
        return true;
    }
    let mut acts = last.utterance.understood.iter().filter(|act| act.act == ActName::AskWork);
    let kind = acts.find_map(|act| act.slots.kind.as_deref().and_then(Kind::parse));
    let words = last.utterance.heard.as_deref().map(Words::of).unwrap_or_default();
    let talk = desk.rules.talk.clone();
    let Some(picked) = pick::pick(&talk.works, kind, &words) else { return false };
    say(desk, picked.working);
    true
}

fn say(desk: &mut Desk<'_>, working: &Working) {
    desk.say(Part::Sentence(format!("Method: {}.", working.method)));
    desk.say(Part::Sentence(format!("Source: {}.", working.source)));
}

/// The calculation whose open question that utterance answered: its own words do not name it.
fn asked_on(desk: &Desk<'_>, utterance: &str) -> Option<&'static Working> {
    let events = desk.state.events.iter().rev();
    let settled = |event: &Event| matches!(event, Event::Settled);
    let mut own = events.clone().take_while(|kept| kept.utterance.id == utterance);
    own.any(|kept| settled(&kept.event)).then_some(())?;
    let mut before = events.skip_while(|kept| kept.utterance.id == utterance);
    before.find_map(|kept| match &kept.event {
        Event::Opened { pending: Pending::Work { ask, .. } } => desk.rules.talk.works.find(ask)?.working(),
        _ => None,
    })
}

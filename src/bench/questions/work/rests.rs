//! What a calculation rests on, asked for right after its answer: "why", "where does that come from".

use super::pick;
use super::words::Words;
use crate::act::ActName;
use crate::bench::Part;
use crate::bench::desk::Desk;
use crate::event::Event;
use crate::workings::registry::Kind;

/// Says method and source of the calculation that was answered last; false when anything came after it.
pub fn rests_on(desk: &mut Desk<'_>) -> bool {
    let Some(last) = desk.state.events.last().cloned() else { return false };
    let asked = matches!(&last.event, Event::Answered { act, .. } if act == ActName::AskWork.as_str());
    if !asked {
        return false;
    }
    let mut acts = last.utterance.understood.iter().filter(|act| act.act == ActName::AskWork);
    let kind = acts.find_map(|act| act.slots.kind.as_deref().and_then(Kind::parse));
    let words = last.utterance.heard.as_deref().map(Words::of).unwrap_or_default();
    let talk = desk.rules.talk.clone();
    let Some(picked) = pick::pick(&talk.works, kind, &words) else { return false };
    desk.say(Part::Sentence(format!("Method: {}.", picked.working.method)));
    desk.say(Part::Sentence(format!("Source: {}.", picked.working.source)));
    true
}

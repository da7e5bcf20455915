//! What a calculation rests on, asked for right after its answer: "why", "where does that come from".

use crate::act::ActName;
use crate::bench::Part;
use crate::bench::desk::Desk;
use crate::event::Event;
use crate::workings::registry;

/// Says method and source of the calculation that was answered last; false when anything came after it.
pub fn rests_on(desk: &mut Desk<'_>) -> bool {
    let last = desk.state.events.last().map(|envelope| &envelope.event);
    let Some(Event::Answered { act, said }) = last else { return false };
    if act != ActName::AskWork.as_str() {
        return false;
    }
    let name = said.split_once(" (").and_then(|(_, name)| name.strip_suffix(')'));
    let Some(working) = name.and_then(registry::find) else { return false };
    desk.say(Part::Sentence(format!("Method: {}.", working.method)));
    desk.say(Part::Sentence(format!("Source: {}.", working.source)));
    true
}

//! Words typed where words are waited for: what a person types there is the answer, even where an ear would have to ask.

use crate::act::{Act, ActName, Heard, Outcome, Waiting, WaitingFor};

/// Takes words typed at a step that waits for words as its answer, unless they were understood as something else.
/// By ear they stay a question: a room is full of talk that is not for the bench.
pub(super) fn answer(heard: Heard, words: &str, waiting: &Waiting) -> Heard {
    let wanted = waiting.kind == WaitingFor::Text && !waiting.ear && heard.refused.is_none();
    let plain = match heard.outcome {
        Outcome::Take => false,
        Outcome::Ask => heard.between.iter().all(|act| act.act == ActName::Note),
        Outcome::Decline => true,
    };
    if !wanted || !plain || words.is_empty() {
        return heard;
    }
    let mut note = Act::new(ActName::Note);
    note.slots.text = Some(words.to_owned());
    Heard::take(vec![note], heard.sure)
}

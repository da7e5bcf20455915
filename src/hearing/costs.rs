//! What each act costs when it was not meant: how sure it must be.

use crate::act::ActName;

/// How sure an act must be: what changes the job needs more than a question does.
pub(super) fn needed(name: ActName) -> f32 {
    match name {
        ActName::Confirm | ActName::Skip | ActName::Finish | ActName::Undo => 0.6,
        ActName::Reading
        | ActName::Correct
        | ActName::Start
        | ActName::Switch
        | ActName::Deny
        | ActName::Resume => 0.5,
        name if name.is_question() => 0.4,
        _ => 0.45,
    }
}

/// Questions about the work in hand, of which nobody else is the subject.
pub(super) fn is_about_the_step(name: ActName) -> bool {
    matches!(
        name,
        ActName::AskTool
            | ActName::AskTorque
            | ActName::AskTurn
            | ActName::AskMark
            | ActName::AskWhy
            | ActName::AskPart
            | ActName::AskCaution
            | ActName::AskStuck
            | ActName::AskLocker
            | ActName::AskSwap
    )
}

/// What a rule may leave out of the line before an act is not sure any more.
pub(super) fn most_cost(name: ActName) -> f32 {
    match name {
        ActName::Confirm
        | ActName::Finish
        | ActName::Skip
        | ActName::Undo
        | ActName::Start
        | ActName::Switch
        | ActName::Resume => 0.62,
        ActName::Deny | ActName::Reading | ActName::Correct => 0.9,
        _ => 2.0,
    }
}

/// Acts that the model alone never decides.
pub(super) fn needs_rule(name: ActName) -> bool {
    matches!(
        name,
        ActName::Confirm
            | ActName::Skip
            | ActName::Finish
            | ActName::Undo
            | ActName::Reading
            | ActName::Correct
            | ActName::Resume
            | ActName::Start
            | ActName::Switch
            | ActName::Fitted
            | ActName::Want
    )
}

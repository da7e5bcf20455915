//! Acts of one line that are one act, or that contradict each other.

use crate::act::{Act, ActName};

/// Whether one of the numbers in doubt is the one just taken.
pub(super) fn spells_out(last: Option<&Act>, between: &[Act]) -> bool {
    let value = last.and_then(|act| act.slots.value);
    value.is_some() && between.iter().any(|act| act.slots.value == value)
}

/// Whether two readings of one thing stand side by side.
pub(super) fn several_values(acts: &[Act]) -> bool {
    let values =
        |act: &&Act| matches!(act.act, ActName::Reading | ActName::Correct) && act.slots.value.is_some();
    let all: Vec<&Act> = acts.iter().filter(values).collect();
    all.iter().enumerate().any(|(n, one)| {
        all.iter()
            .skip(n + 1)
            .any(|other| one.slots.about == other.slots.about && one.slots.value != other.slots.value)
    })
}

/// The same act twice in a row is one, and so is "off, and on the tray".
pub(super) fn merge(acts: &mut Vec<Act>) {
    acts.dedup_by(|later, earlier| {
        let valued =
            |act: &Act| matches!(act.act, ActName::Reading | ActName::Correct) && act.slots.value.is_some();
        let same = valued(earlier)
            && valued(later)
            && earlier.slots.value == later.slots.value
            && earlier.slots.about == later.slots.about;
        if same
            && (earlier.slots.unit.is_none()
                || later.slots.unit.is_none()
                || earlier.slots.unit == later.slots.unit)
        {
            earlier.slots.unit = earlier.slots.unit.take().or_else(|| later.slots.unit.take());
            return true;
        }
        // "Ten, no, eleven": the first was never recorded.
        if valued(earlier)
            && later.act == ActName::Correct
            && valued(later)
            && earlier.slots.about == later.slots.about
        {
            earlier.slots = later.slots.clone();
            return true;
        }
        let done_twice = later.act == ActName::Confirm && earlier.act == ActName::Confirm;
        if done_twice && (later.slots.about.is_none() || earlier.slots.about.is_none()) {
            earlier.slots.about = earlier.slots.about.take().or_else(|| later.slots.about.take());
            return true;
        }
        if earlier.act == ActName::AskSwap && later.act == ActName::AskSwap {
            earlier.slots.tool = later.slots.tool.take().or_else(|| earlier.slots.tool.take());
            return true;
        }
        later == earlier || (later.act == ActName::Deny && earlier.act == ActName::Deny)
    });
}

//! Mark never made.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::walk::Moment;
use crate::rulebase::Deed;
use crate::source::Level;

/// A joint with a mark that has to be made is undone before it is marked.
pub static FINDING: Finding = Finding {
    name: "mark never made",
    level: Level::Wrong,
    milder: false,
    what: "A joint with a mark that has to be made is undone before it is marked.",
    why: "A mark made afterwards says nothing about where the part stood.",
    example: "loosen: foot-nut, with mark: {made: one thin paint line ...} on its card, and no mark: foot-nut before it",
    mend: "add `mark:` before the step that undoes it; or take `made:` off a mark that is there from the maker",
    look: Look::Closing(look),
};

fn look(moment: &Moment<'_>, sink: &mut Sink<'_>) {
    let undoes = matches!(moment.step.deed, Deed::Loosen | Deed::Remove);
    let Some(part) = moment.about().filter(|_| undoes && moment.clean) else { return };
    let made = part.mark.as_ref().and_then(|mark| mark.made.as_deref()).unwrap_or_default();
    let by_hand =
        ["paint", "scribe", "scratch", "pen", "draw", "chalk"].iter().any(|word| made.contains(word));
    if by_hand && !moment.part(&part.id).marked {
        sink.raise(moment.step.at.clone(), format!("the {} is undone before it is marked", part.name()));
    }
}

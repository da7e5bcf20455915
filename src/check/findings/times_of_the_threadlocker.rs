//! Times of the threadlocker.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnCard;
use crate::quantity::Unit;
use crate::source::Level;

/// The times of a threadlocker are out of order, or not what any has.
pub static FINDING: Finding = Finding {
    name: "times of the threadlocker",
    level: Level::Wrong,
    milder: true,
    what: "The times of a threadlocker are out of order, or not what any has.",
    why: "The bench tells to wait too little, or calls good threadlocker old.",
    example: "locker: with open: 5 h and handle: 30 min",
    mend: "write them as its maker gives them: `open:` in minutes, `handle:` longer, `cure:` longest",
    look: Look::Card(look),
};

/// Threadlocker stands open for minutes: under one nobody comes to tighten, and none stands an hour (common practice, no
/// source).
const OPEN: std::ops::RangeInclusive<f64> = 1.0..=60.0;

fn look(on: &OnCard<'_>, sink: &mut Sink<'_>) {
    for part in &on.card.parts {
        let Some(locker) = &part.locker else { continue };
        let minutes = |time: Option<crate::quantity::Quantity>| time?.in_unit(Unit::Minute).ok();
        let times = [
            ("open", minutes(Some(locker.open))),
            ("handle", minutes(locker.handle)),
            ("cure", minutes(locker.cure)),
        ];
        let known: Vec<(&str, f64)> =
            times.into_iter().filter_map(|(name, time)| Some((name, time?))).collect();
        let late = known.iter().zip(known.iter().skip(1)).find(|(sooner, later)| sooner.1 >= later.1);
        if let Some(((sooner, _), (later, _))) = late {
            let place = sink.field(&on.card.at, &format!("parts/{}/locker/{sooner}", part.id));
            sink.raise(place, format!("`{sooner}` is not shorter than `{later}`"));
        }
        if let Some(open) = minutes(Some(locker.open)).filter(|open| !OPEN.contains(open)) {
            let place = sink.field(&on.card.at, &format!("parts/{}/locker/open", part.id));
            sink.doubt(
                place,
                format!("threadlocker that stands open for {open:.1} minutes"),
                "from 1 min to 1 h",
            );
        }
    }
}

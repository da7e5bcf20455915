//! Tool does not fit.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnCard;
use crate::quantity::Unit;
use crate::rulebase::Part;
use crate::source::Level;
use crate::workings::hex::{Head, across_flats, key};
use crate::workings::thread::Thread;

/// A size on the card is not the one that the thread, or the standard it names, has.
pub static FINDING: Finding = Finding {
    name: "tool does not fit",
    level: Level::Wrong,
    milder: false,
    what: "A size on the card is not the one that the thread, or the standard it names, has.",
    why: "The wrong key rounds the socket; the wrong spanner slips.",
    example: "key: 3 mm on an M5 set screw with source: key by ISO 4026",
    mend: "mend the size, or take the standard off the source",
    look: Look::Card(look),
};

fn look(on: &OnCard<'_>, sink: &mut Sink<'_>) {
    for part in &on.card.parts {
        let Some(thread) = part.thread.as_ref().and_then(|thread| Thread::parse(&thread.text).ok()) else {
            continue;
        };
        if let Some(across) = part.across.and_then(|size| size.in_unit(Unit::Millimetre).ok()) {
            if across <= thread.d {
                let place = sink.field(&on.card.at, &format!("parts/{}/across", part.id));
                sink.raise(place, format!("{across} mm across flats on a thread of {} mm", thread.d));
            }
            differs(
                on,
                part,
                "across",
                across,
                stated(part).and_then(|head| across_flats(head, &thread)),
                sink,
            );
        }
        if let Some(size) = part.key.and_then(|size| size.in_unit(Unit::Millimetre).ok()) {
            let usual = stated(part).or_else(|| part.what.as_deref().and_then(Head::parse));
            differs(on, part, "key", size, usual.and_then(|head| key(head, &thread)), sink);
        }
    }
}

/// The head that the source names by its standard.
fn stated(part: &Part) -> Option<Head> {
    let source = part.source.as_deref()?;
    let standard = source.split("ISO ").nth(1).or_else(|| source.split("DIN ").nth(1))?;
    Head::parse(standard)
}

fn differs(on: &OnCard<'_>, part: &Part, field: &str, size: f64, usual: Option<f64>, sink: &mut Sink<'_>) {
    if let Some(usual) = usual.filter(|usual| (usual - size).abs() > 0.005) {
        let place = sink.field(&on.card.at, &format!("parts/{}/{field}", part.id));
        let found = format!("{size} mm is not the size of the {} by its standard", part.name());
        sink.raise_for(place, found, format!("{usual} mm"));
    }
}

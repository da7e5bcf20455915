//! Keys, spanners and stand-ins by name.

use super::super::convert::register::fraction_text;
use super::super::registry::{Done, Given, Input, Kind, Refusal, Working};
use super::super::thread::Thread;
use super::{
    Drive, Head, ToolSize, across_flats, drift, hex_smallest, key, key_of_shoulder, opening, socket_limits,
    stand_in,
};
use crate::quantity::Unit;

const MM: f64 = 25.4;
const ASME: &str = "ASME B18.2.2-2015 appendix, as in Machinery's Handbook, 31st ed., p. 1688";

/// Adds keys, spanners and drifts.
pub(in crate::workings) fn register(list: &mut Vec<Working>) {
    list.push(
        fastener("hex-key", "hex key of a screw with a hexagon socket", which_key)
            .takes(Input::text("head", &[], "head: cap, set, button, countersunk or shoulder, or the standard's number").also(&["standard", "type", "kind"]).usually_text("cap"))
            .takes(mm("shoulder", "nominal shoulder of a shoulder screw").optional())
            .gives("key", Unit::Millimetre)
            .tells("fraction")
            .by("table", "ISO 4762, 4026 to 4029, 7380-1, 10642, 7379; ASME B18.3; rows read in bd_warehouse 0.4.0 (PyPI)"),
    );
    list.push(
        fastener("across-flats", "spanner or socket size of a hexagon head or nut", which_flats)
            .takes(Input::text("head", &[], "head: bolt, nut, din bolt or din nut, or the standard's number").also(&["standard", "type", "kind", "part"]).usually_text("bolt"))
            .gives("across_flats", Unit::Millimetre)
            .tells("fraction")
            .by("table", "ISO 272, 4014, 4017, 4032, 8673, 4035; DIN 931, 934; ASME B18.2.1, B18.2.2; rows read in bd_warehouse 0.4.0 (PyPI)")
            .mind("before 1982 M10, M12, M14 and M22 had 17, 19, 22 and 32 mm: measure an old one"),
    );
    list.push(
        Working::new("stand-in", Kind::Fits, "will this size of tool do for that size of hexagon", will_it_do)
            .takes(Input::text("tool", &[], "size of the tool, such as 1/2 in").also(&["wrench", "key", "spanner", "socket"]))
            .takes(Input::text("hex", &[], "size of the hexagon, such as 13 mm").also(&["hex_mm", "nut", "bolt", "for"]))
            .takes(Input::text("drive", &["external", "internal"], "external for a spanner, internal for a hex key").usually_text("external"))
            .tells("verdict")
            .gives("clearance", Unit::Millimetre)
            .tells("why")
            .by("limits of the tool's opening less the full-size hexagon; loose above the right tool's greatest slack, no above 4 % of the size", "ASME B18.2.2-2015 appendix; DIN 475-2 / ISO 691 (memory); ISO 4762"),
    );
    list.push(
        Working::new("wrench-opening", Kind::Fits, "least and greatest opening of a spanner", open)
            .takes(
                Input::text("wrench", &[], "size of the spanner, such as 1/2 in or 13 mm")
                    .also(&["W", "SW", "tool", "size"]),
            )
            .gives("opening", Unit::Millimetre)
            .by("table; inch sizes outside it 1.005 W + 0.001 in, and 0.005 W + 0.004 in more", ASME)
            .mind("metric openings are from memory of DIN 475-2 / ISO 691: an order of magnitude"),
    );
    list.push(
        Working::new(
            "hex-smallest",
            Kind::Fits,
            "smallest across flats of a hexagon: fine and coarse",
            smallest,
        )
        .takes(Input::of("SW", Unit::Millimetre, "nominal across flats").also(&["s", "size"]))
        .gives("smallest", Unit::Millimetre)
        .gives("fine", Unit::Millimetre)
        .gives("coarse", Unit::Millimetre)
        .by(
            "row 1 h13 (h14 above 32 mm); row 2 h14 to 18, h15 to 60, h16 above; ISO 286-1 tolerances",
            "DIN 475-1:1984",
        ),
    );
    list.push(
        Working::new("socket-limits", Kind::Fits, "least and greatest width of a hexagon socket", sockets)
            .takes(Input::text("thread", &[], "thread of the screw").also(&["size"]).optional())
            .takes(Input::text("head", &[], "head").also(&["standard", "type"]).usually_text("set"))
            .takes(Input::of("key", Unit::Millimetre, "nominal key").optional())
            .gives("limits", Unit::Millimetre)
            .gives("key", Unit::Millimetre)
            .by("table", "ISO 4762:2004, ISO 4026:2003 (0.7, 0.9, 1.3 from memory)"),
    );
    list.push(
        Working::new("drift", Kind::Fits, "does a drift clear the adjuster and seat on the nut", which_drift)
            .takes(mm("bore", "bore of the drift"))
            .takes(mm("outside", "outside of the drift").also(&["OD"]))
            .takes(mm("adjuster", "diameter to clear"))
            .takes(mm("face", "diameter of the nut's face"))
            .takes(mm("gap", "clearance wanted all round").or_zero().usually(0.5))
            .tells("verdict")
            .gives("clearance", Unit::Millimetre)
            .by("bore at least adjuster + 2 gap, below the face", "common practice, no source"),
    );
}

fn mm(name: &'static str, what: &'static str) -> Input {
    Input::of(name, Unit::Millimetre, what)
}

fn fastener(name: &'static str, about: &'static str, run: fn(&Given) -> Result<Done, Refusal>) -> Working {
    Working::new(name, Kind::Fits, about, run).takes(
        Input::text("thread", &[], "thread, such as M8, M14x1, 1/4-20 or #10")
            .also(&["size", "bolt", "screw", "nut"]),
    )
}

fn thread(given: &Given) -> Result<Thread, Refusal> {
    Thread::parse(given.t("thread")?).map_err(|error| Refusal::unreadable("thread", error.to_string()))
}

fn head(given: &Given) -> Result<Head, Refusal> {
    let text = given.t("head")?;
    Head::parse(text).ok_or_else(|| {
        Refusal::unreadable(
            "head",
            format!("found `{text}`; say bolt, nut, cap, set, button, countersunk or shoulder"),
        )
    })
}

/// A size in mm, answered in the thread's own system.
fn in_system(thread: &Thread, size: f64) -> Done {
    if thread.inch {
        let inches = size / MM;
        return Done::of(inches, Unit::Inch).and_text("fraction", fraction_text(inches));
    }
    Done::of(size, Unit::Millimetre)
}

fn no_row(thread: &Thread) -> Refusal {
    Refusal::impossible("thread", format!("the standard has no {} for this head", thread.name))
}

fn which_key(given: &Given) -> Result<Done, Refusal> {
    let thread = thread(given)?;
    let size = key(head(given)?, &thread).ok_or_else(|| no_row(&thread))?;
    if given.maybe("shoulder").is_some_and(|shoulder| key_of_shoulder(shoulder) != Some(size)) {
        let reason = format!("no shoulder screw {} has that shoulder", thread.name);
        return Err(Refusal::impossible("shoulder", reason));
    }
    Ok(in_system(&thread, size))
}

fn which_flats(given: &Given) -> Result<Done, Refusal> {
    let thread = thread(given)?;
    let size = across_flats(head(given)?, &thread).ok_or_else(|| no_row(&thread))?;
    Ok(in_system(&thread, size))
}

fn size(given: &Given, name: &str) -> Result<ToolSize, Refusal> {
    let text = given.t(name)?;
    ToolSize::parse(text).filter(|size| size.mm <= 300.0).ok_or_else(|| {
        Refusal::unreadable(
            name,
            format!("found `{text}` where a size is expected; write `13 mm` or `1/2 in`"),
        )
    })
}

fn will_it_do(given: &Given) -> Result<Done, Refusal> {
    let drive = if given.t("drive")? == "internal" { Drive::Internal } else { Drive::External };
    let found = stand_in(size(given, "tool")?, size(given, "hex")?, drive);
    let found = found.ok_or_else(|| Refusal::cannot("no table covers these sizes"))?;
    Ok(Done::text(found.verdict.word())
        .and_list("clearance", vec![found.clearance.min, found.clearance.max], Unit::Millimetre)
        .and_text("why", found.why))
}

fn open(given: &Given) -> Result<Done, Refusal> {
    let size = size(given, "wrench")?;
    let limits = opening(size).ok_or_else(|| Refusal::impossible("wrench", "no table covers this size"))?;
    Ok(if size.inch {
        Done::list(vec![limits.min / MM, limits.max / MM], Unit::Inch)
    } else {
        Done::list(vec![limits.min, limits.max], Unit::Millimetre)
    })
}

fn smallest(given: &Given) -> Result<Done, Refusal> {
    let found = hex_smallest(given.n("SW")?);
    let (fine, coarse) = found.ok_or_else(|| Refusal::impossible("SW", "the table ends at 120 mm"))?;
    Ok(Done::list(vec![fine, coarse], Unit::Millimetre).and("fine", fine, Unit::Millimetre).and(
        "coarse",
        coarse,
        Unit::Millimetre,
    ))
}

fn sockets(given: &Given) -> Result<Done, Refusal> {
    let nominal = match (given.maybe("key"), given.maybe_text("thread")) {
        (Some(nominal), _) => nominal,
        (None, Some(_)) => {
            let thread = thread(given)?;
            key(head(given)?, &thread).ok_or_else(|| no_row(&thread))?
        }
        (None, None) => return Err(given.missing("thread")),
    };
    let limits =
        socket_limits(nominal).ok_or_else(|| Refusal::impossible("key", "no table covers this key"))?;
    Ok(Done::list(vec![limits.min, limits.max], Unit::Millimetre).and("key", nominal, Unit::Millimetre))
}

fn which_drift(given: &Given) -> Result<Done, Refusal> {
    let (bore, adjuster) = (given.n("bore")?, given.n("adjuster")?);
    let found = drift(bore, given.n("outside")?, adjuster, given.n("face")?, given.n("gap")?);
    let verdict = match found {
        Some(super::DriftFit::Seats) => "clears and seats",
        Some(super::DriftFit::TouchesAdjuster) => "touches the adjuster",
        Some(super::DriftFit::MissesFace) => "misses the face",
        None => {
            return Err(Refusal::cannot(
                "a drift's bore is below its outside, and the nut's face is wider than the adjuster",
            ));
        }
    };
    Ok(Done::text(verdict).and("clearance", (bore - adjuster) / 2.0, Unit::Millimetre))
}

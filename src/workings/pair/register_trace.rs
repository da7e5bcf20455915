//! Force-velocity traces by name: as found, against as left, against a target band, with a plot.

use super::Trace;
use super::compare::{compare, outside};
use super::plot::plot;
use crate::quantity::Unit;
use crate::workings::registry::{Done, Given, Input, Kind, Refusal, Working};

const FORMAT: &str = "CSV: a head `velocity (mm/s),force (N)` (any unit of speed and force), then a row a point; commas, semicolons or tabs; `#` lines are passed over; compression positive";

/// Width and height of the plot, in characters.
const PLOT: (usize, usize) = (64, 18);

/// Adds the trace.
pub(super) fn register(list: &mut Vec<Working>) {
    list.push(
        Working::new("trace", Kind::Pair, "a force-velocity trace, against another and against a band", trace)
            .takes(Input::file("file", FORMAT).also(&["found"]))
            .takes(Input::file("left", "the same for as left").optional())
            .takes(Input::file("target", "the same for the target").optional())
            .takes(Input::of("band", Unit::Percent, "room either side of the target").or_zero().usually(10.0))
            .takes(Input::gauge("p", "gas pressure, to take the gas force off").optional())
            .takes(Input::of("rod", Unit::Millimetre, "rod diameter, for the gas force").also(&["d"]).optional())
            .tells("verdict")
            .gives("peak_bump", Unit::Newton)
            .gives("peak_rebound", Unit::Newton)
            .gives("velocities", Unit::MillimetrePerSecond)
            .gives("change", Unit::Percent)
            .gives("gas", Unit::Newton)
            .tells("plot")
            .by(
                "points joined by straight lines; (left - found) / mean of both at found's velocities; gas = gauge pressure x rod area taken off",
                "identity; the file's format is this program's own",
            ),
    );
}

fn read(given: &Given, name: &str, gas: f64) -> Result<Option<Trace>, Refusal> {
    let Some(text) = given.maybe_text(name) else { return Ok(None) };
    let trace = Trace::read(text).map_err(|error| Refusal::unreadable(name, error.to_string()))?;
    Ok(Some(trace.without_gas(gas)))
}

fn trace(given: &Given) -> Result<Done, Refusal> {
    let gas = match (given.maybe("p"), given.maybe("rod")) {
        (None, None) => 0.0,
        // bar x mm2 / 10 is N.
        _ => given.n("p")? * std::f64::consts::FRAC_PI_4 * given.n("rod")?.powi(2) / 10.0,
    };
    let found = read(given, "file", gas)?.ok_or_else(|| given.missing("file"))?;
    let (left, target) = (read(given, "left", gas)?, read(given, "target", gas)?);
    let last = left.as_ref().unwrap_or(&found);
    let out =
        target.as_ref().map(|target| outside(last, target, given.maybe("band").unwrap_or(10.0) / 100.0));
    let verdict = match &out {
        None => format!("{} points", last.points().len()),
        Some(out) if out.is_empty() => "within the band".to_owned(),
        Some(out) => format!("outside the band at {} of {} points", out.len(), last.points().len()),
    };
    let forces = || last.points().iter().map(|(_, force)| *force);
    let velocities: Vec<f64> = found.points().iter().map(|(velocity, _)| *velocity).collect();
    let differences = left.as_ref().map(|left| compare(&found, left, &velocities)).unwrap_or_default();
    let mut drawn: Vec<(char, &Trace)> = target.iter().map(|target| ('.', target)).collect();
    drawn.push(('o', &found));
    drawn.extend(left.iter().map(|left| ('x', left)));
    Ok(Done::text(verdict)
        .and("peak_bump", forces().fold(0.0, f64::max), Unit::Newton)
        .and("peak_rebound", forces().fold(0.0, f64::min), Unit::Newton)
        .and_list(
            "velocities",
            differences.iter().map(|one| one.velocity).collect(),
            Unit::MillimetrePerSecond,
        )
        .and_list("change", differences.iter().map(|one| 100.0 * one.share).collect(), Unit::Percent)
        .and("gas", gas, Unit::Newton)
        .and_text("plot", plot(&drawn, PLOT.0, PLOT.1)))
}

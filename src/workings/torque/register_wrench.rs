//! Wrenches by name.

use super::super::registry::{Done, Given, Input, Kind, Refusal, Working};
use super::wrench::{
    Fit, LOW_SHARE, RECALIBRATE_CYCLES, RECALIBRATE_MONTHS, at_fastener, setting, suits, tolerance_percent,
};
use crate::quantity::{Quantity, Unit};

const LEVER: &str = "lever law; Army TM 9-254, figure 46; 90 degrees changes nothing";
const ISO: &str = "ISO 6789:2003, as quoted in a torque wrench service manual";
const NM: Unit = Unit::NewtonMetre;

/// Adds the wrenches.
pub(super) fn register(list: &mut Vec<Working>) {
    list.push(
        adapter(
            "wrench-setting",
            "what to set on the wrench with an adapter (crow foot, pin spanner, extension)",
            set,
        )
        .takes(torque("T", "torque wanted at the fastener").also(&["torque"]))
        .gives("setting", NM)
        .gives("ratio", Unit::One)
        .by("T L / (L + E cos theta)", LEVER)
        .mind("hold the wrench at its grip's centre, and keep the adapter at the angle"),
    );
    list.push(
        adapter("torque-at-fastener", "what the fastener gets from a wrench with an adapter", get)
            .takes(torque("S", "setting of the wrench").also(&["set", "setting"]))
            .gives("torque", NM)
            .gives("ratio", Unit::One)
            .by("S (L + E cos theta) / L", LEVER),
    );
    list.push(
        Working::new("wrench-fit", Kind::Wrench, "is this wrench fit for this value", fit)
            .takes(torque("T", "torque wanted").also(&["set", "torque"]))
            .takes(torque("max", "largest value of the wrench"))
            .takes(torque("min", "smallest value of the wrench").optional())
            .takes(Input::of("calibrated", Unit::Month, "time since calibration").also(&["months"]).or_zero().optional())
            .tells("verdict")
            .gives("low", NM)
            .by("in its range, from 20 % of its largest value up, calibrated within 12 months", ISO)
            .mind("20 % of the largest value is the lowest test point of ISO 6789: a warning below it, not a limit"),
    );
    list.push(
        Working::new("wrench-range", Kind::Wrench, "usable range of a click wrench", range)
            .takes(torque("max", "largest value of the wrench"))
            .gives("range", NM)
            .by("20 to 100 % of the largest value", ISO),
    );
    list.push(
        Working::new("wrench-tolerance", Kind::Wrench, "permissible deviation of a torque tool", tolerance)
            .takes(torque("max", "largest value of the tool").usually(100.0))
            .takes(Input::text("type", &["I", "II"], "type").usually_text("II"))
            .takes(Input::text("class", &["A", "B", "C", "D", "E", "F", "G"], "class").usually_text("A"))
            .gives("tolerance", Unit::Percent)
            .by("4 %, or 6 % up to 10 N.m, by type and class", ISO),
    );
    list.push(
        Working::new("wrench-calibration", Kind::Wrench, "how a setting torque tool is tested", calibration)
            .takes(torque("max", "largest value of the tool").usually(100.0))
            .gives("test_points", Unit::Percent)
            .gives("test_torques", NM)
            .gives("room_temperature", Unit::Celsius)
            .gives("loading_time", Unit::Second)
            .gives("months", Unit::Month)
            .gives("cycles", Unit::One)
            .tells("interval")
            .by("test points 20, 60, 100 %; 18 to 28 degC; 80 % to target in 0.5 to 4 s; 12 months or 5000 cycles, whichever first", ISO),
    );
    list.push(
        Working::new("torque-band", Kind::Wrench, "band to accept when a torque has no tolerance", band)
            .takes(torque("T", "torque").also(&["torque"]))
            .gives("band", NM)
            .gives("percent", Unit::Percent)
            .by(
                "6 % from 10 N.m up, 10 % below",
                "this program's design (ISO 6789:2003 allows the tool alone 4 and 6 %)",
            ),
    );
}

fn torque(name: &'static str, what: &'static str) -> Input {
    Input::of(name, NM, what)
}

fn adapter(name: &'static str, about: &'static str, run: fn(&Given) -> Result<Done, Refusal>) -> Working {
    Working::new(name, Kind::Wrench, about, run)
        .takes(
            Input::of(
                "L",
                Unit::Millimetre,
                "wrench length, from the square drive to the middle of the grip",
            )
            .also(&["length"]),
        )
        .takes(
            Input::of("E", Unit::Millimetre, "adapter reach, from the square drive to the fastener")
                .also(&["extension", "reach", "offset"])
                .or_zero(),
        )
        .takes(
            Input::of("theta", Unit::Degree, "angle of the adapter from straight ahead")
                .also(&["angle"])
                .signed()
                .usually(0.0),
        )
}

/// A torque in N.m, answered in the unit that `name` was given in.
pub(super) fn in_unit_of(given: &Given, name: &str, newton_metres: f64) -> Result<(f64, Unit), Refusal> {
    let unit = given.unit(name);
    let value = NM.convert(newton_metres, unit).map_err(|_| Refusal::cannot("not a torque"))?;
    Ok((value, unit))
}

fn levered(given: &Given, name: &str, by: fn(f64, f64, f64, f64) -> Option<f64>) -> Result<Done, Refusal> {
    let torque = given.n(name)?;
    let found = by(torque, given.n("L")?, given.n("E")?, given.n("theta")?);
    let found =
        found.ok_or_else(|| Refusal::impossible("E", "pointing back that far, the adapter leaves no arm"))?;
    let (value, unit) = in_unit_of(given, name, found)?;
    Ok(Done::of(value, unit).and("ratio", found / torque, Unit::One))
}

fn set(given: &Given) -> Result<Done, Refusal> {
    levered(given, "T", setting)
}

fn get(given: &Given) -> Result<Done, Refusal> {
    levered(given, "S", at_fastener)
}

fn fit(given: &Given) -> Result<Done, Refusal> {
    let (value, max, min) = (given.n("T")?, given.n("max")?, given.maybe("min"));
    if min.is_some_and(|min| min > max) {
        return Err(Refusal::impossible("min", "the smallest value is above the largest"));
    }
    let months = given.maybe("calibrated");
    let verdict = match suits(value, min, max, months) {
        Fit::Fit => "fit",
        Fit::Warn => "warn",
        Fit::No => "no",
    };
    let (low, unit) = in_unit_of(given, "T", LOW_SHARE * max)?;
    let late = months.is_some_and(|months| months > RECALIBRATE_MONTHS);
    Ok(Done::text(verdict)
        .and("low", low, unit)
        .caution_if(late, "its calibration has run out")
        .caution_if(value < LOW_SHARE * max, "the value lies below the lowest test point of this wrench")
        .caution_if(verdict == "no", "the value lies outside the wrench's range"))
}

fn range(given: &Given) -> Result<Done, Refusal> {
    let (max, unit) = in_unit_of(given, "max", given.n("max")?)?;
    Ok(Done::list(vec![LOW_SHARE * max, max], unit))
}

fn tolerance(given: &Given) -> Result<Done, Refusal> {
    let kind = if given.t("type")? == "I" { 1 } else { 2 };
    let class = given.t("class")?.chars().next().unwrap_or('A');
    let percent = tolerance_percent(kind, class, given.n("max")?);
    let percent = percent.ok_or_else(|| Refusal::impossible("class", "that type has no such class"))?;
    Ok(Done::of(percent, Unit::Percent))
}

fn calibration(given: &Given) -> Result<Done, Refusal> {
    let max = given.n("max")?;
    Ok(Done::list(vec![20.0, 60.0, 100.0], Unit::Percent)
        .and_list("test_torques", vec![0.2 * max, 0.6 * max, max], NM)
        .and_list("room_temperature", vec![18.0, 28.0], Unit::Celsius)
        .and_list("loading_time", vec![0.5, 4.0], Unit::Second)
        .and("months", RECALIBRATE_MONTHS, Unit::Month)
        .and("cycles", RECALIBRATE_CYCLES, Unit::One)
        .and_text(
            "interval",
            format!("{RECALIBRATE_MONTHS} months or {RECALIBRATE_CYCLES} cycles, whichever first"),
        ))
}

fn band(given: &Given) -> Result<Done, Refusal> {
    let torque = Quantity::new(given.n("T")?, NM);
    let limit = super::band(torque);
    let (Some(low), Some(high)) = (limit.lo, limit.hi) else { return Err(given.missing("T")) };
    let (low, unit) = in_unit_of(given, "T", low)?;
    let (high, _) = in_unit_of(given, "T", high)?;
    let percent = (high - low) / (high + low) * 100.0;
    Ok(Done::list(vec![low, high], unit).and("percent", percent, Unit::Percent))
}

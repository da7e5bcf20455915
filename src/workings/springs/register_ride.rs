//! Ride frequency and damping by name.

use super::super::registry::{Done, Given, Input, Kind, Refusal, Working};
use super::combine::series;
use super::damping::{angular, critical, frequency, log_decrement, rate_for, usual_band, wheel_rate};
use crate::quantity::Unit;

const SDOF: &str =
    "single mass on a spring: any vibration textbook, such as Rao, Mechanical Vibrations, ch. 2";
const WAY: &str =
    "motion ratio here is spring travel over wheel travel; the other way round the ratio divides";
const KM: Unit = Unit::NewtonPerMetre;

/// Adds ride and damping.
pub(super) fn register(list: &mut Vec<Working>) {
    list.push(
        ratio(Working::new("wheel-rate", Kind::Frequency, "rate at the wheel of a spring", at_wheel))
            .takes(rate("k_s", "spring rate").also(&["k", "ks", "spring"]))
            .gives("wheel_rate", KM)
            .by(
                "k_w = k_s MR^2 with MR = spring / wheel, = k_s / R^2 with R = wheel / spring",
                "Automotive Chassis Engineering (Springer 2018), eq. 3.33",
            )
            .mind(WAY),
    );
    list.push(
        ratio(Working::new(
            "spring-from-wheel-rate",
            Kind::Frequency,
            "spring that gives a rate at the wheel",
            from_wheel,
        ))
        .takes(rate("k_w", "rate at the wheel").also(&["k_wheel", "wheel_rate"]))
        .gives("spring", KM)
        .by("k_s = k_w / MR^2 with MR = spring / wheel", "inverse of wheel-rate")
        .mind(WAY),
    );
    list.push(
        Working::new("ride-rate", Kind::Frequency, "wheel rate with the tyre in series", with_tyre)
            .takes(rate("k_wheel", "rate at the wheel").also(&["k_w", "k"]))
            .takes(rate("k_tyre", "tyre rate").also(&["k_t"]))
            .gives("ride_rate", KM)
            .by("1/k = 1/k_wheel + 1/k_tyre", "identity"),
    );
    list.push(
        sprung(
            "natural-frequency",
            "undamped natural frequency, with the tyre where its rate is given",
            natural,
        )
        .gives("frequency", Unit::Hertz)
        .gives("angular", Unit::RadianPerSecond)
        .gives("rate", KM)
        .by("f = sqrt(k / m) / (2 pi)", SDOF),
    );
    list.push(
        Working::new(
            "frequency-from-sag",
            Kind::Frequency,
            "natural frequency from the static deflection of a straight spring",
            from_sag,
        )
        .takes(
            Input::of("sag", Unit::Millimetre, "static deflection from free").also(&["deflection", "delta"]),
        )
        .gives("frequency", Unit::Hertz)
        .by("f = sqrt(g / sag) / (2 pi), g 9.80665 m/s2", SDOF),
    );
    list.push(
        sprung("critical-damping", "critical damping coefficient", |given| {
            Ok(Done::of(critical(effective(given)?, mass(given)?), Unit::NewtonSecondPerMetre))
        })
        .gives("critical", Unit::NewtonSecondPerMetre)
        .by("c = 2 sqrt(k m)", SDOF),
    );
    list.push(
        sprung("damping-ratio", "share of critical damping", zeta_of)
            .takes(damping("c"))
            .gives("ratio", Unit::One)
            .gives("critical", Unit::NewtonSecondPerMetre)
            .gives("damped_frequency", Unit::Hertz)
            .by("zeta = c / (2 sqrt(k m))", SDOF),
    );
    list.push(
        sprung("damping-coefficient", "damping coefficient for a damping ratio", coefficient)
            .takes(Input::number("zeta", "damping ratio").also(&["ratio"]))
            .gives("coefficient", Unit::NewtonSecondPerMetre)
            .by("c = zeta 2 sqrt(k m)", SDOF),
    );
    list.push(
        sprung("log-decrement", "logarithmic decrement", decrement)
            .takes(damping("c").optional())
            .takes(Input::number("zeta", "damping ratio").also(&["ratio"]).optional())
            .gives("decrement", Unit::One)
            .by("2 pi zeta / sqrt(1 - zeta^2)", SDOF),
    );
    list.push(
        ratio(Working::new(
            "spring-for-frequency",
            Kind::Frequency,
            "spring for a wanted ride frequency",
            for_frequency,
        ))
        .takes(Input::of("f", Unit::Hertz, "wanted frequency").also(&["frequency"]))
        .takes(sprung_mass())
        .gives("spring", Unit::NewtonPerMillimetre)
        .gives("wheel_rate", KM)
        .by("k_s = (2 pi f)^2 m / MR^2 with MR = spring / wheel", SDOF)
        .mind(WAY),
    );
    list.push(
        Working::new("ride-frequency-band", Kind::Frequency, "usual undamped ride frequencies", band)
            .takes(Input::text(
                "vehicle",
                &["road car", "rally", "race, little downforce", "race, more downforce"],
                "vehicle",
            ))
            .gives("band", Unit::Hertz)
            .by("table", "common practice, not a standard")
            .mind("a usual band, not a limit"),
    );
    list.push(
        Working::new(
            "damping-ratio-after",
            Kind::Frequency,
            "damping ratio once the spring is another",
            |given| {
                let factor = (given.n("k_old")? / given.n("k_new")?).sqrt();
                Ok(Done::of(given.n("zeta")? * factor, Unit::One).and("factor", factor, Unit::One))
            },
        )
        .takes(Input::number("zeta", "damping ratio before").also(&["ratio"]))
        .takes(rate("k_old", "old rate").also(&["old"]))
        .takes(rate("k_new", "new rate").also(&["new"]))
        .gives("ratio", Unit::One)
        .gives("factor", Unit::One)
        .by("at one mass and one coefficient the ratio goes with sqrt(k_old / k_new)", SDOF),
    );
    list.push(
        Working::new(
            "hold-damping-ratio",
            Kind::Frequency,
            "damping that holds the ratio when the spring changes",
            hold,
        )
        .takes(rate("k_old", "old rate").also(&["old"]))
        .takes(rate("k_new", "new rate").also(&["new"]))
        .takes(Input::of("force", Unit::Newton, "rebound force at a speed, now").also(&["F"]).optional())
        .takes(Input::of("per_click", Unit::Newton, "force that one click adds at that speed").optional())
        .gives("factor", Unit::One)
        .gives("force", Unit::Newton)
        .gives("clicks", Unit::Click)
        .by("at one mass the coefficient goes with sqrt(k_new / k_old)", SDOF)
        .mind("a starting point: the wanted setting stands until someone says otherwise"),
    );
}

fn rate(name: &'static str, what: &'static str) -> Input {
    Input::of(name, KM, what)
}

fn damping(name: &'static str) -> Input {
    Input::of(name, Unit::NewtonSecondPerMetre, "damping coefficient")
}

fn sprung_mass() -> Input {
    Input::of("m", Unit::Kilogram, "sprung mass on it").also(&["m_s", "mass"])
}

/// Adds the motion ratio, either way round.
fn ratio(working: Working) -> Working {
    working
        .takes(Input::number("MR", "motion ratio, spring travel over wheel travel").also(&["mr"]).optional())
        .takes(Input::number("R", "lever ratio, wheel travel over spring travel").optional())
}

/// A working on a mass on a spring, with the tyre where it is given.
fn sprung(name: &'static str, about: &'static str, run: fn(&Given) -> Result<Done, Refusal>) -> Working {
    Working::new(name, Kind::Frequency, about, run)
        .takes(rate("k", "rate at the wheel").also(&["k_s", "k_wheel", "k_ride"]).optional())
        .takes(sprung_mass().optional())
        .takes(rate("k_t", "tyre rate").also(&["k_tyre"]).optional())
}

fn effective(given: &Given) -> Result<f64, Refusal> {
    let k = given.n("k")?;
    Ok(given.maybe("k_t").map_or(k, |tyre| series(k, tyre)))
}

fn mass(given: &Given) -> Result<f64, Refusal> {
    given.n("m")
}

fn motion_ratio(given: &Given) -> Result<f64, Refusal> {
    match (given.maybe("MR"), given.maybe("R")) {
        (Some(ratio), _) => Ok(ratio),
        (None, Some(lever)) => Ok(1.0 / lever),
        (None, None) => Err(given.missing("MR")),
    }
}

/// A rate in N/m, answered in the unit that `name` was given in.
fn in_unit_of(given: &Given, name: &str, value: f64) -> Result<Done, Refusal> {
    let unit = given.unit(name);
    let value = KM.convert(value, unit).map_err(|_| Refusal::cannot("not a spring rate"))?;
    Ok(Done::of(value, unit))
}

fn at_wheel(given: &Given) -> Result<Done, Refusal> {
    in_unit_of(given, "k_s", wheel_rate(given.n("k_s")?, motion_ratio(given)?))
}

fn from_wheel(given: &Given) -> Result<Done, Refusal> {
    in_unit_of(given, "k_w", given.n("k_w")? / motion_ratio(given)?.powi(2))
}

fn with_tyre(given: &Given) -> Result<Done, Refusal> {
    in_unit_of(given, "k_wheel", series(given.n("k_wheel")?, given.n("k_tyre")?))
}

fn natural(given: &Given) -> Result<Done, Refusal> {
    let (k, m) = (effective(given)?, mass(given)?);
    Ok(Done::of(frequency(k, m), Unit::Hertz)
        .and("angular", angular(k, m), Unit::RadianPerSecond)
        .and("rate", k, KM))
}

fn from_sag(given: &Given) -> Result<Done, Refusal> {
    Ok(Done::of(frequency(9.806_65, given.n("sag")? / 1000.0), Unit::Hertz))
}

fn zeta_of(given: &Given) -> Result<Done, Refusal> {
    let (k, m) = (effective(given)?, mass(given)?);
    let zeta = given.n("c")? / critical(k, m);
    let done = Done::of(zeta, Unit::One).and("critical", critical(k, m), Unit::NewtonSecondPerMetre);
    let swings = (1.0 - zeta * zeta).max(0.0).sqrt();
    Ok(done.and("damped_frequency", frequency(k, m) * swings, Unit::Hertz))
}

fn coefficient(given: &Given) -> Result<Done, Refusal> {
    let c = given.n("zeta")? * critical(effective(given)?, mass(given)?);
    Ok(Done::of(c, Unit::NewtonSecondPerMetre))
}

fn decrement(given: &Given) -> Result<Done, Refusal> {
    let zeta = match given.maybe("zeta") {
        Some(zeta) => zeta,
        None => given.n("c")? / critical(effective(given)?, mass(given)?),
    };
    let found = log_decrement(zeta);
    let found =
        found.ok_or_else(|| Refusal::impossible("zeta", "at or above critical damping nothing swings"))?;
    Ok(Done::of(found, Unit::One))
}

fn for_frequency(given: &Given) -> Result<Done, Refusal> {
    let wheel = rate_for(given.n("f")?, given.n("m")?);
    let spring = wheel / motion_ratio(given)?.powi(2);
    Ok(Done::of(spring / 1000.0, Unit::NewtonPerMillimetre).and("wheel_rate", wheel, KM))
}

fn band(given: &Given) -> Result<Done, Refusal> {
    let (low, high) = usual_band(given.t("vehicle")?).ok_or_else(|| given.missing("vehicle"))?;
    Ok(Done::list(vec![low, high], Unit::Hertz))
}

fn hold(given: &Given) -> Result<Done, Refusal> {
    let factor = (given.n("k_new")? / given.n("k_old")?).sqrt();
    let mut done = Done::of(factor, Unit::One);
    if let Some(force) = given.maybe("force") {
        done = done.and("force", force * factor, Unit::Newton);
        if let Some(click) = given.maybe("per_click") {
            done = done.and("clicks", force * (factor - 1.0) / click, Unit::Click);
        }
    }
    Ok(done)
}

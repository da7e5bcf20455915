//! Units, quantities and limits against pint, GNU units and the design.

use proptest::prelude::*;
use serde_json::Value;
use sparehand::quantity::{Dimension, Limit, Quantity, QuantityError, Unit};

/// pint 0.25.3 and GNU units 2.22, rows of `tests/data/quantity/units.json`.
#[test]
fn conversions_agree_with_pint_and_gnu_units() {
    let rows: Vec<Value> = serde_json::from_str(include_str!("../data/quantity/units.json")).unwrap();
    assert_eq!(rows.len(), 26);
    for row in rows {
        let inputs = &row["inputs"];
        let unit = |key: &str| Unit::parse(inputs[key].as_str().unwrap()).unwrap_or_else(|| panic!("{row}"));
        let given = Quantity::new(inputs["value"].as_f64().unwrap(), unit("from"));
        let got = given.to(unit("to")).unwrap().value;
        let expected = row["expected"].as_f64().unwrap();
        let room = row["tolerance"]["rel"]
            .as_f64()
            .map(|rel| rel * expected.abs())
            .or(row["tolerance"]["abs"].as_f64());
        assert!((got - expected).abs() <= room.unwrap(), "{row}: got {got}");
        assert_eq!(Unit::parse(row["unit"].as_str().unwrap()), Some(unit("to")), "{row}");
    }
}

/// Names from the design, section 5 ("one of"), and usual forms (common practice, no source).
#[test]
fn units_are_read_in_their_usual_forms() {
    for name in [
        "N.m", "lbf.ft", "lbf.in", "N", "lbf", "click", "position", "turn", "mm", "in", "bar", "psi", "kPa",
        "degC", "degF", "deg", "ml", "kg", "lb", "N/mm", "lbf/in", "kgf/mm", "mm/s", "in/s", "mm2/s", "Hz",
        "min", "h",
    ] {
        let unit = Unit::parse(name).unwrap_or_else(|| panic!("{name}"));
        assert_eq!(unit.name(), name);
    }
    for (text, name) in [
        ("Nm", "N.m"),
        ("N·m", "N.m"),
        ("ft-lb", "lbf.ft"),
        ("lb.ft", "lbf.ft"),
        ("ft lbs", "lbf.ft"),
        ("inch*lbf", "lbf.in"),
        ("N*m", "N.m"),
        ("cSt", "mm2/s"),
        ("mm**2/s", "mm2/s"),
        ("lbf/inch", "lbf/in"),
        ("lb/in", "lbf/in"),
        ("lb-in", "lbf.in"),
        ("newton metres", "N.m"),
        ("foot pounds", "lbf.ft"),
        ("°C", "degC"),
        ("cc", "ml"),
        ("N/mm2", "MPa"),
        ("kg/cm²", "kgf/cm2"),
        ("rad/s", "rad/s"),
        ("mPa.s", "mPa.s"),
        ("MPa", "MPa"),
        ("P", "P"),
        ("cP", "cP"),
        ("percent", "%"),
        ("K", "K"),
        ("1/K", "1/K"),
        ("-", "one"),
    ] {
        assert_eq!(Unit::parse(text).map(Unit::name), Some(name), "{text}");
    }
    for text in ["", ".", "furlong", "Nmm2q", "mil"] {
        assert_eq!(Unit::parse(text), None, "{text}");
    }
}

#[test]
fn every_unit_reads_back_from_its_name_and_data() {
    for unit in Unit::ALL {
        assert_eq!(Unit::parse(unit.name()), Some(*unit));
        let data = serde_json::to_string(unit).unwrap();
        assert_eq!(serde_json::from_str::<Unit>(&data).unwrap(), *unit);
        assert!(*unit == Unit::One || !unit.words(2.0).is_empty());
        assert!(!unit.words(2.0).contains(['/', '.', '²', '°']), "{unit}");
    }
}

/// Torque is not energy, a difference is not a temperature, a click is not a position (design, sections 2 and 4).
#[test]
fn unlike_dimensions_do_not_meet() {
    let q = |text: &str| Quantity::parse(text).unwrap();
    for (a, b) in [
        ("1 N.m", "J"),
        ("20 degC", "delta_K"),
        ("3 click", "position"),
        ("1 lb", "lbf"),
        ("1 Hz", "rad/s"),
        ("1 bar", "N"),
    ] {
        let wanted = Unit::parse(b).unwrap();
        let refused = q(a).to(wanted).unwrap_err();
        assert_eq!((refused.found, refused.wanted), (q(a).unit, wanted));
        assert!(q(a).compare(Quantity::new(1.0, wanted)).is_err());
    }
    assert!(q("20 degC").plus(q("20 degC")).is_err());
    assert_eq!(q("20 degC").plus(q("10 delta_K")).unwrap(), q("30 degC"));
    assert!((q("68 degF").plus(q("10 delta_K")).unwrap().value - 86.0).abs() < 1e-9);
    assert_eq!(q("60 degC").minus(q("20 degC")).unwrap(), Quantity::new(40.0, Unit::DeltaKelvin));
    assert_eq!(q("2 bar").plus(q("50 kPa")).unwrap(), q("2.5 bar"));
    assert_eq!(Unit::Kelvin.dimension(), Dimension::Temperature);
}

#[test]
fn quantities_are_read_as_written() {
    for (text, value, unit) in [
        ("32 N.m", 32.0, "N.m"),
        ("32Nm", 32.0, "N.m"),
        ("1/2 in", 0.5, "in"),
        ("1/2\"", 0.5, "in"),
        ("2 1/4 turns", 2.25, "turn"),
        ("2½ turns", 2.5, "turn"),
        ("-40 degC", -40.0, "degC"),
        (".5 mm", 0.5, "mm"),
        ("1,500 N", 1500.0, "N"),
        ("2e3 N", 2000.0, "N"),
        ("10.8mm", 10.8, "mm"),
        ("1 - ", 1.0, "one"),
    ] {
        let got = Quantity::parse(text).unwrap_or_else(|e| panic!("{text}: {e}"));
        assert_eq!((got.value, got.unit.name()), (value, unit), "{text}");
    }
}

#[test]
fn a_bad_quantity_is_refused_with_a_way_to_mend_it() {
    let said = |text: &str| Quantity::parse(text).unwrap_err().to_string();
    assert_eq!(said("32"), "found `32` with no unit; write the unit after it, such as `32 N.m` or `32 mm`");
    assert_eq!(said("32 newton meteres"), "unknown unit `newton meteres`; did you mean `N.m`?");
    assert_eq!(Quantity::parse(""), Err(QuantityError::Empty));
    assert!(matches!(Quantity::parse("tight"), Err(QuantityError::NoNumber { .. })));
    for text in ["nan N.m", ".nan mm", "inf mm", "-inf mm", "1e999 mm"] {
        assert!(matches!(Quantity::parse(text), Err(QuantityError::NotFinite { .. })), "{text}");
    }
}

#[test]
fn the_bench_sees_and_hears_the_same_figures() {
    for (text, show, say) in [
        ("32 N.m", "32 N.m", "thirty two newton metres"),
        ("1 N.m", "1 N.m", "one newton metre"),
        ("1.50 mm", "1.5 mm", "one point five millimetres"),
        ("22.1269 lbf.ft", "22.13 lbf.ft", "twenty two point one three foot pounds"),
        ("0.0254 in", "0.0254 in", "zero point zero two five four inches"),
        ("174.0452853 psi", "174 psi", "one hundred and seventy four p s i"),
        ("12345 N", "12345 N", "twelve thousand, three hundred and forty five newtons"),
        ("20 degC", "20 °C", "twenty degrees Celsius"),
        ("24 click", "24 clicks", "twenty four clicks"),
        ("1 click", "1 click", "one click"),
        ("14 bar", "14 bar", "fourteen bar"),
    ] {
        let got = Quantity::parse(text).unwrap();
        assert_eq!((got.show().as_str(), got.say().as_str()), (show, say));
    }
}

#[test]
fn limits_are_read_held_and_shown() {
    let cases = [
        ("32 N.m +/- 2 N.m", Some(30.0), Some(34.0), "30 to 34 N.m"),
        ("32 N.m ± 2", Some(30.0), Some(34.0), "30 to 34 N.m"),
        ("110 mm +/- 2 mm", Some(108.0), Some(112.0), "108 to 112 mm"),
        ("30 to 34 N.m", Some(30.0), Some(34.0), "30 to 34 N.m"),
        ("at least 5 mm", Some(5.0), None, "at least 5 mm"),
        ("at most 0.05 mm", None, Some(0.05), "at most 0.05 mm"),
        ("24 click", Some(24.0), Some(24.0), "24 clicks"),
        ("50 N.m +/- 4 %", Some(48.0), Some(52.0), "48 to 52 N.m"),
        ("1 in +/- 2.54 mm", Some(0.9), Some(1.1), "0.9 to 1.1 in"),
        ("20 degC +/- 5 delta_K", Some(15.0), Some(25.0), "15 to 25 °C"),
    ];
    for (text, lo, hi, show) in cases {
        let limit = Limit::parse(text).unwrap_or_else(|e| panic!("{text}: {e}"));
        assert_eq!((limit.lo, limit.hi, limit.show().as_str()), (lo, hi, show), "{text}");
    }
    for text in ["32 +/- 2", "34 to 30 N.m", "32 N.m +/- 2 mm", "at least 5", "N.m", "32 N.m +/- -2 N.m"] {
        assert!(Limit::parse(text).is_err(), "{text}");
    }
    assert_eq!(Limit::parse("32 N.m +/- 2 N.m").unwrap().say(), "thirty to thirty four newton metres");
}

#[test]
fn a_limit_is_inclusive_in_any_unit_of_its_dimension() {
    let limit = Limit::parse("32 N.m +/- 2 N.m").unwrap();
    for (text, within) in [
        ("30 N.m", true),
        ("34 N.m", true),
        ("29.99 N.m", false),
        ("34.01 N.m", false),
        ("23.6 lbf.ft", true),
        ("25.2 lbf.ft", false),
    ] {
        assert_eq!(limit.holds(Quantity::parse(text).unwrap()), Ok(within), "{text}");
    }
    assert!(limit.holds(Quantity::parse("32 mm").unwrap()).is_err());
    let sum = Limit::parse("0.3 mm +/- 0.0 mm").unwrap();
    assert_eq!(sum.holds(Quantity::new(0.1 + 0.2, Unit::Millimetre)), Ok(true));
}

/// Design, section 7: +/- 6 % from 10 N.m, 10 % below, where none is given.
#[test]
fn a_bare_torque_gets_the_default_band() {
    for (text, lo, hi) in [
        ("45 N.m", 42.3, 47.7),
        ("10 N.m", 9.4, 10.6),
        ("4 N.m", 3.6, 4.4),
        ("9.99 N.m", 8.991, 10.989),
        ("33.2 lbf.ft", 31.208, 35.192),
    ] {
        let band = Limit::parse(text).unwrap().or_torque_band();
        assert_eq!((band.lo, band.hi), (Some(lo), Some(hi)), "{text}");
        assert_eq!(band.nominal(), Quantity::parse(text).unwrap());
    }
    assert_eq!(Limit::parse("5 mm").unwrap().or_torque_band(), Limit::parse("5 mm").unwrap());
    assert_eq!(Limit::parse("30 to 34 N.m").unwrap().or_torque_band(), Limit::parse("30 to 34 N.m").unwrap());
}

proptest! {
    #[test]
    fn there_and_back_is_the_same(value in -1e6f64..1e6, a in 0..Unit::ALL.len(), b in 0..Unit::ALL.len()) {
        let (a, b) = (Unit::ALL[a], Unit::ALL[b]);
        match Quantity::new(value, a).to(b) {
            Ok(there) => {
                prop_assert!(a.same_dimension(b));
                let back = there.to(a).unwrap().value;
                prop_assert!((back - value).abs() <= 1e-9 * value.abs().max(1000.0), "{} {} {}", value, a, b);
            }
            Err(_) => prop_assert!(!a.same_dimension(b)),
        }
    }

    #[test]
    fn shown_quantities_and_limits_read_back(value in -1e5f64..1e5, width in 0.0f64..1e3, a in 0..Unit::ALL.len()) {
        let unit = Unit::ALL[a];
        let shown = Quantity::new(value, unit).show();
        if unit != Unit::One {
            let back = Quantity::parse(&shown).unwrap();
            prop_assert_eq!(back.unit, unit);
            prop_assert!((back.value - value).abs() <= 5e-4 * value.abs() + 1e-6);
            let limit = Limit { lo: Some(value), hi: Some(value + width), unit };
            prop_assert!(limit.holds(limit.nominal()).unwrap());
            prop_assert!(Limit::parse(&limit.show()).is_ok(), "{}", limit.show());
        }
    }

    #[test]
    fn any_text_is_read_or_refused(text in "\\PC{0,40}") {
        if let Ok(read) = Quantity::parse(&text) { prop_assert!(read.value.is_finite()); }
        if let Err(refused) = Limit::parse(&text) { prop_assert!(!refused.to_string().is_empty()); }
    }
}

//! The workings beside general-purpose reference libraries.
//!
//! `scripts/reference-tables` made the tables with the libraries and versions that each row names.

use std::collections::BTreeMap;

use sparehand::quantity::{Quantity, Unit};
use sparehand::workings::registry::call_text;

#[test]
fn units_agree_with_pint() {
    let mut seen = 0;
    for row in include_str!("../data/quantity/pint.tsv").lines().filter(|line| !line.starts_with('#')) {
        let cells: Vec<&str> = row.split('\t').collect();
        let (value, from, to, expected) = match cells[..] {
            ["T", value, from, to, expected] => (value.parse::<f64>().unwrap(), from, to, expected),
            [unit, expected, "dimensionless"] => (1.0, unit, "one", expected),
            [unit, expected, "kelvin"] => (1.0, unit, "delta_K", expected),
            [unit, expected, base] => (1.0, unit, base, expected),
            _ => panic!("{row}"),
        };
        let unit = |text: &str| Unit::parse(text).unwrap_or_else(|| panic!("{row}: {text}"));
        let got = Quantity::new(value, unit(from)).to(unit(to)).unwrap().value;
        let expected: f64 = expected.parse().unwrap();
        assert!((got - expected).abs() <= 1e-9 * expected.abs().max(1.0), "{row}: got {got}");
        seen += 1;
    }
    assert!(seen >= 100, "{seen}");
}

#[test]
fn workings_agree_with_the_reference_libraries() {
    let mut wrong = Vec::new();
    let mut libraries = std::collections::BTreeSet::new();
    for row in include_str!("../data/workings/reference.tsv").lines().filter(|line| !line.starts_with('#')) {
        let [library, name, inputs, expected, unit, tolerance] = row.split('\t').collect::<Vec<_>>()[..]
        else {
            panic!("{row}")
        };
        libraries.insert(library.split_whitespace().next().unwrap());
        let mut given: BTreeMap<String, String> = inputs
            .split(';')
            .map(|pair| pair.split_once('=').unwrap())
            .map(|(k, v)| (k.to_owned(), v.to_owned()))
            .collect();
        if unit != "one" {
            given.insert("as".to_owned(), unit.to_owned());
        }
        let got = call_text(name, &given)
            .unwrap_or_else(|refusal| panic!("{row}: {refusal}"))
            .quantity()
            .unwrap()
            .value;
        let (expected, tolerance): (f64, f64) = (expected.parse().unwrap(), tolerance.parse().unwrap());
        if (got - expected).abs() > tolerance * expected.abs() {
            wrong.push(format!("{row}: got {got}"));
        }
    }
    assert_eq!(wrong, Vec::<String>::new());
    assert_eq!(
        libraries.into_iter().collect::<Vec<_>>(),
        ["CoolProp", "bd_warehouse", "chemicals", "lubepy", "numpy", "scipy"]
    );
}

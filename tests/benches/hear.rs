//! How long a line takes to be understood, with 1, 50 and 500 units (and four procedures each) in the pack.
//!
//! `cargo bench --bench hear`. The lines are the labelled ones beside the tests and the small talk, over and over.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    clippy::string_slice
)]
#![allow(clippy::disallowed_methods, reason = "a measurement reads the clock")]
#![allow(missing_docs)]

use sparehand::act::Waiting;
use sparehand::hearing::{Ear, Line, Stock, Vocabulary, stock};
use sparehand::rulebase::Pack;
use std::time::{Duration, Instant};

const ROUNDS: usize = 20;

fn main() {
    let pack = Pack::built_in().expect("the built-in pack loads");
    let lines = lines();
    println!("{:>6} {:>10} {:>10} {:>10} {:>10} {:>10}", "units", "procedures", "load", "p50", "p99", "most");
    for units in [1, 50, 500] {
        let stock = grown(&stock(&pack), units);
        let start = Instant::now();
        let ear = Ear::build(&pack.talk, &stock);
        let load = start.elapsed();
        let mut times = Vec::new();
        for (said, unit, waiting) in &lines {
            // The best of several: others share the machine, and their turns are not the line's.
            let once = || {
                let start = Instant::now();
                std::hint::black_box(ear.hear(&Line { said, unit: unit.as_deref(), waiting }));
                start.elapsed()
            };
            times.push((0..ROUNDS).map(|_| once()).min().unwrap());
        }
        times.sort();
        let at = |share: f64| times[((times.len() - 1) as f64 * share) as usize];
        println!(
            "{units:>6} {:>10} {:>10} {:>10} {:>10} {:>10}",
            stock.procedures.len(),
            shown(load),
            shown(at(0.5)),
            shown(at(0.99)),
            shown(at(1.0))
        );
    }
}

/// The built-in units, and others like them under other names.
fn grown(stock: &Stock, units: usize) -> Stock {
    let mut out = stock.clone();
    for count in 0..units.saturating_sub(stock.units.len()) {
        let like = &stock.units[count % stock.units.len()];
        let unit = Vocabulary {
            unit: format!("unit-{count}"),
            called: vec![format!("alder {count}")],
            ..like.clone()
        };
        for procedure in 0..4 {
            out.procedures
                .insert(format!("procedure {procedure} of {count}"), format!("procedure-{procedure}"));
        }
        out.units.push(unit);
    }
    if units < stock.units.len() {
        out.units.truncate(3);
    }
    out
}

fn lines() -> Vec<(String, Option<String>, Waiting)> {
    let labelled =
        [include_str!("../data/hearing/examples.jsonl"), include_str!("../data/hearing/heldout.jsonl")];
    let rows =
        labelled.into_iter().flat_map(str::lines).filter(|line| !line.starts_with('#') && !line.is_empty());
    let mut out: Vec<(String, Option<String>, Waiting)> = rows
        .map(|row| {
            let row: serde_json::Value = serde_json::from_str(row).unwrap();
            let waiting = serde_json::json!({ "waiting_for": row["waiting_for"], "about": row["about"] });
            (
                row["said"].as_str().unwrap().to_owned(),
                row["unit"].as_str().map(str::to_owned),
                serde_json::from_value(waiting).unwrap(),
            )
        })
        .collect();
    let chatter = include_str!("../data/hearing/chatter.txt").lines();
    out.extend(chatter.map(|said| (said.to_owned(), Some("birch-60".to_owned()), Waiting::default())));
    out
}

fn shown(time: Duration) -> String {
    format!("{:.0} us", time.as_secs_f64() * 1e6)
}

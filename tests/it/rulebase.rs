//! The pack that is built in, and what the loader makes of it.

use sparehand::rulebase::Pack;
use sparehand::source::{Problem, render};

/// Every problem drawn, for a failed test's message.
pub fn drawn(problems: &[Problem], text: impl Fn(&str) -> Option<String>) -> String {
    let drawn = problems.iter().map(|problem| render(problem, text(&problem.place.file).as_deref(), false));
    drawn.collect::<Vec<_>>().join("\n\n")
}

fn rules(path: &str) -> Option<String> {
    std::fs::read_to_string(format!("{}/rules/{path}", env!("CARGO_MANIFEST_DIR"))).ok()
}

#[test]
fn the_built_in_pack_loads() {
    let pack = Pack::built_in().unwrap_or_else(|problems| panic!("{}", drawn(&problems, rules)));
    assert!(pack.units.contains_key("birch-44"));
}

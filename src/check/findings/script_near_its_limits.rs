//! Script near its limits.

use crate::check::finding::{Finding, Look};
use crate::check::sink::Sink;
use crate::check::subject::OnPack;
use crate::check::turning::made_up;
use crate::rulebase::script::Kind;
use crate::source::Level;

/// A script that is nearly as large, or works nearly as long, as a script may.
pub static FINDING: Finding = Finding {
    name: "script near its limits",
    level: Level::Doubtful,
    milder: false,
    what: "A script that is nearly as large, or works nearly as long, as a script may.",
    why: "With one line more it is stopped, and its step is judged without it.",
    example: "a function with a loop of 20,000 turns",
    mend: "make it shorter, or split the file",
    look: Look::Pack(look),
};

/// The share of a limit from which it is near.
const NEAR: f64 = 0.6;
/// Largest file and largest expression, in bytes, as the loader has them.
const FILE: f64 = 16.0 * 1024.0;
/// See [`FILE`].
const EXPRESSION: f64 = 2.0 * 1024.0;

fn look(on: &OnPack<'_>, sink: &mut Sink<'_>) {
    for (path, text) in on.pack.files().iter().filter(|(path, _)| path.ends_with(".rhai")) {
        if text.len() as f64 > NEAR * FILE {
            sink.raise_for(
                crate::source::Place::new(path.as_str(), 1, 1),
                format!("{} bytes", text.len()),
                format!("at most {FILE}"),
            );
        }
    }
    let scripts = on.pack.scripts();
    for one in scripts.expressions() {
        if one.text.len() as f64 > NEAR * EXPRESSION {
            sink.raise_for(one.place(), format!("{} bytes", one.text.len()), format!("at most {EXPRESSION}"));
        }
        let most = made_up(on.pack, one).map(|(view, value)| {
            let _ = match one.kind {
                Kind::Guard => scripts.guard(&one.text, &view),
                Kind::Accept => scripts.accept(&one.text, value, &view),
            };
            scripts.worked()
        });
        let most = most.max().unwrap_or_default();
        if most.0 as f64 > NEAR * most.1 as f64 {
            sink.raise_for(one.place(), format!("{} operations", most.0), format!("at most {}", most.1));
        }
    }
}

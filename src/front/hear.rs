//! `sparehand hear`: JSON lines in, what was heard out, one line each; nothing is recorded.

use crate::act::{Act, Waiting};
use crate::hearing::{Ear, Line};
use serde::{Deserialize, Serialize};
use std::io::{self, BufRead, Write};

/// A line in.
#[derive(Debug, Deserialize)]
struct Asked {
    said: String,
    #[serde(default)]
    unit: Option<String>,
    #[serde(flatten)]
    waiting: Waiting,
}

/// A line out.
#[derive(Debug, Serialize)]
struct Told<'a> {
    said: &'a str,
    outcome: crate::act::Outcome,
    acts: &'a [Act],
    between: &'a [Act],
    #[serde(skip_serializing_if = "Option::is_none")]
    doubt: Option<crate::act::Doubt>,
    #[serde(skip_serializing_if = "Option::is_none")]
    refused: Option<&'a str>,
    sure: f64,
}

/// Hears every line of the input; with `why` each answer carries what decided it. A bad line is answered with
/// `{"error"}` and the rest go on; whether every line was good is returned.
///
/// # Errors
/// When the input cannot be read or the output not written.
pub fn run(mut input: impl BufRead, mut output: impl Write, ear: &Ear, why: bool) -> io::Result<bool> {
    let mut good = true;
    let mut bytes = Vec::new();
    while input.read_until(b'\n', &mut bytes)? > 0 {
        let text = String::from_utf8_lossy(&bytes).trim().to_owned();
        bytes.clear();
        if text.is_empty() {
            continue;
        }
        let answer = match serde_json::from_str::<Asked>(&text) {
            Ok(asked) => answer(ear, &asked, why),
            Err(problem) => {
                good = false;
                serde_json::to_string(&serde_json::json!({ "error": problem.to_string() }))
            }
        };
        writeln!(output, "{}", answer.map_err(io::Error::other)?)?;
        output.flush()?;
    }
    Ok(good)
}

fn answer(ear: &Ear, asked: &Asked, why: bool) -> serde_json::Result<String> {
    let line = Line { said: &asked.said, unit: asked.unit.as_deref(), waiting: &asked.waiting };
    if why {
        return serde_json::to_string(&ear.explain(&line));
    }
    let heard = ear.hear(&line);
    serde_json::to_string(&Told {
        said: &asked.said,
        outcome: heard.outcome,
        acts: &heard.acts,
        between: &heard.between,
        doubt: heard.doubt,
        refused: heard.refused.as_deref(),
        sure: (heard.sure * 1000.0).round() / 1000.0,
    })
}

//! The JSON of `pipe`: lines in with how sure the ear is, answers out.

use super::transcript::word;
use crate::act::Act;
use crate::session::{Fault, LONGEST, Line, Turn, read_time};
use serde::{Deserialize, Serialize};
use serde_json::{Value, json};

/// A line as an ear sends it.
#[derive(Debug, Deserialize)]
struct Sent {
    said: String,
    #[serde(default)]
    sure: Option<f64>,
    #[serde(default, rename = "or")]
    others: Option<Vec<Other>>,
    #[serde(default)]
    at: Option<String>,
}

/// What may have been said instead.
#[derive(Debug, Deserialize)]
#[serde(untagged)]
enum Other {
    Words(String),
    Said { said: String },
}

/// A line as it came: JSON when it begins with a brace, plain words otherwise.
///
/// # Errors
/// A line of JSON that is not of this form.
pub fn read(text: &str) -> Result<Line, Fault> {
    if !text.trim_start().starts_with('{') {
        return said(Line::new(text));
    }
    let form = "{\"said\": \"...\", \"sure\": 0.9, \"or\": [\"...\"], \"at\": \"2026-03-02T08:15:00+00:00\"}";
    let sent: Sent = serde_json::from_str(text)
        .map_err(|error| Fault::call(format!("a line of JSON that cannot be read: {error}"), form))?;
    let at = match &sent.at {
        Some(at) => Some(read_time(at).ok_or_else(|| {
            Fault::call(format!("a time that cannot be read: `{}`", crate::session::plain(at)), form)
        })?),
        None => None,
    };
    let or = sent.others.unwrap_or_default().into_iter().map(|other| match other {
        Other::Words(said) | Other::Said { said } => said,
    });
    said(Line { said: sent.said, sure: sent.sure, or: or.collect(), at })
}

/// A line of a length that somebody says.
fn said(line: Line) -> Result<Line, Fault> {
    if line.said.len() > LONGEST { Err(too_long()) } else { Ok(line) }
}

/// A line longer than anybody says.
pub fn too_long() -> Fault {
    Fault::call(format!("a line longer than {LONGEST} bytes"), "say it in shorter lines")
}

/// An answer as `pipe --json` prints it.
#[derive(Debug, Serialize)]
pub struct Answered<'a> {
    #[serde(rename = "in")]
    line: Option<&'a str>,
    heard: Option<String>,
    outcome: Value,
    acts: &'a [Act],
    #[serde(skip_serializing_if = "<[Act]>::is_empty")]
    between: &'a [Act],
    say: &'a str,
    show: &'a str,
    waiting_for: String,
    about: Option<&'a str>,
    place: Option<&'a str>,
    step: Option<&'a str>,
    events: Vec<Value>,
    #[serde(skip_serializing_if = "Option::is_none")]
    error: Option<String>,
}

impl<'a> Answered<'a> {
    /// The answer of a turn to a line as it came; none for what is told unasked.
    pub fn of(line: Option<&'a str>, turn: &'a Turn) -> Self {
        let heard = turn.heard.as_ref();
        Self {
            line: turn.line.as_ref().and(line),
            heard: turn.line.clone(),
            outcome: heard.map_or(Value::Null, |heard| json!(heard.outcome)),
            acts: heard.map_or(&[], |heard| heard.acts.as_slice()),
            between: heard.map_or(&[], |heard| heard.between.as_slice()),
            say: &turn.reply.say,
            show: &turn.reply.show,
            waiting_for: word(&turn.waiting.kind),
            about: turn.waiting.about.as_deref(),
            place: turn.place.as_deref(),
            step: turn.step.as_deref(),
            events: turn.events.iter().map(event).collect(),
            error: turn.fault.as_ref().map(ToString::to_string),
        }
    }
}

/// The answer of a turn as `pipe --json` prints it.
pub fn answer_json(line: Option<&str>, turn: &Turn) -> Value {
    json!(Answered::of(line, turn))
}

/// An event with its number and its id before what happened.
fn event(envelope: &crate::event::Envelope) -> Value {
    let mut value = json!(envelope.event);
    if let Some(fields) = value.as_object_mut() {
        fields.insert("id".to_owned(), json!(envelope.id));
        fields.insert("sequence".to_owned(), json!(envelope.sequence));
        fields.insert("job".to_owned(), json!(envelope.job));
        fields.insert("utterance".to_owned(), json!(envelope.utterance.id));
    }
    value
}

//! What went wrong in a script, as data: kind, place, words.

use crate::source::{Place, Problem};
use rhai::{EvalAltResult, ParseErrorType};
use std::fmt;

/// What kind of fault it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FaultKind {
    /// It asked for something that is not known yet, or is not there.
    Missing,
    /// It did or took too much: operations, depth, size or time.
    Overran,
    /// It cannot be right: an unknown name, values that do not go together, a division by zero.
    Broken,
}

/// A script that failed; the job goes on.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ScriptFault {
    /// What kind.
    pub kind: FaultKind,
    /// Where, in the `.rhai` file or the YAML that holds the expression.
    pub place: Place,
    /// What was found.
    pub found: String,
    /// What to do about it.
    pub mend: String,
}

impl fmt::Display for ScriptFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.place, self.found)
    }
}

impl std::error::Error for ScriptFault {}

impl From<ScriptFault> for Problem {
    fn from(fault: ScriptFault) -> Self {
        Self::wrong(fault.place, fault.found).mend(fault.mend)
    }
}

/// Marks a fault that a function of ours raised because something is not known.
#[derive(Debug, Clone)]
pub(super) struct NotKnown(pub String);

/// An error of the engine in our words: kind, found, mend.
pub(super) fn words(error: &EvalAltResult) -> (FaultKind, String, String) {
    use EvalAltResult as E;
    use FaultKind::{Broken, Missing, Overran};
    let (kind, found, mend) = match error {
        E::ErrorParsing(kind, _) => return parse_words(kind),
        E::ErrorRuntime(value, _) => match value.clone().try_cast::<NotKnown>() {
            Some(NotKnown(found)) => (Missing, found, "ask for it only where it is known"),
            None => (Broken, value.to_string(), "mend the expression"),
        },
        E::ErrorFunctionNotFound(signature, _) => {
            return (Broken, format!("there is no function `{}`", ours(signature)), near_function(signature));
        }
        E::ErrorVariableNotFound(name, _) => (
            Broken,
            format!("there is no `{name}` here"),
            "name `value` where a reading is judged, or call a function",
        ),
        E::ErrorTooManyOperations(_) => {
            (Overran, "this script runs without end".to_owned(), "take the loop out")
        }
        E::ErrorTerminated(..) => (Overran, "this script takes too long".to_owned(), "make it shorter"),
        E::ErrorStackOverflow(_) => {
            (Overran, "functions call each other too deep".to_owned(), "take the recursion out")
        }
        E::ErrorDataTooLarge(what, _) => {
            (Overran, format!("a value grows too large: {what}"), "make it smaller")
        }
        E::ErrorTooManyVariables(_) => (Overran, "too many variables".to_owned(), "make it simpler"),
        E::ErrorArithmetic(what, _) => (Broken, plain(what), "see that it cannot divide by zero or overflow"),
        E::ErrorMismatchDataType(wanted, found, _) | E::ErrorMismatchOutputType(wanted, found, _) => (
            Broken,
            format!("{} where {} is wanted", ours(found), ours(wanted)),
            "compare it, so that it is yes or no",
        ),
        E::ErrorPropertyNotFound(name, _) => {
            (Broken, format!("there is nothing called `{name}` here"), "call a function of the program")
        }
        E::ErrorDotExpr(what, _) => (Broken, property(what), "call a function of the program"),
        other => (Broken, plain(&other.to_string()), "mend the expression"),
    };
    (kind, found, mend.to_owned())
}

/// "Unknown property 'clicks' - ..." in our words.
fn property(what: &str) -> String {
    match what.split('\'').nth(1) {
        Some(name) => format!("there is nothing called `{name}` in it"),
        None => plain(what),
    }
}

/// A parse error in our words.
pub(super) fn parse_words(kind: &ParseErrorType) -> (FaultKind, String, String) {
    let mend = match kind {
        ParseErrorType::VariableUndefined(_) => "name `value` where a reading is judged, or call a function",
        ParseErrorType::ExprTooDeep => "make it simpler",
        _ => "write one expression, such as `is_off(\"foot-nut\")`",
    };
    let found = match kind {
        ParseErrorType::VariableUndefined(name) => format!("there is no `{name}` here"),
        other => format!("this is no Rhai: {}", plain(&other.to_string())),
    };
    (FaultKind::Broken, found, mend.to_owned())
}

/// The engine's names for kinds of value, in ours.
fn ours(text: &str) -> String {
    let text = text
        .replace("&str | ImmutableString | String", "a text")
        .replace("i64", "a number")
        .replace("f64", "a number");
    text.replace("bool", "yes or no").replace("string", "a text").replace("()", "nothing")
}

/// The engine's words without the place that it adds at the end, in lower case at the beginning.
fn plain(text: &str) -> String {
    let text = text.split(" (line").next().unwrap_or(text).trim_end_matches('.');
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_lowercase().chain(letters).collect())
}

fn near_function(signature: &str) -> String {
    let name = signature.split([' ', '(']).next().unwrap_or(signature);
    let known = super::FUNCTIONS.iter().map(|function| function.name);
    let same = super::FUNCTIONS.iter().find(|function| function.name == name);
    match (same, crate::source::nearest(name, known)) {
        (Some(function), _) => format!("write it as `{}`", function.form()),
        (None, Some(near)) => format!("write `{near}` if that is what is meant"),
        (None, None) => "use a function of the program, or one of a file under `scripts/`".to_owned(),
    }
}

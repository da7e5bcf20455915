//! `ask`: one question in plain words, or one calculation by name. Nothing is recorded.

use super::{AskArgs, Cli, open, out::Out, work};
use crate::act::Outcome;
use crate::bench::state::State;
use crate::book::{Book, Query};
use crate::quantity::figures::read_all;
use crate::rulebase::Pack;
use crate::session::{Asked, Clock, Fault, Rules, SystemClock, Told, as_if_on_bench, plain};
use serde_json::json;

/// Answers it.
///
/// # Errors
/// A unit that the rules do not have; nobody reading any more.
pub fn run(cli: &Cli, args: &AskArgs) -> Result<u8, Fault> {
    if let Some(name) = &args.work {
        return work::run(cli, name, &args.given);
    }
    let pack = open::rules(cli)?;
    let now = SystemClock.now();
    let (words, unit) = about(&pack, &plain(&args.question.join(" ")), args.unit.as_deref())?;
    let state = match &unit {
        Some(unit) => as_if_on_bench(&pack, unit, now).unwrap_or_default(),
        None => state(cli, &pack)?,
    };
    let rules = Rules::new(pack);
    let told = Asked { rules: &rules, state, now }.answer(&words)?;
    print(cli, &words, &told)?;
    Ok(if told.answered { 0 } else { 1 })
}

fn print(cli: &Cli, words: &str, told: &Told) -> Result<(), Fault> {
    let mut out = Out::new();
    if !cli.place.json {
        return out.text(&told.reply.show);
    }
    let mut value = json!({
        "in": words, "outcome": told.heard.outcome, "acts": told.heard.acts, "between": told.heard.between,
        "say": told.reply.say, "show": told.reply.show, "answered": told.answered,
        "asked_back": told.heard.outcome == Outcome::Ask,
    });
    if let Some(fields) = value.as_object_mut() {
        calculation(told, fields);
    }
    out.json(&value)
}

/// A calculation's figure, exact, with all that it rests on; or the input that it lacks.
fn calculation(told: &Told, fields: &mut serde_json::Map<String, serde_json::Value>) {
    if let [worked] = told.worked.as_slice()
        && let serde_json::Value::Object(own) = json!(worked)
    {
        fields.extend(own);
    } else if !told.worked.is_empty() {
        fields.insert("worked".to_owned(), json!(told.worked));
    }
    if let Some((missing, ask)) = &told.missing {
        fields.insert("missing".to_owned(), json!(missing));
        fields.insert("ask".to_owned(), json!(ask));
    }
}

/// The unit that the call or the question names, and the question without that name.
fn about(pack: &Pack, words: &str, named: Option<&str>) -> Result<(String, Option<String>), Fault> {
    if let Some(unit) = named {
        let known = pack.units.contains_key(unit);
        let ids = pack.units.keys().cloned().collect::<Vec<_>>().join(", ");
        return if known {
            Ok((words.to_owned(), Some(unit.to_owned())))
        } else {
            Err(Fault::call(format!("there is no unit `{}`", plain(unit)), format!("name one of: {ids}")))
        };
    }
    let lower = words.to_lowercase();
    for (id, card) in &pack.units {
        let spoken =
            card.called.iter().map(|name| name.to_lowercase()).chain([id.replace('-', " "), id.clone()]);
        // A name that is a number alone ("sixty") is a figure in a question.
        let number = |name: &str| read_all(&name.split(' ').collect::<Vec<_>>()).is_some();
        for name in spoken.filter(|name| !number(name)) {
            if let Some(at) = lower.find(&name) {
                return Ok((without(&lower, at, name.len()), Some(id.clone())));
            }
        }
    }
    Ok((words.to_owned(), None))
}

/// The question without the unit's name and the small words that lead to it.
fn without(words: &str, at: usize, len: usize) -> String {
    let before = words.get(..at).unwrap_or_default().trim_end();
    let after = words.get(at + len..).unwrap_or_default();
    let mut before: Vec<&str> = before.split_whitespace().collect();
    for small in [&["the", "a", "this", "my"][..], &["on", "of", "for", "in", "from"][..]] {
        if before.last().is_some_and(|word| small.contains(word)) {
            before.pop();
        }
    }
    plain(&format!("{}{after}", before.join(" ")))
}

/// The open job, when there is exactly one; an only unit of the rules otherwise.
fn state(cli: &Cli, pack: &Pack) -> Result<State, Fault> {
    if let Some(book) = open::book_to_read(cli)? {
        let query = cli.place.job.map_or_else(|| Query::OpenAt(book.bench().to_owned()), Query::Number);
        let mut open = book.find(&query)?;
        open.retain(|line| line.number > 0);
        if let [line] = open.as_slice() {
            return Ok(State::of(&book.since(&line.job, 0)?));
        }
    }
    let mut units = pack.units.keys();
    let only = units.next().filter(|_| units.next().is_none());
    Ok(only.and_then(|unit| as_if_on_bench(pack, unit, SystemClock.now())).unwrap_or_default())
}

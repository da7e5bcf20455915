//! Questions that want a second utterance. One that takes a yes or a no ends in "yes or no".

use super::caution::UNDERSTOOD;
use super::figure::{quantity, setting};
use super::piece::{Piece, Weight};
use super::sentence::{capital, clause, inside, list, question as asked, yes_or_no};
use super::value;
use crate::act::Doubt;
use crate::bench::Question;
use crate::quantity::{Limit, Quantity, figures};

/// A question.
pub(super) fn question(question: &Question) -> Piece {
    match question {
        Question::Value(kept) => two(&yes_or_no(&value::said(kept)), yes_or_no(&value::shown(kept))),
        Question::Beyond { value: kept, limit } => {
            let beyond = beyond(kept.kept, limit);
            let ask = |said: String| yes_or_no(&format!("{said}{beyond}"));
            two(&ask(value::said(kept)), ask(value::shown(kept)))
        }
        Question::Which { options, doubt, wanted } => which(options, doubt, wanted),
        Question::Acknowledge => Piece::default().asking(Weight::Acknowledgement, UNDERSTOOD),
        Question::SpringRate { was, now, options } => spring_rate(*was, *now, options),
        other => Piece::default().asking(Weight::Closing, &words(other)),
    }
}

/// Which limit a value is beyond.
fn beyond(value: Quantity, limit: &Limit) -> String {
    let under = matches!(limit.off_by(value), Ok(Some(off)) if off < 0.0);
    let (side, bound) = if under { ("under", limit.lo) } else { ("over", limit.hi) };
    let bound =
        bound.map(|bound| format!(", {side} the limit of {}", quantity(Quantity::new(bound, limit.unit))));
    bound.unwrap_or_default()
}

fn two(say: &str, show: String) -> Piece {
    Piece::default().asking_two(Weight::Closing, say, show)
}

/// Questions with the same words for eye and ear.
fn words(question: &Question) -> String {
    match question {
        Question::Reason { name, deviation: true } => {
            format!("{} would stay out of limits. Why?", capital(clause(name)))
        }
        Question::Reason { name, .. } => format!("{} would be left undone. Why?", capital(clause(name))),
        Question::Sure { name, reason, deviation } => {
            let what = if *deviation { "stays out of limits" } else { "is left undone" };
            yes_or_no(&format!("{} {what}, because {}", capital(clause(name)), inside(reason)))
        }
        Question::Serial { place } => {
            format!("To {}. What are the last three digits of its serial?", clause(place))
        }
        Question::Finish { number } => yes_or_no(&format!("Close job {number}")),
        Question::Start { missing, options } if missing.starts_with("job") => {
            let first = options.first().map_or("", |option| clause(option));
            let corner = if missing == "job" { ", and the corner" } else { "" };
            format!("No job is open. To begin, say start {first}{corner}.")
        }
        Question::Start { missing, options } => {
            let options = list(options, "or");
            let options = if options.is_empty() { options } else { format!(": {options}") };
            asked(&format!("Which {missing}{options}"))
        }
        Question::Work { ask, .. } => asked(ask.trim_end_matches('?')),
        Question::WhatWasIt { name } => asked(&format!("What was the {}, then", clause(name))),
        Question::WhichJob { jobs } => which_job(jobs),
        Question::Relative { name, found, by, less, to } => {
            let joins = if *less { "less" } else { "and" };
            let sum = format!("{} {joins} {}, {}", quantity(*found), quantity(*by), quantity(*to));
            yes_or_no(&format!("{}: found at {sum}", capital(name)))
        }
        Question::Stand { name, found } => {
            let found = found.map(|(found, from)| format!(" It was found at {}.", setting(found, from)));
            format!("Say where the {} should stand.{}", clause(name), found.unwrap_or_default())
        }
        Question::Beyond { .. }
        | Question::Value(_)
        | Question::Which { .. }
        | Question::Acknowledge
        | Question::SpringRate { .. } => String::new(),
    }
}

fn which_job(jobs: &[(u32, String)]) -> String {
    let jobs: Vec<String> = jobs.iter().map(|(number, what)| format!("{number}, {}", clause(what))).collect();
    if jobs.is_empty() {
        "Which job?".to_owned()
    } else {
        asked(&format!("Which job: {}", list(&jobs, "or")))
    }
}

/// Which of several readings was meant. Numbers are said digit by digit as well, where they sound like each other.
fn which(options: &[String], doubt: &Doubt, wanted: &str) -> Piece {
    match (options, doubt) {
        (_, Doubt::Hedged) if options.len() < 2 => closing(&open(doubt, wanted)),
        ([], _) => closing(&open(doubt, wanted)),
        ([one], _) => two(
            &yes_or_no(&format!("{}Is it {}", before(doubt), ear(one))),
            yes_or_no(&format!("{}Is it {}", before(doubt), clause(one))),
        ),
        (options, _) => {
            let said: Vec<String> = options.iter().map(|option| ear(option)).collect();
            let ask = |options: &str| asked(&format!("{}Which: {options}", before(doubt)));
            two(&ask(&said.join(", or ")), ask(&list(options, "or")))
        }
    }
}

fn closing(text: &str) -> Piece {
    Piece::default().asking(Weight::Closing, text)
}

/// What is said before the options.
fn before(doubt: &Doubt) -> &'static str {
    match doubt {
        Doubt::Part => "This unit has no such part. ",
        Doubt::Unit => "That unit does not fit here. ",
        Doubt::Number | Doubt::Vague | Doubt::Meaning | Doubt::Hedged | Doubt::Side => "",
    }
}

/// What is asked when there is nothing to choose from.
fn open(doubt: &Doubt, wanted: &str) -> String {
    let ask = match doubt {
        Doubt::Number => "which number was that?",
        Doubt::Vague => "what is it exactly?",
        Doubt::Part | Doubt::Meaning => "which do you mean?",
        Doubt::Hedged => "is it done, yes or no?",
        Doubt::Unit => "which unit was it?",
        Doubt::Side => "left or right, as seen from the seat?",
    };
    match clause(wanted) {
        "" => format!("{}{}", before(doubt), capital(ask)),
        wanted => format!("{}{}: {ask}", before(doubt), capital(wanted)),
    }
}

/// An option for the ear: a figure that has a sound-alike digit by digit as well. A serial number is said as it is
/// written: its digits are no figure.
fn ear(option: &str) -> String {
    let option = clause(option);
    let figure = number_in(option).filter(|_| !is_serial(option));
    match figure.filter(|number| figures::needs_digits(*number)) {
        Some(number) => format!("{option}, {}", figures::digits(number)),
        None => option.to_owned(),
    }
}

/// Whether a text holds a group of digits that begins with nought, as a serial number does and a figure does not.
fn is_serial(text: &str) -> bool {
    let groups = text.split(|c: char| !(c.is_alphanumeric() || c == '.'));
    groups.into_iter().any(|group| group.len() > 1 && group.starts_with('0') && !group.contains('.'))
}

/// The first number of a text, in figures or words.
fn number_in(text: &str) -> Option<f64> {
    let tokens: Vec<&str> = text.split_whitespace().collect();
    (0..tokens.len()).find_map(|from| {
        let found = figures::read_number(tokens.get(from..)?).into_iter().next()?;
        (found.kind == figures::Kind::Sure).then_some(found.value)
    })
}

/// A spring of another rate: what is to stay the same.
fn spring_rate(was: Quantity, now: Quantity, options: &[(String, Option<Quantity>)]) -> Piece {
    let options: Vec<String> = options
        .iter()
        .map(|(what, preload)| match preload {
            Some(preload) => format!("{}, {}", inside(what), quantity(*preload)),
            None => inside(what),
        })
        .collect();
    let head = format!("The spring was {}, now it is {}.", quantity(was), quantity(now));
    Piece::both(&head).asking(Weight::Closing, &asked(&format!("Which is kept: {}", options.join(", or "))))
}

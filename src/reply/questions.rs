//! Questions that want a second utterance. One that takes a yes or a no ends in "yes or no".

use super::caution::UNDERSTOOD;
use super::figure::quantity;
use super::piece::{Piece, Weight};
use super::sentence::{capital, clause, inside, list, question as asked, sentence, yes_or_no};
use super::{Reply, speakable, value};
use crate::act::Doubt;
use crate::bench::Question;
use crate::quantity::{Quantity, figures};

/// A question.
pub(super) fn question(question: &Question) -> Piece {
    match question {
        Question::Value(kept) => two(&yes_or_no(&value::said(kept)), yes_or_no(&value::shown(kept))),
        Question::Which { options, doubt, wanted } => which(options, doubt, wanted),
        Question::Acknowledge => Piece::default().asking(Weight::Acknowledgement, UNDERSTOOD),
        Question::SpringRate { was, now, options } => spring_rate(*was, *now, options),
        other => Piece::default().asking(Weight::Closing, &words(other)),
    }
}

fn two(say: &str, show: String) -> Piece {
    let asks = Reply { say: speakable(say), show };
    Piece { asks: Some((Weight::Closing, asks)), ..Piece::default() }
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
        Question::Start { missing, options } => {
            let options = list(options, "or");
            let options = if options.is_empty() { options } else { format!(": {options}") };
            asked(&format!("Which {missing}{options}"))
        }
        Question::WhatWasIt { name } => asked(&format!("What was {}, then", clause(name))),
        Question::WhichJob { jobs } => which_job(jobs),
        Question::Value(_) | Question::Which { .. } | Question::Acknowledge | Question::SpringRate { .. } => {
            String::new()
        }
    }
}

fn which_job(jobs: &[(u32, String)]) -> String {
    let jobs: Vec<String> = jobs.iter().map(|(number, what)| format!("job {number}, {}", clause(what))).collect();
    if jobs.is_empty() { "Which job?".to_owned() } else { asked(&format!("Which one: {}", list(&jobs, "or"))) }
}

/// Which of several readings was meant. Numbers are said digit by digit as well, where they sound like each other.
fn which(options: &[String], doubt: &Doubt, wanted: &str) -> Piece {
    match (options, doubt) {
        (_, Doubt::Hedged) if options.len() < 2 => closing(&yes_or_no("Is it done")),
        ([], _) => closing(&open(doubt, wanted)),
        ([one], _) => two(&yes_or_no(&format!("{}Is it {}", before(doubt), ear(one))), yes_or_no(&format!("{}Is it {}", before(doubt), clause(one)))),
        (options, _) => {
            let said: Vec<String> = options.iter().map(|option| ear(option)).collect();
            let ask = |options: &[String]| asked(&format!("{}Which: {}", before(doubt), list(options, "or")));
            two(&ask(&said), ask(options))
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
    let lead = match doubt {
        Doubt::Number => "Which number was that?",
        Doubt::Vague => "What is it exactly?",
        Doubt::Part => "This unit has no such part. Which one?",
        Doubt::Meaning => "Which do you mean?",
        Doubt::Hedged => "Is it done, yes or no?",
        Doubt::Unit => "That unit does not fit here. Which unit was it?",
        Doubt::Side => "Left or right, as seen from the seat?",
    };
    match clause(wanted) {
        "" => lead.to_owned(),
        wanted if wanted.ends_with('?') => format!("{}{}", before(doubt), capital(wanted)),
        wanted => format!("{lead} {}", sentence(&format!("Say {}", inside(wanted)))),
    }
}

/// An option for the ear: a figure that has a sound-alike digit by digit as well.
fn ear(option: &str) -> String {
    let option = clause(option);
    let number = option.split_whitespace().find_map(|word| word.parse::<f64>().ok());
    match number {
        Some(number) if figures::needs_digits(number) => format!("{option}, {},", figures::digits(number)),
        _ => option.to_owned(),
    }
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
    let head = format!("The spring was {}, this one is {}.", quantity(was), quantity(now));
    Piece::both(&head).asking(Weight::Closing, &asked(&format!("What stays the same: {}", list(&options, "or"))))
}

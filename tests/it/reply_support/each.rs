//! One of every part of an answer, drawn from a seed.

use super::generate::Draw;
use sparehand::act::Doubt;
use sparehand::bench::{Ack, CautionCard, Consequence, Fact, Part, Question, Refusal};
use sparehand::quantity::{Quantity, Unit};
use sparehand::rulebase::{ReadBack, Signal};

/// One of every part, acknowledgement, question, fact and refusal.
pub fn all(draw: &mut Draw) -> Vec<Part> {
    let mut parts = plain(draw);
    parts.extend(acks(draw).into_iter().map(Part::Ack));
    parts.extend(questions(draw).into_iter().map(Part::Question));
    parts.extend(facts(draw).into_iter().map(Part::Fact));
    parts.extend(refusals(draw).into_iter().map(Part::Refused));
    parts
}

fn plain(draw: &mut Draw) -> Vec<Part> {
    let mut parts = vec![
        Part::Step(Box::new(draw.step())),
        Part::SaidBack(draw.value()),
        Part::Restore(draw.restore()),
        Part::Remaining { steps: draw.below(60) as usize, next: vec!["foot nut".into(), "spring".into()] },
        Part::OpenEnds { items: vec![draw.text(), draw.text()] },
        Part::OpenEnds { items: Vec::new() },
        Part::Sentence(draw.text()),
        Part::Unknown { what: "a torque for the spring".into() },
        Part::TimerEnded { what: draw.text() },
    ];
    for signal in [Signal::Danger, Signal::Warning, Signal::Caution, Signal::Notice] {
        parts.push(Part::Caution(CautionCard { signal, text: draw.text(), acknowledge: draw.yes() }));
    }
    for which in [ReadBack::Found, ReadBack::Wanted, ReadBack::Left] {
        parts.push(Part::Settings(draw.settings(which)));
    }
    parts
}

fn acks(draw: &mut Draw) -> Vec<Ack> {
    vec![
        Ack::Done(Vec::new()),
        Ack::Done(vec![draw.name(), draw.name(), draw.name()]),
        Ack::Stays,
        Ack::Noted,
        Ack::Troubled,
        Ack::Skipped(draw.name()),
        Ack::Deviated(draw.name()),
        Ack::TakenBack { what: draw.name(), metal: vec!["the gas is still out".into()] },
        Ack::NothingToTakeBack,
        Ack::Corrected(draw.value()),
        Ack::Paused,
        Ack::GoingOn {
            number: 3,
            corner: draw.maybe(Draw::name),
            last: draw.maybe(Draw::name),
            again: vec![draw.name(), draw.name()],
        },
        Ack::TimerSet { what: draw.text(), lasts: draw.quantity() },
        Ack::By("Ann".into()),
        Ack::Wanted(draw.value()),
        Ack::WantedWords(draw.text()),
        Ack::Fitted(draw.text()),
        Ack::ReadBack(ReadBack::Left),
        Ack::Started {
            number: draw.below(200) as u32,
            unit: draw.name(),
            corner: draw.maybe(|_| "front left".into()),
            procedure: "re-spring".into(),
        },
        Ack::Switched("front right".into()),
        Ack::Closed { number: draw.below(200) as u32 },
        Ack::Dropped,
        Ack::Understood,
        Ack::Already(draw.name()),
    ]
}

fn questions(draw: &mut Draw) -> Vec<Question> {
    let doubts =
        [Doubt::Number, Doubt::Vague, Doubt::Part, Doubt::Meaning, Doubt::Hedged, Doubt::Unit, Doubt::Side];
    let mut questions = vec![
        Question::Value(draw.value()),
        Question::Reason { name: draw.name(), deviation: draw.yes() },
        Question::Sure { name: draw.name(), reason: draw.text(), deviation: draw.yes() },
        Question::Serial { place: "front right".into() },
        Question::Finish { number: draw.below(99) as u32 },
        Question::Start { missing: "unit".into(), options: vec!["Birch 44".into(), "Lark 43".into()] },
        Question::Start { missing: "corner".into(), options: Vec::new() },
        Question::Acknowledge,
        Question::SpringRate {
            was: draw.quantity(),
            now: draw.quantity(),
            options: vec![
                ("the same turns".into(), None),
                ("the same preload force".into(), Some(draw.quantity())),
            ],
        },
        Question::WhatWasIt { name: draw.name() },
        Question::WhichJob {
            jobs: vec![(3, "Birch 44, front left".into()), (draw.below(99) as u32, "Lark 43".into())],
        },
    ];
    for doubt in doubts {
        for options in
            [vec![], vec!["two clicks".to_owned()], vec!["two clicks".to_owned(), "ten clicks".to_owned()]]
        {
            let wanted = draw.maybe(|_| "tighten foot nut".into()).unwrap_or_default();
            questions.push(Question::Which { options, doubt: doubt.clone(), wanted });
        }
    }
    questions
}

fn facts(draw: &mut Draw) -> Vec<Fact> {
    let sizes = draw.quantity();
    vec![
        Fact::Tool {
            name: draw.name(),
            tool: draw.maybe(|_| "hex key".into()),
            size: draw.yes().then(|| draw.quantity()),
            hold: draw.maybe(Draw::text),
        },
        Fact::Swap {
            tool: "13 mm".into(),
            part: draw.name(),
            verdict: draw.pick(&["fits", "marginal", "loose", "no"]).to_owned(),
            why: draw.text(),
        },
        Fact::Torque {
            name: draw.name(),
            limit: draw.yes().then(|| draw.limit()),
            nip: draw.maybe(|_| "short arm".into()),
            critical: draw.maybe(|_| "the shaft is hollow".into()),
        },
        Fact::Turn {
            name: draw.name(),
            doing: draw.pick(&["to undo", "one way only", "to count up"]).to_owned(),
            way: draw.way(),
            seen_from: draw.maybe(|_| "from below".into()),
        },
        Fact::Locker {
            name: draw.name(),
            grade: draw.maybe(|_| "medium".into()),
            put: draw.maybe(Draw::text),
            never: draw.maybe(|_| "on the needle".into()),
            open: draw.yes().then(|| draw.quantity()),
        },
        Fact::Setting {
            name: draw.name(),
            which: draw.pick(&["found", "now", "last time"]).to_owned(),
            value: draw.yes().then(|| draw.quantity()),
            text: draw.maybe(Draw::text),
        },
        Fact::Range {
            name: draw.name(),
            first: 0.0,
            last: draw.below(40) as f64,
            unit: draw.pick(&["click", "position", "turn", "bar"]).to_owned(),
            from: draw.pick(&["full in", "full in is 0", ""]).to_owned(),
            counted: draw.yes().then(|| draw.below(40) as f64),
            only: draw.yes().then(|| draw.way()),
        },
        Fact::Mark { name: draw.name(), lines_up: draw.text() },
        Fact::Why(draw.text()),
        Fact::Source { name: draw.name(), source: draw.text() },
        Fact::Stuck { name: draw.name(), rung: draw.text(), last: draw.yes() },
        Fact::Sizes { name: draw.name(), rows: vec![("bore".into(), sizes.say(), sizes.show())] },
        Fact::Time {
            what: "this step".into(),
            minutes: draw.yes().then(|| draw.below(500) as f64),
            to_go: draw.yes(),
        },
        Fact::Log { rows: vec![(format!("14:{:02}", draw.below(40) + 10), draw.text())] },
        Fact::Log { rows: Vec::new() },
        Fact::Worked {
            name: "conversion".into(),
            say: sizes.say(),
            show: vec![sizes.show()],
            worked: Vec::new(),
        },
        Fact::Help { phrases: vec!["done".into(), "how tight".into()] },
    ]
}

fn refusals(draw: &mut Draw) -> Vec<Refusal> {
    let mut refusals = vec![
        Refusal::WrongKind { said: draw.quantity(), wanted: "a torque".into() },
        Refusal::NotASetting { name: draw.name(), value: draw.quantity(), why: draw.text() },
        Refusal::NeedsValue { asks: "What did it click at?".into() },
        Refusal::NeverSkipped { name: draw.name() },
        Refusal::NotPast { name: draw.name(), first: draw.name() },
        Refusal::NotNow { why: draw.text() },
    ];
    for what in ["cautions", "everything", "records", "elsewhat"] {
        refusals.push(Refusal::NotGranted { what: what.into() });
    }
    for then in [
        Consequence::Recount,
        Consequence::Finding,
        Consequence::StaysOpen,
        Consequence::Branch,
        Consequence::Stop("Fetch the senior".into()),
        Consequence::TooTight("Stop. Look at the thread before you go on.".into()),
    ] {
        let value = Quantity::new(draw.below(99) as f64, Unit::NewtonMetre);
        refusals.push(Refusal::OutOfLimits { name: draw.name(), value, limit: draw.limit(), then });
    }
    refusals
}

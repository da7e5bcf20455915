//! An answer as data: figures and names, no sentences of the front end. `reply` alone renders it.

use crate::act::{Doubt, End};
use crate::quantity::{Limit, Quantity};
use crate::rulebase::{ReadBack, Signal};
use crate::workings::adjusters::Way;

/// What the bench answers to one input: parts in the order they are said.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Answer {
    /// The parts.
    pub parts: Vec<Part>,
}

impl Answer {
    /// An answer of one part.
    pub fn of(part: Part) -> Self {
        Self { parts: vec![part] }
    }
}

/// One part of an answer.
#[derive(Debug, Clone, PartialEq)]
pub enum Part {
    /// A caution before its step.
    Caution(CautionCard),
    /// The step in hand.
    Step(Box<StepCard>),
    /// A value said back.
    SaidBack(Value),
    /// A value that is not what was wanted.
    Refused(Refusal),
    /// A short acknowledgement.
    Ack(Ack),
    /// A question that wants a second utterance.
    Question(Question),
    /// A fact asked for.
    Fact(Fact),
    /// How to bring an adjuster to its wanted setting.
    Restore(RestoreCard),
    /// A list of settings, one row an adjuster.
    Settings(SettingsCard),
    /// How far the job is.
    Remaining {
        /// Steps left.
        steps: usize,
        /// Their names, the nearest first.
        next: Vec<String>,
    },
    /// What is still open at the end of a job.
    OpenEnds {
        /// One sentence each.
        items: Vec<String>,
    },
    /// A sentence of the pack or of the record, as it stands.
    Sentence(String),
    /// The bench does not know, and says what.
    Unknown {
        /// What was asked for.
        what: String,
    },
    /// A timer has run out.
    TimerEnded {
        /// What for.
        what: String,
    },
}

/// A caution.
#[derive(Debug, Clone, PartialEq)]
pub struct CautionCard {
    /// Signal word.
    pub signal: Signal,
    /// Its words: all of them, or the one clause.
    pub text: String,
    /// Whether it waits for its own acknowledgement.
    pub acknowledge: bool,
}

/// The step in hand, with what its card says of it.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct StepCard {
    /// Its id.
    pub id: String,
    /// Its place in the procedure: this one, of all.
    pub number: (usize, usize),
    /// The whole sentence.
    pub text: String,
    /// The short form said every day ("Foot nut").
    pub name: String,
    /// Its own words for the short form, where the pack gives them.
    pub brief: Option<String>,
    /// The tool.
    pub tool: Option<String>,
    /// The size on the tool.
    pub size: Option<Quantity>,
    /// The way it turns.
    pub way: Option<Way>,
    /// From where that is seen, when it must be said.
    pub seen_from: Option<String>,
    /// How much.
    pub amount: Option<String>,
    /// How the other side is held.
    pub hold: Option<String>,
    /// Torque or other band to reach.
    pub limit: Option<Limit>,
    /// A nip, and how.
    pub nip: Option<String>,
    /// Threadlocker: grade and how.
    pub locker: Option<String>,
    /// A limit not to be passed.
    pub never: Option<String>,
    /// What is told with it.
    pub note: Option<String>,
    /// What closes it.
    pub asks: Option<Asks>,
}

/// What a step asks for.
#[derive(Debug, Clone, PartialEq)]
pub enum Asks {
    /// A yes or no.
    YesOrNo(String),
    /// A value, asked for without leading.
    Value(String),
    /// Words.
    Words(String),
    /// "Done".
    Done,
}

/// A value with what was said and made of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Value {
    /// The name of the part or adjuster.
    pub name: String,
    /// The number and unit kept.
    pub kept: Quantity,
    /// The end it is counted from, for a setting.
    pub from: Option<End>,
    /// What was said, when it was another unit or end.
    pub said: Option<(Quantity, Option<End>)>,
    /// Whether it is said digit by digit as well.
    pub digits: bool,
}

/// A value refused, or kept with a finding.
#[derive(Debug, Clone, PartialEq)]
pub enum Refusal {
    /// Out of limits.
    OutOfLimits {
        /// The part.
        name: String,
        /// The value.
        value: Quantity,
        /// The limits.
        limit: Limit,
        /// What follows.
        then: Consequence,
    },
    /// Another kind of unit than the step takes.
    WrongKind {
        /// What was said.
        said: Quantity,
        /// What is wanted ("a torque").
        wanted: String,
    },
    /// More clicks than there are, a fraction of a click, a position that is not on the ring...
    NotASetting {
        /// The adjuster.
        name: String,
        /// What was said.
        value: Quantity,
        /// Why not.
        why: String,
    },
    /// The step needs a value, and "done" is not one.
    NeedsValue {
        /// The question.
        asks: String,
    },
    /// A step that is never skipped.
    NeverSkipped {
        /// The step's name.
        name: String,
    },
    /// Running ahead past a step that may not be passed.
    NotPast {
        /// What was to be closed.
        name: String,
        /// The step that comes first.
        first: String,
    },
    /// Something that this bench does not grant.
    NotGranted {
        /// Which: the talk's `refuse` entry.
        what: String,
    },
    /// It cannot be done now, and why.
    NotNow {
        /// Why.
        why: String,
    },
}

/// What follows a value out of limits.
#[derive(Debug, Clone, PartialEq)]
pub enum Consequence {
    /// Count it again.
    Recount,
    /// It stands as a finding; the job goes on.
    Finding,
    /// The step stays open: redo it, or leave it as a deviation with a reason.
    StaysOpen,
    /// Other steps follow before it is asked again.
    Branch,
    /// It has failed too often: stop.
    Stop(String),
}

/// A short acknowledgement.
#[derive(Debug, Clone, PartialEq)]
pub enum Ack {
    /// Closed (names of what was closed, when it was not the step in hand).
    Done(Vec<String>),
    /// Not done: the step stays.
    Stays,
    /// Written down.
    Noted,
    /// A trouble written down.
    Troubled,
    /// Left out.
    Skipped(String),
    /// Left as a deviation.
    Deviated(String),
    /// Taken back: what, and what the metal still is.
    TakenBack {
        /// What was taken back.
        what: String,
        /// What the metal still is.
        metal: Vec<String>,
    },
    /// There is nothing to take back.
    NothingToTakeBack,
    /// Corrected.
    Corrected(Value),
    /// Stopped for now.
    Paused,
    /// Going on, after this was last kept.
    GoingOn {
        /// The last thing kept.
        last: Option<String>,
        /// What metal cannot keep and must be done again.
        again: Vec<String>,
    },
    /// A timer runs.
    TimerSet {
        /// What for.
        what: String,
        /// How long.
        lasts: Quantity,
    },
    /// Who is working now.
    By(String),
    /// A wanted setting is kept.
    Wanted(Value),
    /// A wish in words is kept.
    WantedWords(String),
    /// A new part is kept.
    Fitted(String),
    /// Settings confirmed.
    ReadBack(ReadBack),
    /// A job begun: its number, unit and corner.
    Started {
        /// Its number.
        number: u32,
        /// Unit.
        unit: String,
        /// Corner.
        corner: Option<String>,
        /// Procedure.
        procedure: String,
    },
    /// Another unit in hand.
    Switched(String),
    /// The job is closed.
    Closed {
        /// Its number.
        number: u32,
    },
    /// The question is dropped.
    Dropped,
    /// Acknowledged.
    Understood,
    /// It has already been kept so.
    Already(String),
}

/// A question that wants a second utterance.
#[derive(Debug, Clone, PartialEq)]
pub enum Question {
    /// A converted or doubtful value: is it so?
    Value(Value),
    /// Which of these?
    Which {
        /// What each would be, as said.
        options: Vec<String>,
        /// What the doubt is about.
        doubt: Doubt,
        /// What would make it clear, when there are no options.
        wanted: String,
    },
    /// Leave out a critical step, or leave it out of limits: why?
    Reason {
        /// The step.
        name: String,
        /// Whether it is a deviation; a skip otherwise.
        deviation: bool,
    },
    /// The same with its reason said back.
    Sure {
        /// The step.
        name: String,
        /// The reason.
        reason: String,
        /// Whether it is a deviation; a skip otherwise.
        deviation: bool,
    },
    /// The last three digits of the serial at a switch.
    Serial {
        /// The place, spoken.
        place: String,
    },
    /// Close the job?
    Finish {
        /// Its number.
        number: u32,
    },
    /// What is missing to start: unit, procedure or corner, with what there is.
    Start {
        /// "unit", "procedure" or "corner".
        missing: String,
        /// What there is.
        options: Vec<String>,
    },
    /// A caution waits for its acknowledgement.
    Acknowledge,
    /// A spring of another rate: what is to stay the same.
    SpringRate {
        /// Rate before.
        was: Quantity,
        /// Rate now.
        now: Quantity,
        /// The ways out, each with the preload it leads to.
        options: Vec<(String, Option<Quantity>)>,
    },
    /// What was it, then?
    WhatWasIt {
        /// The part or adjuster.
        name: String,
    },
    /// More than one job is open.
    WhichJob {
        /// Their numbers with what they are.
        jobs: Vec<(u32, String)>,
    },
}

/// A fact asked for.
#[derive(Debug, Clone, PartialEq)]
pub enum Fact {
    /// A tool and its size.
    Tool {
        /// The part.
        name: String,
        /// The tool.
        tool: Option<String>,
        /// Its size.
        size: Option<Quantity>,
        /// How the other side is held.
        hold: Option<String>,
    },
    /// Whether another tool will do.
    Swap {
        /// The tool asked for.
        tool: String,
        /// The part and its size.
        part: String,
        /// Fits, marginal, loose or no, with why.
        verdict: String,
        /// Why.
        why: String,
    },
    /// How tight.
    Torque {
        /// The part.
        name: String,
        /// The band.
        limit: Option<Limit>,
        /// A nip instead.
        nip: Option<String>,
        /// Why it is critical.
        critical: Option<String>,
    },
    /// Which way.
    Turn {
        /// The part or adjuster.
        name: String,
        /// What is asked: to undo, to do up, to close, to add...
        doing: String,
        /// The way.
        way: Way,
        /// From where.
        seen_from: Option<String>,
    },
    /// Threadlocker.
    Locker {
        /// The part.
        name: String,
        /// Grade; none when it takes none.
        grade: Option<String>,
        /// How little, where.
        put: Option<String>,
        /// Where never, and why.
        never: Option<String>,
        /// Open time.
        open: Option<Quantity>,
    },
    /// Where an adjuster stood, stands, is wanted...
    Setting {
        /// The adjuster.
        name: String,
        /// As found, now, wanted, left, last time.
        which: String,
        /// The value; none when it is not known.
        value: Option<Quantity>,
        /// Words instead of a value.
        text: Option<String>,
    },
    /// All of its clicks or positions.
    Range {
        /// The adjuster.
        name: String,
        /// How many, or from where to where.
        first: f64,
        /// The end of the range.
        last: f64,
        /// Its unit's design name.
        unit: String,
        /// From where it is counted ("full in is nought").
        from: String,
        /// Counted on this unit.
        counted: Option<f64>,
        /// One way only.
        only: Option<Way>,
    },
    /// What lines up with what.
    Mark {
        /// The part.
        name: String,
        /// What lines up.
        lines_up: String,
    },
    /// Why.
    Why(String),
    /// Where a value comes from.
    Source {
        /// The part.
        name: String,
        /// Where from.
        source: String,
    },
    /// A rung of the ladder when something will not move.
    Stuck {
        /// The part.
        name: String,
        /// What to do now.
        rung: String,
        /// Whether it is the last one.
        last: bool,
    },
    /// A part's sizes, thread, grade, limits.
    Sizes {
        /// The part.
        name: String,
        /// Name and figure.
        rows: Vec<(String, String, String)>,
    },
    /// How long so far or to go.
    Time {
        /// What of.
        what: String,
        /// How long, minutes; none when it has no end yet.
        minutes: Option<f64>,
        /// Whether it is to go; so far otherwise.
        to_go: bool,
    },
    /// What was recorded.
    Log {
        /// Lines, oldest first: time, what.
        rows: Vec<(String, String)>,
    },
    /// A calculation.
    Worked {
        /// What it is.
        name: String,
        /// The figure said for the bench.
        say: String,
        /// The figure, inputs, method and source for the screen.
        show: Vec<String>,
    },
    /// What can be said now.
    Help {
        /// Phrases.
        phrases: Vec<String>,
    },
}

/// How to bring an adjuster to its wanted setting.
#[derive(Debug, Clone, PartialEq)]
pub struct RestoreCard {
    /// The adjuster.
    pub name: String,
    /// The wanted setting.
    pub wanted: Quantity,
    /// First to this stop: the way and how far when known.
    pub to_stop: Option<(End, Way)>,
    /// Then turn: how much; none when it stands there already.
    pub turn: Option<(Way, Quantity)>,
    /// Positions passed on the way.
    pub passes: Vec<u32>,
    /// For a screw: the length to its datum.
    pub length: Option<Quantity>,
    /// The datum.
    pub datum: Option<String>,
    /// The end the customer counts from with the number, when it is not full in.
    pub also: Option<(Quantity, End)>,
    /// From where the ways are seen.
    pub seen_from: Option<String>,
    /// How it is turned.
    pub by_hand: Option<String>,
}

/// A list of settings.
#[derive(Debug, Clone, PartialEq)]
pub struct SettingsCard {
    /// Which list.
    pub which: ReadBack,
    /// One row an adjuster.
    pub rows: Vec<SettingRow>,
    /// Whether it ends in "yes or no".
    pub asks: bool,
}

/// One adjuster's settings.
#[derive(Debug, Clone, PartialEq)]
pub struct SettingRow {
    /// The adjuster.
    pub name: String,
    /// The unit of the figures.
    pub unit: String,
    /// As found.
    pub found: Option<f64>,
    /// Wanted.
    pub wanted: Option<f64>,
    /// As left.
    pub left: Option<f64>,
    /// Travel counted.
    pub travel: Option<f64>,
    /// A wish in words.
    pub words: Option<String>,
}

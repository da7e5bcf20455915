//! The kinds of event. Each carries what it rests on, so that the fold needs no rules.

use super::Pending;
use crate::act::{Corner, End};
use serde::{Deserialize, Serialize};

/// What happened.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum Event {
    /// A job was opened under a short number.
    JobOpened {
        /// Its spoken number.
        number: u32,
    },
    /// A unit was put on the bench for a procedure.
    PlaceOpened {
        /// The place's id in the job ("front-left").
        place: String,
        /// Unit card.
        unit: String,
        /// Procedure.
        procedure: String,
        /// Corner, when it is known.
        corner: Option<Corner>,
    },
    /// Another place of the job was taken in hand.
    Switched {
        /// The place.
        place: String,
    },
    /// A step became the one in hand.
    Shown {
        /// The step.
        step: String,
        /// Who put it there: the flow of the job, or "back".
        back: bool,
    },
    /// A caution was given.
    Cautioned {
        /// Its id.
        caution: String,
        /// Whether all of it was given.
        full: bool,
    },
    /// Cautions that wanted it were acknowledged.
    Acknowledged {
        /// Their ids.
        cautions: Vec<String>,
    },
    /// A step was closed.
    StepDone {
        /// The step.
        step: String,
        /// How it was closed.
        how: How,
        /// What it did to parts and adjusters.
        moved: Vec<Moved>,
    },
    /// A step failed: the answer was no, or the reading out of limits.
    StepFailed {
        /// The step.
        step: String,
        /// How often it has failed, this time included.
        attempt: u32,
        /// Whether it has other steps to work before it is asked again.
        branch: bool,
        /// The steps to be worked (again) before it.
        reopens: Vec<String>,
    },
    /// A closed step was opened again (denied, or its make-safe no longer stands).
    Reopened {
        /// The step.
        step: String,
    },
    /// A step was left out.
    Skipped {
        /// The step.
        step: String,
        /// Why.
        reason: String,
        /// Whether it was a critical one, left undone.
        critical: bool,
    },
    /// A step was closed out of limits, with a reason and a second utterance.
    Deviated {
        /// The step.
        step: String,
        /// Why.
        reason: String,
        /// The value it was left at.
        value: Option<Kept>,
        /// What it did to parts and adjusters all the same.
        moved: Vec<Moved>,
    },
    /// A value was reported.
    Reading(Kept),
    /// An earlier value was wrong; this one stands.
    Corrected {
        /// The value that stands.
        now: Kept,
        /// The event that it corrects.
        of: String,
    },
    /// Something that has to be told at hand-over.
    Finding {
        /// The step, where it came up in one.
        step: Option<String>,
        /// The part or adjuster.
        about: Option<String>,
        /// What was found, in a sentence.
        text: String,
    },
    /// Settings were said back and confirmed.
    ReadBack {
        /// `found`, `wanted` or `left`.
        which: String,
    },
    /// What the customer wants.
    Wanted {
        /// The adjuster, part or fluid.
        about: String,
        /// The wanted value, counted from full in; none for words.
        value: Option<f64>,
        /// Its unit.
        unit: Option<String>,
        /// The end it was said from, when it was not full in.
        said_from: Option<End>,
        /// The words, for what is not a number.
        text: Option<String>,
        /// Whose count or which sheet: `found`, `customer`, `worked out`.
        whose: String,
    },
    /// A question that needs a second utterance was opened.
    Opened {
        /// The question.
        pending: Pending,
    },
    /// The open question was answered, dropped or overtaken.
    Settled,
    /// A part was replaced.
    Fitted {
        /// The part.
        about: String,
        /// New, batch, rate...
        text: String,
    },
    /// A note.
    Noted {
        /// Its words.
        text: String,
    },
    /// Something will not move, is damaged, leaks, or went wrong.
    Troubled {
        /// Its words.
        text: String,
        /// The part.
        about: Option<String>,
    },
    /// Another rung of a "when it will not move" ladder was given.
    Stuck {
        /// The part.
        about: String,
        /// The rung given, from 1.
        rung: u32,
    },
    /// The job was stopped for now.
    Paused,
    /// The job goes on.
    Resumed,
    /// A timer was started.
    TimerStarted {
        /// Its number in the job.
        timer: u32,
        /// What for.
        what: String,
        /// How long, in seconds.
        seconds: f64,
    },
    /// A timer's end was told.
    TimerTold {
        /// Its number.
        timer: u32,
    },
    /// Who is working.
    By {
        /// The name said.
        who: String,
    },
    /// A question was answered (it never moves the job; the log shows it).
    Answered {
        /// The question's act.
        act: String,
        /// What was said.
        said: String,
    },
    /// Everything of that utterance was taken back.
    TakenBack {
        /// The utterance.
        utterance: String,
    },
    /// The job was closed.
    JobClosed {
        /// What was told as not restored, tightened, proved, cured, or skipped.
        open: Vec<String>,
    },
    /// The same job was taken up again (a new session of this bench).
    TakenUp,
}

/// How a step was closed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum How {
    /// "Done".
    Confirmed,
    /// "Yes" to its question.
    Accepted,
    /// By a value.
    Value,
    /// Named ahead of its turn.
    Ahead,
    /// Closed in passing: its reading came with an earlier one.
    Passed,
}

/// A value kept.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Kept {
    /// The step, where it was one's.
    pub step: Option<String>,
    /// Adjuster, part or fluid; none for the unit as a whole.
    pub about: Option<String>,
    /// What it says of it: `found`, `travel`, `torque`, `run-out`...
    pub role: String,
    /// The number in `unit`, counted from full in.
    pub value: Option<f64>,
    /// Design name of the unit.
    pub unit: Option<String>,
    /// The words, for a reading that is no number.
    pub text: Option<String>,
    /// The number said, when it was another.
    pub said: Option<f64>,
    /// The unit said, when it was another.
    pub said_unit: Option<String>,
    /// The end said, when it was not full in.
    pub said_from: Option<End>,
    /// The travel that a count from full out was converted with.
    pub with_travel: Option<f64>,
    /// Lower limit it was held against, in `unit`.
    pub lo: Option<f64>,
    /// Upper limit.
    pub hi: Option<f64>,
    /// What came of it.
    pub verdict: Verdict,
}

/// What came of a value.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Verdict {
    /// Within limits.
    Within,
    /// Out of limits.
    Out,
    /// There is no limit.
    Free,
}

/// What a step did to a part or an adjuster.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Moved {
    /// The part or adjuster.
    pub about: String,
    /// What changed.
    pub change: Change,
}

/// A change of a part's or an adjuster's state.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "to", rename_all = "kebab-case")]
pub enum Change {
    /// It is loose.
    Loose,
    /// It is off.
    Off,
    /// It is back on, by hand.
    On,
    /// It is tight, by torque or by nip.
    Tight {
        /// Whether by a torque; a nip otherwise.
        torque: bool,
    },
    /// It stands between nip and torque: threadlocker on, not tight.
    Locked {
        /// Grade of threadlocker.
        grade: String,
        /// Open time, minutes.
        open: f64,
        /// Until it may be handled, minutes.
        handle: Option<f64>,
        /// Until it may be used, minutes.
        cure: Option<f64>,
    },
    /// It was cleaned: threadlocker gone, ready for new.
    Clean,
    /// It has a witness mark.
    Marked,
    /// Its witness mark was looked at and stands where it should.
    MarkSeen,
    /// The adjuster stands there (from full in, in its own unit).
    At {
        /// The setting.
        value: f64,
    },
    /// The adjuster's position is not known any more.
    Lost,
    /// Gas is out, or the spring loose, but not proved.
    Vented,
    /// Proved safe.
    Safe,
    /// Charged, or under spring load, again.
    Live,
    /// A new one is fitted.
    New,
    /// Fluid is in.
    Filled,
    /// Fluid is out.
    Drained,
    /// Inspected and good.
    Passed,
}

impl Event {
    /// Whether it is something that can be taken back: what moves the job or keeps a fact of it.
    pub fn changes_job(&self) -> bool {
        matches!(
            self,
            Self::StepDone { .. }
                | Self::StepFailed { .. }
                | Self::Reopened { .. }
                | Self::Skipped { .. }
                | Self::Deviated { .. }
                | Self::Reading(_)
                | Self::Corrected { .. }
                | Self::Finding { .. }
                | Self::ReadBack { .. }
                | Self::Wanted { .. }
                | Self::Fitted { .. }
                | Self::Noted { .. }
                | Self::Troubled { .. }
                | Self::TimerStarted { .. }
        )
    }
}

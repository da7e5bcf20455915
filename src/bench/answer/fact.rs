//! Facts asked for, as data.

use crate::quantity::{Limit, Quantity};
use crate::workings::adjusters::Way;
use crate::workings::registry::Worked;

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
        /// The calculation itself, exact; several where it was asked for several ways.
        worked: Vec<Worked>,
    },
    /// What can be said now.
    Help {
        /// Phrases.
        phrases: Vec<String>,
    },
}

//! The step in hand and its cautions, as data.

use crate::quantity::{Limit, Quantity};
use crate::rulebase::Signal;
use crate::workings::adjusters::Way;

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

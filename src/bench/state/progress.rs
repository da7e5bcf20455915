//! Where a job stands: comparable, without times or texts.

use super::Place;
use crate::event::Pending;
use std::collections::{BTreeMap, BTreeSet};

/// Where a job stands.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Progress {
    /// Whether a job is open.
    pub open: bool,
    /// Whether it has been closed.
    pub closed: bool,
    /// Its spoken number.
    pub number: u32,
    /// Its places.
    pub places: BTreeMap<String, Place>,
    /// The place in hand.
    pub current: Option<String>,
    /// Whether it is paused.
    pub paused: bool,
    /// The open question.
    pub pending: Option<Pending>,
    /// Cautions given in full, by person.
    pub cautioned: BTreeSet<(String, String)>,
    /// Cautions acknowledged, by person.
    pub acknowledged: BTreeSet<(String, String)>,
    /// Who is working ("" when nobody said).
    pub person: String,
    /// Timers running, told or not.
    pub timers: BTreeMap<u32, bool>,
}

//! What a script can see of job and unit: read-only, filled by the bench, made up for the dry run.

use crate::rulebase::UnitCard;
use std::collections::BTreeMap;
use std::sync::Arc;

/// A view of the unit in hand.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct View {
    /// Id of the unit card.
    pub unit: String,
    /// The corner's spoken name; empty when it is not known.
    pub corner: String,
    /// The card.
    pub card: Option<Arc<UnitCard>>,
    /// Values kept, by adjuster or part ("" for the unit as a whole) and role, in the step's own unit.
    pub readings: BTreeMap<(String, String), f64>,
    /// Words kept, by role.
    pub texts: BTreeMap<String, String>,
    /// Adjusters that something is known of.
    pub adjusters: BTreeMap<String, AdjusterView>,
    /// Parts that something was done to.
    pub parts: BTreeMap<String, PartView>,
    /// How often a step has failed, by its id.
    pub failed: BTreeMap<String, u32>,
}

/// An adjuster's settings, in its own unit: clicks or positions from full in, mm to the datum or turns, gauge pressure.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct AdjusterView {
    /// As found.
    pub found: Option<f64>,
    /// Wanted.
    pub wanted: Option<f64>,
    /// Travel counted on this unit.
    pub travel: Option<f64>,
    /// As left.
    pub left: Option<f64>,
    /// Where it stands now.
    pub position: Option<f64>,
}

/// How a part stands.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
#[expect(
    clippy::struct_excessive_bools,
    reason = "each is a fact of its own, and they hold together in any mixture"
)]
pub struct PartView {
    /// Off the unit.
    pub off: bool,
    /// Undone, still there.
    pub loose: bool,
    /// Tight, by torque or nip.
    pub tight: bool,
    /// Threadlocker stands on it.
    pub locked: bool,
    /// Minutes since the threadlocker went on, while it stands.
    pub locked_minutes: Option<f64>,
    /// It has a witness mark.
    pub marked: bool,
    /// Cleaned, and nothing put on since.
    pub clean: bool,
    /// A new one is fitted.
    pub new: bool,
    /// Proved safe.
    pub safe: bool,
}

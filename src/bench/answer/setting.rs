//! Settings, and the way back to them, as data.

use crate::act::End;
use crate::quantity::Quantity;
use crate::rulebase::ReadBack;
use crate::workings::adjusters::Way;

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

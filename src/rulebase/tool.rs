//! A tool of the crib.

use crate::quantity::{Limit, Quantity};

/// One tool of the workshop's crib.
#[derive(Debug, Clone, PartialEq)]
pub struct Tool {
    /// Its id ("torque-wrench-small").
    pub id: String,
    /// Spoken names.
    pub called: Vec<String>,
    /// What kind: socket, spanner, hex key, C-spanner, pin spanner, torque wrench, drift, press, gauge...
    pub kind: String,
    /// Sizes it has.
    pub sizes: Vec<Quantity>,
    /// The range it may be used over.
    pub range: Option<Limit>,
    /// The day it was last calibrated (ISO 8601), where it needs to be.
    pub calibrated: Option<String>,
    /// The day the calibration runs out.
    pub due: Option<String>,
    /// Length from grip to square, for a wrench.
    pub length: Option<Quantity>,
    /// Where it comes from or what must be known about it.
    pub note: Option<String>,
}

//! A tool of the crib.

use crate::quantity::{Limit, Quantity};
use crate::source::Place;

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
    /// Where the pack says so.
    pub at: Place,
}

impl Tool {
    /// Whether a pack's words mean this tool: its id, a spoken name, its kind, or a size and its kind ("21 mm socket").
    pub fn answers_to(&self, name: &str) -> bool {
        let name = name.trim();
        if name == self.id || name.eq_ignore_ascii_case(&self.kind) {
            return true;
        }
        if self.called.iter().any(|called| called.eq_ignore_ascii_case(name)) {
            return true;
        }
        let heads = self.called.iter().chain([&self.kind]);
        heads.filter_map(|head| name.strip_suffix(head.as_str())).any(|size| self.has_size(size.trim()))
    }

    fn has_size(&self, text: &str) -> bool {
        Quantity::parse(text).is_ok_and(|size| self.sizes.contains(&size))
    }
}

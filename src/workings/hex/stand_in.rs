//! Will this size stand in for that one: fits, marginal, loose, no; with the clearance and why.

use serde::{Deserialize, Serialize};

use super::limits::{hex_smallest, opening, socket_limits};
use super::{Drive, Limits, ToolSize};

/// Slack beyond which a tool turns on the corners, as a share of the size (common practice, no source).
const ROUNDS_OFF: f64 = 0.04;

/// Whether the tool may be used.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Verdict {
    /// Goes on at every limit, with no more slack than a tool of the right size may have.
    Fits,
    /// Goes on or not by luck: some tools of this size are tighter than the hexagon at its largest.
    Marginal,
    /// Goes on, but with more slack than any tool of the right size: it may round the corners.
    Loose,
    /// Does not go on, or turns on the corners.
    No,
}

impl Verdict {
    /// One word.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Fits => "fits",
            Self::Marginal => "marginal",
            Self::Loose => "loose",
            Self::No => "no",
        }
    }
}

/// The answer, with its clearance: tool minus hexagon, negative where they clash.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct StandIn {
    /// The verdict.
    pub verdict: Verdict,
    /// The clearance on a full-size hexagon, mm.
    pub clearance: Limits,
    /// Why, in a clause.
    pub why: String,
}

/// Whether `tool` will do for a hexagon of nominal size `hex`. `None` for a size that no table covers.
///
/// External: tool openings against the full-size hexagon (its largest). Internal: the socket's limits against the key.
#[must_use]
pub fn stand_in(tool: ToolSize, hex: ToolSize, drive: Drive) -> Option<StandIn> {
    let (clearance, own) = match drive {
        Drive::External => (less(opening(tool)?, hex.mm), less(opening(hex)?, hex.mm)),
        Drive::Internal => (less(socket(hex)?, tool.mm), less(socket(hex)?, hex.mm)),
    };
    let verdict = judge(clearance, own, hex.mm);
    Some(StandIn { verdict, clearance, why: why(verdict, clearance, hex, drive) })
}

fn less(limits: Limits, size: f64) -> Limits {
    Limits { min: limits.min - size, max: limits.max - size }
}

/// A socket's limits; an inch one is taken as wide as a metric one's largest share (ASME B18.3 gives about 1 %).
fn socket(hex: ToolSize) -> Option<Limits> {
    if let Some(limits) = socket_limits(hex.mm).filter(|_| !hex.inch) {
        return Some(limits);
    }
    (hex.mm > 0.0).then_some(Limits { min: hex.mm * 1.002, max: hex.mm * 1.02 })
}

fn judge(clearance: Limits, own: Limits, hex: f64) -> Verdict {
    if clearance.max <= 0.0 || clearance.min > ROUNDS_OFF * hex {
        Verdict::No
    } else if clearance.min < 0.0 {
        Verdict::Marginal
    } else if clearance.min > own.max {
        Verdict::Loose
    } else {
        Verdict::Fits
    }
}

fn why(verdict: Verdict, clearance: Limits, hex: ToolSize, drive: Drive) -> String {
    match (verdict, drive) {
        (Verdict::Fits, _) => {
            "it goes on at every limit with no more slack than the right tool may have".to_owned()
        }
        (Verdict::Marginal, _) => {
            "it may be too tight for a full-size hexagon: try it, never hammer it on".to_owned()
        }
        (Verdict::Loose, _) => {
            "it goes on with more slack than the right tool may have: it may round the corners".to_owned()
        }
        (Verdict::No, _) if clearance.max > 0.0 => "it is so slack that it turns on the corners".to_owned(),
        (Verdict::No, Drive::Internal) => "the key is larger than the socket".to_owned(),
        (Verdict::No, Drive::External) => {
            let under = hex_smallest(hex.mm).filter(|(_, coarse)| hex.mm + clearance.max >= *coarse);
            let also = if under.is_some() { "; it may go on an undersize one" } else { "" };
            format!("it does not go on a full-size hexagon{also}")
        }
    }
}

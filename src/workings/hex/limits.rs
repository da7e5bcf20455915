//! Limits: how wide a spanner opens, how small a hexagon may be, how wide a socket is.

use serde::{Deserialize, Serialize};

use super::ToolSize;
use super::tables;

const MM: f64 = 25.4;

/// Which side the hexagon is on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Drive {
    /// A spanner or socket goes over it.
    External,
    /// A hex key goes into it.
    Internal,
}

/// The least and the most, mm.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Limits {
    /// Least, mm.
    pub min: f64,
    /// Most, mm.
    pub max: f64,
}

/// The opening of a spanner or socket. Inch: ASME B18.2.2 appendix. Metric: DIN 475-2 / ISO 691 (memory).
#[must_use]
pub fn opening(tool: ToolSize) -> Option<Limits> {
    if tool.inch {
        let (min, max) = inch_opening(tool.inches())?;
        return Some(Limits { min: min * MM, max: max * MM });
    }
    let row = tables::SPANNERS.iter().find(|row| tool.mm <= row.0 + 1e-9)?;
    (tool.mm > 0.0).then_some(Limits { min: tool.mm + row.1, max: tool.mm + row.2 })
}

/// The opening of an inch wrench in inches: the table's row, else the table's formula, 1.005 W + 0.001 and from there
/// 0.005 W + 0.004 more. `None` when W is not above zero.
#[must_use]
pub fn inch_opening(w: f64) -> Option<(f64, f64)> {
    if !(w > 0.0 && w.is_finite()) {
        return None;
    }
    let formula = || {
        let min = 1.005 * w + 0.001;
        (min, min + 0.005 * w + 0.004)
    };
    Some(tables::triple(&tables::OPENINGS_INCH, w).unwrap_or_else(formula))
}

/// The limits of a hexagon socket of a metric key size, mm (ISO 4762, ISO 4026 to 4029).
#[must_use]
pub fn socket_limits(key_mm: f64) -> Option<Limits> {
    tables::triple(&tables::SOCKETS, key_mm).map(|(min, max)| Limits { min, max })
}

/// Standard tolerances of ISO 286-1, mm, by size up to: IT13, IT14, IT15, IT16.
const IT: [(f64, [f64; 4]); 8] = [
    (3.0, [0.14, 0.25, 0.40, 0.60]),
    (6.0, [0.18, 0.30, 0.48, 0.75]),
    (10.0, [0.22, 0.36, 0.58, 0.90]),
    (18.0, [0.27, 0.43, 0.70, 1.10]),
    (30.0, [0.33, 0.52, 0.84, 1.30]),
    (50.0, [0.39, 0.62, 1.00, 1.60]),
    (80.0, [0.46, 0.74, 1.20, 1.90]),
    (120.0, [0.54, 0.87, 1.40, 2.20]),
];

/// The smallest across flats of a hexagon of nominal size `s`, mm: row 1 (fine, product grade A) and row 2 (coarse).
/// DIN 475-1: row 1 is h13 to 32 mm and h14 above; row 2 is h14 to 18 mm, h15 to 60 mm and h16 above.
#[must_use]
pub fn hex_smallest(s: f64) -> Option<(f64, f64)> {
    let grades = IT.iter().find(|row| s <= row.0).filter(|_| s > 0.0)?.1;
    let [it13, it14, it15, it16] = grades;
    let fine = if s <= 32.0 { it13 } else { it14 };
    let coarse = if s <= 18.0 {
        it14
    } else if s <= 60.0 {
        it15
    } else {
        it16
    };
    Some((s - fine, s - coarse))
}

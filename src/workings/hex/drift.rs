//! Which drift clears an adjuster and still seats on the nut round it.

use serde::{Deserialize, Serialize};

/// What a tubular drift does, over an adjuster and on a nut's face.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum DriftFit {
    /// Clears the adjuster and seats on the face.
    Seats,
    /// Its bore would touch the adjuster.
    TouchesAdjuster,
    /// It lies outside the face: nothing to bear on.
    MissesFace,
}

/// Judges a drift by its bore and outside diameter against the adjuster's diameter and the nut's face (mm).
/// It must clear the adjuster all round by `gap` and its wall must meet the face. `None` for sizes that cannot be.
#[must_use]
pub fn drift(bore: f64, outside: f64, adjuster: f64, face: f64, gap: f64) -> Option<DriftFit> {
    let sound = [bore, outside, adjuster, face].iter().all(|size| size.is_finite() && *size > 0.0)
        && outside > bore
        && face > adjuster
        && gap >= 0.0;
    sound.then_some(if bore < adjuster + 2.0 * gap {
        DriftFit::TouchesAdjuster
    } else if bore >= face {
        DriftFit::MissesFace
    } else {
        DriftFit::Seats
    })
}

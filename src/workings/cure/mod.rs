//! Cure: when a threadlocked joint may be handled and used, by temperature and surface.
//!
//! Common practice, no source: anaerobic threadlockers hold to handle in about 20 minutes and to use in about 24 hours
//! on active metal (plain steel, brass) at 22 degC; each 10 K colder doubles the time; passive surfaces (stainless,
//! plated, anodised) take about three times as long. The maker's sheet for the product goes before all of it.

pub(super) mod register;

use serde::{Deserialize, Serialize};
use thiserror::Error;

/// What the threads are made of, as the locker feels it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Surface {
    /// Plain steel, brass, copper: ions to spare.
    Active,
    /// Stainless, zinc plate, anodised aluminium, titanium: few ions.
    Passive,
}

impl Surface {
    /// The surface that a material's name stands for.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        Some(match text.trim().to_lowercase().as_str() {
            "active" | "steel" | "plain steel" | "iron" | "brass" | "bronze" | "copper" | "black" => {
                Self::Active
            }
            "passive" | "stainless" | "stainless steel" | "zinc" | "plated" | "zinc plated" | "anodised"
            | "anodized" | "aluminium" | "aluminum" | "titanium" | "chrome" => Self::Passive,
            _ => return None,
        })
    }
}

/// How long a joint is to be left.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Cure {
    /// Minutes until it may be handled.
    pub handle_min: f64,
    /// Hours until it may be used.
    pub use_h: f64,
}

/// A temperature at which nobody should count on a cure.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
#[error("at {degc} °C a threadlocker's cure is not to be counted on; bring the joint to between 5 and 40 °C")]
pub struct NoCure {
    /// The temperature, degC.
    pub degc: f64,
}

const HANDLE_MIN: f64 = 20.0;
const USE_H: f64 = 24.0;
const USUAL_DEGC: f64 = 22.0;
const PASSIVE: f64 = 3.0;

/// The times at a temperature in degC, 5 to 40.
///
/// # Errors
/// [`NoCure`] outside that range.
pub fn cure(degc: f64, surface: Surface) -> Result<Cure, NoCure> {
    if !(5.0..=40.0).contains(&degc) {
        return Err(NoCure { degc });
    }
    // Warmth shortens the wait; the full day stands as the least that is counted on.
    let cold = 2f64.powf((USUAL_DEGC - degc) / 10.0);
    let passive = if surface == Surface::Passive { PASSIVE } else { 1.0 };
    Ok(Cure { handle_min: HANDLE_MIN * cold * passive, use_h: USE_H * cold.max(1.0) * passive })
}

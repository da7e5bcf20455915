//! Torque: the band to accept, the wrench, preload, stress in hollow shafts.

pub mod wrench;

use crate::quantity::{Limit, Quantity};

/// The band to accept when a torque is given without a tolerance: 6 % from 10 N.m, 10 % below (design, section 7).
#[must_use]
pub fn band(torque: Quantity) -> Limit {
    Limit::torque_band(torque)
}

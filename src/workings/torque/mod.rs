//! Torque: the band to accept, the wrench, preload and its torque, proof loads, stress in hollow shafts.

pub mod class;
pub mod joint;
pub mod shaft;
pub mod wrench;

mod register_joint;
mod register_shaft;
mod register_thread;
mod register_wrench;

use super::registry::Working;
use crate::quantity::{Limit, Quantity};

/// The band to accept when a torque is given without a tolerance: 6 % from 10 N.m, 10 % below (design, section 7).
#[must_use]
pub fn band(torque: Quantity) -> Limit {
    Limit::torque_band(torque)
}

/// Adds torque, threads, joints and shafts.
pub(super) fn register(list: &mut Vec<Working>) {
    register_wrench::register(list);
    register_thread::register(list);
    register_joint::register(list);
    register_shaft::register(list);
}

//! Springs: rate from wire or loads, lengths and coil bind, stress, combinations, preload when the rate changes, ride.

pub mod combine;
pub mod damping;
pub mod length;
pub mod preload;
pub mod rate;
pub mod stress;

mod register_combine;
mod register_length;
mod register_ride;
mod register_wire;

use super::registry::Working;

/// Adds the springs.
pub(super) fn register(list: &mut Vec<Working>) {
    register_wire::register(list);
    register_length::register(list);
    register_combine::register(list);
    register_ride::register(list);
}

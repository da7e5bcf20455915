//! Hex: which key or spanner fits which screw or nut, and whether another size will stand in.

mod drift;
mod limits;
pub(super) mod register;
mod sizes;
mod stand_in;
mod tables;

pub use drift::{DriftFit, drift};
pub use limits::{Drive, Limits, hex_smallest, inch_opening, opening, socket_limits};
pub use sizes::{Head, ToolSize, across_flats, key, key_of_shoulder};
pub use stand_in::{StandIn, Verdict, stand_in};

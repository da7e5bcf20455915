//! Oil: viscosity at a temperature, viscosity index, mixing, grades, level and volume, expansion.

pub mod blend;
pub mod index;
pub mod level;
pub mod viscosity;

pub(super) mod register;

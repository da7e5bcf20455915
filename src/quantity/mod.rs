//! Numbers with units: checked arithmetic, written and spoken figures in, screen and spoken forms out.
//!
//! A [`Unit`] has a [`Dimension`]; quantities of different dimensions never meet silently (torque is not
//! energy, a temperature is not a temperature difference). [`Limit`] is a band that a reading must keep.

mod dimension;
mod errors;
pub mod figures;
mod limit;
mod limit_text;
mod unit;
mod unit_rows;
mod unit_text;
mod value;

pub use dimension::Dimension;
pub use errors::{Mismatch, QuantityError};
pub use limit::Limit;
pub use unit::Unit;
pub use value::{PressureBasis, Quantity, bench_figures};

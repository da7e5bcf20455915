//! What goes wrong between quantities, and in reading one from text.

use thiserror::Error;

use super::Unit;

/// Two units of different dimensions met.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
#[error("`{found}` is {}, and {} (such as `{wanted}`) is wanted", found.dimension(), wanted.dimension())]
pub struct Mismatch {
    /// The unit that was given.
    pub found: Unit,
    /// A unit of the dimension that was wanted.
    pub wanted: Unit,
}

/// A text that is no quantity or no limit. Every message says what was found, what is accepted, and how to mend it.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum QuantityError {
    /// Nothing was written.
    #[error("found nothing where a value with its unit is expected; write one such as `32 N.m`")]
    Empty,
    /// No number at the start.
    #[error("found `{found}` where a number with its unit is expected; write one such as `32 N.m`")]
    NoNumber {
        /// The text found.
        found: String,
    },
    /// A number that is no finite number.
    #[error("found `{found}`, which is not a finite number; write one such as `32 N.m`")]
    NotFinite {
        /// The text found.
        found: String,
    },
    /// A number stands without a unit.
    #[error("found `{found}` with no unit; write the unit after it, such as `{found} N.m` or `{found} mm`")]
    NoUnit {
        /// The number as written.
        found: String,
    },
    /// The unit is not known.
    #[error("unknown unit `{found}`{}", near.map(|unit| format!("; did you mean `{unit}`?")).unwrap_or_else(|| "; units are written like `N.m`, `mm`, `bar`, `N/mm`".to_owned()))]
    UnknownUnit {
        /// The unit as written.
        found: String,
        /// The nearest known unit.
        near: Option<Unit>,
    },
    /// Units of two dimensions in one limit, or a value of another dimension than is wanted.
    #[error(transparent)]
    Mismatch(#[from] Mismatch),
    /// The lower end stands above the upper end, or the tolerance is negative.
    #[error("found `{found}`, whose lower end is above its upper end; write it the other way round")]
    Reversed {
        /// The text found.
        found: String,
    },
}

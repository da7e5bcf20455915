//! `ask --work`: one calculation by its name.

use super::Cli;
use crate::session::{Fault, plain};

/// Calls a calculation, or lists them.
///
/// # Errors
/// A calculation that is not there, or figures that it does not take.
pub fn run(_cli: &Cli, name: &str, _given: &[String]) -> Result<u8, Fault> {
    Err(Fault::call(format!("there is no calculation `{}`", plain(name)), "see `sparehand ask --work list`"))
}

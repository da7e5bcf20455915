//! Events of every released version, read as the present one.

use super::{Envelope, VERSION};
use thiserror::Error;

/// Why an event cannot be read.
#[derive(Debug, Error)]
pub enum Unreadable {
    /// Written by a newer program.
    #[error("event form {found} is newer than this program reads ({VERSION}): use the program that wrote it")]
    Newer {
        /// The version found.
        found: u64,
    },
    /// Not an event's form at all.
    #[error("event cannot be read: {0}")]
    Form(#[from] serde_json::Error),
}

/// Reads one event as kept, from any released version.
///
/// # Errors
/// [`Unreadable`] when it is from a newer program or not an event.
pub fn read(text: &str) -> Result<Envelope, Unreadable> {
    let value: serde_json::Value = serde_json::from_str(text)?;
    let found = value.get("version").and_then(serde_json::Value::as_u64).unwrap_or(1);
    if found > u64::from(VERSION) {
        return Err(Unreadable::Newer { found });
    }
    // Form 1 is the first released form; a later one adds its step from the form before it here.
    Ok(serde_json::from_value(value)?)
}

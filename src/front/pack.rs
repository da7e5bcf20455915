//! `pack`: the rules written out, for editing.

use super::{Cli, PackCommand, open, out::Out};
use crate::session::{Fault, plain};
use std::path::Path;

/// Runs the command.
///
/// # Errors
/// A folder that holds something already, or cannot be written.
pub fn run(cli: &Cli, command: &PackCommand) -> Result<u8, Fault> {
    match command {
        PackCommand::Copy { folder } => copy(cli, folder),
    }
}

fn copy(cli: &Cli, folder: &Path) -> Result<u8, Fault> {
    let pack = open::rules(cli)?;
    let name = plain(&folder.display().to_string());
    if std::fs::read_dir(folder).is_ok_and(|mut there| there.next().is_some()) {
        return Err(Fault::call(
            format!("`{name}` holds something already"),
            "name a new folder; nothing is overwritten",
        ));
    }
    pack.write_to(folder).map_err(|error| {
        Fault::disk(format!("`{name}` cannot be written: {error}"), "give leave to write there")
    })?;
    Out::new().line(&format!("The rules are in {name}. Use them with: sparehand --rules {name}"))?;
    Ok(0)
}

//! `completions`: for a shell, made from the command line itself.

use super::{Cli, out::Out};
use crate::session::Fault;
use clap::CommandFactory;
use clap_complete::Shell;

/// Prints them.
///
/// # Errors
/// Nobody reading any more.
pub fn run(shell: Shell) -> Result<u8, Fault> {
    let mut text = Vec::new();
    clap_complete::generate(shell, &mut Cli::command(), "sparehand", &mut text);
    Out::new().text(&String::from_utf8_lossy(&text))?;
    Ok(0)
}

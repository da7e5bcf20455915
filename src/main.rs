//! The doorway: arguments in, exit code out. What a fault means is sorted in session.

use clap::Parser;
use clap::error::ErrorKind;
use sparehand::front::{Cli, run};
use sparehand::session::quiet;
use std::io::Write;
use std::process::ExitCode;

fn main() -> ExitCode {
    quiet();
    let cli = match Cli::try_parse() {
        Ok(cli) => cli,
        Err(error) => return usage(&error),
    };
    match run(&cli) {
        Ok(code) => ExitCode::from(code),
        Err(fault) => {
            let code = fault.exit_code();
            if code != 0 {
                // Nobody may be reading; the exit code says it as well.
                let _ = writeln!(std::io::stderr(), "sparehand: {fault}");
            }
            ExitCode::from(code)
        }
    }
}

/// Help and version are no failure; anything else was a wrong call.
fn usage(error: &clap::Error) -> ExitCode {
    let asked = matches!(error.kind(), ErrorKind::DisplayHelp | ErrorKind::DisplayVersion);
    let _ = error.print();
    ExitCode::from(if asked { 0 } else { 2 })
}

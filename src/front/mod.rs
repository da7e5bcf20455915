//! The front ends: console, pipe, one-shot commands, transcripts. No rule of the trade stands here.

mod ask;
pub mod check;
mod cli;
mod completions;
mod console;
mod feed;
pub mod hear;
mod helper;
mod jobs;
mod log;
mod open;
mod out;
mod pack;
pub mod pack_keys;
mod pack_new;
pub mod pack_schema;
pub mod pack_show;
mod pipe;
mod replay;
mod talk;
pub mod transcript;
mod wire;
mod work;

pub use cli::{
    AskArgs, CheckArgs, Cli, Command, HearArgs, LogArgs, NewCommand, PackCommand, PipeArgs, Place, ReplayArgs,
};
pub use log::log_of;
pub use out::wrapped;
pub use wire::answer_json;

use crate::session::{Fault, guarded};

/// Runs the command of a call and gives its exit code.
///
/// # Errors
/// Whatever ended it early, sorted by whose it is.
pub fn run(cli: &Cli) -> Result<u8, Fault> {
    guarded(|| dispatch(cli)).unwrap_or_else(|what| Err(Fault::Ours(what)))
}

fn dispatch(cli: &Cli) -> Result<u8, Fault> {
    match &cli.command {
        None => console::run(cli),
        Some(Command::Pipe(args)) => pipe::run(cli, args),
        Some(Command::Hear(args)) => hear_lines(cli, args),
        Some(Command::Ask(args)) => ask::run(cli, args),
        Some(Command::Jobs) => jobs::run(cli),
        Some(Command::Log(args)) => log::run(cli, args),
        Some(Command::Replay(args)) => replay::run(cli, args),
        Some(Command::Check(args)) => check::run(cli, args),
        Some(Command::Pack { command }) => pack::run(cli, command),
        Some(Command::Completions { shell }) => completions::run(*shell),
    }
}

/// A bad line was answered in its place; the call says so at its end.
fn hear_lines(cli: &Cli, args: &HearArgs) -> Result<u8, Fault> {
    let ear = crate::hearing::Ear::new(&*open::rules(cli)?);
    match hear::run(std::io::stdin().lock(), std::io::stdout().lock(), &ear, args.why) {
        Ok(good) => Ok(if good { 0 } else { 2 }),
        Err(error) if error.kind() == std::io::ErrorKind::BrokenPipe => Ok(0),
        Err(error) => {
            Err(Fault::disk(format!("the lines cannot be read or written: {error}"), "see what feeds them"))
        }
    }
}

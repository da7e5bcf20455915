//! `replay`: a transcript run and compared.

use super::transcript::{Transcript, run as play, updated};
use super::{Cli, ReplayArgs, open, out::Out};
use crate::session::{Fault, Rules, plain};

/// Runs it; with `--update` writes the answers of this run into it.
///
/// # Errors
/// A file that cannot be read or written; a transcript that does not hold.
pub fn run(cli: &Cli, args: &ReplayArgs) -> Result<u8, Fault> {
    let name = plain(&args.file.display().to_string());
    let text = std::fs::read_to_string(&args.file)
        .map_err(|error| Fault::call(format!("`{name}` cannot be read: {error}"), "name a transcript"))?;
    let transcript =
        Transcript::parse(&name, &text).map_err(|problems| Fault::text(problems, &name, &text))?;
    let mut outcome = play(&transcript, &Rules::new(open::rules(cli)?))?;
    let mut out = Out::new();
    if args.update {
        let new = updated(&transcript, &outcome);
        if new != text {
            std::fs::write(&args.file, new).map_err(|error| {
                Fault::disk(format!("`{name}` cannot be written: {error}"), "give leave to write it")
            })?;
            out.line(&format!("{name}: answers rewritten"))?;
        }
        outcome.differs.clear();
    }
    if !outcome.holds() {
        return Err(Fault::NotSo(outcome.report(&name)));
    }
    out.line(&format!("{name}: holds"))?;
    Ok(0)
}

//! The doorway.
use sparehand::{front, hearing, rulebase};
use std::process::ExitCode;

fn main() -> ExitCode {
    let talk: Vec<(String, String)> = std::fs::read_dir("rules/talk")
        .into_iter()
        .flatten()
        .flatten()
        .filter_map(|entry| Some((entry.file_name().into_string().ok()?, std::fs::read_to_string(entry.path()).ok()?)))
        .collect();
    let talk = match rulebase::talk::Talk::load(talk.iter().map(|(name, text)| (name.as_str(), text.as_str()))) {
        Ok(talk) => talk,
        Err(problems) => {
            for problem in problems {
                eprintln!("{problem}");
            }
            return ExitCode::from(2);
        }
    };
    let ear = hearing::Ear::build(&talk, &hearing::demo::stock());
    let why = std::env::args().any(|word| word == "--why");
    match front::hear::run(std::io::stdin().lock(), std::io::stdout().lock(), &ear, why) {
        Ok(true) => ExitCode::SUCCESS,
        Ok(false) => ExitCode::from(2),
        Err(_) => ExitCode::SUCCESS,
    }
}

//! What came of running a transcript: answers, what differs from those written, what is not as it must be.

use super::{Answers, Item, Kind, Transcript};
use crate::session::Turn;

/// What is not as it must be.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Broken {
    /// The line of the file.
    pub line: u32,
    /// What was found.
    pub what: String,
}

/// What came of a run.
#[derive(Debug, Default)]
pub struct Outcome {
    /// For each line that does something, what came of it.
    pub answers: Vec<(u32, Vec<Turn>)>,
    /// `must` lines that do not hold.
    pub broken: Vec<Broken>,
    /// Answers that are not as written.
    pub differs: Vec<Broken>,
    /// What the reopened book did not give back.
    pub lost: Option<String>,
}

impl Outcome {
    /// Whether everything is as written.
    pub fn holds(&self) -> bool {
        self.broken.is_empty() && self.differs.is_empty() && self.lost.is_none()
    }

    /// Everything that is not, one a line, in the order of the file.
    pub fn report(&self, name: &str) -> String {
        let mut all: Vec<&Broken> = self.broken.iter().chain(&self.differs).collect();
        all.sort_by_key(|broken| broken.line);
        let lines = all.iter().map(|broken| format!("{name}:{}: {}", broken.line, broken.what));
        lines.chain(self.lost.iter().map(|what| format!("{name}: {what}"))).collect::<Vec<_>>().join("\n")
    }

    /// The answer to the line of that number, as a transcript writes it.
    pub fn written(&self, line: u32, answers: Answers) -> Option<Vec<String>> {
        let (_, turns) = self.answers.iter().find(|(number, _)| *number == line)?;
        Some(turns.iter().flat_map(|turn| written(turn, answers)).collect())
    }

    /// Compares the answers with those written.
    pub(super) fn compare(&mut self, transcript: &Transcript) {
        let mut differs = Vec::new();
        for (line, _) in &self.answers {
            let found = self.written(*line, transcript.head.answers).unwrap_or_default();
            let wanted = answer_after(&transcript.items, *line);
            if found != wanted {
                differs.push(Broken { line: *line, what: told(&wanted, &found) });
            }
        }
        self.differs = differs;
    }
}

fn written(turn: &Turn, answers: Answers) -> Vec<String> {
    let marked = |mark: &str, text: &str| {
        text.lines().map(|line| format!("{mark} {line}").trim_end().to_owned()).collect::<Vec<_>>()
    };
    let mut lines = Vec::new();
    if answers != Answers::Shown {
        lines.extend(marked("<", &turn.reply.say));
    }
    if answers != Answers::Said {
        lines.extend(marked("|", &turn.reply.show));
    }
    lines
}

/// The answer lines written after the line of that number, up to the next one that does something.
fn answer_after(items: &[Item], line: u32) -> Vec<String> {
    items
        .iter()
        .skip_while(|item| item.line <= line)
        .take_while(|item| !super::update::does_something(&item.kind))
        .filter(|item| matches!(item.kind, Kind::Spoken(_) | Kind::Shown(_)))
        .map(|item| item.raw.trim().to_owned())
        .collect()
}

fn told(wanted: &[String], found: &[String]) -> String {
    let block = |lines: &[String]| {
        if lines.is_empty() {
            "    (nothing)".to_owned()
        } else {
            lines.iter().map(|line| format!("    {line}")).collect::<Vec<_>>().join("\n")
        }
    };
    format!("the answer differs\n  written:\n{}\n  now:\n{}", block(wanted), block(found))
}

//! Signal word does not fit.

use crate::check::finding::{Finding, Look};
use crate::check::language::has_word;
use crate::check::sink::Sink;
use crate::check::subject::OnPack;
use crate::rulebase::Signal;
use crate::source::Level;

/// A signal word that is graver or milder than what the caution says.
pub static FINDING: Finding = Finding {
    name: "signal word does not fit",
    level: Level::Doubtful,
    milder: false,
    what: "A signal word that is graver or milder than what the caution says.",
    why: "Whoever is warned of death at every turn hears no warning (ANSI Z535.6).",
    example: "signal: notice, and a text that tells of an injury",
    mend: "danger kills, warning may kill or maim, caution may injure, notice is for things alone",
    look: Look::Pack(look),
};

/// Words that tell of death.
const DEATH: [&str; 7] = ["kill", "kills", "death", "die", "dies", "burst", "bursts"];
/// Words that tell of an injury.
const HURT: [&str; 17] = [
    "injure",
    "injures",
    "injury",
    "blind",
    "blinds",
    "burn",
    "burns",
    "break bones",
    "crush",
    "crushes",
    "skin",
    "wound",
    "dizzy",
    "maim",
    "your eye",
    "bones",
    "eyes",
];

fn look(on: &OnPack<'_>, sink: &mut Sink<'_>) {
    for caution in on.pack.cautions.values() {
        let (death, hurt) = (has_word(&caution.full, &DEATH), has_word(&caution.full, &HURT));
        let fits = match caution.signal {
            Signal::Danger => death,
            Signal::Warning => true,
            Signal::Caution => hurt && !death,
            Signal::Notice => !hurt && !death,
        };
        if !fits {
            let word = caution.signal.word();
            sink.raise(caution.at.clone(), format!("`{word}` for what this caution says"));
        }
    }
}

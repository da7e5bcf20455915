//! `pack new`: a unit card or a procedure to begin with. What is still to be filled in is marked, and `check` tells it.

use super::{Cli, open, out::Out};
use crate::rulebase::{AdjusterKind, UnitCard};
use crate::session::{Fault, plain};
use std::fmt::Write as _;
use std::path::{Path, PathBuf};

const UNIT: &str = include_str!("templates/unit.yaml");
const PROCEDURE: &str = include_str!("templates/procedure.yaml");
/// Steps that make the unit safe are never skipped; the proof stands before whatever it makes safe.
const SAFE: &str =
    "  # Steps that make the unit safe are never skipped. The proof stands before whatever it makes safe.
  make-safe:
    makes safe: yes
    steps:
      - prove: SPRING
        say: Turn the CALLED by hand.
        question: Does the CALLED turn freely by hand?
        before: [stored energy in the spring]
        stop: Stop. The CALLED is under load. Find what holds it.

";
const STARTERS: [(&str, &str); 3] = [
    ("pack.yaml", include_str!("templates/pack.yaml")),
    ("tools.yaml", include_str!("templates/tools.yaml")),
    ("cautions.yaml", include_str!("templates/cautions.yaml")),
];

/// Begins a unit card.
///
/// # Errors
/// A name that is no id, a card that is there already, a folder that cannot be written.
pub fn unit(cli: &Cli, name: &str) -> Result<u8, Fault> {
    id(name)?;
    let folder = folder(cli);
    starters(&folder)?;
    let words = name.replace('-', " ");
    write(&folder, &format!("units/{name}.yaml"), &UNIT.replace("NAME", name).replace("WORDS", &words))?;
    next(&folder)
}

/// Begins a procedure for a unit of the pack.
///
/// # Errors
/// As for a card, and a unit that is not there or not named where there are several.
pub fn procedure(cli: &Cli, name: &str, unit: Option<&str>) -> Result<u8, Fault> {
    id(name)?;
    let folder = folder(cli);
    starters(&folder)?;
    let pack = open::pack(&folder)?;
    let card = match unit {
        Some(unit) => pack.unit(unit),
        None if pack.units.len() == 1 => pack.units.values().next(),
        None => {
            let units: Vec<&str> = pack.units.keys().map(String::as_str).collect();
            let found = format!("the procedure has no unit, and the pack has {} of them", units.len());
            return Err(Fault::call(found, format!("name it with --unit: {}", units.join(", "))));
        }
    };
    let Some(card) = card else {
        let found = format!("the pack has no unit `{}`", unit.unwrap_or_default());
        return Err(Fault::call(found, "begin it with `sparehand pack new unit NAME`"));
    };
    let text = PROCEDURE
        .replace("NAME", name)
        .replace("WORDS", &name.replace('-', " "))
        .replace("UNIT", &card.id)
        .replace("SAFE\n", &safe(card))
        .replace("COUNTS\n", &counts(card))
        .replace("RESTORES\n", &restores(card));
    write(&folder, &format!("procedures/{name}.{}.yaml", card.id), &text)?;
    next(&folder)
}

/// The proof that a spring is loose, where the unit has one.
fn safe(card: &UnitCard) -> String {
    let spring = card.parts.iter().find(|part| !part.springs.is_empty());
    spring.map_or_else(String::new, |spring| {
        SAFE.replace("SPRING", &spring.id).replace("CALLED", spring.name())
    })
}

/// Every adjuster counted as it was found, a clicker to both its stops.
fn counts(card: &UnitCard) -> String {
    let mut out = String::new();
    for one in &card.adjusters {
        let (id, name) = (&one.id, one.name());
        let _ = match &one.kind {
            AdjusterKind::Clicker { closes, .. } => {
                let (close, open) = (closes.words(), closes.opposite().words());
                writeln!(
                    out,
                    "    - count: {id}\n      as: found\n      say: Count the clicks as you turn the {name} {close} until it seats.\n    \
                     - count: {id}\n      as: travel\n      say: Count the clicks as you turn the {name} {open} to its stop."
                )
            }
            AdjusterKind::Ring { .. } => {
                writeln!(
                    out,
                    "    - count: {id}\n      as: found\n      say: Read the number on the {name} at its line."
                )
            }
            AdjusterKind::Screw { .. } => {
                writeln!(
                    out,
                    "    - count: {id}\n      as: found\n      say: Count the turns as you back the {name} off until it is free."
                )
            }
            AdjusterKind::Charge { .. } => Ok(()),
        };
    }
    out
}

/// Every adjuster that counting moved set again, a clicker after its travel was counted again.
fn restores(card: &UnitCard) -> String {
    let mut out = String::new();
    for one in &card.adjusters {
        let (id, name) = (&one.id, one.name());
        let _ = match &one.kind {
            AdjusterKind::Clicker { closes, .. } => {
                let (close, open) = (closes.words(), closes.opposite().words());
                writeln!(
                    out,
                    "    - zero: {id}\n      say: Turn the {name} {close} until it seats.\n    - count: {id}\n      as: travel again\n      \
                     say: Count the clicks as you turn the {name} {open} to its stop.\n      \
                     stop: Stop. It has lost travel. Look at it before you go on.\n    - set: {id}"
                )
            }
            AdjusterKind::Screw { .. } => {
                writeln!(
                    out,
                    "    - zero: {id}\n      say: Turn the {name} until it just touches.\n    - set: {id}"
                )
            }
            AdjusterKind::Ring { .. } | AdjusterKind::Charge { .. } => Ok(()),
        };
    }
    out
}

fn id(name: &str) -> Result<(), Fault> {
    let good =
        !name.is_empty() && name.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-');
    if good && !name.starts_with('-') {
        return Ok(());
    }
    Err(Fault::call(
        format!("`{}` is no id", plain(name)),
        "use small letters, digits and `-`, such as `birch-44`",
    ))
}

fn folder(cli: &Cli) -> PathBuf {
    cli.place.rules.clone().unwrap_or_else(|| PathBuf::from("."))
}

/// What a folder needs to be a pack, where it is not there yet.
fn starters(folder: &Path) -> Result<(), Fault> {
    for (path, text) in STARTERS {
        if !folder.join(path).exists() {
            write(folder, path, text)?;
        }
    }
    Ok(())
}

/// Writes a file that is not there yet, and says so.
fn write(folder: &Path, path: &str, text: &str) -> Result<(), Fault> {
    let to = folder.join(path);
    let name = plain(&to.display().to_string());
    if to.exists() {
        return Err(Fault::call(
            format!("`{name}` is there already"),
            "choose another name; nothing is overwritten",
        ));
    }
    let failed = |error: std::io::Error| {
        Fault::disk(format!("`{name}` cannot be written: {error}"), "give leave to write there")
    };
    if let Some(parent) = to.parent() {
        std::fs::create_dir_all(parent).map_err(failed)?;
    }
    std::fs::write(&to, text).map_err(failed)?;
    Out::new().line(&format!("made {name}"))
}

fn next(folder: &Path) -> Result<u8, Fault> {
    let name = plain(&folder.display().to_string());
    Out::new().line(&format!("Fill in what is marked FILL IN, then: sparehand check {name}"))?;
    Ok(0)
}

//! `pack`: the rules written out, for editing.

use super::{Cli, NewCommand, PackCommand, open, out::Out, pack_keys, pack_new, pack_schema, pack_show};
use crate::session::{Fault, plain};
use crate::source::nearest;
use std::path::Path;

/// Runs the command.
///
/// # Errors
/// A folder that holds something already, or cannot be written.
pub fn run(cli: &Cli, command: &PackCommand) -> Result<u8, Fault> {
    match command {
        PackCommand::Copy { folder } => copy(cli, folder),
        PackCommand::Schema { file } => schema(file.as_deref()),
        PackCommand::Keys => Out::new().line(pack_keys::page().trim_end()).map(|()| 0),
        PackCommand::Guide => {
            Out::new().line(include_str!("templates/writing-a-pack.md").trim_end()).map(|()| 0)
        }
        PackCommand::New { what: NewCommand::Unit { name } } => pack_new::unit(cli, name),
        PackCommand::New { what: NewCommand::Procedure { name, unit } } => {
            pack_new::procedure(cli, name, unit.as_deref())
        }
        PackCommand::Show { name } => show(cli, &name.join(" ")),
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

fn schema(file: Option<&str>) -> Result<u8, Fault> {
    let Some(schema) = pack_schema::schema(file) else {
        let files: Vec<&str> = pack_schema::FILES.iter().map(|(name, _)| *name).collect();
        let found = format!("a pack has no file of the kind `{}`", plain(file.unwrap_or_default()));
        return Err(Fault::call(found, format!("name one of {}, or none for all", files.join(", "))));
    };
    let text = serde_json::to_string_pretty(&schema).map_err(|error| Fault::Ours(error.to_string()))?;
    Out::new().line(&text)?;
    Ok(0)
}

fn show(cli: &Cli, name: &str) -> Result<u8, Fault> {
    let pack = open::rules(cli)?;
    let pages = pack_show::pages(&pack, name);
    if pages.is_empty() {
        let known =
            pack.units.keys().map(String::as_str).chain(pack.procedures.keys().map(|(id, _)| id.as_str()));
        let mend = match nearest(name, known) {
            Some(near) => format!("did you mean `{near}`?"),
            None => "name a unit or a procedure of the pack".to_owned(),
        };
        return Err(Fault::call(format!("the pack has no unit and no procedure `{}`", plain(name)), mend));
    }
    Out::new().text(&pages.join("\n"))?;
    Ok(0)
}

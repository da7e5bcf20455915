//! The workings as a list: each one's name, inputs with dimensions, outputs, method and source, for people and for JSON.

use serde::Serialize;

use super::{Input, Kind, Working};
use crate::quantity::Unit;

/// One working as it is listed.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Listed {
    /// Its name.
    pub name: &'static str,
    /// The kind of question it answers.
    pub kind: Kind,
    /// What it works out.
    pub about: &'static str,
    /// Its inputs.
    pub inputs: Vec<ListedInput>,
    /// Its outputs: the answer first; the others through `want`.
    pub outputs: Vec<ListedOutput>,
    /// The formula.
    pub method: &'static str,
    /// Where it is from.
    pub source: &'static str,
    /// What to mind.
    pub cautions: Vec<&'static str>,
}

/// One input as it is listed.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ListedInput {
    /// Its name.
    pub name: &'static str,
    /// Other names taken for it.
    pub also: &'static [&'static str],
    /// What it is.
    pub what: &'static str,
    /// What it takes, in words.
    pub takes: String,
    /// The unit that the working counts in.
    pub unit: Option<Unit>,
    /// Whether the working cannot do without it.
    pub required: bool,
    /// What stands when it is not given.
    pub usual: Option<String>,
}

/// One output as it is listed.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ListedOutput {
    /// Its name.
    pub name: &'static str,
    /// Its unit; none where it is a text.
    pub unit: Option<Unit>,
}

impl Working {
    /// The working for a list.
    #[must_use]
    pub fn listed(&self) -> Listed {
        let output = |(name, unit): &super::Output| ListedOutput { name, unit: *unit };
        Listed {
            name: self.name,
            kind: self.kind,
            about: self.about,
            inputs: self.inputs.iter().map(listed_input).collect(),
            outputs: self.outputs.iter().map(output).collect(),
            method: self.method,
            source: self.source,
            cautions: self.cautions.clone(),
        }
    }
}

fn listed_input(input: &Input) -> ListedInput {
    let number =
        |value: f64| input.unit().map_or_else(|| value.to_string(), |unit| format!("{value} {unit}"));
    ListedInput {
        name: input.name,
        also: input.also,
        what: input.what,
        takes: input.dimension_words(),
        unit: input.unit(),
        required: input.required,
        usual: input.usual.map(number).or(input.usual_text.map(str::to_owned)),
    }
}

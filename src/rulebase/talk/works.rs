//! How calculations are asked for (`talk/works.yaml`): which words call for which, and where each input is found.

use super::TalkError;
use crate::quantity::Unit;
use crate::workings::registry::{self, Takes, Working};
use serde::Deserialize;
use std::collections::BTreeMap;

/// All calculations that can be asked for by words.
#[derive(Debug, Clone, Default, PartialEq, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Works {
    /// Asked for in words, each with its calculation.
    pub works: Vec<Asking>,
    /// What is never worked out, and why.
    pub never: Vec<Never>,
}

/// One way to ask for a calculation.
#[derive(Debug, Clone, Default, PartialEq, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Asking {
    /// Its own name.
    pub ask: String,
    /// The calculation's name; its own name when not given.
    pub work: Option<String>,
    /// Words that call for it: each entry is enough; ` + ` joins words that all have to be there.
    pub cues: Vec<String>,
    /// Words that speak against it.
    pub not: Vec<String>,
    /// Texts that this way of asking settles.
    pub with: BTreeMap<String, String>,
    /// A text that is settled several ways, one answer each.
    pub each: BTreeMap<String, Vec<String>>,
    /// Its inputs: how each is said and where else it is found, in the order in which they are asked for.
    pub inputs: Vec<Found>,
    /// The output that is the answer, when it is not the first.
    pub want: Option<String>,
    /// Further outputs that are said with it.
    pub also: Vec<String>,
    /// The size that tells which part of the card is meant, when none is named.
    pub part: Option<String>,
    /// The answer's first words.
    pub say: Option<String>,
    /// The least step that the answer is set or read in on the bench, in its unit: it is rounded to it.
    pub step: Option<f64>,
    /// Said after the answer.
    pub note: Option<String>,
    /// Whether it may be chosen by its kind alone.
    pub usual: bool,
    /// Whether the tool on the card is the answer, where a part of the card is named and nothing else.
    pub card: bool,
}

/// One input: how it is said and where else it is found.
#[derive(Debug, Clone, Default, PartialEq, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Found {
    /// The input's name.
    pub input: String,
    /// What it is called when it is said back.
    pub called: Option<String>,
    /// Words beside its number; `#` stands for the number.
    pub said: Vec<String>,
    /// For a text: which words choose which.
    pub choose: BTreeMap<String, Vec<String>>,
    /// Where it is found when it was not said, the first that has it.
    pub from: Vec<String>,
    /// The unit of a bare number; the calculation's own when not given.
    pub bare: Option<String>,
    /// Whether only its own words give it a number.
    pub strict: bool,
    /// Whether its unit alone gives it a number too, though it is strict: nothing else of the calculation has that unit.
    pub by_unit: bool,
    /// Whether it has to be known although the calculation has a usual value.
    pub need: bool,
    /// The input beside which it has to be known, though the calculation does without it.
    pub need_beside: Option<String>,
    /// What is taken when it is neither said nor found; the answer says that it was assumed.
    pub assume: Option<String>,
    /// Said after the answer when it is neither said nor found.
    pub lacking: Option<String>,
    /// What it may not pass: a place as in `from`, and how many times that.
    pub most: Option<Most>,
}

/// A limit from the card.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Most {
    /// Where it is found.
    pub of: String,
    /// How many times that may not be passed.
    #[serde(default = "once")]
    pub times: f64,
    /// Why.
    pub why: String,
}

fn once() -> f64 {
    1.0
}

/// What is never worked out.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Never {
    /// The words that ask for it, as in `cues`.
    pub cues: Vec<String>,
    /// What is said instead.
    pub why: String,
}

impl Asking {
    /// The calculation.
    #[must_use]
    pub fn working(&self) -> Option<&'static Working> {
        registry::find(self.work.as_deref().unwrap_or(&self.ask))
    }

    /// The entry of an input.
    #[must_use]
    pub fn input(&self, name: &str) -> Option<&Found> {
        self.inputs.iter().find(|found| found.input == name)
    }
}

impl Found {
    /// The unit that a bare number has.
    #[must_use]
    pub fn bare_unit(&self, working: &Working) -> Option<Unit> {
        let own = || working.input(&self.input).and_then(registry::Input::unit);
        self.bare.as_deref().and_then(Unit::parse).or_else(own)
    }
}

impl Works {
    /// The table of a YAML text.
    ///
    /// # Errors
    /// What the text holds that the table does not, or a name that no calculation has.
    pub fn parse(file: &str, text: &str) -> Result<Self, TalkError> {
        let table: Self = serde_yaml::from_str(text).map_err(|problem| {
            let place = problem.location();
            let line = place.as_ref().map_or(1, serde_yaml::Location::line);
            let column = place.as_ref().map_or(1, serde_yaml::Location::column);
            TalkError::new(
                file,
                line,
                column,
                problem.to_string(),
                "see the table in the pack that is built in",
            )
        })?;
        for asking in &table.works {
            if let Some(problem) = unknown(asking) {
                let line = line_of(text, &asking.ask);
                return Err(TalkError::new(file, line, 1, problem, "see `sparehand ask --work list`"));
            }
        }
        Ok(table)
    }

    /// The way of asking of that name.
    #[must_use]
    pub fn find(&self, name: &str) -> Option<&Asking> {
        self.works.iter().find(|asking| asking.ask == name)
    }
}

/// A name that no calculation has, or a text that no input takes.
fn unknown(asking: &Asking) -> Option<String> {
    let name = asking.work.as_deref().unwrap_or(&asking.ask);
    let Some(working) = asking.working() else { return Some(format!("there is no calculation `{name}`")) };
    let texts = asking.with.keys().chain(asking.each.keys()).filter(|key| *key != "as");
    let mut inputs = asking.inputs.iter().map(|found| &found.input).chain(texts);
    if let Some(input) = inputs.find(|input| working.input(input).is_none()) {
        return Some(format!("`{name}` takes no `{input}`"));
    }
    if let Some(want) =
        asking.want.as_ref().filter(|want| !working.outputs.iter().any(|(own, _)| own == want))
    {
        return Some(format!("`{name}` does not give `{want}`"));
    }
    let gives = |name: &&String| working.outputs.iter().any(|(own, _)| own == name);
    if let Some(also) = asking.also.iter().find(|also| !gives(also)) {
        return Some(format!("`{name}` does not give `{also}`"));
    }
    asking.inputs.iter().find_map(|found| unknown_choice(working, found))
}

fn unknown_choice(working: &Working, found: &Found) -> Option<String> {
    let Takes::Text(choices) = working.input(&found.input)?.takes else { return None };
    let wrong =
        found.choose.keys().find(|choice| !choices.is_empty() && !choices.contains(&choice.as_str()))?;
    Some(format!("`{}` is not `{wrong}`", found.input))
}

fn line_of(text: &str, name: &str) -> usize {
    let wanted = format!("ask: {name}");
    text.lines()
        .position(|line| line.trim_start_matches(['-', ' ']).trim_end() == wanted)
        .map_or(1, |at| at + 1)
}

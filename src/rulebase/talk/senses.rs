//! What words have in common (`talk/senses.yaml`).

use super::TalkError;
use std::collections::BTreeMap;

/// Senses by name, each with the words and phrases that have it.
pub type Senses = BTreeMap<String, Vec<String>>;

/// The senses of a YAML text.
///
/// # Errors
/// What the text holds that is no list of words under a name.
pub fn parse_senses(file: &str, text: &str) -> Result<Senses, TalkError> {
    serde_yaml::from_str(text).map_err(|problem| {
        let place = problem.location();
        TalkError::new(
            file,
            place.as_ref().map_or(1, serde_yaml::Location::line),
            place.as_ref().map_or(1, serde_yaml::Location::column),
            problem.to_string(),
            "write a name and a list of words, `person: [customer, owner]`",
        )
    })
}

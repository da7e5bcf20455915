//! The word lists of a pack (`talk/words.yaml`).

use super::TalkError;
use serde::Deserialize;
use std::collections::BTreeMap;

/// Words that need no grammar.
#[derive(Debug, Clone, Default, PartialEq, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Words {
    /// Said without meaning: dropped ("er", "like", "mate").
    pub fillers: Vec<String>,
    /// Little words that tell nothing by themselves.
    pub small: Vec<String>,
    /// Little words that a rule can do without ("the", "is", "of").
    pub dropped: Vec<String>,
    /// Words that tell more than those, and less than others.
    pub light: Vec<String>,
    /// Other ways to say or spell a word or phrase: what is said -> what is meant.
    pub means: BTreeMap<String, String>,
    /// What a recogniser prints for a word beyond what its sound tells: heard -> words that it may have been.
    pub heard: BTreeMap<String, Vec<String>>,
    /// Words of part names that people use for one another ("compression" for "bump").
    pub also: BTreeMap<String, Vec<String>>,
    /// Words that show, in a question or a value, that the line is about something else than the unit; `<food>` stands
    /// for the words of a sense.
    pub elsewhere: Vec<String>,
    /// Last words of part names that do not stand for the part alone ("stop").
    pub never_alone: Vec<String>,
    /// Everyday words beyond the grammars' that are what they are and never a misheard part.
    pub plain: Vec<String>,
    /// Words that say a thing is not done, or not surely so.
    pub hedges: Vec<String>,
    /// Words of denial.
    pub denials: Vec<String>,
    /// Words that report what somebody else says or ask what would be.
    pub reported: Vec<String>,
    /// Other tools by the names people give them: name -> plain name.
    pub tools: BTreeMap<String, String>,
    /// Senses that tell how a thing stands.
    pub stands: Vec<String>,
    /// Senses that do not answer a caution (`caution`), any step (`step`), a question of yes or no (`answer`) or a step of
    /// a deed, by its name. Under `text` stand the words that are no answer where words are waited for.
    pub unlike: BTreeMap<String, Vec<String>>,
    /// Words that make a wish relative to where an adjuster stands: word -> `up`, `down`, or `asked` where the card alone
    /// does not tell which way that is.
    pub relative: BTreeMap<String, String>,
    /// Whole lines that mean one thing: line -> `pause`, or `drop` for the open question.
    pub whole: BTreeMap<String, String>,
    /// Openings of a line that corrects what was said before it.
    pub corrections: Vec<String>,
    /// Openings of a line that says who is working.
    pub introduces: Vec<String>,
    /// Openings of a line that goes back to something booked in, by its name.
    pub returns: Vec<String>,
    /// What stands between a thing and what it is ("the serial number is ...").
    pub becomes: Vec<String>,
    /// Words that say that what was booked in is wrong.
    pub amiss: Vec<String>,
    /// Words that ask ("who"), where a verb of `helping` follows.
    pub asking: Vec<String>,
    /// Verbs that begin a question before one of `subjects`.
    pub helping: Vec<String>,
    /// What a question asks about, after its verb.
    pub subjects: Vec<String>,
    /// What says that a thing has not been looked at yet: no answer to a question of yes or no.
    pub unready: Vec<String>,
    /// Words of a line that begins a job which tell nothing beyond that.
    pub begins: Vec<String>,
    /// What opens, in such a line, something that a step books in: its role -> words ("for" the customer).
    pub books: BTreeMap<String, Vec<String>>,
    /// Names that a person may be called by when spoken to, and words that call them.
    pub calls: Vec<String>,
}

impl Words {
    /// The word lists of a YAML text.
    ///
    /// # Errors
    /// What the text holds that a word list does not.
    pub fn parse(file: &str, text: &str) -> Result<Self, TalkError> {
        serde_yaml::from_str(text).map_err(|problem| {
            let place = problem.location();
            TalkError::new(
                file,
                place.as_ref().map_or(1, serde_yaml::Location::line),
                place.as_ref().map_or(1, serde_yaml::Location::column),
                problem.to_string(),
                "see the lists in the pack that is built in",
            )
        })
    }
}

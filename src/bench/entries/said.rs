//! A line's own words, each beside its plain form: for entries that keep words as they were said.

/// One word as said, and its plain form: lower case, without the marks around it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Word {
    /// As said.
    pub said: String,
    /// Lower case, without the marks around it.
    pub plain: String,
}

/// The words of a line.
pub fn words(line: &str) -> Vec<Word> {
    line.split_whitespace()
        .map(|said| {
            let plain = said.trim_matches(|c: char| !c.is_alphanumeric()).to_lowercase();
            Word { said: said.to_owned(), plain }
        })
        .filter(|word| !word.plain.is_empty())
        .collect()
}

impl Word {
    /// Whether a clause ends with it.
    pub fn ends_clause(&self) -> bool {
        self.said.ends_with([',', ';', ':', '.'])
    }
}

/// The words again as a text, without the marks at its ends.
pub fn text(words: &[Word]) -> String {
    let said: Vec<&str> = words.iter().map(|word| word.said.as_str()).collect();
    said.join(" ").trim_matches([',', ';', ':', ' ']).trim_end_matches(['.', '?', '!']).to_owned()
}

/// How many words of the line's beginning are one of those phrases; the longest counts.
pub fn opening(line: &[Word], phrases: &[String]) -> Option<usize> {
    phrases.iter().filter_map(|phrase| opens(line, phrase)).max()
}

/// How many words of the line's beginning are that phrase.
pub fn opens(line: &[Word], phrase: &str) -> Option<usize> {
    let phrase = words(phrase);
    let same = |(said, wanted): (&Word, &Word)| said.plain == wanted.plain;
    let whole = !phrase.is_empty() && line.len() >= phrase.len();
    (whole && line.iter().zip(&phrase).all(same)).then_some(phrase.len())
}

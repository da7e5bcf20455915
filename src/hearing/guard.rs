//! Guards: what makes a line less than a plain statement.

use super::parsed::Parsed;

/// What stands in a stretch of a line that would make taking it for done wrong.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Guard {
    /// It denies something.
    pub denies: bool,
    /// It doubts, hedges or is half way.
    pub hedges: bool,
    /// It says what another said, or what would be.
    pub reports: bool,
    /// It ends with a question mark.
    pub asks: bool,
    /// It has the word order or the tail of a question.
    pub inverted: bool,
    /// It denies more than once.
    pub doubled: bool,
    /// It is about something else than the unit.
    pub elsewhere: bool,
}

/// The guards of a stretch.
#[must_use]
pub fn guard(line: &Parsed<'_>, from: usize, to: usize) -> Guard {
    let words = &line.talk.words;
    let mut out = Guard { inverted: inverted(line, from, to), ..Guard::default() };
    let mut denials = 0;
    for token in line.tokens.get(from..to).unwrap_or_default() {
        out.denies |= words.denials.contains(&token.text);
        denials += usize::from(matches!(
            token.text.as_str(),
            "not" | "never" | "nothing" | "none" | "without" | "neither" | "nor" | "hardly" | "barely"
        ));
        out.hedges |= words.hedges.contains(&token.text);
        out.reports |= words.reported.contains(&token.text);
        out.elsewhere |= line.talk.elsewhere.contains(&token.text)
            || line.talk.elsewhere_roots.contains(&super::stem::stem(&token.text));
        out.asks |= token.mark == super::token::Mark::Question;
    }
    out.doubled = denials > 1;
    // "The gauge says fourteen": a thing that shows a value tells no tales.
    let roots: Vec<String> = line
        .tokens
        .get(from..to)
        .unwrap_or_default()
        .iter()
        .map(|token| super::stem::stem(&token.text))
        .collect();
    out.reports &= !line.talk.senses.has(&roots, "instrument");
    out
}

/// Whether a stretch begins as a question does ("is the ...") or has a question's tail ("... is it").
fn inverted(line: &Parsed<'_>, from: usize, to: usize) -> bool {
    let word = |at: usize| line.tokens.get(at).filter(|_| at < to).map_or("", |token| token.text.as_str());
    let subject = |at: usize| {
        matches!(
            word(at),
            "the"
                | "it"
                | "that"
                | "this"
                | "these"
                | "those"
                | "i"
                | "we"
                | "he"
                | "she"
                | "they"
                | "my"
                | "his"
                | "there"
        ) || line.mentions.iter().any(|mention| mention.start == at && mention.slot() == "<part>")
    };
    let opens = match word(from) {
        "is" | "are" | "was" | "were" | "does" | "should" | "am" => subject(from + 1),
        "did" | "have" | "has" => {
            subject(from + 1) && !matches!(word(from + 1), "it" | "that" | "this" | "the")
        }
        _ => false,
    };
    let tail = to.checked_sub(2).filter(|at| *at > from).is_some_and(|at| {
        // "That is it" is no tail.
        let stated =
            matches!(word(at - 1), "that" | "this" | "there" | "here" | "all" | "it" | "which" | "what");
        !stated
            && matches!(
                (word(at), word(at + 1)),
                ("is" | "was" | "does" | "has" | "should" | "will", "it" | "that" | "he" | "she")
                    | ("am" | "do" | "should", "i")
                    | ("are", "they")
                    | ("or", "not" | "no" | "what")
            )
    });
    opens || tail
}

impl Guard {
    /// Whether anything stands against it.
    #[must_use]
    pub fn any(self) -> bool {
        self.denies || self.hedges || self.reports || self.asks
    }
}

//! The tokens of a line: words in lower case, with their place in what was said.

use std::ops::Range;

/// A mark that stood after a word.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub enum Mark {
    /// None.
    #[default]
    None,
    /// A comma, dash or dots.
    Comma,
    /// A full stop, semicolon or exclamation mark.
    Stop,
    /// A question mark.
    Question,
}

/// A word of a line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Token {
    /// The word as understood.
    pub text: String,
    /// The word as it was said, where it was mended by sound.
    pub was: Option<String>,
    /// Its bytes in the line.
    pub raw: Range<usize>,
    /// The mark after it.
    pub mark: Mark,
}

/// The words of a line, contractions opened and units of letters and figures taken apart.
#[must_use]
pub fn tokens(said: &str) -> Vec<Token> {
    let mut out: Vec<Token> = Vec::new();
    for (start, piece) in pieces(said) {
        let end = start + piece.len();
        let mark = mark_of(piece);
        let word = clean(piece);
        let before = out.len();
        for part in split(&word) {
            for text in opened(&part) {
                out.push(Token { text, was: None, raw: start..end, mark: Mark::None });
            }
        }
        if out.len() == before {
            if let Some(last) = out.last_mut() {
                last.mark = last.mark.max(mark.max(if word.is_empty() { Mark::Comma } else { Mark::None }));
            }
        } else if let Some(last) = out.last_mut() {
            last.mark = mark;
        }
    }
    out
}

/// What stands between white space, with its place; dots and dashes that join nothing part words.
fn pieces(said: &str) -> Vec<(usize, &str)> {
    let mut out = Vec::new();
    let mut at = 0;
    for piece in said.split(char::is_whitespace) {
        let mut inner = at;
        for part in
            piece.split_inclusive("...").flat_map(|part| part.split_inclusive(['\u{2026}', '\u{2014}', ';']))
        {
            if !part.is_empty() {
                out.push((inner, part));
            }
            inner += part.len();
        }
        at += piece.len()
            + said.get(at + piece.len()..).and_then(|rest| rest.chars().next()).map_or(0, char::len_utf8);
    }
    out
}

fn mark_of(piece: &str) -> Mark {
    let tail = piece.trim_end_matches(['"', '\'', ')', '\u{201d}', '\u{2019}']);
    if tail.ends_with('?') {
        Mark::Question
    } else if tail.ends_with("...") || tail.ends_with([',', '\u{2026}', '\u{2014}', '-', ':']) {
        Mark::Comma
    } else if tail.ends_with(['.', '!', ';']) {
        Mark::Stop
    } else {
        Mark::None
    }
}

/// Lower case, plain quotes and dashes, no marks round it.
fn clean(piece: &str) -> String {
    let text: String = piece
        .chars()
        .map(|c| match c {
            '\u{2019}' | '\u{2018}' | '`' => '\'',
            '\u{2010}'..='\u{2015}' => '-',
            '\u{b7}' | '\u{22c5}' => '.',
            c => c,
        })
        .flat_map(char::to_lowercase)
        .collect();
    let text = text.replace('½', " 1/2").replace('¼', " 1/4").replace('¾', " 3/4").replace('°', " deg ");
    let text = text.trim_matches(|c: char| !c.is_alphanumeric() && c != '\'' && c != '-' && c != '#');
    let text = text.trim_end_matches('-').trim_start_matches('\'');
    let figure = text.strip_prefix('-').is_some_and(|rest| rest.starts_with(|c: char| c.is_ascii_digit()));
    if figure { text.to_owned() } else { text.trim_start_matches('-').to_owned() }
}

/// Parts joined words and figures from the letters after them.
fn split(word: &str) -> Vec<String> {
    let mut out = Vec::new();
    for part in word.split([' ', '_']).flat_map(hyphens) {
        let letters_dotted = part.contains('.') && !part.contains(|c: char| c.is_ascii_digit());
        let part = if letters_dotted { part.replace('.', "") } else { part };
        let slashed = part.contains('/') && !part.contains(|c: char| c.is_ascii_digit());
        let pieces: Vec<String> =
            if slashed { part.split('/').map(str::to_owned).collect() } else { vec![part] };
        for (at, piece) in pieces.into_iter().enumerate() {
            if at > 0 {
                out.push("per".to_owned());
            }
            out.extend(figures_apart(&piece));
        }
    }
    out.retain(|part| !part.is_empty());
    out
}

/// "thirty-two" is two words, "-3" is one, "3-4" is a range.
fn hyphens(part: &str) -> Vec<String> {
    let negative = part.starts_with('-');
    let mut out: Vec<String> = Vec::new();
    for piece in part.trim_start_matches('-').split('-') {
        let figures = |text: &str| !text.is_empty() && text.chars().all(|c| c.is_ascii_digit() || c == '.');
        if let Some(last) = out.last()
            && figures(last)
            && figures(piece)
        {
            out.push("to".to_owned());
        }
        out.push(piece.to_owned());
    }
    if negative && let Some(first) = out.first_mut() {
        *first = format!("-{first}");
    }
    out
}

/// "13mm" is two words; "1/2" and "13.8" are one.
fn figures_apart(piece: &str) -> Vec<String> {
    let figure = |c: char| c.is_ascii_digit() || matches!(c, '.' | '/' | ',' | '-');
    if !piece.starts_with(|c: char| c.is_ascii_digit() || c == '-') {
        return vec![piece.to_owned()];
    }
    let head: String = piece.chars().take_while(|c| figure(*c)).filter(|c| *c != ',').collect();
    let tail: String = piece.chars().skip_while(|c| figure(*c)).collect();
    if matches!(tail.as_str(), "st" | "nd" | "rd" | "th") {
        return vec![piece.to_owned()];
    }
    vec![head.trim_end_matches(['.', '/']).to_owned(), tail]
}

/// Contractions opened: "won't" is "will not", "fast bump's" is "fast bump is".
fn opened(word: &str) -> Vec<String> {
    let whole = |texts: &[&str]| texts.iter().map(|text| (*text).to_owned()).collect();
    match word {
        "won't" => return whole(&["will", "not"]),
        "can't" => return whole(&["can", "not"]),
        "cannot" => return whole(&["can", "not"]),
        "shan't" => return whole(&["shall", "not"]),
        "ain't" => return whole(&["is", "not"]),
        "let's" => return whole(&["let", "us"]),
        "y'all" => return whole(&["you"]),
        "o'clock" => return whole(&["oclock"]),
        _ => {}
    }
    for (tail, means) in [
        ("n't", "not"),
        ("'re", "are"),
        ("'ve", "have"),
        ("'ll", "will"),
        ("'m", "am"),
        ("'d", "would"),
        ("'s", "is"),
    ] {
        if let Some(head) = word.strip_suffix(tail)
            && !head.is_empty()
        {
            return whole(&[&head.replace('\'', ""), means]);
        }
    }
    if let Some(head) = word.strip_suffix("in'") {
        return vec![format!("{head}ing")];
    }
    vec![word.replace('\'', "")]
}

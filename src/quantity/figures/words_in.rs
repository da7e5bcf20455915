//! The number words, and tokens cut into them (`twenty-two` is two words of one token).

/// One word of a token.
pub(super) struct Word {
    /// Lower case, without punctuation at its ends.
    pub text: String,
    /// How many tokens are used up once this word is; `None` inside a token.
    pub tokens_after: Option<usize>,
}

/// Cuts tokens into words; numbers keep their points and strokes.
pub(super) fn cut(tokens: &[&str]) -> Vec<Word> {
    let mut words = Vec::new();
    for (at, token) in tokens.iter().enumerate() {
        let token = super::super::limit_text::spell_out(token).to_lowercase();
        let token = token.trim_matches([',', ';', ':', '?', '!']).trim_end_matches('.');
        let pieces: Vec<&str> = pieces(token);
        let last = pieces.len().saturating_sub(1);
        for (n, piece) in pieces.into_iter().enumerate() {
            words.push(Word { text: piece.to_owned(), tokens_after: (n == last).then_some(at + 1) });
        }
    }
    words
}

fn pieces(token: &str) -> Vec<&str> {
    let joined = token.contains('-') && !token.starts_with('-');
    let found: Vec<&str> =
        token.split(|c: char| c == ' ' || (joined && c == '-')).filter(|piece| !piece.is_empty()).collect();
    if found.is_empty() { vec![token] } else { found }
}

/// A digit word, zero among them.
pub(super) fn digit(word: &str) -> Option<u8> {
    Some(match word {
        "zero" | "oh" | "o" | "nought" | "naught" | "nil" => 0,
        "one" => 1,
        "two" => 2,
        "three" => 3,
        "four" => 4,
        "five" => 5,
        "six" => 6,
        "seven" => 7,
        "eight" => 8,
        "nine" | "niner" => 9,
        _ => return None,
    })
}

/// Ten to nineteen.
pub(super) fn teen(word: &str) -> Option<f64> {
    Some(match word {
        "ten" => 10.0,
        "eleven" => 11.0,
        "twelve" => 12.0,
        "thirteen" => 13.0,
        "fourteen" => 14.0,
        "fifteen" => 15.0,
        "sixteen" => 16.0,
        "seventeen" => 17.0,
        "eighteen" => 18.0,
        "nineteen" => 19.0,
        _ => return None,
    })
}

/// Twenty to ninety.
pub(super) fn ten(word: &str) -> Option<f64> {
    Some(match word {
        "twenty" => 20.0,
        "thirty" => 30.0,
        "forty" | "fourty" => 40.0,
        "fifty" => 50.0,
        "sixty" => 60.0,
        "seventy" => 70.0,
        "eighty" => 80.0,
        "ninety" => 90.0,
        _ => return None,
    })
}

/// The denominator of a fraction word, and whether the word is a plural.
pub(super) fn denominator(word: &str) -> Option<(f64, bool)> {
    let (stem, plural) = match word {
        "halves" => ("half", true),
        _ => word.strip_suffix('s').map_or((word, false), |stem| (stem, true)),
    };
    let below = match stem {
        "half" => 2.0,
        "third" => 3.0,
        "quarter" => 4.0,
        "fifth" => 5.0,
        "sixth" => 6.0,
        "eighth" => 8.0,
        "tenth" => 10.0,
        "sixteenth" => 16.0,
        "thirtysecond" => 32.0,
        "sixtyfourth" => 64.0,
        "hundredth" => 100.0,
        _ => return None,
    };
    Some((below, plural))
}

/// A plain numeral: `13`, `13.8`, `.5`, `-3`, `1,500`.
pub(super) fn numeral(word: &str) -> Option<f64> {
    let body = word.strip_prefix(['-', '+', '−']).unwrap_or(word);
    if body.is_empty() || !body.chars().all(|c| c.is_ascii_digit() || c == '.' || c == ',') {
        return None;
    }
    let sign = if word.starts_with(['-', '−']) { -1.0 } else { 1.0 };
    let body = if body.contains(',') { thousands(body)? } else { body.to_owned() };
    body.parse::<f64>().ok().map(|size| sign * size)
}

/// `1,500` without its comma; `None` where the comma is no thousands mark.
fn thousands(text: &str) -> Option<String> {
    let (whole, part) = text.split_once('.').map_or((text, ""), |(whole, part)| (whole, part));
    let mut groups = whole.split(',');
    let head = groups.next().filter(|head| (1..=3).contains(&head.len()))?;
    let mut plain = head.to_owned();
    for group in groups {
        if group.len() != 3 {
            return None;
        }
        plain.push_str(group);
    }
    Some(if part.is_empty() { plain } else { format!("{plain}.{part}") })
}

/// A written fraction: `1/4`.
pub(super) fn stroke(word: &str) -> Option<f64> {
    let (above, below) = word.split_once('/')?;
    let whole =
        |text: &str| text.chars().all(|c| c.is_ascii_digit()).then(|| text.parse::<f64>().ok()).flatten();
    let (above, below) = (whole(above)?, whole(below)?);
    (below > 0.0).then(|| above / below)
}

/// Whether a word can begin or go on with a number.
pub(super) fn numberish(word: &str) -> bool {
    digit(word).is_some()
        || teen(word).is_some()
        || ten(word).is_some()
        || numeral(word).is_some()
        || stroke(word).is_some()
        || matches!(word, "hundred" | "thousand" | "million" | "dozen")
}

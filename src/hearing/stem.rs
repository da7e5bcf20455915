//! A light stem, so that "tightening", "tightened" and "tightens" meet; tense that matters is kept by the word itself.

/// The word without its plural or verb ending.
#[must_use]
pub fn stem(word: &str) -> String {
    let cut = ["ies", "ing", "ed", "es", "s"].into_iter().find_map(|tail| {
        let head = word.strip_suffix(tail)?;
        let vowel = head.contains(['a', 'e', 'i', 'o', 'u', 'y']);
        let fits = match tail {
            "ies" => head.len() >= 2,
            "ing" | "ed" => head.len() >= 3 && vowel && !head.ends_with('e'),
            "es" => {
                head.ends_with(['x', 'z'])
                    || head.ends_with("ch")
                    || head.ends_with("sh")
                    || head.ends_with("ss")
            }
            _ => head.len() >= 3 && !head.ends_with(['s', 'u', 'i']),
        };
        fits.then(|| if tail == "ies" { format!("{head}y") } else { head.to_owned() })
    });
    let mut out = cut.unwrap_or_else(|| word.to_owned());
    let mut tail = out.chars().rev();
    if out.len() < word.len()
        && word.len() - out.len() >= 2
        && let (Some(a), Some(b)) = (tail.next(), tail.next())
        && a == b
        && !matches!(a, 'l' | 's' | 'e' | 'o' | 'z')
    {
        out.pop();
    }
    if out.len() > 3 && out.ends_with('e') {
        out.pop();
    }
    out
}

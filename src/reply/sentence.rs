//! Small joinery of English: sentences, lists, questions that end in "yes or no".

/// A sentence: a capital first, an end mark last; empty stays empty.
pub(super) fn sentence(text: &str) -> String {
    let text = text.trim().trim_end_matches([',', ';', ':', ' ']);
    if text.is_empty() {
        return String::new();
    }
    let end = if text.ends_with(['.', '?', '!']) { "" } else { "." };
    format!("{}{end}", capital(text))
}

/// The first letter a capital. A word that holds a figure or a capital already ("mm2", "M14") stays.
pub(super) fn capital(text: &str) -> String {
    let mut chars = text.chars();
    match chars.next() {
        Some(first) => first.to_uppercase().chain(chars).collect(),
        None => String::new(),
    }
}

/// A text to stand inside a sentence: no end mark.
pub(super) fn clause(text: &str) -> &str {
    text.trim().trim_end_matches(['.', '!', ',', ';', ':', ' '])
}

/// A text after a comma: its first letter small, unless the word is a name, a symbol or an abbreviation.
pub(super) fn inside(text: &str) -> String {
    let text = clause(text);
    let mut chars = text.chars();
    let (first, second) = (chars.next(), chars.next());
    match (first, second) {
        (Some(first), Some(second)) if second.is_lowercase() && is_plain_opening(text) => {
            first.to_lowercase().chain(text.chars().skip(1)).collect()
        }
        _ => text.to_owned(),
    }
}

/// Words that open a sentence and are no names.
const OPENINGS: [&str; 22] = [
    "a", "an", "the", "it", "its", "one", "no", "not", "never", "this", "that", "they", "do", "if", "only",
    "too", "so", "is", "nothing", "keep", "put", "use",
];

fn is_plain_opening(text: &str) -> bool {
    let first = text.split_whitespace().next().unwrap_or_default().to_lowercase();
    OPENINGS.contains(&first.as_str())
}

/// "a, b and c"; the last two joined by `by`.
pub(super) fn list(items: &[String], by: &str) -> String {
    let items: Vec<&str> = items.iter().map(|item| clause(item)).filter(|item| !item.is_empty()).collect();
    match items.as_slice() {
        [] => String::new(),
        [one] => (*one).to_owned(),
        [head @ .., last] => format!("{} {by} {last}", head.join(", ")),
    }
}

/// A question to the technician that wants a yes or a no; it never ends in "right?".
pub(super) fn yes_or_no(text: &str) -> String {
    let mut text = text.trim();
    for tail in ["?", ".", "yes or no", "right", "correct", ","] {
        let cut = text.get(text.len().saturating_sub(tail.len())..).unwrap_or_default();
        let whole_word = tail.len() == 1 || text.len() == cut.len() || ends_after_comma(text, tail);
        if cut.eq_ignore_ascii_case(tail) && whole_word {
            text = text.get(..text.len() - tail.len()).unwrap_or_default().trim_end();
        }
    }
    if text.is_empty() { "Yes or no?".to_owned() } else { format!("{}, yes or no?", capital(text)) }
}

/// Whether the tail stands after a comma ("..., right").
fn ends_after_comma(text: &str, tail: &str) -> bool {
    let head = text.get(..text.len().saturating_sub(tail.len())).unwrap_or_default();
    head.trim_end().ends_with(',')
}

/// An open question: a capital and a question mark, and no leading "right" after it.
pub(super) fn question(text: &str) -> String {
    let text = text.trim().trim_end_matches(['?', '.', ' ']);
    if text.is_empty() { String::new() } else { format!("{}?", capital(text)) }
}

/// How many words a spoken text has.
pub(super) fn words(text: &str) -> usize {
    text.split_whitespace().count()
}

//! The known name nearest to an unknown one.

/// How alike two names must be, from 0 to 1, to be offered: two letters wrong in a word of five are still offered.
const NEAR: f64 = 0.55;

/// The candidate nearest to `name`, when one is near enough to be what was meant. The first wins a tie.
pub fn nearest<'a>(name: &str, candidates: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let folded = fold(name);
    let mut best: Option<(f64, &str)> = None;
    for candidate in candidates {
        let near = strsim::normalized_damerau_levenshtein(&folded, &fold(candidate));
        if near >= NEAR && best.is_none_or(|(most, _)| near > most) {
            best = Some((near, candidate));
        }
    }
    best.map(|(_, candidate)| candidate)
}

/// Case and the joints between words do not count. Very long names are cut: they are no slip of the keyboard.
fn fold(name: &str) -> String {
    name.chars()
        .take(64)
        .map(|c| if matches!(c, '-' | '_') { ' ' } else { c })
        .flat_map(char::to_lowercase)
        .collect()
}

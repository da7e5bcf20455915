//! A unit as people write it (`Nm`, `ft-lb`, `mm**2/s`, `newton metres`) to the unit.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use super::Unit;

/// Exact names first: case tells `mPa.s` from `MPa.s` and `P` from `p`.
static EXACT: LazyLock<BTreeMap<&'static str, Unit>> =
    LazyLock::new(|| Unit::ALL.iter().map(|unit| (unit.name(), *unit)).collect());

/// Then every written form, folded.
static FOLDED: LazyLock<BTreeMap<String, Unit>> = LazyLock::new(|| {
    let mut map = BTreeMap::new();
    for unit in Unit::ALL {
        for form in unit.row().written {
            map.entry(fold(form)).or_insert(*unit);
        }
    }
    for unit in Unit::ALL {
        map.entry(fold(unit.name())).or_insert(*unit);
    }
    map
});

/// Lower case, without the joints that people put between the parts of a compound unit.
fn fold(text: &str) -> String {
    let text = text.trim().to_lowercase().replace("**", "^");
    let text = text.strip_suffix('.').unwrap_or(&text);
    text.chars().filter(|c| !matches!(c, '.' | '·' | '⋅' | '*' | '-' | ' ' | '_' | '^')).collect()
}

impl Unit {
    /// The unit of a text: its design name, or a usual written or spoken form in any case.
    /// `None` when it is none, or when letters alone would leave two meanings.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let text = text.trim();
        if let Some(unit) = EXACT.get(text) {
            return Some(*unit);
        }
        match text {
            "-" => return Some(Self::One),
            "" => return None,
            _ => {}
        }
        let folded = fold(text);
        if folded == "mpa" {
            // Only the capital M is mega; a bench never means the millipascal.
            return Some(Self::Megapascal);
        }
        FOLDED.get(&folded).copied()
    }

    /// The known name nearest to a mistyped one, where one is near enough to offer.
    #[must_use]
    pub fn nearest(text: &str) -> Option<Self> {
        let folded = fold(text);
        FOLDED
            .iter()
            .map(|(form, unit)| (strsim::normalized_levenshtein(form, &folded), *unit))
            .filter(|(near, _)| *near >= 0.5)
            .max_by(|a, b| a.0.total_cmp(&b.0))
            .map(|(_, unit)| unit)
    }
}

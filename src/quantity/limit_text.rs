//! Numbers and limits as written on a card: `32 N.m +/- 2 N.m`, `30 to 34 N.m`, `at most 0.05 mm`.

use super::{Dimension, Limit, Quantity, QuantityError, Unit};

/// The number at the start of a text, and the rest of it. Knows `1/2`, `2 1/4`, `1,500`, `.5`, `½`, `2e3`.
///
/// # Errors
/// Empty text, no number, or one that is not finite.
pub(super) fn split_number(text: &str) -> Result<(f64, String), QuantityError> {
    let found = || text.trim().to_owned();
    let plain = spell_out(text).replace('−', "-");
    let plain = plain.trim();
    if plain.is_empty() {
        return Err(QuantityError::Empty);
    }
    let (sign, unsigned) = match plain.strip_prefix('-') {
        Some(rest) => (-1.0, rest.trim_start()),
        None => (1.0, plain.strip_prefix('+').unwrap_or(plain).trim_start()),
    };
    let read = mixed(unsigned).or_else(|| fraction(unsigned)).or_else(|| decimal(unsigned));
    match read {
        Some((size, rest)) if size.is_finite() => Ok((sign * size, rest.to_owned())),
        None if !not_a_number(unsigned) => Err(QuantityError::NoNumber { found: found() }),
        _ => Err(QuantityError::NotFinite { found: found() }),
    }
}

fn not_a_number(text: &str) -> bool {
    let text = text.trim_start_matches('.').to_lowercase();
    text.starts_with("nan") || text.starts_with("inf")
}

/// The leading characters that `keep` accepts, and the rest.
fn leading(text: &str, keep: impl Fn(char) -> bool) -> (&str, &str) {
    let end = text.find(|c| !keep(c)).unwrap_or(text.len());
    text.split_at_checked(end).unwrap_or((text, ""))
}

/// `2 1/4` or `2-1/4`.
fn mixed(text: &str) -> Option<(f64, &str)> {
    let (whole, rest) = leading(text, |c| c.is_ascii_digit());
    let (part, rest) = fraction(rest.strip_prefix([' ', '-'])?.trim_start())?;
    Some((whole.parse::<f64>().ok()? + part, rest))
}

/// `1/4`.
fn fraction(text: &str) -> Option<(f64, &str)> {
    let (above, rest) = leading(text, |c| c.is_ascii_digit());
    let (below, rest) = leading(rest.trim_start().strip_prefix('/')?.trim_start(), |c| c.is_ascii_digit());
    let below = below.parse::<f64>().ok().filter(|below| *below > 0.0)?;
    Some((above.parse::<f64>().ok()? / below, rest))
}

/// `1,500`, `.5`, `13.8`, `2e3`.
fn decimal(text: &str) -> Option<(f64, &str)> {
    let (mantissa, rest) = leading(text, |c| c.is_ascii_digit() || matches!(c, '.' | ','));
    let mantissa: String = mantissa.trim_end_matches(',').chars().filter(|c| *c != ',').collect();
    mantissa.chars().any(|c| c.is_ascii_digit()).then_some(())?;
    let exponent = rest.strip_prefix(['e', 'E']).map(|tail| {
        let (sign, digits) = leading(tail, |c| matches!(c, '+' | '-'));
        let (digits, rest) = leading(digits, |c| c.is_ascii_digit());
        (sign, digits, rest)
    });
    match exponent {
        Some((sign, digits, rest)) if !digits.is_empty() => {
            Some((format!("{mantissa}e{sign}{digits}").parse().ok()?, rest))
        }
        _ => Some((mantissa.parse().ok()?, rest)),
    }
}

/// Vulgar fractions written out: `2½` becomes `2 1/2`.
pub(super) fn spell_out(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    for c in text.chars() {
        match vulgar(c) {
            Some(written) => {
                if plain.ends_with(|last: char| last.is_ascii_digit()) {
                    plain.push(' ');
                }
                plain.push_str(written);
            }
            None => plain.push(c),
        }
    }
    plain
}

fn vulgar(c: char) -> Option<&'static str> {
    Some(match c {
        '½' => "1/2",
        '¼' => "1/4",
        '¾' => "3/4",
        '⅓' => "1/3",
        '⅔' => "2/3",
        '⅛' => "1/8",
        '⅜' => "3/8",
        '⅝' => "5/8",
        '⅞' => "7/8",
        _ => return None,
    })
}

impl Limit {
    /// Reads a limit: `32 N.m +/- 2 N.m`, `14 bar +/- 5 %`, `30 to 34 N.m`, `at least 5 mm`, `at most 0.05 mm`, `24 click`.
    /// A tolerance or a lower end may leave its unit to the other value.
    ///
    /// # Errors
    /// [`QuantityError`], also for ends in units that do not meet or that are the wrong way round.
    pub fn parse(text: &str) -> Result<Self, QuantityError> {
        let text = text.trim();
        if let Some(rest) = strip_any(text, &["at least", "not less than", "min.", "min ", ">=", "≥"]) {
            let end = Quantity::parse(rest)?;
            return Ok(Self { lo: Some(end.value), hi: None, unit: end.unit });
        }
        if let Some(rest) = strip_any(text, &["at most", "not more than", "up to", "max.", "max ", "<=", "≤"])
        {
            let end = Quantity::parse(rest)?;
            return Ok(Self { lo: None, hi: Some(end.value), unit: end.unit });
        }
        for joint in ["+/-", "±", "+-", "plus or minus"] {
            if let Some((value, off)) = text.split_once(joint) {
                return around(text, value, off);
            }
        }
        if let Some((lo, hi)) = text.split_once(" to ") {
            return between(text, lo, hi);
        }
        Quantity::parse(text).map(Self::exactly)
    }
}

fn strip_any<'a>(text: &'a str, heads: &[&str]) -> Option<&'a str> {
    heads.iter().find_map(|head| text.strip_prefix(head))
}

fn around(text: &str, value: &str, off: &str) -> Result<Limit, QuantityError> {
    let value = Quantity::parse(value)?;
    let off = match parse_or(off, value.unit)? {
        share if share.unit == Unit::Percent => value.value.abs() * share.value / 100.0,
        off => tolerance(off, value.unit)?,
    };
    if off < 0.0 {
        return Err(QuantityError::Reversed { found: text.to_owned() });
    }
    Ok(Limit::around(value, off))
}

/// A tolerance in the value's unit. On a temperature it is a difference, so its zero does not count.
fn tolerance(off: Quantity, unit: Unit) -> Result<f64, QuantityError> {
    let zero = Quantity::new(0.0, unit);
    if off.unit.dimension() == Dimension::TemperatureDifference {
        return Ok(zero.plus(off)?.value);
    }
    Ok(off.in_unit(unit)? - Quantity::new(0.0, off.unit).in_unit(unit)?)
}

fn between(text: &str, lo: &str, hi: &str) -> Result<Limit, QuantityError> {
    let hi = Quantity::parse(hi)?;
    let lo = parse_or(lo, hi.unit)?.in_unit(hi.unit)?;
    if lo > hi.value {
        return Err(QuantityError::Reversed { found: text.to_owned() });
    }
    Ok(Limit { lo: Some(lo), hi: Some(hi.value), unit: hi.unit })
}

/// A quantity, or a bare number in the unit that stands beside it.
fn parse_or(text: &str, unit: Unit) -> Result<Quantity, QuantityError> {
    let (value, rest) = split_number(text)?;
    if rest.trim().is_empty() { Ok(Quantity::new(value, unit)) } else { Quantity::parse(text) }
}

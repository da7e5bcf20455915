//! Numbers in a line: as said, with their units and their doubts.

use super::measure::{self, Measure};
use super::mention::{Mention, Spoken, What};
use super::spot::Scene;
use super::token::{Mark, Token};
use crate::act::WaitingFor;
use crate::quantity::figures::{self, Form, Kind};

/// A number, with its unit where one follows.
pub(super) fn number(tokens: &[Token], texts: &[&str], at: usize, scene: &Scene<'_>) -> Option<Mention> {
    let first = *texts.get(at)?;
    let begins = super::lexicon::is_number_word(first)
        || matches!(
            first,
            "a" | "an"
                | "minus"
                | "negative"
                | "couple"
                | "few"
                | "several"
                | "about"
                | "around"
                | "roughly"
                | "nearly"
                | "almost"
                | "maybe"
                | "approximately"
                | "just"
        );
    if !begins || first == "point" {
        return None;
    }
    let near = tokens
        .get(at..)?
        .iter()
        .position(|token| token.mark != Mark::None)
        .map_or(texts.len(), |mark| at + mark + 1);
    let whole = figures::read_number(texts.get(at..)?).into_iter().next();
    let spelled = whole.filter(|reading| reading.form == Form::Digits && reading.kind == Kind::Sure);
    let reading = spelled.or_else(|| figures::read_number(texts.get(at..near)?).into_iter().next())?;
    if first == "one" && reading.len == 1 && is_pronoun(texts, at, scene) {
        return None;
    }
    if reading.form == Form::Article && reading.unit.is_none() {
        return None;
    }
    if reading.form == Form::Article && texts.get(at + 1).is_some_and(|word| word.len() == 1) {
        return None;
    }
    let mut end = at + reading.len;
    let ordinal = texts.get(end.checked_sub(1)?).is_some_and(|word| {
        word.starts_with(|c: char| c.is_ascii_digit()) && (word.ends_with("st") || word.ends_with("nd"))
    });
    let article_alone = reading.form == Form::Article && end - at == 1;
    let tail: Vec<&str> = texts.get(end..).unwrap_or_default().iter().take(4).copied().collect();
    let broken = tokens.get(end.checked_sub(1)?).is_some_and(|token| token.mark >= Mark::Stop);
    let mut spoken = Spoken {
        value: reading.value,
        unit: None,
        unit_said: None,
        kind: reading.kind,
        candidates: reading.candidates.clone(),
        mended: false,
        size: size(texts.get(at..end)?, reading.value),
    };
    let inner = reading.unit.and_then(|unit| {
        measure::unit_at(&[unit.name().to_lowercase().as_str()], scene.waiting)
            .or_else(|| measure::unit_at(&unit.words(1.0).split(' ').collect::<Vec<_>>(), scene.waiting))
            .map(|(unit, _)| (unit, 0))
    });
    let said = inner.or_else(|| if broken { None } else { measure_after(&tail, scene) });
    if let Some((unit, len)) = said {
        spoken.unit_said = texts.get(end..end + len).map(|words| words.join(" "));
        apply(&mut spoken, unit);
        end += len;
        if let Some((value, more)) = and_part(texts, end, &spoken) {
            spoken.value += value;
            spoken.candidates = vec![spoken.value];
            end += more;
        }
    }
    if article_alone && spoken.unit.is_none() || ordinal {
        return None;
    }
    spoken.mended = tokens.get(at..at + reading.len)?.iter().any(|token| token.was.is_some());
    end += loose_tail(texts, end, &mut spoken);
    Some(Mention { start: at, end, what: What::Number(spoken) })
}

/// "this one", "the previous one": no number, unless a unit follows.
fn is_pronoun(texts: &[&str], at: usize, scene: &Scene<'_>) -> bool {
    let before = at.checked_sub(1).and_then(|before| texts.get(before)).copied().unwrap_or_default();
    let points = matches!(
        before,
        "this"
            | "that"
            | "the"
            | "previous"
            | "next"
            | "last"
            | "other"
            | "new"
            | "old"
            | "which"
            | "each"
            | "first"
            | "second"
            | "third"
            | "left"
            | "right"
            | "another"
            | "little"
            | "big"
            | "same"
            | "every"
            | "any"
            | "no"
            | "good"
            | "wrong"
            | "top"
            | "bottom"
            | "hand"
            | "rear"
            | "front"
            | "fresh"
            | "only"
            | "main"
            | "spare"
            | "proper"
            | "nice"
            | "hard"
            | "easy"
            | "bad"
            | "long"
            | "short"
            | "side"
            | "softer"
            | "stiffer"
    );
    let tail: Vec<&str> = texts.get(at + 1..).unwrap_or_default().iter().take(4).copied().collect();
    points && measure_after(&tail, scene).is_none()
}

/// "six clicks or so", "two turns ish".
fn loose_tail(texts: &[&str], end: usize, spoken: &mut Spoken) -> usize {
    let taken = match (texts.get(end).copied(), texts.get(end + 1).copied()) {
        (Some("or"), Some("so" | "thereabouts")) => 2,
        (Some("give"), Some("or")) => 3,
        (Some("ish" | "odd" | "approx" | "approximately" | "roughly"), _) => 1,
        _ => 0,
    };
    if taken > 0 && spoken.kind == Kind::Sure {
        spoken.kind = Kind::Vague;
    }
    taken.min(texts.len().saturating_sub(end))
}

/// "two turns and a half" and "an inch and five eighths".
fn and_part(texts: &[&str], end: usize, spoken: &Spoken) -> Option<(f64, usize)> {
    if texts.get(end) != Some(&"and") || spoken.value.fract() != 0.0 {
        return None;
    }
    let reading = figures::read_number(texts.get(end + 1..)?).into_iter().next()?;
    (reading.form == Form::Fraction && reading.kind == Kind::Sure && reading.value < 1.0)
        .then_some((reading.value, reading.len + 1))
}

/// "in" and "c" are units only where nothing else makes sense of them.
pub(super) fn measure_after(tail: &[&str], scene: &Scene<'_>) -> Option<(Measure, usize)> {
    let skip =
        usize::from(matches!(tail.first(), Some(&"of" | &"full" | &"whole" | &"complete")) && tail.len() > 1);
    let found = measure::unit_at(tail.get(skip..)?, scene.waiting).map(|(unit, len)| (unit, len + skip));
    match (found, tail.first()) {
        (Some((_, 1)), Some(&"in")) => {
            let inches = matches!(scene.waiting, WaitingFor::Length | WaitingFor::Tool)
                && tail.get(1).is_none_or(|word| !matches!(*word, "from" | "the" | "off"));
            inches.then_some((Measure::Unit("in"), 1))
        }
        (Some((_, 1)), Some(&"h" | &"n" | &"g" | &"pos")) if tail.len() > 1 => None,
        (found, _) => found,
    }
}

fn apply(spoken: &mut Spoken, unit: Measure) {
    let (name, factor) = match unit {
        Measure::Unit(name) => (name, 1.0),
        Measure::Times(name, factor) => (name, f64::from(factor)),
        Measure::Parts(name, parts) => (name, 1.0 / f64::from(parts)),
    };
    spoken.unit = Some(name);
    let scaled = |value: f64| (value * factor * 1e9).round() / 1e9;
    spoken.value = scaled(spoken.value);
    spoken.candidates.iter_mut().for_each(|value| *value = scaled(*value));
}

/// The number as a tool's size: figures, or an inch fraction as it was put.
fn size(texts: &[&str], value: f64) -> String {
    if let [one] = texts
        && one.contains('/')
    {
        return (*one).to_owned();
    }
    if value.fract() == 0.0 {
        return format!("{value}");
    }
    let whole = value.trunc();
    for below in [2.0, 4.0, 8.0, 16.0, 32.0, 64.0] {
        let above = (value - whole) * below;
        if (above - above.round()).abs() < 1e-9
            && !texts.iter().any(|text| text.contains('.') || *text == "point")
        {
            let fraction = format!("{}/{below}", above.round());
            return if whole > 0.0 { format!("{whole} {fraction}") } else { fraction };
        }
    }
    format!("{value}")
}

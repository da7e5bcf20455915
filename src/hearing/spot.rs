//! Finds what a line mentions.

use super::measure::{self, Measure};
use super::mention::{Mention, Spoken, What};
use super::names::{Fit, Names};
use super::token::{Mark, Token};
use crate::act::{Corner, WaitingFor};
use crate::quantity::figures::{self, Form, Kind};
use std::collections::{BTreeMap, BTreeSet, HashMap, HashSet};

/// Everything that may be mentioned, for one unit.
#[derive(Clone, Copy)]
pub struct Scene<'a> {
    /// Names of the unit in hand.
    pub unit: &'a Names,
    /// Names of every unit of the pack, to know a foreign part.
    pub foreign: &'a HashMap<String, String>,
    /// Unit cards by spoken name.
    pub units: &'a BTreeMap<String, String>,
    /// The same by the number in the name alone.
    pub short_units: &'a BTreeMap<String, String>,
    /// Procedures by spoken name.
    pub procedures: &'a BTreeMap<String, String>,
    /// Tools by the names people give them.
    pub tools: &'a BTreeMap<String, String>,
    /// Whether a name may be recognised by its sound.
    pub by_sound: bool,
    /// Words known to talk: one of them alone is never a part by its sound.
    pub known: &'a dyn Fn(&str) -> bool,
    /// Little words: no part's name by sound is made of them alone.
    pub small: &'a HashSet<String>,
    /// Last words of names that are no name by themselves.
    pub never: &'a [String],
    /// What is waited for.
    pub waiting: WaitingFor,
    /// The part in hand.
    pub about: Option<&'a str>,
}

/// The mentions of a line, longest first where they begin at the same word; none overlaps another.
#[must_use]
pub fn mentions(tokens: &[Token], scene: &Scene<'_>) -> Vec<Mention> {
    let texts: Vec<&str> = tokens.iter().map(|token| token.text.as_str()).collect();
    let mut out = Vec::new();
    let mut at = 0;
    while at < texts.len() {
        let found = named(&texts, at, scene)
            .or_else(|| number(tokens, &texts, at, scene))
            .or_else(|| corner(&texts, at))
            .or_else(|| part(tokens, &texts, at, scene));
        match found {
            Some(mention) => {
                at = mention.end.max(at + 1);
                out.push(mention);
            }
            None => at += 1,
        }
    }
    out
}

fn span<'a>(texts: &'a [&'a str], at: usize, len: usize) -> Option<&'a [&'a str]> {
    texts.get(at..at + len)
}

/// A number, with its unit where one follows.
fn number(tokens: &[Token], texts: &[&str], at: usize, scene: &Scene<'_>) -> Option<Mention> {
    let first = *texts.get(at)?;
    let begins = super::lexicon::is_number_word(first)
        || matches!(first, "a" | "an" | "minus" | "negative" | "couple" | "few" | "several" | "about" | "around" | "roughly" | "nearly" | "almost" | "maybe" | "approximately" | "just");
    if !begins || first == "point" {
        return None;
    }
    let near = tokens.get(at..)?.iter().position(|token| token.mark != Mark::None).map_or(texts.len(), |mark| at + mark + 1);
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
    let ordinal = texts.get(end.checked_sub(1)?).is_some_and(|word| word.ends_with("st") || word.ends_with("nd"));
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
    let inner = reading.unit.and_then(|unit| measure::unit_at(&[unit.name().to_lowercase().as_str()], scene.waiting).or_else(|| measure::unit_at(&unit.words(1.0).split(' ').collect::<Vec<_>>(), scene.waiting)).map(|(unit, _)| (unit, 0)));
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
        "this" | "that" | "the" | "previous" | "next" | "last" | "other" | "new" | "old" | "which" | "each" | "first" | "second" | "third"
            | "left" | "right" | "another" | "little" | "big" | "same" | "every" | "any" | "no" | "good" | "wrong" | "top" | "bottom" | "hand"
            | "rear" | "front" | "fresh" | "only" | "main" | "spare" | "proper" | "nice" | "hard" | "easy" | "bad" | "long" | "short" | "side" | "softer" | "stiffer"
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
fn measure_after(tail: &[&str], scene: &Scene<'_>) -> Option<(Measure, usize)> {
    let skip = usize::from(matches!(tail.first(), Some(&"of" | &"full" | &"whole" | &"complete")) && tail.len() > 1);
    let found = measure::unit_at(tail.get(skip..)?, scene.waiting).map(|(unit, len)| (unit, len + skip));
    match (found, tail.first()) {
        (Some((_, 1)), Some(&"in")) => {
            let inches = matches!(scene.waiting, WaitingFor::Length | WaitingFor::Tool) && tail.get(1).is_none_or(|word| !matches!(*word, "from" | "the" | "off"));
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
        if (above - above.round()).abs() < 1e-9 && !texts.iter().any(|text| text.contains('.') || *text == "point") {
            let fraction = format!("{}/{below}", above.round());
            return if whole > 0.0 { format!("{whole} {fraction}") } else { fraction };
        }
    }
    format!("{value}")
}

/// Units, procedures and tools by name.
fn named(texts: &[&str], at: usize, scene: &Scene<'_>) -> Option<Mention> {
    (1..=4).rev().find_map(|len| {
        let name = span(texts, at, len)?.join(" ");
        let what = if let Some(id) = scene.units.get(&name) {
            What::Unit(id.clone())
        } else if let Some(id) = scene.short_units.get(&name).filter(|_| short_unit(texts, at, len, scene)) {
            What::Unit(id.clone())
        } else if let Some(id) = scene.procedures.get(&name) {
            What::Procedure(id.clone())
        } else {
            What::Tool(scene.tools.get(&name)?.clone())
        };
        Some(Mention { start: at, end: at + len, what })
    })
}

/// "the sixty", "left hand sixty": a unit by the number in its name, where no value is waited for.
fn short_unit(texts: &[&str], at: usize, len: usize, scene: &Scene<'_>) -> bool {
    let before = at.checked_sub(1).and_then(|before| texts.get(before)).copied().unwrap_or_default();
    let tail: Vec<&str> = texts.get(at + len..).unwrap_or_default().iter().take(4).copied().collect();
    matches!(before, "the" | "hand" | "left" | "right" | "other" | "rear" | "front" | "a" | "this" | "that")
        && !measure::is_number(scene.waiting)
        && scene.waiting != WaitingFor::Tool
        && measure_after(&tail, scene).is_none()
        && !matches!(tail.first(), Some(&"spring" | &"one" | &"key" | &"socket" | &"bore"))
}

/// A corner of the vehicle.
fn corner(texts: &[&str], at: usize) -> Option<Mention> {
    let word = |n: usize| texts.get(at + n).copied().unwrap_or_default();
    let side = |n: usize| match (word(n), word(n + 1)) {
        ("left" | "right", "hand") => Some((word(n) == "left", 2)),
        ("left" | "nearside" | "ns" | "lh" | "l", _) => Some((true, 1)),
        ("right" | "offside" | "os" | "rh" | "r", _) => Some((false, 1)),
        ("near", "side") => Some((true, 2)),
        ("off", "side") => Some((false, 2)),
        _ => None,
    };
    let end = |n: usize| match word(n) {
        "front" => Some(true),
        "rear" | "back" => Some(false),
        _ => None,
    };
    let done = |what: Corner, len: usize| Some(Mention { start: at, end: at + len, what: What::Corner(Some(what)) });
    let both = |front: bool, left: bool| match (front, left) {
        (true, true) => Corner::FrontLeft,
        (true, false) => Corner::FrontRight,
        (false, true) => Corner::RearLeft,
        (false, false) => Corner::RearRight,
    };
    match (word(0), word(1)) {
        ("driver" | "drivers" | "passenger" | "passengers", _) => {
            let len = (1..4).find(|n| matches!(word(*n), "side" | "corner" | "front" | "rear")).map_or(1, |n| n + 1);
            return Some(Mention { start: at, end: at + len, what: What::Corner(None) });
        }
        ("fl", _) => return done(Corner::FrontLeft, 1),
        ("fr", _) => return done(Corner::FrontRight, 1),
        ("rl", _) => return done(Corner::RearLeft, 1),
        ("rr", _) => return done(Corner::RearRight, 1),
        _ => {}
    }
    if let Some(front) = end(0)
        && let Some((left, len)) = side(1)
    {
        return done(both(front, left), len + 1);
    }
    let (left, len) = side(0)?;
    if let Some(front) = end(len) {
        return done(both(front, left), len + 1);
    }
    let article = at.checked_sub(1).and_then(|before| texts.get(before)).is_some_and(|word| matches!(*word, "the" | "my" | "his" | "other" | "to"));
    let noun = matches!(word(len), "side" | "one" | "corner" | "unit" | "leg" | "damper" | "strut" | "shock" | "rear" | "front" | "sixty" | "forty");
    let whole = len == 2 || matches!(word(0), "nearside" | "offside");
    (article || noun || whole).then_some(())?;
    done(if left { Corner::Left } else { Corner::Right }, len)
}

/// A part of the unit, by name, head word, sound or first word.
fn part(tokens: &[Token], texts: &[&str], at: usize, scene: &Scene<'_>) -> Option<Mention> {
    let found = |len: usize, ids: &BTreeSet<String>, fit: Fit| Some(Mention { start: at, end: at + len, what: What::Part(settled(ids, fit, scene)) });
    for len in (1..=4).rev() {
        let Some(words) = span(texts, at, len) else { continue };
        let name = words.join(" ");
        if let Some(ids) = scene.unit.whole(&name).filter(|_| !scene.never.contains(&name)) {
            return found(len, ids, Fit::Whole);
        }
        if len >= 2 && let Some(id) = scene.foreign.get(&name) {
            return Some(Mention { start: at, end: at + len, what: What::Foreign(id.clone()) });
        }
        let joined = tokens.get(at..at + len - 1).is_some_and(|tokens| tokens.iter().all(|token| token.mark == Mark::None));
        let free = !(len == 1 && scene.unit.holds(&name)) && !words.iter().all(|word| scene.small.contains(*word)) && !(len == 1 && (scene.known)(&name)) && joined
            && !words.iter().any(|word| super::lexicon::is_number_word(word));
        let edge = |word: Option<&&str>| word.is_some_and(|word| scene.small.contains(*word) && !scene.unit.holds(word) && !matches!(*word, "not" | "her" | "in"));
        let tidy = !edge(words.first()) && !(len > 1 && edge(words.last()));
        let some_new = len == 1 || words.iter().any(|word| scene.unit.holds(word)) || words.iter().any(|word| !(scene.known)(word)) || len == 2;
        if scene.by_sound && len <= 3 && free && tidy && some_new
            && let Some((ids, like)) = scene.unit.sounding(&name)
            && like >= if len == 1 { 0.72 } else if words.iter().any(|word| scene.unit.holds(word)) { 0.78 } else { 0.84 }
        {
            return found(len, &ids, Fit::Sound);
        }
    }
    let word = *texts.get(at)?;
    if let Some(ids) = scene.unit.head(word).filter(|_| !scene.never.iter().any(|never| never == word)) {
        return found(1, ids, Fit::Head);
    }
    let marked = at.checked_sub(1).and_then(|before| tokens.get(before)).is_some_and(|token| token.mark != Mark::None);
    let before = if marked { "" } else { at.checked_sub(1).and_then(|before| texts.get(before)).copied().unwrap_or_default() };
    let after = texts.get(at + 1).copied().unwrap_or_default();
    let points = matches!(before, "the" | "on" | "for" | "of" | "this" | "that" | "" | "and") && matches!(after, "is" | "at" | "to" | "one" | "" | "out" | "was" | "meant" | "go" | "goes" | "and" | "should" | "does" | "for" | "needs" | "same");
    let points = points || (super::lexicon::is_number_word(after) && before != "too");
    if points && !scene.small.contains(word) && !scene.never.iter().any(|never| never == word) && let Some(ids) = scene.unit.first(word) {
        let one = usize::from(after == "one");
        return found(1 + one, ids, Fit::First);
    }
    None
}

/// The part in hand settles a name that fits several: it itself, or what belongs to it ("foot nut" to "foot grub").
fn settled(ids: &BTreeSet<String>, fit: Fit, scene: &Scene<'_>) -> BTreeSet<String> {
    let Some(about) = scene.about.filter(|_| ids.len() > 1 && fit != Fit::Sound) else { return ids.clone() };
    if ids.contains(about) {
        return BTreeSet::from([about.to_owned()]);
    }
    let first = about.split('-').next().unwrap_or(about);
    let kin: BTreeSet<String> = ids.iter().filter(|id| id.split('-').next() == Some(first)).cloned().collect();
    if kin.len() == 1 { kin } else { ids.clone() }
}

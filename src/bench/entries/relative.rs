//! A wish relative to where an adjuster stands ("two more turns", "two clicks slower"): never taken for a setting. It is
//! worked out from the setting found where the card makes the direction clear, and said back; otherwise it is asked.

use crate::act::{Act, ActName, Doubt, End};
use crate::bench::deeds::unit_of;
use crate::bench::desk::Desk;
use crate::bench::{Part, Question, settings};
use crate::event::Pending;
use crate::quantity::{Quantity, Unit, figures};
use crate::rulebase::{Adjuster, AdjusterKind};

/// Whether the wish is relative, by the words it was said in.
pub fn is(desk: &Desk<'_>, act: &Act) -> bool {
    sense(desk, act).is_some()
}

/// Whether the act is such a wish, of an adjuster that it names.
pub fn of_adjuster(desk: &Desk<'_>, act: &Act) -> bool {
    let named = act.slots.about.as_deref().zip(desk.card());
    let adjuster = named.is_some_and(|(about, card)| card.adjuster(about).is_some());
    act.act == ActName::Want && adjuster && is(desk, act)
}

/// What the pack's word list says of the word that makes the wish relative: `up`, `down` or `asked`.
fn sense(desk: &Desk<'_>, act: &Act) -> Option<String> {
    let said = desk.utterance.heard.clone().or_else(|| act.slots.text.clone())?.to_lowercase();
    let clause = clause_of(&said, act.slots.value);
    let words: Vec<&str> =
        clause.split(|c: char| !(c.is_alphanumeric() || c == '\'')).filter(|word| !word.is_empty()).collect();
    let relative = &desk.rules.talk.words.relative;
    words.iter().enumerate().find_map(|(at, word)| {
        // "Down to eight" is where it is to stand.
        let to = words.get(at + 1).is_some_and(|next| *next == "to");
        relative.get(*word).filter(|_| !to).cloned()
    })
}

/// The part of the line that has the figure: another wish may stand beside it.
fn clause_of(said: &str, value: Option<f64>) -> String {
    let Some(value) = value else { return said.to_owned() };
    let holds = |clause: &&str| {
        let tokens: Vec<&str> = clause.split_whitespace().collect();
        let mut from = 0..tokens.len();
        from.any(|at| {
            let found = tokens.get(at..).map(figures::read_number).unwrap_or_default();
            found.into_iter().any(|found| (found.value - value).abs() < 1e-9)
        })
    };
    let clauses = said.split([',', ';']).flat_map(|part| part.split(" and "));
    let held: Vec<&str> = clauses.filter(holds).collect();
    if held.is_empty() { said.to_owned() } else { held.join(" ") }
}

/// Works the wish out and says it back, or asks where the adjuster is to stand.
pub fn wish(desk: &mut Desk<'_>, adjuster: &Adjuster, act: &Act) {
    let question = match worked_out(desk, adjuster, act) {
        Some((question, wish)) => {
            desk.open(Pending::Between { acts: vec![wish], doubt: Doubt::Meaning, then: Vec::new() });
            question
        }
        None => {
            let unit = unit_of(adjuster).name().to_owned();
            desk.open(Pending::Stand { about: adjuster.id.clone(), unit });
            stand(desk, &adjuster.id)
        }
    };
    desk.say(Part::Question(question));
}

/// The setting that is meant, where more and less have one meaning: a screw adds by its turns, a charge by its pressure.
fn worked_out(desk: &Desk<'_>, adjuster: &Adjuster, act: &Act) -> Option<(Question, Act)> {
    let clear = matches!(adjuster.kind, AdjusterKind::Screw { .. } | AdjusterKind::Charge { .. });
    let less = match sense(desk, act)?.as_str() {
        "up" if clear => false,
        "down" if clear => true,
        _ => return None,
    };
    let own = unit_of(adjuster);
    let said =
        Quantity::new(act.slots.value?, act.slots.unit.as_deref().and_then(Unit::parse).unwrap_or(own));
    let by = said.to(own).ok()?;
    let found = settings::known(desk, &adjuster.id).found?;
    let to = if less { found - by.value } else { found + by.value };
    let mut wish = Act::new(ActName::Want).about(adjuster.id.clone());
    (wish.slots.value, wish.slots.unit) = (Some(to), Some(own.name().to_owned()));
    let (found, to) = (Quantity::new(found, own), Quantity::new(to, own));
    Some((Question::Relative { name: adjuster.name().to_owned(), found, by: said, less, to }, wish))
}

/// The question where an adjuster is to stand.
pub fn stand(desk: &Desk<'_>, about: &str) -> Question {
    let card = desk.card();
    let adjuster = card.as_ref().and_then(|card| card.adjuster(about));
    let known = settings::known(desk, about);
    let found = adjuster.and_then(|adjuster| {
        let from = matches!(adjuster.kind, AdjusterKind::Clicker { .. }).then_some(End::FullIn);
        Some((Quantity::new(known.found?, unit_of(adjuster)), from))
    });
    let name = adjuster.map_or_else(|| about.to_owned(), |adjuster| adjuster.name().to_owned());
    Question::Stand { name, found }
}

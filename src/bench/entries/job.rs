//! The job itself: start, switch to another unit of it, finish.

use crate::act::{Act, ActName, Corner, Doubt, Slots};
use crate::bench::desk::Desk;
use crate::bench::{Ack, Part, Question, Refusal, doubt, ends, pending, settings};
use crate::event::{Event, Pending};
use crate::rulebase::{Procedure, ReadBack};

/// No job is open: says how one begins.
pub fn none_open(desk: &mut Desk<'_>) {
    let procedures = procedures(desk);
    let options = procedures
        .iter()
        .map(|procedure| {
            let unit = desk.rules.unit(&procedure.unit);
            let unit = unit.as_ref().map_or(procedure.unit.as_str(), |card| card.name());
            format!("{}, {unit}", procedure.name())
        })
        .collect();
    let first = procedures.first().is_none_or(|first| has_corner(desk, Some(&first.unit)));
    let missing = if first { "job" } else { "job at no corner" };
    desk.say(Part::Question(Question::Start { missing: missing.to_owned(), options }));
}

/// What begins the first job that the pack has, as it is said; none where it has no job.
pub fn beginning(desk: &Desk<'_>) -> Option<String> {
    let procedure = procedures(desk).into_iter().next()?;
    let card = desk.rules.unit(&procedure.unit)?;
    let corner = corners(desk, Some(&card.id)).into_iter().next().filter(|_| card.has_corner());
    let said = format!("start {}, {}", procedure.name(), card.name());
    Some(corner.map_or_else(|| said.clone(), |corner| format!("{said}, {corner}")))
}

/// The pack's procedures.
fn procedures(desk: &Desk<'_>) -> Vec<std::sync::Arc<Procedure>> {
    desk.rules.procedures.values().cloned().collect()
}

/// Begin a job, or another unit of the open one.
pub fn start(desk: &mut Desk<'_>, act: &Act) {
    let unit = act.slots.unit.clone().filter(|unit| desk.rules.unit(unit).is_some());
    begin(desk, act.slots.procedure.clone(), unit, act.slots.corner);
}

/// Begins with what is known, or asks for the next thing that is missing.
fn begin(desk: &mut Desk<'_>, procedure: Option<String>, unit: Option<String>, corner: Option<Corner>) {
    let procedure = procedure.or_else(|| only_procedure(desk, unit.as_deref()));
    let unit = unit.or_else(|| only_unit(desk, procedure.as_deref()));
    let corner = corner.map(|corner| whole_corner(desk, unit.as_deref(), corner));
    let at = if has_corner(desk, unit.as_deref()) { corner.map(Some) } else { Some(None) };
    let (Some(named), Some(card), Some(at)) = (&procedure, &unit, at) else {
        let question = missing(desk, procedure.clone(), unit.clone());
        if !desk.state.progress.open {
            let number = desk.past.next_number.max(1);
            desk.emit(Event::JobOpened { number });
        }
        desk.open(Pending::Start { procedure, unit, corner });
        return desk.say(Part::Question(question));
    };
    if desk.rules.procedure(named, card).is_none() {
        let name = desk.rules.unit(card).map_or_else(|| card.clone(), |card| card.name().to_owned());
        return desk.say(Part::Unknown { what: format!("a {named} for the {name}") });
    }
    open(desk, named, card, at);
}

/// Whether a unit sits at a corner: one that is not known yet may.
fn has_corner(desk: &Desk<'_>, unit: Option<&str>) -> bool {
    unit.and_then(|unit| desk.rules.unit(unit)).is_none_or(|card| card.has_corner())
}

/// Opens a place for the unit: its corner, or the unit itself where it sits at none.
fn open(desk: &mut Desk<'_>, procedure: &str, unit: &str, corner: Option<Corner>) {
    let name = desk.rules.unit(unit).map_or_else(|| unit.to_owned(), |card| card.name().to_owned());
    let place = corner.map_or_else(|| unit.to_owned(), |corner| corner.as_str().replace(' ', "-"));
    if desk.state.progress.places.contains_key(&place) {
        let what = corner.map_or(name.as_str(), |corner| corner.as_str());
        let why = format!("the {what} is on the bench already");
        return desk.say(Part::Refused(Refusal::NotNow { why }));
    }
    let number =
        if desk.state.progress.open { desk.state.progress.number } else { desk.past.next_number.max(1) };
    if !desk.state.progress.open {
        desk.emit(Event::JobOpened { number });
    }
    desk.emit(Event::PlaceOpened { place, unit: unit.to_owned(), procedure: procedure.to_owned(), corner });
    let called =
        desk.rules.procedure(procedure, unit).map_or_else(String::new, |found| found.name().to_owned());
    let corner = corner.map(|corner| corner.as_str().to_owned());
    desk.say(Part::Ack(Ack::Started { number, unit: name, corner, procedure: called }));
    super::begun::keep(desk);
    desk.show_step = true;
}

fn only_procedure(desk: &Desk<'_>, unit: Option<&str>) -> Option<String> {
    let unit = unit?;
    let mut all = procedures(desk).into_iter().filter(|procedure| procedure.unit == unit);
    let first = all.next()?;
    all.next().is_none().then(|| first.id.clone())
}

fn only_unit(desk: &Desk<'_>, procedure: Option<&str>) -> Option<String> {
    let procedure = procedure?;
    let mut all = procedures(desk).into_iter().filter(|found| found.id == procedure);
    let first = all.next()?;
    all.next().is_none().then(|| first.unit.clone())
}

/// A bare side of a unit whose axle the card knows is a corner.
fn whole_corner(desk: &Desk<'_>, unit: Option<&str>, corner: Corner) -> Corner {
    let card = unit.and_then(|unit| desk.rules.unit(unit));
    match (card.as_ref().and_then(|card| card.axle.as_deref()), corner) {
        (Some("front"), Corner::Left) => Corner::FrontLeft,
        (Some("front"), Corner::Right) => Corner::FrontRight,
        (Some("rear"), Corner::Left) => Corner::RearLeft,
        (Some("rear"), Corner::Right) => Corner::RearRight,
        _ => corner,
    }
}

/// The corners that a unit may sit at: by its side alone where the card knows its axle.
fn corners(desk: &Desk<'_>, unit: Option<&str>) -> Vec<String> {
    let card = unit.and_then(|unit| desk.rules.unit(unit));
    let axle = card.as_ref().and_then(|card| card.axle.as_deref()).unwrap_or_default();
    let fits = |corner: &Corner| {
        let side = matches!(corner, Corner::Left | Corner::Right);
        !side && corner.as_str().starts_with(axle)
    };
    Corner::ALL.into_iter().filter(fits).map(|corner| corner.as_str().to_owned()).collect()
}

/// The question for what is missing.
pub fn missing(desk: &Desk<'_>, procedure: Option<String>, unit: Option<String>) -> Question {
    let procedures = procedures(desk);
    let fits = |of: &str| unit.as_deref().is_none_or(|unit| unit == of);
    let (missing, mut options): (&str, Vec<String>) = if unit.is_none() {
        let units = procedures.iter().filter(|found| procedure.as_ref().is_none_or(|id| *id == found.id));
        ("unit", units.filter_map(|found| Some(desk.rules.unit(&found.unit)?.name().to_owned())).collect())
    } else if procedure.is_none() {
        let fitting = procedures.iter().filter(|found| fits(&found.unit));
        ("procedure", fitting.map(|found| found.name().to_owned()).collect())
    } else {
        ("corner", corners(desk, unit.as_deref()))
    };
    options.dedup();
    Question::Start { missing: missing.to_owned(), options }
}

/// More was said while something was missing.
pub fn more_said(
    desk: &mut Desk<'_>,
    act: &Act,
    procedure: Option<String>,
    unit: Option<String>,
    corner: Option<Corner>,
) -> bool {
    let said_unit = act.slots.unit.clone().filter(|unit| desk.rules.unit(unit).is_some());
    match act.act {
        ActName::Start | ActName::Switch => {
            let procedure = act.slots.procedure.clone().or(procedure);
            begin(desk, procedure, said_unit.or(unit), act.slots.corner.or(corner));
        }
        ActName::Note => {
            let text = act.slots.text.clone().unwrap_or_default();
            let said = named(desk, &text);
            begin(desk, said.0.or(procedure), said.1.or(unit), said.2.or(corner));
        }
        ActName::Deny => pending::dropped(desk),
        _ => return false,
    }
    true
}

/// The procedure, unit and corner that words name.
fn named(desk: &Desk<'_>, text: &str) -> (Option<String>, Option<String>, Option<Corner>) {
    let text = text.to_lowercase();
    let has = |called: &[String]| called.iter().any(|name| text.contains(&name.to_lowercase()));
    let procedures = procedures(desk);
    let procedure = procedures.iter().find(|found| has(&found.called)).map(|found| found.id.clone());
    let mut cards = procedures.iter().filter_map(|found| desk.rules.unit(&found.unit));
    let unit = cards.find(|card| has(&card.called)).map(|card| card.id.clone());
    let corner = Corner::ALL.into_iter().find(|corner| text.contains(corner.as_str()));
    (procedure, unit, corner)
}

/// Go to another unit of the same job.
pub fn switch(desk: &mut Desk<'_>, act: &Act) {
    if !desk.state.progress.open {
        return none_open(desk);
    }
    let fitting: Vec<String> = desk
        .state
        .progress
        .places
        .iter()
        .filter(|(id, place)| {
            let corner = act.slots.corner.is_none_or(|corner| side_fits(corner, place.corner));
            let unit = act.slots.unit.as_ref().is_none_or(|unit| *unit == place.unit);
            corner && unit && desk.state.progress.current.as_ref() != Some(*id)
        })
        .map(|(id, _)| id.clone())
        .collect();
    match fitting.as_slice() {
        [] => not_on_the_bench(desk, act),
        [place] => {
            desk.open(Pending::Switch { place: place.clone() });
            desk.say(Part::Question(Question::Serial { place: place_name(desk, place) }));
        }
        several => {
            let options = several.iter().map(|place| place_name(desk, place)).collect();
            let doubt = crate::act::Doubt::Side;
            desk.say(Part::Question(Question::Which { options, doubt, wanted: String::new() }));
        }
    }
}

/// The job has no such unit: a corner said wrong begins nothing by itself.
fn not_on_the_bench(desk: &mut Desk<'_>, act: &Act) {
    let unit = act.slots.unit.clone().or_else(|| same_unit(desk));
    let corner = act.slots.corner.map(|corner| whole_corner(desk, unit.as_deref(), corner));
    let card = unit.as_deref().and_then(|unit| desk.rules.unit(unit));
    let (Some(corner), Some(card)) = (corner, card) else { return begin(desk, None, unit, corner) };
    let place = corner.as_str().replace(' ', "-");
    if desk.state.progress.places.contains_key(&place) {
        return begin(desk, None, unit, Some(corner));
    }
    let text = Some(format!("a new unit, {} at the {}", card.name(), corner.as_str()));
    let slots = Slots { unit, corner: Some(corner), text, ..Slots::default() };
    let acts = vec![Act { act: ActName::Start, slots }];
    let question = doubt::question(desk, &acts, Doubt::Side);
    desk.open(Pending::Between { acts, doubt: Doubt::Side, then: Vec::new() });
    desk.say(Part::Question(question));
}

fn same_unit(desk: &Desk<'_>) -> Option<String> {
    desk.place().map(|place| place.unit.clone())
}

fn side_fits(said: Corner, corner: Option<Corner>) -> bool {
    corner.is_some_and(|corner| {
        corner == said
            || matches!(said, Corner::Left | Corner::Right) && corner.as_str().ends_with(said.as_str())
    })
}

/// A place as it is spoken: its corner and its unit.
pub fn place_name(desk: &Desk<'_>, place: &str) -> String {
    let found = desk.state.progress.places.get(place);
    let unit = found.and_then(|found| desk.rules.unit(&found.unit)).map(|card| card.name().to_owned());
    match found.and_then(|found| found.corner) {
        Some(corner) => format!("{}, {}", corner.as_str(), unit.unwrap_or_default()),
        None => unit.unwrap_or_else(|| place.replace('-', " ")),
    }
}

/// The last three digits of the serial were said: they have to be the ones recorded.
pub fn serial_said(desk: &mut Desk<'_>, act: &Act, place: &str) -> bool {
    let said = match act.act {
        ActName::Reading => act.slots.value.map(|value| format!("{value:03}")),
        ActName::Note => act.slots.text.clone(),
        ActName::Deny => {
            pending::dropped(desk);
            return true;
        }
        _ => return false,
    };
    let said: String = digits(&said.unwrap_or_default());
    let key = (place.to_owned(), "serial".to_owned());
    let serial = digits(desk.state.record.texts.get(&key).map_or("", String::as_str));
    if !serial.is_empty() && (said.len() < 3 || !serial.ends_with(&said)) {
        let why = "that is not the serial of that unit".to_owned();
        desk.say(Part::Refused(Refusal::NotNow { why }));
        return true;
    }
    desk.emit(Event::Switched { place: place.to_owned() });
    let serial = desk.state.record.texts.get(&key).map(|serial| format!(", serial {serial}"));
    let name = format!("{}{}", place_name(desk, place), serial.unwrap_or_default());
    desk.say(Part::Ack(Ack::Switched(name)));
    desk.show_step = true;
    true
}

/// The digits of a text, number words among them.
fn digits(text: &str) -> String {
    let tokens: Vec<&str> =
        text.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty()).collect();
    let mut out = String::new();
    for token in tokens {
        let number = crate::quantity::figures::read_all(&[token]);
        match number.map(|found| found.value) {
            Some(value) if token.chars().all(char::is_alphabetic) => out.push_str(&format!("{value}")),
            _ => out.extend(token.chars().filter(char::is_ascii_digit)),
        }
    }
    out
}

/// Close the job: says what is open, and asks.
pub fn finish(desk: &mut Desk<'_>) {
    if !desk.state.progress.open {
        return none_open(desk);
    }
    let items = ends::open(desk);
    if !items.is_empty() {
        desk.say(Part::OpenEnds { items });
    }
    desk.open(Pending::Finish);
    desk.say(Part::Question(Question::Finish { number: desk.state.progress.number }));
}

/// Every step of the unit in hand is worked: another unit of the job, or the end of it.
pub fn all_worked(desk: &mut Desk<'_>) {
    let list = settings::list(desk, ReadBack::Left, false);
    let said = desk.place().is_some_and(|place| place.said_back.contains("left"));
    if !said && list.rows.iter().any(|row| row.left.is_some()) {
        desk.say(Part::Settings(list));
    }
    finish(desk);
}

/// The second utterance has come: the job is closed.
pub fn close(desk: &mut Desk<'_>) {
    let number = desk.state.progress.number;
    let open = ends::open(desk);
    let afterwards = desk.procedure().map(|procedure| procedure.afterwards.clone()).unwrap_or_default();
    desk.emit(Event::JobClosed { open });
    desk.show_step = false;
    desk.say(Part::Ack(Ack::Closed { number }));
    for sentence in afterwards {
        desk.say(Part::Sentence(sentence));
    }
}

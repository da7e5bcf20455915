//! Questions about a part: its tool, torque, way, threadlocker, mark, sizes, source, and what to do when it is stuck.

use crate::act::{Act, Which};
use crate::bench::desk::Desk;
use crate::bench::flow::Judge;
use crate::bench::{Fact, Part as Said, present};
use crate::event::Event;
use crate::quantity::Quantity;
use crate::rulebase::{Adjuster, AdjusterKind, Deed, Part, Step, UnitCard};
use crate::workings::hex;
use std::sync::Arc;

/// The part or adjuster a question is about: the one named, else the one in hand.
pub fn about(desk: &Desk<'_>, act: &Act) -> Option<String> {
    act.slots.about.clone().or_else(|| crate::bench::entries::notes::current(desk)?.about)
}

/// The card and the part a question is about; says so where there is none.
fn part_of(desk: &mut Desk<'_>, act: &Act) -> Option<(Arc<UnitCard>, Part)> {
    let Some(card) = desk.card() else {
        crate::bench::entries::job::none_open(desk);
        return None;
    };
    let id = about(desk, act);
    let part = id.as_deref().and_then(|id| card.part(id)).cloned();
    if part.is_none() && id.as_deref().and_then(|id| card.adjuster(id)).is_none() {
        desk.say(Said::Unknown { what: "which part is meant".to_owned() });
        return None;
    }
    let name = id.as_deref().map(|id| card.name_of(id).to_owned()).unwrap_or_default();
    let part = part.unwrap_or_else(|| nothing(id.unwrap_or_default(), name));
    Some((card, part))
}

/// An adjuster has no entry as a part: it is asked about as one without fastener's facts.
fn nothing(id: String, name: String) -> Part {
    Part::bare(id, name)
}

/// Which tool or size?
pub fn tool(desk: &mut Desk<'_>, act: &Act) {
    match act.slots.when {
        Some(Which::Next) => return tool_ahead(desk, 1),
        Some(Which::All) => return tool_ahead(desk, usize::MAX),
        _ => {}
    }
    let Some((card, part)) = part_of(desk, act) else { return };
    let current = crate::bench::entries::notes::current(desk);
    let step = current.filter(|step| step.about.as_deref() == Some(part.id.as_str()));
    let fact = tool_fact(desk, &card, &part, step.as_ref());
    desk.say(fact.map_or_else(|| unknown("a tool for", &part), Said::Fact));
}

fn tool_fact(desk: &Desk<'_>, card: &UnitCard, part: &Part, step: Option<&Step>) -> Option<Fact> {
    if let (Some(step), Some(procedure)) = (step, desk.procedure()) {
        let sheet = present::sheet(desk, card, &procedure, step);
        if sheet.tool.is_some() || sheet.size.is_some() {
            return Some(Fact::Tool { name: sheet.name, tool: sheet.tool, size: sheet.size, hold: sheet.hold });
        }
    }
    let (tool, size) = present::tool_of(part);
    let any = part.handling.values().find_map(|handling| handling.tool.clone());
    let tool = tool.or(any.filter(|_| size.is_none()));
    (tool.is_some() || size.is_some()).then(|| Fact::Tool {
        name: part.name().to_owned(),
        tool,
        size,
        hold: part.hold.clone(),
    })
}

/// The tools of the next steps that need one, each once.
fn tool_ahead(desk: &mut Desk<'_>, most: usize) {
    let (Some(card), Some(procedure), Some(place)) = (desk.card(), desk.procedure(), desk.place()) else {
        return crate::bench::entries::job::none_open(desk);
    };
    let judge = Judge { rules: desk.rules, state: &desk.state, now: desk.now };
    let cursor = desk.cursor();
    let mut facts: Vec<Fact> = Vec::new();
    for step in judge.ahead(&procedure, place).into_iter().filter(|step| Some(&step.id) != cursor.as_ref()) {
        let part = step.about.as_deref().and_then(|id| card.part(id));
        let fact = part.and_then(|part| tool_fact(desk, &card, part, Some(step)));
        facts.extend(fact.filter(|fact| !facts.contains(fact)));
        if facts.len() >= most {
            break;
        }
    }
    if facts.is_empty() {
        desk.say(Said::Unknown { what: "a tool for the steps ahead".to_owned() });
    }
    for fact in facts {
        desk.say(Said::Fact(fact));
    }
}

/// Will this other tool do?
pub fn swap(desk: &mut Desk<'_>, act: &Act) {
    let Some((_, part)) = part_of(desk, act) else { return };
    let Some(tool) = act.slots.tool.clone() else { return desk.say(unknown("a tool to try on", &part)) };
    let size = size_in(&tool);
    let key = part.key.is_some();
    let fact = size.zip(part.key.or(part.across)).and_then(|(size, hexagon)| {
        let verdict = hex::stand_in(size, hexagon, key)?;
        Some(Fact::Swap {
            tool: tool.clone(),
            part: part.name().to_owned(),
            verdict: verdict.word().to_owned(),
            why: verdict.why(),
        })
    });
    desk.say(fact.map_or_else(
        || Said::Unknown { what: format!("whether {tool} will do on the {}", part.name()) },
        Said::Fact,
    ));
}

/// The size written in a tool's name.
fn size_in(tool: &str) -> Option<Quantity> {
    let words: Vec<&str> = tool.split_whitespace().collect();
    words.windows(2).find_map(|pair| Quantity::parse(&pair.join(" ")).ok()).or_else(|| Quantity::parse(tool).ok())
}

/// How tight?
pub fn torque(desk: &mut Desk<'_>, act: &Act) {
    let Some((_, part)) = part_of(desk, act) else { return };
    if part.torque.is_none() && part.nip.is_none() {
        return desk.say(unknown("a torque for", &part));
    }
    desk.say(Said::Fact(Fact::Torque {
        name: part.name().to_owned(),
        limit: part.torque,
        nip: part.nip.clone(),
        critical: part.critical.clone(),
    }));
}

/// Which way?
pub fn turn(desk: &mut Desk<'_>, act: &Act) {
    let Some((card, part)) = part_of(desk, act) else { return };
    let step = crate::bench::entries::notes::current(desk);
    if let Some(adjuster) = card.adjuster(&part.id) {
        return turn_adjuster(desk, &card, adjuster);
    }
    if part.thread.is_none() && part.across.is_none() && part.key.is_none() && part.tool.is_none() {
        return desk.say(unknown("a way to turn", &part));
    }
    let tightening = step.as_ref().is_some_and(|step| {
        step.about.as_deref() == Some(part.id.as_str()) && matches!(step.deed, Deed::Tighten | Deed::Refit)
    });
    let (doing, way) =
        if tightening { ("to tighten", part.opens.opposite()) } else { ("to undo", part.opens) };
    let way = step.filter(|step| step.about.as_deref() == Some(part.id.as_str())).and_then(|step| step.way).unwrap_or(way);
    desk.say(Said::Fact(Fact::Turn {
        name: part.name().to_owned(),
        doing: doing.to_owned(),
        way,
        seen_from: present::seen_from(&card, &part.id),
    }));
}

fn turn_adjuster(desk: &mut Desk<'_>, card: &UnitCard, adjuster: &Adjuster) {
    let (doing, way) = match &adjuster.kind {
        AdjusterKind::Clicker { closes, .. } => ("to close", *closes),
        AdjusterKind::Ring { only: Some(only), .. } => ("one way only", *only),
        AdjusterKind::Ring { rises, .. } => ("to count up", *rises),
        AdjusterKind::Screw { adds, .. } => ("to add", *adds),
        AdjusterKind::Charge { .. } => {
            return desk.say(Said::Unknown { what: format!("a way to turn the {}", adjuster.name()) });
        }
    };
    desk.say(Said::Fact(Fact::Turn {
        name: adjuster.name().to_owned(),
        doing: doing.to_owned(),
        way,
        seen_from: present::seen_from(card, &adjuster.id),
    }));
}

/// Which threadlocker, how much, where?
pub fn locker(desk: &mut Desk<'_>, act: &Act) {
    let Some((_, part)) = part_of(desk, act) else { return };
    let locker = part.locker.as_ref();
    desk.say(Said::Fact(Fact::Locker {
        name: part.name().to_owned(),
        grade: locker.map(|locker| locker.grade.clone()),
        put: locker.map(|locker| locker.put.clone()),
        never: locker.and_then(|locker| locker.never.clone()),
        open: locker.map(|locker| locker.open),
    }));
}

/// What lines up with what?
pub fn mark(desk: &mut Desk<'_>, act: &Act) {
    let Some((_, part)) = part_of(desk, act) else { return };
    match &part.mark {
        Some(mark) => {
            let (name, lines_up) = (part.name().to_owned(), mark.lines_up.clone());
            desk.say(Said::Fact(Fact::Mark { name, lines_up }));
        }
        None => desk.say(unknown("a mark on", &part)),
    }
}

/// What to do when it will not move: the next rung of the ladder.
pub fn stuck(desk: &mut Desk<'_>, act: &Act) {
    let Some((_, part)) = part_of(desk, act) else { return };
    let given = desk.place().and_then(|place| place.stuck.get(&part.id)).copied().unwrap_or_default();
    let last = part.stuck.len() as u32;
    let rung = (given + 1).min(last);
    let Some(text) = rung.checked_sub(1).and_then(|index| part.stuck.get(index as usize)).cloned() else {
        return desk.say(unknown("what frees", &part));
    };
    desk.emit(Event::Stuck { about: part.id.clone(), rung });
    let name = part.name().to_owned();
    desk.say(Said::Fact(Fact::Stuck { name, rung: text, last: rung == last }));
}

/// Where does the value come from?
pub fn source(desk: &mut Desk<'_>, act: &Act) {
    let Some((card, part)) = part_of(desk, act) else { return };
    let own = part.source.clone().or_else(|| card.adjuster(&part.id).and_then(|found| found.source.clone()));
    match own.or_else(|| card.source.clone()) {
        Some(source) => desk.say(Said::Fact(Fact::Source { name: part.name().to_owned(), source })),
        None => desk.say(unknown("a source for", &part)),
    }
}

/// A part's size, thread, grade or limit.
pub fn part(desk: &mut Desk<'_>, act: &Act) {
    let Some((card, part)) = part_of(desk, act) else { return };
    let rows = rows(&card, &part);
    if rows.is_empty() {
        return desk.say(unknown("a size of", &part));
    }
    desk.say(Said::Fact(Fact::Sizes { name: part.name().to_owned(), rows }));
}

/// Name, spoken figure and shown figure of everything the card gives.
fn rows(card: &UnitCard, part: &Part) -> Vec<(String, String, String)> {
    let mut rows = Vec::new();
    let mut add = |name: &str, value: Option<Quantity>| {
        rows.extend(value.map(|value| (name.to_owned(), value.say(), value.show())));
    };
    add("across flats", part.across);
    add("key", part.key);
    add("bore", part.bore);
    for (name, size) in &part.sizes {
        add(name, Some(*size));
    }
    if let Some(spring) = part.springs.first() {
        add("rate", Some(spring.rate));
        add("free length", Some(spring.free));
        add("block length", spring.block);
        add("inside diameter", spring.bore);
    }
    rows.extend(part.thread.iter().map(|thread| ("thread".to_owned(), thread.text.clone(), thread.text.clone())));
    for (name, limit) in &part.limits {
        rows.push((name.clone(), limit.say(), limit.show()));
    }
    if let Some(adjuster) = card.adjuster(&part.id)
        && let AdjusterKind::Charge { limit, .. } = &adjuster.kind
    {
        rows.push(("charge".to_owned(), limit.say(), limit.show()));
    }
    rows
}

fn unknown(what: &str, part: &Part) -> Said {
    Said::Unknown { what: format!("{what} the {}", part.name()) }
}

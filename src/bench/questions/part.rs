//! Questions about a part: its tool, torque, way, threadlocker, mark, sizes, source, and what to do when it is stuck.

use crate::act::{Act, Which};
use crate::bench::desk::Desk;
use crate::bench::flow::Judge;
use crate::bench::{Fact, Part as Said, present};
use crate::event::Event;
use crate::quantity::Unit;
use crate::rulebase::{Adjuster, AdjusterKind, Deed, Part, Step, UnitCard};
use crate::workings::adjusters::Way;
use crate::workings::hex::{self, Drive, ToolSize};
use std::sync::Arc;

/// The part or adjuster a question is about: the one named, else the one in hand.
pub fn about(desk: &Desk<'_>, act: &Act) -> Option<String> {
    act.slots.about.clone().or_else(|| crate::bench::entries::notes::current(desk)?.about)
}

/// The card and the id a question is about; says so where there is none.
fn subject(desk: &mut Desk<'_>, act: &Act) -> Option<(Arc<UnitCard>, String)> {
    let Some(card) = desk.card() else {
        crate::bench::entries::job::none_open(desk);
        return None;
    };
    let id = about(desk, act).filter(|id| card.has(id));
    if id.is_none() {
        desk.say(Said::Unknown { what: "which part is meant".to_owned() });
    }
    Some((card, id?))
}

/// The same for a question that only a part answers.
fn part_of(desk: &mut Desk<'_>, act: &Act, what: &str) -> Option<(Arc<UnitCard>, Part)> {
    let (card, id) = subject(desk, act)?;
    let part = card.part(&id).cloned();
    if part.is_none() {
        desk.say(unknown(what, card.name_of(&id)));
    }
    Some((card, part?))
}

/// Which tool or size?
pub fn tool(desk: &mut Desk<'_>, act: &Act) {
    match act.slots.when {
        Some(Which::Next) => return tool_ahead(desk, 1),
        Some(Which::All) => return tool_ahead(desk, usize::MAX),
        _ => {}
    }
    if says(desk, "hold") {
        return hold(desk, act);
    }
    let Some((card, id)) = subject(desk, act) else { return };
    let current = crate::bench::entries::notes::current(desk);
    let step = current.filter(|step| step.about.as_deref() == Some(id.as_str()));
    if !names(desk, &card, &id) && step.as_ref().is_some_and(|step| needs_none(desk, &card, step)) {
        return desk.say(Said::Sentence("The card names no tool for this step.".to_owned()));
    }
    let fact = tool_fact(desk, &card, &id, step.as_ref());
    desk.say(fact.map_or_else(|| unknown("a tool for", card.name_of(&id)), Said::Fact));
}

/// Whether the words of the question hold that word.
fn says(desk: &Desk<'_>, word: &str) -> bool {
    let heard = desk.utterance.heard.as_deref().unwrap_or_default().to_lowercase();
    heard.split(|c: char| !c.is_alphanumeric()).any(|own| own == word)
}

/// Whether the question itself names the part, and did not only mean the one in hand.
fn names(desk: &Desk<'_>, card: &UnitCard, id: &str) -> bool {
    let heard = desk.utterance.heard.as_deref().unwrap_or_default();
    super::work::names(card, heard).as_deref() == Some(id)
}

/// How the other side is held: of the step in hand, of its part, or of the part that is named and has such a thing.
fn hold(desk: &mut Desk<'_>, act: &Act) {
    let Some(card) = desk.card() else { return crate::bench::entries::job::none_open(desk) };
    let of = |id: Option<&str>| card.part(id?)?.hold.clone();
    let step = crate::bench::entries::notes::current(desk);
    let in_hand = step.and_then(|step| step.hold.clone().or_else(|| of(step.about.as_deref())));
    match in_hand.or_else(|| of(act.slots.about.as_deref())) {
        Some(hold) => desk.say(Said::Sentence(format!("Hold {hold}."))),
        None => desk.say(Said::Unknown { what: "anything of how that is held".to_owned() }),
    }
}

/// Whether a step neither turns its part nor takes a tool of its own: the part's spanner has no business there.
fn needs_none(desk: &Desk<'_>, card: &UnitCard, step: &Step) -> bool {
    let Some(procedure) = desk.procedure() else { return false };
    let sheet = present::sheet(desk, card, &procedure, step);
    let part = step.about.as_deref().is_some_and(|id| card.part(id).is_some());
    part && !present::turns(step.deed) && sheet.tool.is_none() && sheet.size.is_none()
}

fn tool_fact(desk: &Desk<'_>, card: &UnitCard, id: &str, step: Option<&Step>) -> Option<Fact> {
    if let (Some(step), Some(procedure)) = (step, desk.procedure()) {
        let sheet = present::sheet(desk, card, &procedure, step);
        if sheet.tool.is_some() || sheet.size.is_some() {
            return Some(Fact::Tool {
                name: sheet.name,
                tool: sheet.tool,
                size: sheet.size,
                hold: sheet.hold,
            });
        }
    }
    let part = card.part(id);
    let adjuster = card.adjuster(id);
    let (tool, size) = part.map(present::tool_of).unwrap_or_default();
    let handling = part.map(|part| &part.handling).or(adjuster.map(|adjuster| &adjuster.handling))?;
    let any = handling.values().find_map(|handling| handling.tool.clone());
    let by_hand = adjuster.and_then(|adjuster| adjuster.by_hand.clone());
    let tool = tool
        .or(adjuster.and_then(|adjuster| adjuster.tool.clone()))
        .or(any.filter(|_| size.is_none()))
        .or(by_hand);
    let hold = part.and_then(|part| part.hold.clone());
    (tool.is_some() || size.is_some()).then(|| Fact::Tool {
        name: card.name_of(id).to_owned(),
        tool,
        size,
        hold,
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
        let id = step.about.as_deref().filter(|id| card.has(id));
        let fact = id.and_then(|id| tool_fact(desk, &card, id, Some(step)));
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
    let Some((_, part)) = part_of(desk, act, "a size of") else { return };
    let Some(tool) = act.slots.tool.clone() else {
        return desk.say(unknown("a tool to try on", part.name()));
    };
    let (hexagon, drive) = match (part.key, part.across) {
        (Some(key), _) => (Some(key), Drive::Internal),
        (None, across) => (across, Drive::External),
    };
    let hexagon = hexagon.and_then(|size| size.in_unit(Unit::Millimetre).ok()).map(ToolSize::metric);
    let found =
        ToolSize::parse(&tool).zip(hexagon).and_then(|(size, hexagon)| hex::stand_in(size, hexagon, drive));
    desk.say(match found {
        Some(found) => Said::Fact(Fact::Swap {
            tool,
            part: part.name().to_owned(),
            verdict: found.verdict.word().to_owned(),
            why: found.why,
        }),
        None => Said::Unknown { what: format!("whether {tool} will do on the {}", part.name()) },
    });
}

/// The unit of torque that the question wants its answer in.
fn torque_unit(desk: &Desk<'_>, act: &Act) -> Option<Unit> {
    let torque = |unit: &Unit| unit.same_dimension(Unit::NewtonMetre);
    let into = act.slots.into.as_deref().and_then(Unit::parse).filter(torque);
    into.or_else(|| super::work::units(desk.utterance.heard.as_deref()?).into_iter().find(torque))
}

/// How a part is handled by the step in hand, where that step does not turn it: how hard it is struck or pressed is a
/// matter of words, and no torque; false where there is nothing to say.
fn handled(desk: &mut Desk<'_>, act: &Act) -> bool {
    let (Some(card), Some(step)) = (desk.card(), crate::bench::entries::notes::current(desk)) else {
        return false;
    };
    let Some(id) = step.about.as_deref().filter(|_| !present::turns(step.deed)) else { return false };
    if names(desk, &card, id) || act.slots.about.as_deref().is_some_and(|about| about != id) {
        return false;
    }
    let Some(how) = card.handling(id, step.deed).and_then(|handling| handling.how.clone()) else {
        return false;
    };
    desk.say(Said::Sentence(format!("{} {how}. The card gives no figure for it.", verb(step.deed))));
    true
}

/// What a step does, as the head of a sentence: "Strike:".
fn verb(deed: Deed) -> String {
    let mut verb = deed.as_str().to_owned();
    if let Some(first) = verb.get_mut(0..1) {
        first.make_ascii_uppercase();
    }
    format!("{verb}:")
}

/// How tight?
pub fn torque(desk: &mut Desk<'_>, act: &Act) {
    if torque_unit(desk, act).is_none() && handled(desk, act) {
        return;
    }
    let Some((_, part)) = part_of(desk, act, "a torque for") else { return };
    if part.torque.is_none() && part.nip.is_none() {
        return desk.say(unknown("a torque for", part.name()));
    }
    desk.say(Said::Fact(Fact::Torque {
        name: part.name().to_owned(),
        limit: part
            .torque
            .map(|limit| torque_unit(desk, act).and_then(|unit| limit.to(unit).ok()).unwrap_or(limit)),
        nip: part.nip.clone(),
        critical: part.critical.clone(),
    }));
}

/// Which way?
pub fn turn(desk: &mut Desk<'_>, act: &Act) {
    let Some((card, id)) = subject(desk, act) else { return };
    if let Some(adjuster) = card.adjuster(&id) {
        return turn_adjuster(desk, &card, adjuster);
    }
    if goes(desk, &card, &id) {
        return;
    }
    let Some(part) = card.part(&id).filter(|part| present::is_turned(part)) else {
        return desk.say(unknown("a way to turn", card.name_of(&id)));
    };
    let current = crate::bench::entries::notes::current(desk);
    let step = current.filter(|step| step.about.as_deref() == Some(id.as_str()));
    let tightening = step.as_ref().is_some_and(|step| matches!(step.deed, Deed::Tighten | Deed::Refit));
    let (doing, way) =
        if tightening { ("to tighten", part.opens.opposite()) } else { ("to undo", part.opens) };
    desk.say(Said::Fact(Fact::Turn {
        name: part.name().to_owned(),
        doing: doing.to_owned(),
        way: step.and_then(|step| step.way).unwrap_or(way),
        seen_from: card.seen_from(&id).map(str::to_owned),
    }));
}

/// Which way round a part goes; false when its card does not say.
fn goes(desk: &mut Desk<'_>, card: &UnitCard, id: &str) -> bool {
    let Some((name, goes)) = card.part(id).and_then(|part| Some((part.name(), part.goes.as_ref()?))) else {
        return false;
    };
    desk.say(Said::Sentence(format!("The {name} goes {goes}.")));
    true
}

fn turn_adjuster(desk: &mut Desk<'_>, card: &UnitCard, adjuster: &Adjuster) {
    let both = |way: Way, one: &str, other: &str| format!("to {one}, {} to {other}", way.opposite().words());
    let (doing, way) = match &adjuster.kind {
        AdjusterKind::Clicker { closes, .. } => (both(*closes, "close", "open"), *closes),
        AdjusterKind::Ring { only: Some(only), .. } => ("one way only".to_owned(), *only),
        AdjusterKind::Ring { rises, .. } => (both(*rises, "count up", "count down"), *rises),
        AdjusterKind::Screw { adds, .. } => (both(*adds, "add", "take off"), *adds),
        AdjusterKind::Charge { .. } => {
            return desk.say(Said::Unknown { what: format!("a way to turn the {}", adjuster.name()) });
        }
    };
    desk.say(Said::Fact(Fact::Turn {
        name: adjuster.name().to_owned(),
        doing,
        way,
        seen_from: card.seen_from(&adjuster.id).map(str::to_owned),
    }));
}

/// Which threadlocker, how much, where?
pub fn locker(desk: &mut Desk<'_>, act: &Act) {
    let Some((_, part)) = part_of(desk, act, "threadlocker for") else { return };
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
    let Some((card, id)) = subject(desk, act) else { return };
    let name = card.name_of(&id).to_owned();
    match card.mark(&id) {
        Some(mark) => desk.say(Said::Fact(Fact::Mark { name, lines_up: mark.lines_up.clone() })),
        None => desk.say(unknown("a mark on", &name)),
    }
}

/// What to do when it will not move: the next rung of the ladder.
pub fn stuck(desk: &mut Desk<'_>, act: &Act) {
    if let Some((_, id)) = subject(desk, act) {
        next_rung(desk, &id);
    }
}

/// Says the next rung of a part's ladder.
pub fn next_rung(desk: &mut Desk<'_>, id: &str) {
    let Some(card) = desk.card() else { return };
    let id = id.to_owned();
    let name = card.name_of(&id).to_owned();
    let ladder = card.stuck(&id);
    let given = desk.place().and_then(|place| place.stuck.get(&id)).copied().unwrap_or_default();
    let last = ladder.len() as u32;
    let rung = (given + 1).min(last);
    let Some(text) = rung.checked_sub(1).and_then(|index| ladder.get(index as usize)).cloned() else {
        return desk.say(unknown("what frees", &name));
    };
    desk.emit(Event::Stuck { about: id, rung });
    desk.say(Said::Fact(Fact::Stuck { name, rung: text, last: rung == last }));
}

/// Where does the value come from?
pub fn source(desk: &mut Desk<'_>, act: &Act) {
    let named = desk.card().zip(act.slots.about.as_deref()).is_some_and(|(card, id)| names(desk, &card, id));
    if !named && super::work::rests_on(desk) {
        return;
    }
    let Some((card, id)) = subject(desk, act) else { return };
    let name = card.name_of(&id).to_owned();
    let part = card.part(&id).and_then(|part| part.source.clone());
    let own = part.or_else(|| card.adjuster(&id).and_then(|adjuster| adjuster.source.clone()));
    match own.or_else(|| card.source.clone()) {
        Some(source) => desk.say(Said::Fact(Fact::Source { name, source })),
        None => desk.say(unknown("a source for", &name)),
    }
}

/// A part's size, thread, grade or limit.
pub fn part(desk: &mut Desk<'_>, act: &Act) {
    let Some((card, id)) = subject(desk, act) else { return };
    if says(desk, "round") && goes(desk, &card, &id) {
        return;
    }
    let mut rows = card.part(&id).map(rows).unwrap_or_default();
    if let Some(AdjusterKind::Charge { limit, .. }) = card.adjuster(&id).map(|adjuster| &adjuster.kind) {
        rows.push(("charge".to_owned(), limit.say(), limit.show()));
    }
    let name = card.name_of(&id).to_owned();
    if rows.is_empty() {
        return desk.say(unknown("a size of", &name));
    }
    desk.say(Said::Fact(Fact::Sizes { name, rows }));
}

/// Name, spoken figure and shown figure of everything the card gives.
fn rows(part: &Part) -> Vec<(String, String, String)> {
    let spring = part.springs.first();
    let sizes = part.sizes.iter().map(|(name, size)| (name.as_str(), Some(*size)));
    let figures = [("across flats", part.across), ("key", part.key), ("bore", part.bore)]
        .into_iter()
        .chain(sizes)
        .chain([
            ("rate", spring.map(|spring| spring.rate)),
            ("free length", spring.map(|spring| spring.free)),
            ("block length", spring.and_then(|spring| spring.block)),
            ("inside diameter", spring.and_then(|spring| spring.bore)),
        ]);
    let mut rows: Vec<(String, String, String)> = figures
        .filter_map(|(name, value)| value.map(|value| (name.to_owned(), value.say(), value.show())))
        .collect();
    rows.extend(
        part.thread.iter().map(|thread| ("thread".to_owned(), thread.text.clone(), thread.text.clone())),
    );
    rows.extend(part.limits.iter().map(|(name, limit)| (name.clone(), limit.say(), limit.show())));
    rows
}

fn unknown(what: &str, name: &str) -> Said {
    Said::Unknown { what: format!("{what} the {name}") }
}

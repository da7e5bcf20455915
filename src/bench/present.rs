//! The step in hand as a card: what to do, and what the unit's card says of it.

use super::desk::Desk;
use super::state::Fitting;
use super::{Asks, Part as Said, StepCard, restore, settings};
use crate::act::WaitingFor;
use crate::quantity::{Quantity, figures};
use crate::rulebase::{AdjusterKind, Deed, Part, Procedure, ReadBack, Role, Step, UnitCard};

/// Says the step in hand, with the settings or the way back that it is about.
pub fn step(desk: &mut Desk<'_>, step: &Step) {
    let (Some(card), Some(procedure)) = (desk.card(), desk.procedure()) else { return };
    let sheet = sheet(desk, &card, &procedure, step);
    desk.say(Said::Step(Box::new(sheet)));
    if let Some(which) = step.reads_back {
        let list = settings::list(desk, which, true);
        desk.say(Said::Settings(list));
    }
    if matches!(step.deed, Deed::Set | Deed::Charge)
        && let Some(about) = &step.about
    {
        restore::say(desk, about);
    }
}

/// The card of a step.
pub fn sheet(desk: &Desk<'_>, card: &UnitCard, procedure: &Procedure, step: &Step) -> StepCard {
    let mut sheet = StepCard {
        id: step.id.clone(),
        number: number(procedure, step),
        text: counts_in(desk, card, step).unwrap_or_else(|| sentence(card, step)),
        name: name(card, step),
        brief: step.brief.clone(),
        amount: step.amount.clone(),
        note: step.note.clone(),
        tool: step.tool.clone(),
        hold: step.hold.clone(),
        way: step.way,
        asks: Some(asks(card, step)),
        ..StepCard::default()
    };
    if let Some(id) = &step.about {
        handled(&mut sheet, card, id, step);
    }
    if let Some(part) = step.about.as_deref().and_then(|id| card.part(id)) {
        of_part(&mut sheet, part, step.deed, comes_off_by_hand(desk, &part.id, step.deed));
    }
    sheet.amount = sheet.amount.or_else(|| filled(card, procedure, step));
    sheet.amount = sheet.amount.filter(|amount| !said_already(step, amount));
    // The way back that is said with a setting says it itself.
    if has_direction(card, step) && step.deed != Deed::Set {
        sheet.seen_from = seen_from_once(desk, card, step);
    }
    sheet
}

/// The volume that the card gives for what is filled in, where one step alone fills it in.
fn filled(card: &UnitCard, procedure: &Procedure, step: &Step) -> Option<String> {
    let fills = |step: &Step| step.deed == Deed::Fill;
    let same = |other: &&Step| fills(other) && other.about == step.about;
    let volume = card.part(step.about.as_deref()?)?.sizes.get("volume")?;
    let alone = fills(step) && procedure.all_steps().into_iter().filter(same).count() == 1;
    alone.then(|| volume.show())
}

/// Whether the step's own sentence says it.
fn said_already(step: &Step, words: &str) -> bool {
    step.text.as_ref().is_some_and(|text| text.to_lowercase().contains(&words.to_lowercase()))
}

/// How the card handles a part or an adjuster for this deed: a tool, a way, and how where the step does not say it.
fn handled(sheet: &mut StepCard, card: &UnitCard, id: &str, step: &Step) {
    let Some(handling) = card.handling(id, step.deed) else { return };
    sheet.tool = sheet.tool.take().or_else(|| handling.tool.clone());
    sheet.way = sheet.way.or(handling.way);
    if step.text.is_none() {
        sheet.amount = sheet.amount.take().or_else(|| handling.how.clone());
    }
}

/// What the part's entry adds for a deed that turns, locks or marks it.
fn of_part(sheet: &mut StepCard, part: &Part, deed: Deed, by_hand: bool) {
    if turns(deed) && is_turned(part) {
        let way = if undoes(deed) { part.opens } else { part.opens.opposite() };
        sheet.way = sheet.way.or(Some(way));
    }
    // Refitting starts the thread by hand: the tool comes with the tightening.
    if turns(deed) && deed != Deed::Refit && !by_hand && is_turned(part) {
        sheet.hold = sheet.hold.take().or_else(|| part.hold.clone());
        if sheet.tool.is_none() {
            (sheet.tool, sheet.size) = tool_of(part);
        }
    }
    // Loosened and taken off are two steps with one part, tool and way: said short, they must differ.
    if deed == Deed::Remove && is_turned(part) {
        sheet.brief = sheet.brief.take().or_else(|| Some(format!("{} off", sheet.name)));
    }
    match deed {
        Deed::Tighten => {
            sheet.limit = part.torque;
            sheet.nip = if part.torque.is_none() { part.nip.clone() } else { None };
            sheet.never.clone_from(&part.never);
        }
        Deed::Threadlock => sheet.locker = part.locker.as_ref().map(locker),
        Deed::Loosen | Deed::Zero => sheet.never.clone_from(&part.never),
        Deed::Mark => {
            sheet.note = sheet.note.take().or_else(|| part.mark.as_ref().map(lined_up_later));
        }
        _ => {}
    }
}

fn lined_up_later(mark: &crate::rulebase::Mark) -> String {
    format!("Later, line up {}", mark.lines_up)
}

/// Whether a part that is to be removed was undone before: it comes off by hand, and the tool was for the undoing.
fn comes_off_by_hand(desk: &Desk<'_>, id: &str, deed: Deed) -> bool {
    let fitting = desk.place().and_then(|place| place.parts.get(id)).map(|part| part.fitting);
    deed == Deed::Remove && matches!(fitting, Some(Fitting::Loose | Fitting::Off))
}

fn locker(locker: &crate::rulebase::Locker) -> String {
    let never = locker.never.as_ref().map(|never| format!(". {never}")).unwrap_or_default();
    format!("{} strength, {}{never}", locker.grade, locker.put)
}

/// Whether a part is turned at all: it has a thread or takes a tool that turns.
pub fn is_turned(part: &Part) -> bool {
    part.thread.is_some() || part.across.is_some() || part.key.is_some() || part.tool.is_some()
}

/// Whether a step turns something, so that it must be known from where that is seen.
fn has_direction(card: &UnitCard, step: &Step) -> bool {
    let Some(id) = step.about.as_deref() else { return false };
    let adjusts = matches!(step.deed, Deed::Zero | Deed::Count | Deed::Set | Deed::Release);
    card.part(id).is_some_and(|part| turns(step.deed) && is_turned(part))
        || card.adjuster(id).is_some() && adjusts
}

/// The tool a part is turned with, and its size.
pub fn tool_of(part: &Part) -> (Option<String>, Option<Quantity>) {
    match (&part.tool, part.key, part.across) {
        (Some(tool), _, _) => (Some(tool.clone()), part.key.or(part.across)),
        (None, Some(key), _) => (Some("hex key".to_owned()), Some(key)),
        (None, None, Some(across)) => (None, Some(across)),
        (None, None, None) => (None, None),
    }
}

/// Whether a deed turns its part.
pub fn turns(deed: Deed) -> bool {
    matches!(deed, Deed::Loosen | Deed::Remove | Deed::Refit | Deed::Tighten)
}

/// Whether a deed undoes its part.
pub fn undoes(deed: Deed) -> bool {
    matches!(deed, Deed::Loosen | Deed::Remove)
}

/// From where a direction is seen, but only the first time and whenever the end changes.
fn seen_from_once(desk: &Desk<'_>, card: &UnitCard, step: &Step) -> Option<String> {
    let now = card.seen_from(step.about.as_deref()?)?;
    let (place, procedure, id) = (desk.place()?, desk.procedure()?, desk.place_id());
    let turned = |shown: &str| {
        let before = procedure.step(shown).filter(|before| has_direction(card, before))?;
        card.seen_from(before.about.as_deref()?).map(str::to_owned)
    };
    let order = procedure.all_steps();
    let last = desk
        .state
        .record
        .closed
        .iter()
        .filter(|((at, shown), _)| *at == id && *shown != step.id && place.closed.contains_key(shown))
        .filter_map(|((_, shown), when)| {
            Some((when, order.iter().position(|step| step.id == *shown), turned(shown)?))
        })
        // Closed in the same moment, the later step of the procedure was the last.
        .max_by_key(|(when, at, _)| (**when, *at))
        .map(|(_, _, seen)| seen);
    (last.as_deref() != Some(now)).then(|| now.to_owned())
}

/// The step's place among those of its procedure that are not in a branch.
fn number(procedure: &Procedure, step: &Step) -> (usize, usize) {
    let tops: Vec<&Step> = procedure.phases.iter().flat_map(|phase| &phase.steps).collect();
    let here = tops.iter().position(|top| top.holds(&step.id)).map_or(0, |index| index + 1);
    (here, tops.len())
}

/// How a travel is counted on an adjuster that stands full out, where its setting was counted from: the other way round
/// than the procedure has it. None where it stands full in.
pub fn counts_in(desk: &Desk<'_>, card: &UnitCard, step: &Step) -> Option<String> {
    let travel = step.deed == Deed::Count && step.read.as_ref().is_some_and(|read| read.role == Role::Travel);
    let adjuster = step.about.as_deref().and_then(|id| card.adjuster(id)).filter(|_| travel)?;
    settings::known(desk, &adjuster.id).found_from_out?;
    match &adjuster.kind {
        AdjusterKind::Clicker { closes, .. } => Some(format!(
            "Count the clicks as you turn {} {} until it seats.",
            adjuster.name(),
            closes.words()
        )),
        _ => None,
    }
}

/// The whole sentence of a step.
pub fn sentence(card: &UnitCard, step: &Step) -> String {
    if let Some(text) = &step.text {
        return text.clone();
    }
    if let Some(zeroed) = zeroed(card, step) {
        return zeroed;
    }
    let object = match (&step.about, &step.object) {
        (Some(about), _) => format!("the {}", card.name_of(about)),
        (None, Some(object)) => object.clone(),
        (None, None) => String::new(),
    };
    let mut verb = step.deed.as_str().to_owned();
    if let Some(first) = verb.get_mut(0..1) {
        first.make_ascii_uppercase();
    }
    format!("{verb} {object}").trim().to_owned() + "."
}

/// How an adjuster that has stops, or positions, is brought to its nought: by the way of turning that its card gives.
fn zeroed(card: &UnitCard, step: &Step) -> Option<String> {
    let adjuster =
        step.about.as_deref().and_then(|id| card.adjuster(id)).filter(|_| step.deed == Deed::Zero)?;
    let name = adjuster.name();
    match &adjuster.kind {
        AdjusterKind::Clicker { closes, .. } => {
            Some(format!("Turn the {name} {} until it seats.", closes.words()))
        }
        AdjusterKind::Ring { first, only, rises, .. } => {
            let way = only.unwrap_or(rises.opposite());
            Some(format!("Turn the {name} {} to {}.", way.words(), figures::words(f64::from(*first))))
        }
        _ => None,
    }
}

/// The short name of a step, as a list or an acknowledgement says it.
pub fn name(card: &UnitCard, step: &Step) -> String {
    match (&step.about, &step.object) {
        (Some(about), _) => card.name_of(about).to_owned(),
        (None, Some(object)) => object.clone(),
        (None, None) => step.text.clone().unwrap_or_else(|| step.deed.as_str().to_owned()),
    }
}

/// A step as a log or a list names it ("tighten foot nut").
pub fn title(card: &UnitCard, step: &Step) -> String {
    match (&step.about, &step.object, &step.text) {
        (Some(about), _, _) => format!("{} {}", step.deed.as_str(), card.name_of(about)),
        (None, Some(object), _) => format!("{} {object}", step.deed.as_str()),
        (None, None, Some(text)) => text.trim_end_matches('.').to_lowercase(),
        (None, None, None) => step.deed.as_str().to_owned(),
    }
}

/// What closes a step, worded so that it does not lead.
pub fn asks(card: &UnitCard, step: &Step) -> Asks {
    if let Some(question) = &step.question {
        return match step.read.as_ref().map(|read| read.kind) {
            None => Asks::YesOrNo(question.clone()),
            Some(WaitingFor::Text) => Asks::Words(question.clone()),
            Some(_) => Asks::Value(question.clone()),
        };
    }
    let name = name(card, step);
    if step.deed == Deed::Set {
        return Asks::Value("Where does it stand?".to_owned());
    }
    match step.read.as_ref().map(|read| read.kind) {
        None if step.reads_back.is_some() => Asks::YesOrNo("Is that so?".to_owned()),
        None | Some(WaitingFor::Done | WaitingFor::Tool | WaitingFor::Nothing) => Asks::Done,
        Some(WaitingFor::YesOrNo) => Asks::YesOrNo(format!("Is the {name} good?")),
        // The step's own sentence asks for the words.
        Some(WaitingFor::Text) if step.text.is_some() => Asks::Words(String::new()),
        Some(WaitingFor::Text) => Asks::Words(match step.read.as_ref().map(|read| &read.role) {
            // Words asked for beside what the step does: the batch of a new part.
            Some(Role::Named(role)) if step.about.is_some() => {
                format!("Which {} is it?", role.replace('-', " "))
            }
            _ => format!("What is the {name}?"),
        }),
        Some(WaitingFor::Torque) => Asks::Value("What did it click at?".to_owned()),
        Some(WaitingFor::Clicks) => Asks::Value("How many clicks?".to_owned()),
        Some(WaitingFor::Position) => Asks::Value("Which position does it stand at?".to_owned()),
        Some(WaitingFor::Turns) => Asks::Value("How many turns?".to_owned()),
        Some(WaitingFor::Rate) => Asks::Value("What rate is on the spring?".to_owned()),
        Some(_) => Asks::Value("What does it read?".to_owned()),
    }
}

/// The name of a list of settings in the record.
pub fn which_name(which: ReadBack) -> &'static str {
    match which {
        ReadBack::Found => "found",
        ReadBack::Wanted => "wanted",
        ReadBack::Left => "left",
    }
}

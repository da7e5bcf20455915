//! What a step waits for, from what it does and what the card says of the part: nothing that the card knows is written
//! twice.

use super::fields::Fields;
use super::values;
use super::world::World;
use crate::act::WaitingFor;
use crate::quantity::{Dimension, Limit, Unit};
use crate::rulebase::{Adjuster, AdjusterKind, Deed, Part, Read, Role, Step};
use crate::source::nearest;
use crate::source::yaml::Span;

/// A sixth of a turn: the finest step of a screw that is counted (design, section 2).
const FLAT: f64 = 1.0 / 6.0;

/// Fills in `read` and `question`.
pub(super) fn waits_for(
    step: &mut Step,
    role: Option<&str>,
    fields: &Fields<'_>,
    span: Span,
    world: &World<'_>,
) {
    let Some(card) = world.card else { return };
    let about = step.about.clone();
    let adjuster = about.as_deref().and_then(|id| card.adjuster(id));
    let part = about.as_deref().and_then(|id| card.part(id));
    let object = step.object.clone();
    let case =
        Case { fields, span, role, about: about.as_deref(), object: object.as_deref(), adjuster, part };
    if step.reads_back.is_some() {
        case.only(step, Deed::Record, "reads back");
        return;
    }
    step.read = match step.deed {
        Deed::Tighten => case.tighten(),
        Deed::Count => case.count(),
        Deed::Set => case.set(),
        Deed::Charge => case.charge(),
        Deed::Measure => case.measure(),
        Deed::Record => Some(case.record()),
        _ => case.own().or_else(|| case.named()),
    };
    if matches!(step.deed, Deed::Inspect | Deed::Look | Deed::Align | Deed::Prove) && step.question.is_none()
    {
        step.question = case.question(step.deed);
    }
    case.consequence(step);
}

/// One step with what the card says of its part.
struct Case<'a> {
    fields: &'a Fields<'a>,
    span: Span,
    role: Option<&'a str>,
    about: Option<&'a str>,
    object: Option<&'a str>,
    adjuster: Option<&'a Adjuster>,
    part: Option<&'a Part>,
}

impl Case<'_> {
    fn wrong(&self, found: String, expected: &str, mend: &str) {
        self.fields.report.wrong(self.span, found, expected, mend);
    }

    fn role_or(&self, usual: Role) -> Role {
        self.role.map_or(usual, |name| Role::parse(&super::slug(name)))
    }

    /// A torque where the card has one, nothing where it says to nip.
    fn tighten(&self) -> Option<Read> {
        let part = self.part?;
        if part.torque.is_none() && part.nip.is_none() {
            let found = format!("`{}` is tightened, and the card has neither torque nor nip for it", part.id);
            self.wrong(
                found,
                "a part with `torque` or `nip`",
                "give the part its `torque:`, or say how it is nipped",
            );
        }
        let limit = part.torque?;
        let critical = part.critical.is_some();
        Some(read(WaitingFor::Torque, Role::Torque, limit.unit, Some(limit)).critical_if(critical))
    }

    fn count(&self) -> Option<Read> {
        let adjuster = self.needs_adjuster("counted")?;
        let (kind, unit) = counted(&adjuster.kind);
        let role = self.counted_as()?;
        let limit = match (&adjuster.kind, &role) {
            (AdjusterKind::Clicker { clicks, .. }, Role::Travel) => {
                Some(Limit { lo: Some(f64::from(*clicks)), hi: Some(f64::from(*clicks)), unit })
            }
            (AdjusterKind::Screw { turns: Some(turns), .. }, Role::Travel) => {
                Some(Limit { lo: Some(turns - FLAT), hi: Some(turns + FLAT), unit })
            }
            (kind, _) => whole(kind),
        };
        let recount = !matches!(adjuster.kind, AdjusterKind::Charge { .. });
        Some(Read { recount, ..read(kind, role, unit, limit) })
    }

    /// What a count is kept as.
    fn counted_as(&self) -> Option<Role> {
        let name = self.role.map_or_else(|| "found".to_owned(), super::slug);
        if matches!(name.as_str(), "found" | "travel" | "travel-again") {
            return Some(Role::parse(&name));
        }
        let near = nearest(&name, ["found", "travel", "travel again"]).unwrap_or("found");
        let expected = "`found`, `travel` or `travel again`";
        let span = self.fields.span_of("as");
        self.fields.report.wrong(span, format!("counted as `{name}`"), expected, format!("write `{near}`"));
        None
    }

    fn set(&self) -> Option<Read> {
        let adjuster = self.needs_adjuster("set")?;
        let (kind, unit) = counted(&adjuster.kind);
        Some(read(kind, self.role_or(Role::Left), unit, whole(&adjuster.kind)).critical_if(true))
    }

    fn charge(&self) -> Option<Read> {
        let adjuster = self.needs_adjuster("charged")?;
        let AdjusterKind::Charge { limit, .. } = &adjuster.kind else {
            let found = format!("`{}` is charged, and it holds no gas", adjuster.id);
            self.wrong(found, "an adjuster with `charge`", "name the one that is charged");
            return None;
        };
        Some(read(WaitingFor::Pressure, self.role_or(Role::Left), limit.unit, Some(*limit)).critical_if(true))
    }

    fn needs_adjuster(&self, done: &str) -> Option<&Adjuster> {
        if self.adjuster.is_none()
            && let Some(about) = self.about
        {
            let found = format!("`{about}` is {done}, and it is no adjuster");
            self.wrong(
                found,
                "an adjuster of the card",
                "name an adjuster, or give it an entry under `adjusters`",
            );
        }
        self.adjuster
    }

    /// A measurement: the part's limit of that name, or the step's own limit or unit.
    fn measure(&self) -> Option<Read> {
        if let Some(own) = self.own() {
            return Some(own);
        }
        if let (Some(role), Some(AdjusterKind::Screw { .. })) = (self.role, self.adjuster.map(|it| &it.kind))
        {
            return Some(read(WaitingFor::Length, Role::parse(&super::slug(role)), Unit::Millimetre, None));
        }
        let limits = self.part.map(|part| &part.limits);
        let named = match (self.role, limits) {
            (Some(role), Some(limits)) => limits.get_key_value(role),
            (None, Some(limits)) if limits.len() == 1 => limits.iter().next(),
            _ => None,
        };
        let Some((name, limit)) = named else {
            let known = limits.into_iter().flatten().map(|(name, _)| name.as_str());
            let mend = match self.role.and_then(|role| nearest(role, known)) {
                Some(near) => format!("write `as: {near}` if that is what is meant"),
                None => {
                    "name a limit of the part with `as:`, or give the step a `limit:` or a unit with `in:`"
                        .to_owned()
                }
            };
            let found = match self.role {
                Some(role) => format!("`{role}` is measured, and the card has no limit of that name"),
                None => "something is measured, and no limit is named".to_owned(),
            };
            self.wrong(found, "`as:` with one of the part's `limits`", &mend);
            return None;
        };
        Some(read(kind_of(limit.unit), Role::Named(name.clone()), limit.unit, Some(*limit)))
    }

    /// A text, or a figure where the step gives a unit.
    fn record(&self) -> Read {
        self.own().unwrap_or_else(|| {
            let name = self.role.or(self.object).map_or_else(|| "note".to_owned(), super::slug);
            Read { unit: None, ..read(WaitingFor::Text, Role::Named(name), Unit::One, None) }
        })
    }

    /// A text that any other step reads with `as:`, such as the batch of a new part.
    fn named(&self) -> Option<Read> {
        self.role.map(|_| self.record())
    }

    /// The figure that the step itself asks for, with `limit:` or `in:`.
    fn own(&self) -> Option<Read> {
        let role = self.role_or(Role::Named(self.object.map_or_else(|| "value".to_owned(), super::slug)));
        if let Some(node) = self.fields.node("limit") {
            let limit = values::limit(node, None, self.fields.report)?;
            return Some(read(kind_of(limit.unit), role, limit.unit, Some(limit)));
        }
        let name = self.fields.text("in")?;
        let Some(unit) = Unit::parse(&name) else {
            let near = Unit::nearest(&name).map_or("mm", Unit::name);
            let expected = "a unit such as `mm`";
            self.fields.report.wrong(
                self.fields.span_of("in"),
                format!("`{name}` is no unit"),
                expected,
                format!("write `{near}`"),
            );
            return None;
        };
        Some(read(kind_of(unit), role, unit, None))
    }

    /// The question of a step that is looked at: the card's mark or what an inspection looks for.
    fn question(&self, deed: Deed) -> Option<String> {
        let mark =
            self.adjuster.map_or_else(|| self.part.and_then(|it| it.mark.as_ref()), |it| it.mark.as_ref());
        let accept = self
            .adjuster
            .map_or_else(|| self.part.and_then(|it| it.accept.as_ref()), |it| it.accept.as_ref());
        let made = match deed {
            Deed::Inspect => accept.map(|accept| format!("Is it good: {}?", accept.trim_end_matches('.'))),
            _ => mark.map(|mark| lined_up(mark.lines_up.trim_end_matches('.'))),
        };
        if made.is_none() {
            let found = format!("a step with `{}` and no question", deed.as_str());
            self.wrong(
                found,
                "`question:`, whose yes closes the step",
                "add `question:` with a question that yes or no answers",
            );
        }
        made
    }

    /// An expression over `value` needs a value; a wait needs its timer.
    fn consequence(&self, step: &Step) {
        if step.accept.is_some() && step.read.is_none() {
            let span = self.fields.span_of("accept");
            let mend = "take `accept` out, or let the step read a value";
            self.fields.report.wrong(
                span,
                "`accept` on a step without a reading",
                "a step that reads a value",
                mend,
            );
        }
        if step.deed == Deed::Wait && step.timer.is_none() {
            let expected = "`timer:` with `lasts:` and `for:`";
            self.wrong(
                "a wait without a timer".to_owned(),
                expected,
                "add `timer: {lasts: 10 min, for: ...}`",
            );
        }
    }

    fn only(&self, step: &Step, deed: Deed, field: &str) {
        if step.deed != deed {
            let found = format!("`{field}` on a step that is no `{}`", deed.as_str());
            self.wrong(found, "`record: settings`", "begin the step with `record:`");
        }
    }
}

/// "This with that" as a question.
fn lined_up(mark: &str) -> String {
    match mark.split_once(" with ") {
        Some((this, that)) => format!("Does {this} line up with {that}?"),
        None => format!("Is the mark right: {mark}?"),
    }
}

fn read(kind: WaitingFor, role: Role, unit: Unit, limit: Option<Limit>) -> Read {
    Read { kind, role, unit: Some(unit), limit, critical: false, recount: false }
}

impl Read {
    fn critical_if(self, critical: bool) -> Self {
        Self { critical, ..self }
    }
}

/// What counting an adjuster gives.
fn counted(kind: &AdjusterKind) -> (WaitingFor, Unit) {
    match kind {
        AdjusterKind::Clicker { .. } => (WaitingFor::Clicks, Unit::Click),
        AdjusterKind::Ring { .. } => (WaitingFor::Position, Unit::PositionStep),
        AdjusterKind::Screw { .. } => (WaitingFor::Turns, Unit::Turn),
        AdjusterKind::Charge { limit, .. } => (WaitingFor::Pressure, limit.unit),
    }
}

/// Where an adjuster can stand at all.
fn whole(kind: &AdjusterKind) -> Option<Limit> {
    let (_, unit) = counted(kind);
    match kind {
        AdjusterKind::Clicker { clicks, .. } => {
            Some(Limit { lo: Some(0.0), hi: Some(f64::from(*clicks)), unit })
        }
        AdjusterKind::Ring { first, last, .. } => {
            Some(Limit { lo: Some(f64::from(*first)), hi: Some(f64::from(*last)), unit })
        }
        AdjusterKind::Screw { turns, .. } => Some(Limit { lo: Some(0.0), hi: *turns, unit }),
        AdjusterKind::Charge { .. } => None,
    }
}

/// The kind of entry that a unit makes.
fn kind_of(unit: Unit) -> WaitingFor {
    match unit.dimension() {
        Dimension::Torque => WaitingFor::Torque,
        Dimension::Clicks => WaitingFor::Clicks,
        Dimension::Position => WaitingFor::Position,
        Dimension::Angle => WaitingFor::Turns,
        Dimension::Length => WaitingFor::Length,
        Dimension::Pressure => WaitingFor::Pressure,
        Dimension::Temperature => WaitingFor::Temperature,
        Dimension::Volume => WaitingFor::Volume,
        Dimension::Mass => WaitingFor::Mass,
        Dimension::Rate => WaitingFor::Rate,
        _ => WaitingFor::Text,
    }
}

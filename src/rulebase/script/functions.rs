//! The functions that a pack's scripts can call. The table is the documentation, the check of names and the list for
//! whatever describes the format; `register` gives each its body.

use super::View;
use super::fault::NotKnown;
use crate::quantity::{Limit, Unit};
use crate::rulebase::{AdjusterKind, Part, Spring};
use rhai::{Dynamic, Engine, EvalAltResult, ImmutableString as Text, NativeCallContext as Context, Position};
use std::sync::Arc;

/// What an argument names.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Arg {
    /// An adjuster of the card.
    Adjuster,
    /// A part of the card.
    Part,
    /// An adjuster or a part, or `""` for the unit as a whole.
    About,
    /// The name a reading is kept under.
    Role,
    /// The id of a step.
    Step,
    /// The name of a size or limit of the part named before it, or of the unit.
    Name,
    /// A number from 0.
    Index,
    /// A calculation by its name.
    Work,
    /// Its inputs by name: texts with their units, or numbers in the calculation's own unit.
    Given,
}

/// One function.
#[derive(Debug)]
pub struct Function {
    /// Its name.
    pub name: &'static str,
    /// What it takes.
    pub takes: &'static [Arg],
    /// What it gives.
    pub gives: &'static str,
}

impl Function {
    /// How it is written ("reading(about, role)").
    pub fn form(&self) -> String {
        let takes: Vec<String> = self.takes.iter().map(|arg| format!("{arg:?}").to_lowercase()).collect();
        format!("{}({})", self.name, takes.join(", "))
    }
}

macro_rules! table {
    ($($name:literal [$($arg:ident)*] $gives:literal),* $(,)?) => {
        /// Every function of the program.
        pub static FUNCTIONS: &[Function] = &[$(Function { name: $name, takes: &[$(Arg::$arg),*], gives: $gives }),*];
    };
}

table! {
    "found" [Adjuster] "where it stood as found: clicks or positions from full in, mm to its datum or turns",
    "wanted" [Adjuster] "where it is wanted",
    "left" [Adjuster] "where it was left",
    "travel" [Adjuster] "its travel as counted on this unit",
    "position" [Adjuster] "where it stands now",
    "is_known" [Adjuster] "whether it is known where it stands now",
    "clicks" [Adjuster] "all of a clicker's clicks, from the card",
    "pitch" [Adjuster] "a screw's length a turn, mm, from the card",
    "charge_low" [Adjuster] "the lower end of a charge's band, from the card, in the unit the card writes",
    "charge_high" [Adjuster] "the upper end of a charge's band, from the card, in the unit the card writes",
    "reading" [About Role] "a value kept, in the unit of its step",
    "has_reading" [About Role] "whether that value was kept",
    "text" [Role] "words kept",
    "has_text" [Role] "whether those words were kept",
    "is_off" [Part] "whether it is off the unit",
    "is_loose" [Part] "whether it is undone and still there",
    "is_tight" [Part] "whether it is tight, by torque or nip",
    "is_locked" [Part] "whether threadlocker stands on it",
    "is_marked" [Part] "whether it has its witness mark",
    "is_clean" [Part] "whether it was cleaned and nothing put on since",
    "is_new" [Part] "whether a new one is fitted",
    "is_safe" [Part] "whether it was proved safe",
    "locked_minutes" [Part] "minutes since its threadlocker went on; 0 when none stands",
    "open_left" [Part] "minutes left of its threadlocker's open time, below 0 when it has run out; 0 when none stands",
    "torque" [Part] "the torque aimed at, N.m, from the card",
    "size" [Part Name] "a size of the part, from the card: mm, or the unit the card writes",
    "limit_low" [Part Name] "the lower end of a limit of the part, in the unit the card writes",
    "limit_high" [Part Name] "the upper end of a limit of the part, in the unit the card writes",
    "springs" [Part] "how many springs the card lists for it, the fitted one first",
    "spring_rate" [Part Index] "rate of a listed spring, N/mm, counted from 0",
    "spring_free" [Part Index] "free length of a listed spring, mm",
    "spring_block" [Part Index] "block length of a listed spring, mm",
    "unit_size" [Name] "a size of the whole unit, from the card: mm, or the unit the card writes",
    "failed" [Step] "how often a step has failed",
    "work" [Work Given] "a calculation's figure, in its own unit (`sparehand ask --work list`)",
    "corner" [] "the corner in hand, `\"\"` when it is not known",
    "unit" [] "the id of the unit card",
}

type Result<T> = std::result::Result<T, Box<EvalAltResult>>;

/// Gives every function its body.
pub(super) fn register(engine: &mut Engine) {
    adjusters(engine);
    charges(engine);
    readings(engine);
    parts(engine);
    card(engine);
    springs(engine);
    super::work::register(engine);
    engine.register_fn("failed", |context: Context, step: Text| {
        Ok::<_, Box<EvalAltResult>>(view(&context)?.failed.get(step.as_str()).copied().map_or(0, i64::from))
    });
    engine.register_fn("corner", |context: Context| {
        Ok::<_, Box<EvalAltResult>>(view(&context)?.corner.clone())
    });
    engine.register_fn("unit", |context: Context| Ok::<_, Box<EvalAltResult>>(view(&context)?.unit.clone()));
}

fn view(context: &Context) -> Result<Arc<View>> {
    let view = context.tag().and_then(|tag| tag.clone().try_cast::<Arc<View>>());
    view.ok_or_else(|| not_known("there is no job in hand".to_owned()))
}

fn not_known(found: String) -> Box<EvalAltResult> {
    Box::new(EvalAltResult::ErrorRuntime(Dynamic::from(NotKnown(found)), Position::NONE))
}

fn adjusters(engine: &mut Engine) {
    macro_rules! setting {
        ($($name:literal $field:ident $words:literal),*) => {$(
            engine.register_fn($name, |context: Context, id: Text| {
                let view = view(&context)?;
                adjuster(&view, &id)?;
                let value = view.adjusters.get(id.as_str()).and_then(|known| known.$field);
                value.ok_or_else(|| not_known(format!(concat!("`{}` has no ", $words, " yet"), id)))
            });
        )*};
    }
    setting!("found" found "setting as found", "wanted" wanted "wanted setting", "left" left "setting as left",
        "travel" travel "travel counted", "position" position "known position");
    engine.register_fn("is_known", |context: Context, id: Text| {
        let view = view(&context)?;
        adjuster(&view, &id)?;
        Ok::<_, Box<EvalAltResult>>(
            view.adjusters.get(id.as_str()).is_some_and(|known| known.position.is_some()),
        )
    });
    engine.register_fn("clicks", |context: Context, id: Text| match adjuster(&*view(&context)?, &id)? {
        AdjusterKind::Clicker { clicks, .. } => Ok(i64::from(clicks)),
        _ => Err(not_known(format!("`{id}` is no clicker"))),
    });
    engine.register_fn("pitch", |context: Context, id: Text| match adjuster(&*view(&context)?, &id)? {
        AdjusterKind::Screw { pitch, .. } => Ok(pitch.in_unit(Unit::Millimetre).unwrap_or(pitch.value)),
        _ => Err(not_known(format!("`{id}` is no screw"))),
    });
}

fn charges(engine: &mut Engine) {
    engine.register_fn("charge_low", |context: Context, id: Text| charge(&context, &id, |limit| limit.lo));
    engine.register_fn("charge_high", |context: Context, id: Text| charge(&context, &id, |limit| limit.hi));
}

fn charge(context: &Context, id: &str, of: impl Fn(&Limit) -> Option<f64>) -> Result<f64> {
    let found = match adjuster(&*view(context)?, id)? {
        AdjusterKind::Charge { limit, .. } => of(&limit),
        _ => None,
    };
    found.ok_or_else(|| not_known(format!("`{id}` has no charge with such an end")))
}

/// The kind of an adjuster, which the card must have.
fn adjuster(view: &View, id: &str) -> Result<AdjusterKind> {
    let found = view.card.as_ref().and_then(|card| card.adjuster(id));
    found
        .map(|adjuster| adjuster.kind.clone())
        .ok_or_else(|| not_known(format!("there is no adjuster `{id}` on the card")))
}

fn readings(engine: &mut Engine) {
    engine.register_fn("reading", |context: Context, about: Text, role: Text| {
        let value = view(&context)?.readings.get(&(about.to_string(), role.to_string())).copied();
        value.ok_or_else(|| not_known(format!("there is no reading `{role}` of `{about}` yet")))
    });
    engine.register_fn("has_reading", |context: Context, about: Text, role: Text| {
        Ok::<_, Box<EvalAltResult>>(
            view(&context)?.readings.contains_key(&(about.to_string(), role.to_string())),
        )
    });
    engine.register_fn("text", |context: Context, role: Text| {
        let text = view(&context)?.texts.get(role.as_str()).cloned();
        text.ok_or_else(|| not_known(format!("nothing was said for `{role}` yet")))
    });
    engine.register_fn("has_text", |context: Context, role: Text| {
        Ok::<_, Box<EvalAltResult>>(view(&context)?.texts.contains_key(role.as_str()))
    });
}

fn parts(engine: &mut Engine) {
    macro_rules! state {
        ($($name:literal $field:ident),*) => {$(
            engine.register_fn($name, |context: Context, id: Text| {
                let view = view(&context)?;
                part(&view, &id, |_| ())?;
                Ok::<_, Box<EvalAltResult>>(view.parts.get(id.as_str()).is_some_and(|known| known.$field))
            });
        )*};
    }
    state!("is_off" off, "is_loose" loose, "is_tight" tight, "is_locked" locked, "is_marked" marked, "is_clean" clean,
        "is_new" new, "is_safe" safe);
    engine.register_fn("locked_minutes", |context: Context, id: Text| {
        let view = view(&context)?;
        part(&view, &id, |_| ())?;
        Ok::<_, Box<EvalAltResult>>(locked_minutes(&view, &id).unwrap_or(0.0))
    });
    engine.register_fn("open_left", |context: Context, id: Text| {
        let view = view(&context)?;
        let open = part(&view, &id, |part| {
            part.locker.as_ref().and_then(|locker| locker.open.in_unit(Unit::Minute).ok())
        })?;
        let open = open.ok_or_else(|| not_known(format!("the card has no threadlocker for `{id}`")))?;
        Ok::<_, Box<EvalAltResult>>(locked_minutes(&view, &id).map_or(0.0, |gone| open - gone))
    });
}

fn locked_minutes(view: &View, id: &str) -> Option<f64> {
    view.parts.get(id).filter(|part| part.locked).and_then(|part| part.locked_minutes)
}

/// Something of a part, which the card must have.
fn part<T>(view: &View, id: &str, of: impl Fn(&Part) -> T) -> Result<T> {
    let found = view.card.as_ref().and_then(|card| card.part(id));
    found.map(of).ok_or_else(|| not_known(format!("there is no part `{id}` on the card")))
}

fn card(engine: &mut Engine) {
    engine.register_fn("torque", |context: Context, id: Text| {
        let torque = part(&*view(&context)?, &id, |part| part.torque.map(|torque| torque.nominal()))?;
        let torque = torque.and_then(|torque| torque.in_unit(Unit::NewtonMetre).ok());
        torque.ok_or_else(|| not_known(format!("the card has no torque for `{id}`")))
    });
    engine.register_fn("size", |context: Context, id: Text, name: Text| {
        let size = part(&*view(&context)?, &id, |part| part.sizes.get(name.as_str()).map(|size| size.value))?;
        size.ok_or_else(|| not_known(format!("`{id}` has no size `{name}`")))
    });
    engine.register_fn("limit_low", |context: Context, id: Text, name: Text| {
        end(&context, &id, &name, |limit| limit.lo)
    });
    engine.register_fn("limit_high", |context: Context, id: Text, name: Text| {
        end(&context, &id, &name, |limit| limit.hi)
    });
    engine.register_fn("unit_size", |context: Context, name: Text| {
        let view = view(&context)?;
        let size = view.card.as_ref().and_then(|card| card.sizes.get(name.as_str()).map(|size| size.value));
        size.ok_or_else(|| not_known(format!("the unit has no size `{name}`")))
    });
}

fn end(context: &Context, id: &str, name: &str, of: impl Fn(&Limit) -> Option<f64>) -> Result<f64> {
    let found = part(&*view(context)?, id, |part| part.limits.get(name).and_then(&of))?;
    found.ok_or_else(|| not_known(format!("`{id}` has no such end of a limit `{name}`")))
}

fn springs(engine: &mut Engine) {
    engine.register_fn("springs", |context: Context, id: Text| {
        part(&*view(&context)?, &id, |part| i64::try_from(part.springs.len()).unwrap_or(i64::MAX))
    });
    engine.register_fn("spring_rate", |context: Context, id: Text, at: i64| {
        spring(&context, &id, at, |spring| spring.rate.in_unit(Unit::NewtonPerMillimetre).ok())
    });
    engine.register_fn("spring_free", |context: Context, id: Text, at: i64| {
        spring(&context, &id, at, |spring| spring.free.in_unit(Unit::Millimetre).ok())
    });
    engine.register_fn("spring_block", |context: Context, id: Text, at: i64| {
        spring(&context, &id, at, |spring| {
            spring.block.and_then(|block| block.in_unit(Unit::Millimetre).ok())
        })
    });
}

fn spring(context: &Context, id: &str, at: i64, of: impl Fn(&Spring) -> Option<f64>) -> Result<f64> {
    let index = usize::try_from(at).unwrap_or(usize::MAX);
    let found = part(&*view(context)?, id, |part| part.springs.get(index).and_then(&of))?;
    found.ok_or_else(|| not_known(format!("the card has no such figure for spring {at} of `{id}`")))
}

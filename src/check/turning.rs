//! What is turned and what it carries; and made-up views that expressions are tried on.

use crate::quantity::Quantity;
use crate::quantity::Unit;
use crate::rulebase::script::{AdjusterView, Expression, PartView, View};
use crate::rulebase::{Pack, Part};
use crate::workings::thread::Thread;
use crate::workings::torque::class::class;
use crate::workings::torque::joint::{Screw, arm, bearing_diameter};
use crate::workings::torque::shaft::Tightened;

/// Friction that torques are worked out for: the upper end of what oiled and locked threads have (VDI 2230, class B).
const FRICTION: f64 = 0.16;
/// Friction that stress is worked out for: the lower end, where the same torque pulls hardest.
const SLIPPERY: f64 = 0.10;

/// Whether a part is turned at all.
pub fn is_turned(part: &Part) -> bool {
    part.thread.is_some() || part.across.is_some() || part.key.is_some()
}

/// The size at the beginning of a text ("12 mm flats on the shaft").
pub fn size_of(text: &str) -> Option<Quantity> {
    let (size, _) = text.split_once(" flats")?;
    Quantity::parse(size.trim()).ok()
}

/// What a thread carries, N.m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Carry {
    /// The torque at which it yields; above it something breaks.
    pub most: f64,
    /// What class 8.8 is tightened to.
    pub usual: f64,
    /// The least that is more than hand tight.
    pub least: f64,
}

/// Below this share of what class 8.8 is tightened to, a joint is next to loose.
const LITTLE: f64 = 0.06;
/// From this diameter on a thread is that of a ring or a cap, mm: thin, sealed by an O ring, and far from its class.
const RING: f64 = 30.0;
/// A ring or a cap is hand tight below this, N.m for each mm of its thread (common practice, no source).
const HAND_TIGHT: f64 = 0.5;

/// What the thread of a part carries. Without a `proof-stress` on the card the strongest usual screw, of class 12.9, is
/// taken for what yields last.
pub fn carry(part: &Part) -> Option<Carry> {
    let Some(thread) = &part.thread else { return by_flats(part) };
    let thread = Thread::parse(&thread.text).ok()?;
    let bore = part.bore.and_then(|bore| bore.in_unit(Unit::Millimetre).ok()).unwrap_or(0.0);
    let bearing = bearing_diameter(thread.d);
    let d = thread.d;
    let screw = Screw { thread: thread.clone(), bore };
    let arm = arm(&thread, FRICTION, FRICTION, bearing) / 1000.0;
    let at = |name: &str, share: f64| {
        Some(screw.assembly_preload(FRICTION, class(name, d)?.yielding, share) * arm)
    };
    let usual = at("8.8", 0.9)?;
    let most = stated(part, thread, bore, bearing).or_else(|| at("12.9", 1.0))?;
    let least = if d < RING { LITTLE * usual } else { HAND_TIGHT * d };
    Some(Carry { most, usual, least }).filter(|carry| carry.most.is_finite() && carry.usual > 0.0)
}

/// A cap whose thread the card does not give. A hexagon is about 1.5 times its thread across flats (ISO 4014, 4032); a
/// cap's thread is larger than that, so that only next to nothing shows.
fn by_flats(part: &Part) -> Option<Carry> {
    let d = part.across?.in_unit(Unit::Millimetre).ok()? / 1.5;
    let screw = Screw { thread: Thread::metric(d, 0.1 * d), bore: 0.0 };
    let arm = arm(&screw.thread, FRICTION, FRICTION, bearing_diameter(d)) / 1000.0;
    let usual = screw.assembly_preload(FRICTION, class("8.8", d)?.yielding, 0.9) * arm;
    Some(Carry { most: f64::INFINITY, usual, least: HAND_TIGHT * d })
}

/// The torque at which the stated section reaches its proof stress.
fn stated(part: &Part, thread: Thread, bore: f64, bearing: f64) -> Option<f64> {
    let proof = part.sizes.get("proof-stress")?.in_unit(Unit::Megapascal).ok()?;
    let size = |name: &str| part.sizes.get(name).and_then(|size| size.in_unit(Unit::Millimetre).ok());
    let outside = size("relief").unwrap_or_else(|| thread.stress_diameter());
    let bore = size("counterbore").unwrap_or(bore);
    let section = Tightened { thread, outside, bore, mu_thread: SLIPPERY, mu_head: SLIPPERY, bearing };
    let one = section.at(1000.0).together;
    (one > 0.0).then(|| proof / one)
}

/// Views of a procedure's unit in which everything is known, over numbers and states, each with a value to judge.
pub fn made_up<'a>(pack: &'a Pack, one: &'a Expression) -> impl Iterator<Item = (View, f64)> + 'a {
    let numbers = [0.0, 1.0, 2.0, 3.0, 5.0, 10.0, 20.0, 100.0];
    numbers.into_iter().enumerate().filter_map(move |(at, number)| {
        let view = view(pack, one, number, at % 2 == 0)?;
        Some((view, number + 1.0))
    })
}

fn view(pack: &Pack, one: &Expression, number: f64, state: bool) -> Option<View> {
    let card = pack.unit(&one.unit)?;
    let procedure = pack.procedure(&one.procedure, &one.unit)?;
    let known = Some(number);
    let adjuster = AdjusterView { found: known, wanted: known, travel: known, left: known, position: known };
    let part = PartView {
        off: state,
        loose: state,
        tight: !state,
        locked: state,
        locked_minutes: known,
        marked: state,
        clean: state,
        new: state,
        safe: state,
    };
    let steps = procedure.all_steps();
    let roles = steps.iter().filter_map(|step| {
        let read = step.read.as_ref()?;
        Some((step.about.clone().unwrap_or_default(), read.role.as_str().to_owned()))
    });
    let roles: Vec<(String, String)> = roles.collect();
    Some(View {
        unit: card.id.clone(),
        corner: "front left".to_owned(),
        card: Some(card.clone()),
        texts: roles.iter().map(|(_, role)| (role.clone(), "none".to_owned())).collect(),
        readings: roles.into_iter().map(|key| (key, number)).collect(),
        adjusters: card.adjusters.iter().map(|one| (one.id.clone(), adjuster)).collect(),
        parts: card.parts.iter().map(|one| (one.id.clone(), part)).collect(),
        failed: steps.iter().map(|step| (step.id.clone(), number as u32)).collect(),
    })
}

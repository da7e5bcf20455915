//! The dry run: every expression is tried on made-up views of its unit and procedure, so that what is unknown or cannot
//! be right is found as the pack loads.

use super::fault::FaultKind;
use super::place::Expression;
use super::scan::{self, BUILT_IN};
use super::{AdjusterView, Arg, FUNCTIONS, Kind, PartView, Scripts, View};
use crate::rulebase::{Procedure, Step, UnitCard};
use crate::source::{Place, Problem, nearest};
use crate::workings::registry;
use rhai::Position;
use std::collections::BTreeMap;
use std::sync::Arc;

/// What an expression can see: the card and the procedure that holds it.
pub struct Made<'a> {
    card: Arc<UnitCard>,
    steps: Vec<&'a Step>,
}

impl<'a> Made<'a> {
    /// The views of a procedure for a unit.
    pub fn up(card: Arc<UnitCard>, procedure: &'a Procedure) -> Self {
        Self { card, steps: procedure.all_steps() }
    }

    /// Tries an expression: its names first, then runs of it.
    pub fn try_out(&self, scripts: &Scripts, expression: &Expression) -> Vec<Problem> {
        let calls = scan::calls(&expression.text);
        let place = |call: &scan::Call| expression.place_at(position(call));
        let named: Vec<Problem> =
            calls.iter().filter_map(|call| self.call(call, scripts, place(call))).collect();
        if named.is_empty() { self.runs(scripts, expression) } else { named }
    }

    fn call(&self, call: &scan::Call, scripts: &Scripts, place: Place) -> Option<Problem> {
        let Some(function) = FUNCTIONS.iter().find(|function| function.name == call.name) else {
            return unknown_function(call, scripts, place);
        };
        for (at, (arg, text)) in function.takes.iter().zip(&call.takes).enumerate() {
            let before = at.checked_sub(1).and_then(|at| call.takes.get(at)).and_then(Option::as_deref);
            if let Some(text) = text
                && let Some(problem) = self.named(*arg, text, before, &place)
            {
                return Some(problem);
            }
        }
        None
    }

    fn named(&self, arg: Arg, text: &str, before: Option<&str>, place: &Place) -> Option<Problem> {
        let known = self.known(arg, before)?;
        if known.iter().any(|known| known == text) {
            return None;
        }
        let mend = match nearest(text, known.iter().map(String::as_str)) {
            Some(near) => format!("write `{near}` if that is what is meant"),
            None => "name one that is there".to_owned(),
        };
        let found = format!("there is no {} `{text}`", words(arg, before));
        Some(Problem::wrong(place.clone(), found).expected(format!("the name of {}", a(arg))).mend(mend))
    }

    /// Every text that an argument may be; none when any may.
    fn known(&self, arg: Arg, before: Option<&str>) -> Option<Vec<String>> {
        let ids = |all: Vec<&str>| Some(all.into_iter().map(str::to_owned).collect());
        match arg {
            Arg::Adjuster => ids(self.card.adjusters.iter().map(|adjuster| adjuster.id.as_str()).collect()),
            Arg::Part => ids(self.card.parts.iter().map(|part| part.id.as_str()).collect()),
            Arg::About => ids(self.card.ids().chain([""]).collect()),
            Arg::Step => ids(self.steps.iter().map(|step| step.id.as_str()).collect()),
            Arg::Role => Some(self.roles().map(|(_, role)| role).collect()),
            Arg::Name => match before {
                None => Some(self.card.sizes.keys().cloned().collect()),
                Some(part) => {
                    let part = self.card.part(part)?;
                    Some(part.sizes.keys().chain(part.limits.keys()).cloned().collect())
                }
            },
            Arg::Work => Some(registry::all().iter().map(|working| working.name.to_owned()).collect()),
            Arg::Index | Arg::Given => None,
        }
    }

    /// The readings that the procedure's steps keep: about and role.
    fn roles(&self) -> impl Iterator<Item = (String, String)> {
        self.steps.iter().filter_map(|step| {
            let read = step.read.as_ref()?;
            Some((step.about.clone().unwrap_or_default(), read.role.as_str().to_owned()))
        })
    }

    fn runs(&self, scripts: &Scripts, expression: &Expression) -> Vec<Problem> {
        for view in
            [self.view(0.0, false), self.view(1.0, true), self.view(37.5, false), self.view(4000.0, true)]
        {
            for value in [0.0, 1.0, 37.5] {
                let given = match expression.kind {
                    Kind::Guard => scripts.guard(&expression.text, &view),
                    Kind::Accept => scripts.accept(&expression.text, value, &view),
                };
                if let Err(fault) = given {
                    return vec![fault.into()];
                }
            }
        }
        self.nothing_known(scripts, expression)
    }

    /// At the beginning of a job nothing is known; only that may be what goes wrong then.
    fn nothing_known(&self, scripts: &Scripts, expression: &Expression) -> Vec<Problem> {
        let view = View { card: Some(Arc::clone(&self.card)), ..View::default() };
        let given = match expression.kind {
            Kind::Guard => scripts.guard(&expression.text, &view),
            Kind::Accept => scripts.accept(&expression.text, 1.0, &view),
        };
        match given {
            Err(fault) if fault.kind != FaultKind::Missing => vec![fault.into()],
            _ => Vec::new(),
        }
    }

    /// A view in which everything is known, every number is `number` and every state is `state`.
    fn view(&self, number: f64, state: bool) -> View {
        let known = Some(number);
        let adjuster =
            AdjusterView { found: known, wanted: known, travel: known, left: known, position: known };
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
        View {
            unit: self.card.id.clone(),
            corner: "front left".to_owned(),
            card: Some(Arc::clone(&self.card)),
            readings: self.roles().map(|key| (key, number)).collect(),
            texts: self.roles().map(|(_, role)| (role, "none".to_owned())).collect(),
            adjusters: self.card.adjusters.iter().map(|one| (one.id.clone(), adjuster)).collect(),
            parts: self.card.parts.iter().map(|one| (one.id.clone(), part)).collect(),
            failed: if state {
                self.steps.iter().map(|step| (step.id.clone(), 1)).collect()
            } else {
                BTreeMap::new()
            },
        }
    }
}

/// Checks the calls of a file under `scripts/`: a function that is nowhere, and a name that no procedure's view has.
pub fn library(scripts: &Scripts, path: &str, text: &str, views: &[Made<'_>]) -> Vec<Problem> {
    let file: Arc<str> = path.into();
    let narrow = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
    let mut problems = Vec::new();
    for call in scan::calls(text) {
        let place = Place::new(Arc::clone(&file), narrow(call.line), narrow(call.column));
        if FUNCTIONS.iter().all(|function| function.name != call.name) {
            problems.extend(unknown_function(&call, scripts, place));
            continue;
        }
        let found: Vec<Problem> =
            views.iter().filter_map(|view| view.call(&call, scripts, place.clone())).collect();
        if found.len() == views.len() {
            problems.extend(found.into_iter().next());
        }
    }
    problems
}

fn unknown_function(call: &scan::Call, scripts: &Scripts, place: Place) -> Option<Problem> {
    let name = call.name.as_str();
    if BUILT_IN.contains(&name) || scripts.functions().contains_key(name) {
        return None;
    }
    let known =
        FUNCTIONS.iter().map(|function| function.name).chain(scripts.functions().keys().map(String::as_str));
    let mend = match nearest(name, known.chain(BUILT_IN.iter().copied())) {
        Some(near) => format!("write `{near}` if that is what is meant"),
        None => "use a function of the program, or one of a file under `scripts/`".to_owned(),
    };
    Some(Problem::wrong(place, format!("there is no function `{name}`")).mend(mend))
}

fn position(call: &scan::Call) -> Position {
    let narrow = |n: usize| u16::try_from(n).unwrap_or(u16::MAX);
    Position::new(narrow(call.line), narrow(call.column))
}

fn words(arg: Arg, before: Option<&str>) -> String {
    match (arg, before) {
        (Arg::Adjuster, _) => "adjuster".to_owned(),
        (Arg::Part, _) => "part".to_owned(),
        (Arg::Step, _) => "step".to_owned(),
        (Arg::Role, Some(about)) => format!("reading of `{about}` called"),
        (Arg::Role, None) => "reading called".to_owned(),
        (Arg::Name, Some(part)) => format!("size or limit of `{part}` called"),
        (Arg::Name, None) => "size of the unit called".to_owned(),
        (Arg::Work, _) => "calculation".to_owned(),
        _ => "adjuster or part".to_owned(),
    }
}

fn a(arg: Arg) -> &'static str {
    match arg {
        Arg::Adjuster => "an adjuster of the card",
        Arg::Part => "a part of the card",
        Arg::Step => "a step of the procedure",
        Arg::Role => "a reading that a step of the procedure keeps",
        Arg::Name => "a size or limit of the card",
        Arg::Work => "a calculation",
        _ => "an adjuster or a part of the card",
    }
}

//! Every calculation by name: its inputs with their dimensions, its outputs, method and source, and one way to call it.
//!
//! A family registers its workings; [`call`] checks what is given (names, dimensions, impossible values), says what is
//! missing and how to ask for it, runs the working and hands back the figure with all that it rests on.

mod call;
mod done;
mod given;
mod input;
mod kind;
mod list;
mod refusal;

use std::sync::LazyLock;

use crate::quantity::Unit;

pub use call::{call, call_text};
pub use done::{Answer, Done, More, Told, Worked};
pub use given::{Given, Value};
pub use input::{Input, Takes};
pub use kind::Kind;
pub use list::{Listed, ListedInput, ListedOutput};
pub use refusal::Refusal;

/// One output's name and unit; no unit where it is a text.
pub type Output = (&'static str, Option<Unit>);

/// What a working does once its inputs are sound.
pub(in crate::workings) type Run = fn(&Given) -> Result<Done, Refusal>;

/// One calculation.
#[derive(Debug)]
pub struct Working {
    /// Its name, such as `wrench-setting`.
    pub name: &'static str,
    /// The kind of question that it answers (`ask_work`).
    pub kind: Kind,
    /// What it works out, in a clause.
    pub about: &'static str,
    /// What it needs and may take.
    pub inputs: Vec<Input>,
    /// What it gives; the first is the answer, any other can be had with `want`.
    pub outputs: Vec<Output>,
    /// The formula.
    pub method: &'static str,
    /// Where the formula or the table is from.
    pub source: &'static str,
    /// What to mind whenever it is used.
    pub cautions: Vec<&'static str>,
    run: Run,
}

impl Working {
    /// A working that answers one kind of question. The rest is added piece by piece.
    pub(in crate::workings) fn new(name: &'static str, kind: Kind, about: &'static str, run: Run) -> Self {
        let empty = (Vec::new(), Vec::new(), Vec::new());
        Self {
            name,
            kind,
            about,
            inputs: empty.0,
            outputs: empty.1,
            method: "",
            source: "",
            cautions: empty.2,
            run,
        }
    }

    /// Adds an input.
    pub(in crate::workings) fn takes(mut self, input: Input) -> Self {
        self.inputs.push(input);
        self
    }

    /// Adds an output with its unit.
    pub(in crate::workings) fn gives(mut self, name: &'static str, unit: Unit) -> Self {
        self.outputs.push((name, Some(unit)));
        self
    }

    /// Adds an output that is a text.
    pub(in crate::workings) fn tells(mut self, name: &'static str) -> Self {
        self.outputs.push((name, None));
        self
    }

    /// Sets formula and source.
    pub(in crate::workings) fn by(mut self, method: &'static str, source: &'static str) -> Self {
        (self.method, self.source) = (method, source);
        self
    }

    /// Adds a caution.
    pub(in crate::workings) fn mind(mut self, caution: &'static str) -> Self {
        self.cautions.push(caution);
        self
    }

    /// The input of a name or of one of its other names.
    #[must_use]
    pub fn input(&self, name: &str) -> Option<&Input> {
        self.inputs.iter().find(|input| input.name == name || input.also.contains(&name))
    }
}

static ALL: LazyLock<Vec<Working>> = LazyLock::new(|| {
    let mut list = Vec::new();
    super::convert::register::register(&mut list);
    super::adjusters::register::register(&mut list);
    super::torque::register(&mut list);
    super::springs::register(&mut list);
    super::gas::register::register(&mut list);
    super::oil::register::register(&mut list);
    super::hex::register::register(&mut list);
    super::cure::register::register(&mut list);
    super::pair::register::register(&mut list);
    list
});

/// Every working, family by family.
#[must_use]
pub fn all() -> &'static [Working] {
    &ALL
}

/// The working of a name.
#[must_use]
pub fn find(name: &str) -> Option<&'static Working> {
    let name = name.trim().to_lowercase().replace(['_', ' '], "-");
    ALL.iter().find(|working| working.name == name)
}

/// The workings that answer a kind of question.
pub fn of_kind(kind: Kind) -> impl Iterator<Item = &'static Working> {
    ALL.iter().filter(move |working| working.kind == kind)
}

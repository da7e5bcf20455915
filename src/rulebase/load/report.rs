//! Where the loader of one file puts the problems it finds.

use crate::rulebase::script::Kind;
use crate::source::yaml::{Span, Style};
use crate::source::{Place, Problem};
use std::cell::RefCell;
use std::sync::Arc;

/// The problems of one file, and the expressions found in it.
pub(super) struct Report {
    file: Arc<str>,
    problems: RefCell<Vec<Problem>>,
    expressions: RefCell<Vec<Found>>,
}

/// An expression found in a file.
pub(super) struct Found {
    /// Its text.
    pub text: String,
    /// What it is for.
    pub kind: Kind,
    /// Where its value stands.
    pub span: Span,
    /// How it is written.
    pub style: Style,
}

impl Report {
    /// An empty report on a file.
    pub fn new(file: Arc<str>) -> Self {
        Self { file, problems: RefCell::default(), expressions: RefCell::default() }
    }

    /// The place of a span in this file.
    pub fn place(&self, span: Span) -> Place {
        span.place(&self.file)
    }

    /// Keeps an expression.
    pub fn expression(&self, found: Found) {
        self.expressions.borrow_mut().push(found);
    }

    /// The expressions kept so far; they are not kept any longer.
    pub fn take_expressions(&self) -> Vec<Found> {
        self.expressions.take()
    }

    /// Keeps a problem.
    pub fn add(&self, problem: Problem) {
        self.problems.borrow_mut().push(problem);
    }

    /// Keeps a problem at a span: what was found, what is accepted, how to mend it.
    pub fn wrong(
        &self,
        span: Span,
        found: impl Into<String>,
        expected: impl Into<String>,
        mend: impl Into<String>,
    ) {
        self.add(Problem::wrong(self.place(span), found).expected(expected).mend(mend));
    }

    /// Everything that was kept.
    pub fn into_problems(self) -> Vec<Problem> {
        self.problems.into_inner()
    }
}

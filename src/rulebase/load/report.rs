//! Where the loader of one file puts the problems it finds.

use crate::source::yaml::Span;
use crate::source::{Place, Problem};
use std::cell::RefCell;
use std::sync::Arc;

/// The problems of one file.
pub(super) struct Report {
    file: Arc<str>,
    problems: RefCell<Vec<Problem>>,
}

impl Report {
    /// An empty report on a file.
    pub fn new(file: Arc<str>) -> Self {
        Self { file, problems: RefCell::default() }
    }

    /// The place of a span in this file.
    pub fn place(&self, span: Span) -> Place {
        span.place(&self.file)
    }

    /// The file's path in the pack.
    pub fn file(&self) -> &Arc<str> {
        &self.file
    }

    /// Keeps a problem.
    pub fn add(&self, problem: Problem) {
        self.problems.borrow_mut().push(problem);
    }

    /// Keeps a problem at a span: what was found, what is accepted, how to mend it.
    pub fn wrong(&self, span: Span, found: impl Into<String>, expected: impl Into<String>, mend: impl Into<String>) {
        self.add(Problem::wrong(self.place(span), found).expected(expected).mend(mend));
    }

    /// Everything that was kept.
    pub fn into_problems(self) -> Vec<Problem> {
        self.problems.into_inner()
    }
}

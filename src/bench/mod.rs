//! The job, pure: `decide` makes events and an answer from rules, state, input and time; `apply` folds events into
//! state and knows nothing else.

pub mod state;

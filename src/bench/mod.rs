//! The job, pure: `decide` makes events and an answer from rules, state, input and time; `apply` folds events into
//! state and knows nothing else.

mod answer;
mod input;
pub mod state;

pub use answer::{
    Ack, Answer, Asks, CautionCard, Consequence, Fact, Part, Question, Refusal, RestoreCard, SettingRow,
    SettingsCard, StepCard, Value,
};
pub use input::{Decision, Input, Past};

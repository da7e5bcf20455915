//! The job, pure: `decide` makes events and an answer from rules, state, input and time; `apply` folds events into
//! state and knows nothing else.

mod answer;
mod cautions;
mod decide;
mod deeds;
mod desk;
mod doubt;
mod ends;
mod entries;
mod flow;
mod input;
mod judge;
mod pending;
mod present;
mod questions;
mod rate;
mod restore;
mod settings;
pub mod state;
mod timers;
mod view;
mod waiting;
mod whole;

pub use answer::{
    Ack, Answer, Asks, CautionCard, Consequence, Fact, Part, Question, Refusal, RestoreCard, SettingRow,
    SettingsCard, StepCard, Value,
};
pub use decide::{decide, worked};
pub use input::{Decision, Input, Past};
pub use questions::work::instead as calculation;
pub use waiting::{step_title, waiting};
pub use whole::whole;

//! A pack proved before anyone trusts it: findings, each declared once in a file of its own, over cards, procedures,
//! talk and scripts, and over every path of every procedure walked on the real bench.

mod facts;
mod figures;
mod finding;
mod findings;
mod grammar;
mod language;
mod report;
mod run;
mod sink;
mod subject;
mod turning;
mod walk;

pub use finding::{Finding, Look};
pub use findings::FINDINGS;
pub use report::{Found, Report, Walked};
pub use run::{check, check_within, finding};

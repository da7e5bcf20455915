//! Questions: the acts that ask. They never move the job.

pub mod adjuster;
pub mod part;
pub mod record;
pub mod step;
pub mod work;

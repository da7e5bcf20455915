//! The rules base: a pack of unit cards, procedures, cautions, tools, talk and scripts, checked for form as it
//! loads and read-only afterwards. Every value can be traced to its file, line and source.

mod adjuster;
mod card;
mod caution;
mod deed;
mod folder;
pub mod load;
mod pack;
mod part;
mod procedure;
pub mod script;
mod step;
pub mod talk;
mod tool;

pub use adjuster::{Adjuster, AdjusterKind};
pub use card::UnitCard;
pub use caution::{Caution, Signal};
pub use deed::Deed;
pub use pack::Pack;
pub use part::{Handling, Locker, Mark, Part, Spring, Thread};
pub use procedure::{Phase, Procedure};
pub use step::{Read, ReadBack, Role, Step, Timer};
pub use tool::Tool;

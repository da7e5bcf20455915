//! The words of one unit: its parts, adjusters and fluids by the names people give them.

use crate::quantity::Limit;

/// What a thing on a unit is, as far as talk is concerned.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sort {
    /// Counted in clicks.
    Clicker,
    /// Numbered positions.
    Ring,
    /// Turned, and measured.
    Screw,
    /// Gas under pressure.
    Charge,
    /// A coil spring.
    Spring,
    /// Oil.
    Fluid,
    /// The level of oil.
    Level,
    /// A fastener or any other part.
    Part,
}

impl Sort {
    /// Whether it has a setting.
    #[must_use]
    pub fn is_adjusted(self) -> bool {
        matches!(self, Self::Clicker | Self::Ring | Self::Screw | Self::Charge | Self::Spring | Self::Level)
    }
}

/// A thing on a unit with its spoken names.
#[derive(Debug, Clone, PartialEq)]
pub struct Thing {
    /// Its id on the card.
    pub id: String,
    /// Spoken names.
    pub called: Vec<String>,
    /// What it is.
    pub sort: Sort,
    /// Its highest count or position, where the card has one.
    pub most: Option<u32>,
    /// The torque or pressure that the card gives it.
    pub aim: Option<Limit>,
}

/// The words of one unit.
#[derive(Debug, Clone, PartialEq)]
pub struct Vocabulary {
    /// The unit's id.
    pub unit: String,
    /// Its spoken names.
    pub called: Vec<String>,
    /// `front` or `rear`, where it can only be one.
    pub axle: Option<String>,
    /// Its things.
    pub things: Vec<Thing>,
}

impl Vocabulary {
    /// The thing of that id.
    #[must_use]
    pub fn thing(&self, id: &str) -> Option<&Thing> {
        self.things.iter().find(|thing| thing.id == id)
    }
}

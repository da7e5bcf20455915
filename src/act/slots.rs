//! The slots of an act.

use serde::{Deserialize, Serialize};

/// A number with the unit said, if one was.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Said {
    /// The number.
    pub value: f64,
    /// The unit's design name ("N.m", "click"), or none when none was said.
    pub unit: Option<String>,
}

/// A length of time, in `s`, `min` or `h`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Duration {
    /// How many.
    pub value: f64,
    /// `s`, `min` or `h`.
    pub unit: String,
}

/// The end a setting was counted from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum End {
    /// Seated: the usual zero.
    #[serde(rename = "full in")]
    FullIn,
    /// Wide open: the other convention.
    #[serde(rename = "full out")]
    FullOut,
}

/// A corner of the vehicle, as seen from the seat.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[expect(missing_docs, reason = "the names say it")]
pub enum Corner {
    #[serde(rename = "front left")]
    FrontLeft,
    #[serde(rename = "front right")]
    FrontRight,
    #[serde(rename = "rear left")]
    RearLeft,
    #[serde(rename = "rear right")]
    RearRight,
    #[serde(rename = "left")]
    Left,
    #[serde(rename = "right")]
    Right,
}

impl Corner {
    /// Every corner, the fuller names first.
    pub const ALL: [Self; 6] =
        [Self::FrontLeft, Self::FrontRight, Self::RearLeft, Self::RearRight, Self::Left, Self::Right];

    /// The spoken name.
    pub fn as_str(self) -> &'static str {
        match self {
            Self::FrontLeft => "front left",
            Self::FrontRight => "front right",
            Self::RearLeft => "rear left",
            Self::RearRight => "rear right",
            Self::Left => "left",
            Self::Right => "right",
        }
    }
}

/// Which of a part's or an adjuster's moments is asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
#[expect(missing_docs, reason = "the names say it")]
pub enum Which {
    Found,
    Now,
    Left,
    Last,
    Wanted,
    Next,
    All,
    Job,
    Step,
    Cure,
}

/// The slots an act may carry; which act takes which is the design's table.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Slots {
    /// Id of a part, adjuster or fluid on the unit card.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub about: Option<String>,
    /// A number reported.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub value: Option<f64>,
    /// The unit said (design name), or for `start` and `switch` the unit card's id.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unit: Option<String>,
    /// The end a setting was counted from, when it was said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub from: Option<End>,
    /// The words that matter.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub text: Option<String>,
    /// Why a step is left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reason: Option<String>,
    /// For how long.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub duration: Option<Duration>,
    /// Which procedure.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub procedure: Option<String>,
    /// Which corner.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub corner: Option<Corner>,
    /// A tool: `13 mm`, `1/2 in`, or a plain name.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tool: Option<String>,
    /// For `ask_tool`: now, next or all.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub when: Option<Which>,
    /// For `ask_setting` and `ask_time`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub which: Option<Which>,
    /// For `ask_work`: the family of calculation.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub kind: Option<String>,
    /// For `ask_work`: the figures given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub values: Option<Vec<Said>>,
    /// For `ask_work`, a conversion: the unit wanted, when it was said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub into: Option<String>,
}

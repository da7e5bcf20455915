//! What a step does to a part: the closed list of the design (section 4).

use serde::{Deserialize, Serialize};

/// What a step does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
#[expect(missing_docs, reason = "the names are the design's")]
pub enum Deed {
    Loosen,
    Remove,
    Refit,
    Tighten,
    Threadlock,
    Mark,
    Align,
    Look,
    Zero,
    Set,
    Count,
    Record,
    Clean,
    Inspect,
    Measure,
    Press,
    Drive,
    Rock,
    Strike,
    Compress,
    Release,
    Heat,
    Fill,
    Bleed,
    Stroke,
    Drain,
    Charge,
    Vent,
    Prove,
    Replace,
    Hold,
    Wait,
}

impl Deed {
    /// Every deed, in the design's order.
    pub const ALL: [Self; 32] = [
        Self::Loosen,
        Self::Remove,
        Self::Refit,
        Self::Tighten,
        Self::Threadlock,
        Self::Mark,
        Self::Align,
        Self::Look,
        Self::Zero,
        Self::Set,
        Self::Count,
        Self::Record,
        Self::Clean,
        Self::Inspect,
        Self::Measure,
        Self::Press,
        Self::Drive,
        Self::Rock,
        Self::Strike,
        Self::Compress,
        Self::Release,
        Self::Heat,
        Self::Fill,
        Self::Bleed,
        Self::Stroke,
        Self::Drain,
        Self::Charge,
        Self::Vent,
        Self::Prove,
        Self::Replace,
        Self::Hold,
        Self::Wait,
    ];

    /// The word a pack writes.
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Loosen => "loosen",
            Self::Remove => "remove",
            Self::Refit => "refit",
            Self::Tighten => "tighten",
            Self::Threadlock => "threadlock",
            Self::Mark => "mark",
            Self::Align => "align",
            Self::Look => "look",
            Self::Zero => "zero",
            Self::Set => "set",
            Self::Count => "count",
            Self::Record => "record",
            Self::Clean => "clean",
            Self::Inspect => "inspect",
            Self::Measure => "measure",
            Self::Press => "press",
            Self::Drive => "drive",
            Self::Rock => "rock",
            Self::Strike => "strike",
            Self::Compress => "compress",
            Self::Release => "release",
            Self::Heat => "heat",
            Self::Fill => "fill",
            Self::Bleed => "bleed",
            Self::Stroke => "stroke",
            Self::Drain => "drain",
            Self::Charge => "charge",
            Self::Vent => "vent",
            Self::Prove => "prove",
            Self::Replace => "replace",
            Self::Hold => "hold",
            Self::Wait => "wait",
        }
    }

    /// The deed of that word.
    pub fn parse(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|deed| deed.as_str() == word)
    }
}

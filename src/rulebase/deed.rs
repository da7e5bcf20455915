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

    /// What it does and what it waits for, for whoever writes a procedure.
    pub fn what(self) -> &'static str {
        match self {
            Self::Loosen => "undoes a joint with the tool, way and hold of the card; closed by \"done\"",
            Self::Remove => "takes a part off; adjusters that go `through` it are lost until they are zeroed",
            Self::Refit => "puts a part back on, by hand; what stands under it (`over`) must be on",
            Self::Tighten => {
                "tightens: asks for the torque where the card has one; \"done\" closes it too, and then no value is kept, unless the card calls the part `critical`; where the card has a `nip`, \"done\" closes it"
            }
            Self::Threadlock => "puts threadlocker on as the card says, and starts its open time",
            Self::Mark => "makes the witness mark of the card",
            Self::Align => "sets a thing by hand; asks its `question`, or whether the card's mark lines up",
            Self::Look => "looks: asks its `question`, or whether the card's mark lines up",
            Self::Zero => {
                "brings an adjuster to its nought: a clicker full in, a ring to its lowest, a screw to its touch; without `say:` the card's way of turning is said"
            }
            Self::Set => "brings an adjuster to the setting wanted; waits for where it stands",
            Self::Count => {
                "counts an adjuster: `as: found`, `as: travel` or `as: travel again`; waits for the count"
            }
            Self::Record => {
                "writes words down; a figure where it has `in:`; with `reads back:` a list is said back"
            }
            Self::Clean => "cleans; old threadlocker goes with it",
            Self::Inspect => "looks a part over: asks its `question`, or what the card's `accept` says",
            Self::Measure => {
                "waits for a figure, held against the card's `limits`, its own `limit:` or its `accept:`"
            }
            Self::Press => "presses a part in or on: it is on then",
            Self::Drive => "drives a part with a drift or a driver",
            Self::Rock => "rocks a press fit off: it is off then",
            Self::Strike => "frees a joint by a blow; wants a caution",
            Self::Compress => {
                "loads a spring by hand or tool: it has to be proved, or let off, before other work"
            }
            Self::Release => "lets a spring or the gas off; anything else is undone by hand",
            Self::Heat => "warms a part; wants a caution, and nothing charged",
            Self::Fill => {
                "fills with oil: says the card's size `volume` where one step alone fills it in, or its `amount:`; closed by \"done\""
            }
            Self::Bleed => {
                "bleeds the air out: asks its `question`, such as whether there are no more bubbles"
            }
            Self::Stroke => "moves the shaft or a part over its stroke",
            Self::Drain => "lets the oil out: it has to be filled and bled again",
            Self::Charge => "fills with gas; waits for the pressure, read back as critical",
            Self::Vent => "lets the gas out; it has to be proved out before anything that holds it is undone",
            Self::Prove => {
                "proves that gas or a spring is safe: asks its `question`; only a yes makes it safe"
            }
            Self::Replace => "takes a new part; with `as: batch` its batch is asked for",
            Self::Hold => "holds something while other work is done",
            Self::Wait => "waits: its `timer:` starts, and it is done when that has run",
        }
    }

    /// Whether words of one's own may stand after it, in the place of an id.
    pub fn takes_words(self) -> bool {
        matches!(
            self,
            Self::Align
                | Self::Clean
                | Self::Compress
                | Self::Heat
                | Self::Hold
                | Self::Inspect
                | Self::Look
                | Self::Mark
                | Self::Measure
                | Self::Prove
                | Self::Record
                | Self::Release
                | Self::Stroke
                | Self::Wait
        )
    }

    /// The deed of that word.
    pub fn parse(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|deed| deed.as_str() == word)
    }
}

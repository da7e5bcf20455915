//! Travel counted against the card: what a count that does not agree usually means.

use serde::{Deserialize, Serialize};

/// How a counted travel stands to the card's.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Travel {
    /// As the card has it.
    Agrees,
    /// So many fewer than the card: count again, then it is a finding.
    Short(u32),
    /// So many more than the card: count again, then it is a finding.
    Long(u32),
}

impl Travel {
    /// Compares a count with the card.
    #[must_use]
    pub const fn of(counted: u32, card: u32) -> Self {
        if counted < card {
            Self::Short(card - counted)
        } else if counted > card {
            Self::Long(counted - card)
        } else {
            Self::Agrees
        }
    }

    /// What it usually means (common practice, no source).
    #[must_use]
    pub const fn means(self) -> &'static str {
        match self {
            Self::Agrees => "the travel is as the card has it",
            Self::Short(1) => "often a first detent missed at the stop; else the needle does not seat",
            Self::Short(_) => "the needle does not seat, something is in its bore, or the detent is worn",
            Self::Long(_) => {
                "the needle seats too deep, its end or seat is worn, or clicks were counted twice"
            }
        }
    }
}

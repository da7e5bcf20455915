//! Nominal sizes: across flats of heads and nuts, keys of sockets, and tools as written (`13 mm`, `1/2 in`).

use serde::{Deserialize, Serialize};

use super::super::thread::{self, Thread};
use super::tables;

const MM: f64 = 25.4;

/// A head or a nut, by the standard that sizes its hexagon.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Head {
    /// Hex bolt or screw: ISO 4014, 4017; inch ASME B18.2.1.
    Bolt,
    /// Hex nut, regular, fine or thin: ISO 4032, 8673, 4035; inch ASME B18.2.2.
    Nut,
    /// Hex bolt of the old DIN 931, 933 sizes.
    DinBolt,
    /// Hex nut of the old DIN 934 sizes.
    DinNut,
    /// Socket head cap screw: ISO 4762; inch ASME B18.3.
    Cap,
    /// Set screw (grub): ISO 4026 to 4029; inch ASME B18.3.
    Set,
    /// Button head: ISO 7380-1; inch ASME B18.3.
    Button,
    /// Countersunk: ISO 10642; inch ASME B18.3.
    Countersunk,
    /// Shoulder screw: ISO 7379.
    Shoulder,
}

impl Head {
    /// The head that a name or a standard's number stands for.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let text = text.to_lowercase();
        let has = |words: &[&str]| words.iter().any(|word| text.contains(word));
        Some(if has(&["din 931", "din931", "din 933", "din933", "din bolt", "din-bolt"]) {
            Self::DinBolt
        } else if has(&["din 934", "din934", "din 439", "din439", "din 936", "din936", "din nut", "din-nut"])
        {
            Self::DinNut
        } else if has(&["shoulder", "7379"]) {
            Self::Shoulder
        } else if has(&["button", "7380"]) {
            Self::Button
        } else if has(&["countersunk", "flat head", "10642", "7991"]) {
            Self::Countersunk
        } else if has(&["set", "grub", "4026", "4027", "4028", "4029", "913", "914", "915", "916"]) {
            Self::Set
        } else if has(&["cap", "4762", "912", "socket", "b18.3"]) {
            Self::Cap
        } else if has(&["nut", "4032", "8673", "4035", "4033", "4036", "8674", "8675", "1587", "b18.2.2"]) {
            Self::Nut
        } else if has(&["bolt", "hex", "4014", "4016", "4017", "4018", "8676", "8765", "screw", "b18.2.1"]) {
            Self::Bolt
        } else {
            return None;
        })
    }
}

/// Across flats of an external hexagon, mm; `None` where the standard has no such row.
#[must_use]
pub fn across_flats(head: Head, thread: &Thread) -> Option<f64> {
    use tables::{BOLT_INCH, FLATS, FLATS_DIN, NUT_INCH, pair};
    if thread.inch {
        let d = thread.d / MM;
        return match head {
            Head::Bolt | Head::DinBolt => pair(&BOLT_INCH, d),
            Head::Nut | Head::DinNut => pair(&NUT_INCH, d).or_else(|| pair(&BOLT_INCH, d)),
            _ => None,
        }
        .map(|inches| inches * MM);
    }
    match head {
        Head::Bolt | Head::Nut => pair(&FLATS, thread.d).or((thread.d == 60.0).then_some(90.0)),
        Head::DinBolt | Head::DinNut => pair(&FLATS_DIN, thread.d).or_else(|| pair(&FLATS, thread.d)),
        _ => None,
    }
}

/// The key of a hexagon socket, mm; `None` where the standard has no such row.
#[must_use]
pub fn key(head: Head, thread: &Thread) -> Option<f64> {
    use tables::{BUTTON, CAP, CAP_INCH, COUNTERSUNK, FLAT_INCH, SET, SET_INCH, SHOULDER, pair};
    if thread.inch {
        let d = thread.d / MM;
        return match head {
            Head::Cap => pair(&CAP_INCH, d),
            Head::Set => pair(&SET_INCH, d),
            Head::Button | Head::Countersunk => pair(&FLAT_INCH, d),
            _ => None,
        }
        .map(|inches| inches * MM);
    }
    match head {
        Head::Cap => pair(&CAP, thread.d),
        Head::Set => pair(&SET, thread.d),
        Head::Button => pair(&BUTTON, thread.d),
        Head::Countersunk => pair(&COUNTERSUNK, thread.d),
        Head::Shoulder => SHOULDER.iter().find(|row| row.0 == thread.d).map(|row| row.1),
        _ => None,
    }
}

/// The key of a shoulder screw by its nominal shoulder, mm (ISO 7379).
#[must_use]
pub fn key_of_shoulder(shoulder: f64) -> Option<f64> {
    tables::SHOULDER.iter().find(|row| (row.2 - shoulder).abs() < 1e-6).map(|row| row.1)
}

/// A tool's or a hexagon's size, as marked on it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct ToolSize {
    /// Nominal size, mm.
    pub mm: f64,
    /// Whether it is an inch size.
    pub inch: bool,
}

impl ToolSize {
    /// Reads `13 mm`, `1/2 in`, `7/16"`, `1-1/16 in`, and the size within a longer name (`1/2 in spanner`).
    /// A bare fraction is inches; a bare number is millimetres.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let text = text.trim().to_lowercase();
        if text.starts_with('-') {
            return None;
        }
        let text = text.replace('-', " ");
        let end = text.find(|c: char| c.is_alphabetic() || c == '"').unwrap_or(text.len());
        let (number, rest) = text.split_at_checked(end)?;
        let inch = rest.starts_with("in")
            || rest.starts_with('"')
            || (number.contains('/') && !rest.starts_with("mm"));
        let size = thread::inch_size(number.trim())?;
        Some(Self { mm: if inch { size * MM } else { size }, inch })
    }

    /// A size in millimetres.
    #[must_use]
    pub const fn metric(mm: f64) -> Self {
        Self { mm, inch: false }
    }

    /// Its nominal size in inches.
    #[must_use]
    pub fn inches(self) -> f64 {
        self.mm / MM
    }
}

//! Threads by name: `M14 x 1`, `M8`, `M5 coarse`, `1/4-20 UNC`, `#10-32`, `5/8`; their diameters and pitch.
//!
//! Metric: ISO 261 coarse pitches, ISO 724 basic diameters. Inch: ASME B1.1 UNC and UNF series, same 60 degree profile.

use thiserror::Error;

/// Coarse pitches of ISO 261, nominal diameter and pitch in mm.
pub(super) const COARSE: [(f64, f64); 32] = [
    (1.0, 0.25),
    (1.2, 0.25),
    (1.4, 0.3),
    (1.6, 0.35),
    (1.8, 0.35),
    (2.0, 0.4),
    (2.5, 0.45),
    (3.0, 0.5),
    (3.5, 0.6),
    (4.0, 0.7),
    (5.0, 0.8),
    (6.0, 1.0),
    (7.0, 1.0),
    (8.0, 1.25),
    (10.0, 1.5),
    (12.0, 1.75),
    (14.0, 2.0),
    (16.0, 2.0),
    (18.0, 2.5),
    (20.0, 2.5),
    (22.0, 2.5),
    (24.0, 3.0),
    (27.0, 3.0),
    (30.0, 3.5),
    (33.0, 3.5),
    (36.0, 4.0),
    (39.0, 4.0),
    (42.0, 4.5),
    (45.0, 4.5),
    (48.0, 5.0),
    (56.0, 5.5),
    (64.0, 6.0),
];

/// UNC and UNF threads a inch of ASME B1.1 by nominal diameter in inches; 0 where the series has none.
const INCH: [(f64, f64, f64); 24] = [
    (0.060, 0.0, 80.0),
    (0.073, 64.0, 72.0),
    (0.086, 56.0, 64.0),
    (0.099, 48.0, 56.0),
    (0.112, 40.0, 48.0),
    (0.125, 40.0, 44.0),
    (0.138, 32.0, 40.0),
    (0.164, 32.0, 36.0),
    (0.190, 24.0, 32.0),
    (0.216, 24.0, 28.0),
    (0.25, 20.0, 28.0),
    (0.3125, 18.0, 24.0),
    (0.375, 16.0, 24.0),
    (0.4375, 14.0, 20.0),
    (0.5, 13.0, 20.0),
    (0.5625, 12.0, 18.0),
    (0.625, 11.0, 18.0),
    (0.75, 10.0, 16.0),
    (0.875, 9.0, 14.0),
    (1.0, 8.0, 12.0),
    (1.125, 7.0, 12.0),
    (1.25, 7.0, 12.0),
    (1.375, 6.0, 12.0),
    (1.5, 6.0, 12.0),
];

const MM: f64 = 25.4;

/// A 60 degree screw thread.
#[derive(Debug, Clone, PartialEq)]
pub struct Thread {
    /// Its name, normalised: `M14x1`, `1/4-20`.
    pub name: String,
    /// Nominal diameter, mm.
    pub d: f64,
    /// Pitch, mm.
    pub pitch: f64,
    /// Whether it is an inch thread.
    pub inch: bool,
}

/// A text that names no thread.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[error("found `{found}` where a thread is expected; write one such as `M14x1`, `M8` or `1/4-20`")]
pub struct NoThread {
    /// The text found.
    pub found: String,
}

impl Thread {
    /// A metric thread; sizes in mm.
    #[must_use]
    pub fn metric(d: f64, pitch: f64) -> Self {
        Self { name: format!("M{d}x{pitch}"), d, pitch, inch: false }
    }

    /// Reads a thread's name. Without a pitch it is the coarse one.
    ///
    /// # Errors
    /// [`NoThread`] when it is no thread, or a size with no coarse pitch in the table.
    pub fn parse(text: &str) -> Result<Self, NoThread> {
        let plain = text.trim().to_lowercase().replace(['×', '*'], "x").replace(',', ".");
        let found = if let Some(rest) = plain.strip_prefix('m') { metric(rest) } else { inch(&plain) };
        found.ok_or_else(|| NoThread { found: text.trim().to_owned() })
    }

    /// Basic pitch diameter d2 (ISO 724), mm.
    #[must_use]
    pub fn pitch_diameter(&self) -> f64 {
        self.d - 3.0 * self.fundamental() / 4.0
    }

    /// Basic minor diameter of the internal thread D1 (ISO 724), mm.
    #[must_use]
    pub fn minor_diameter(&self) -> f64 {
        self.d - 5.0 * self.fundamental() / 4.0
    }

    /// Root diameter d3 of the external thread, d1 - H/6 (ISO 898-1, 9.1.6.1), mm.
    #[must_use]
    pub fn root_diameter(&self) -> f64 {
        self.minor_diameter() - self.fundamental() / 6.0
    }

    /// Nominal stress area (ISO 898-1, 9.1.6.1), mm2, not rounded.
    #[must_use]
    pub fn stress_area(&self) -> f64 {
        if self.inch {
            // ASME B1.1: 0.7854 (D - 0.9743 / n)^2.
            return std::f64::consts::FRAC_PI_4 * (self.d - 0.974_278_579_257_493_3 * self.pitch).powi(2);
        }
        std::f64::consts::FRAC_PI_4 * self.stress_diameter().powi(2)
    }

    /// Diameter of the stress area, (d2 + d3) / 2, mm.
    #[must_use]
    pub fn stress_diameter(&self) -> f64 {
        f64::midpoint(self.pitch_diameter(), self.root_diameter())
    }

    /// Height of the fundamental triangle, mm.
    fn fundamental(&self) -> f64 {
        self.pitch * 3f64.sqrt() / 2.0
    }
}

fn metric(rest: &str) -> Option<Thread> {
    let rest = rest.trim();
    let end = rest.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(rest.len());
    let (size, rest) = rest.split_at_checked(end)?;
    let d = size.parse::<f64>().ok().filter(|d| *d > 0.0)?;
    let rest = rest.trim_start_matches(|c: char| c == 'x' || c == '-' || c.is_whitespace());
    let pitch = match rest.trim() {
        "" | "coarse" => coarse_pitch(d)?,
        pitch => pitch.trim_end_matches("mm").trim_end_matches("fine").trim().parse().ok()?,
    };
    (pitch > 0.0 && pitch < d * 0.6).then(|| Thread::metric(d, pitch))
}

/// The coarse pitch of a metric size.
fn coarse_pitch(d: f64) -> Option<f64> {
    COARSE.iter().find(|(size, _)| (size - d).abs() < 1e-9).map(|(_, pitch)| *pitch).or(match d {
        52.0 => Some(5.0),
        60.0 => Some(5.5),
        _ => None,
    })
}

fn inch(plain: &str) -> Option<Thread> {
    let fine = plain.contains("unf") || plain.contains("fine");
    let plain = ["unc", "unf", "un", "coarse", "fine", "inches", "inch", "in", "\""]
        .iter()
        .fold(plain.to_owned(), |text, word| text.replace(word, " "));
    let plain = plain.trim();
    let (size, tpi) = split_tpi(plain);
    let d = inch_size(size)?;
    let row = INCH.iter().find(|row| (row.0 - d).abs() < 1e-6);
    let tpi = match tpi {
        Some(tpi) => tpi,
        None => row.map(|row| if fine || row.1 == 0.0 { row.2 } else { row.1 })?,
    };
    let sound = tpi > 0.0 && d > 0.0 && 1.0 / tpi < d;
    sound.then(|| Thread { name: format!("{}-{tpi}", size.trim()), d: d * MM, pitch: MM / tpi, inch: true })
}

/// `1/4-20` into size and threads an inch; `1-1/4-7` and `1 1/4` too.
fn split_tpi(text: &str) -> (&str, Option<f64>) {
    if let Some((size, tpi)) = text.rsplit_once('-')
        && let Ok(tpi) = tpi.trim().parse::<f64>()
        && !tpi.is_nan()
    {
        return (size, Some(tpi));
    }
    (text, None)
}

/// An inch size: `1/4`, `1-1/4`, `1 1/4`, `0.5`, `#10`, `no. 10`. In inches.
pub(super) fn inch_size(text: &str) -> Option<f64> {
    let text = text.trim();
    let numbered =
        text.strip_prefix('#').or_else(|| text.strip_prefix("no.")).or_else(|| text.strip_prefix("no "));
    if let Some(number) = numbered {
        let n = number.trim().parse::<f64>().ok().filter(|n| (0.0..=12.0).contains(n))?;
        return Some(((0.060 + 0.013 * n) * 1e6).round() / 1e6);
    }
    let text = text.trim_end_matches(['"', '″']).trim_end_matches("in").trim();
    let (whole, part) = match text.rsplit_once([' ', '-']) {
        Some((whole, part)) => (whole.trim().parse::<f64>().ok()?, part),
        None => (0.0, text),
    };
    let part = match part.split_once('/') {
        Some((above, below)) => {
            let below = below.trim().parse::<f64>().ok().filter(|below| *below > 0.0)?;
            above.trim().parse::<f64>().ok()? / below
        }
        None => part.trim().parse::<f64>().ok()?,
    };
    Some(whole + part).filter(|size| size.is_finite() && *size > 0.0)
}

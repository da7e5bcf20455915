//! Viscosity index by ASTM D2270, and the grades of ISO 3448. mm2/s.

use std::sync::LazyLock;

/// Table 1 of the standard: viscosity at 100 degC, L, H.
static TABLE: LazyLock<Vec<[f64; 3]>> = LazyLock::new(|| {
    include_str!("d2270.tsv")
        .lines()
        .filter(|line| !line.starts_with('#'))
        .filter_map(|line| {
            let mut cells = line.split('\t').map(str::parse);
            match (cells.next(), cells.next(), cells.next()) {
                (Some(Ok(y)), Some(Ok(l)), Some(Ok(h))) => Some([y, l, h]),
                _ => None,
            }
        })
        .collect()
});

/// L and H for a viscosity at 100 degC: the table between 2 and 70 mm2/s (straight between rows), the standard's
/// equations above. `None` below 2, where the index is not defined.
#[must_use]
pub fn l_and_h(v100: f64) -> Option<(f64, f64)> {
    if v100.is_nan() || v100 < 2.0 {
        return None;
    }
    if v100 >= 70.0 {
        let l = (0.8353 * v100 + 14.67) * v100 - 216.0;
        let h = (0.1684 * v100 + 11.85) * v100 - 97.0;
        return Some((l, h));
    }
    let mut rows = TABLE.windows(2);
    rows.find_map(|pair| match pair {
        [[y0, l0, h0], [y1, l1, h1]] if v100 >= *y0 && v100 <= *y1 => {
            let share = (v100 - y0) / (y1 - y0);
            Some((l0 + share * (l1 - l0), h0 + share * (h1 - h0)))
        }
        _ => None,
    })
}

/// Viscosity index, unrounded: procedure A up to 100, procedure B above. `None` below 2 mm2/s at 100 degC.
#[must_use]
pub fn viscosity_index(v40: f64, v100: f64) -> Option<f64> {
    let (l, h) = l_and_h(v100)?;
    Some(if v40 > h {
        100.0 * (l - v40) / (l - h)
    } else {
        let n = (h.log10() - v40.log10()) / v100.log10();
        (10f64.powf(n) - 1.0) / 0.00715 + 100.0
    })
}

/// Rounded as the standard says: to a whole number, a half to the even one.
#[must_use]
pub fn rounded(index: f64) -> f64 {
    index.round_ties_even()
}

/// Grades of ISO 3448 with their mid-point at 40 degC.
const GRADES: [(f64, f64); 20] = [
    (2.0, 2.2),
    (3.0, 3.2),
    (5.0, 4.6),
    (7.0, 6.8),
    (10.0, 10.0),
    (15.0, 15.0),
    (22.0, 22.0),
    (32.0, 32.0),
    (46.0, 46.0),
    (68.0, 68.0),
    (100.0, 100.0),
    (150.0, 150.0),
    (220.0, 220.0),
    (320.0, 320.0),
    (460.0, 460.0),
    (680.0, 680.0),
    (1000.0, 1000.0),
    (1500.0, 1500.0),
    (2200.0, 2200.0),
    (3200.0, 3200.0),
];

/// Least, middle and most kinematic viscosity at 40 degC of an ISO VG grade: the mid-point and 10 % either side, as
/// the standard's table prints them (three significant figures).
#[must_use]
pub fn iso_vg(grade: f64) -> Option<[f64; 3]> {
    let (_, middle) = GRADES.iter().find(|(name, _)| (name - grade).abs() < 1e-9)?;
    let print = |value: f64| {
        let scale = 10f64.powf(2.0 - value.log10().floor());
        (value * scale).round() / scale
    };
    Some([print(0.9 * middle), *middle, print(1.1 * middle)])
}

/// The ISO VG grade that a viscosity at 40 degC falls into.
#[must_use]
pub fn grade_of(v40: f64) -> Option<f64> {
    let within = |limits: [f64; 3]| limits.first() <= Some(&v40) && limits.last() >= Some(&v40);
    GRADES.iter().find(|(name, _)| iso_vg(*name).is_some_and(within)).map(|(name, _)| *name)
}

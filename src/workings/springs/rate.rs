//! Rate of a helical compression spring of round wire. Lengths mm, forces N, moduli MPa, rates N/mm.

/// Shear modulus of spring steel wire to EN 10270-1, MPa (EN 13906-1 table; memory).
pub const G_STEEL: f64 = 81_500.0;

/// k = G d^4 / (8 D^3 n): wire diameter, mean coil diameter, active coils (EN 13906-1).
#[must_use]
pub fn rate(d: f64, mean: f64, coils: f64, g: f64) -> f64 {
    g * d.powi(4) / (8.0 * mean.powi(3) * coils)
}

/// The share of the plain rate that is left when transverse shear is counted: 2 C^2 / (1 + 2 C^2).
#[must_use]
pub fn transverse_shear(index: f64) -> f64 {
    2.0 * index * index / (1.0 + 2.0 * index * index)
}

/// Active coils that give a rate.
#[must_use]
pub fn active_coils(d: f64, mean: f64, rate: f64, g: f64) -> f64 {
    g * d.powi(4) / (8.0 * mean.powi(3) * rate)
}

/// Rate from two loads and the lengths (or deflections) at them; `None` when the lengths agree.
#[must_use]
pub fn from_loads(f1: f64, l1: f64, f2: f64, l2: f64) -> Option<f64> {
    let step = (l2 - l1).abs();
    (step > 0.0).then(|| (f2 - f1).abs() / step)
}

/// Shear modulus of a wire, MPa, by material: EN 13906-1's table (memory). `None` when it is not in it.
#[must_use]
pub fn shear_modulus(material: &str) -> Option<f64> {
    let name = material.to_lowercase();
    Some(match name.as_str() {
        "en 10270-1" | "steel" | "spring steel" | "music wire" | "music" | "patented" => 81_500.0,
        "en 10270-2" | "oil tempered" | "oil-tempered" | "chrome silicon" | "chrome-silicon" | "sicr"
        | "vdsicr" => 79_500.0,
        "en 10270-3" | "stainless" | "stainless steel" | "1.4310" => 70_000.0,
        "titanium" => 43_000.0,
        "phosphor bronze" | "bronze" => 42_000.0,
        _ => return None,
    })
}

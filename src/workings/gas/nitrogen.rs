//! Nitrogen as it really is: the reference equation of Span and others.
//!
//! R. Span, E. W. Lemmon, R. T Jacobsen, W. Wagner, A. Yokozeki, J. Phys. Chem. Ref. Data 29, 1361 (2000): Helmholtz
//! energy in reduced density and inverse reduced temperature. Used here from 200 to 600 K and to 500 bar.

/// Critical temperature, K.
const T_CRITICAL: f64 = 126.192;
/// Critical density, mol/m3.
const RHO_CRITICAL: f64 = 11_183.901_464_580_624;
/// Gas constant of the equation, J/(mol K).
const R: f64 = 8.31451;

/// Range in which it is used here, K and bar.
pub const RANGE_K: (f64, f64) = (200.0, 600.0);
/// Greatest absolute pressure, bar.
pub const MOST_BAR: f64 = 500.0;

/// Polynomial and exponential terms: n, d, t, l (l 0: no exponential).
const POWER: [(f64, i32, f64, i32); 32] = [
    (0.924803575275, 1, 0.25, 0),
    (-0.492448489428, 1, 0.875, 0),
    (0.661883336938, 2, 0.5, 0),
    (-1.92902649201, 2, 0.875, 0),
    (-0.0622469309629, 3, 0.375, 0),
    (0.349943957581, 3, 0.75, 0),
    (0.564857472498, 1, 0.5, 1),
    (-1.61720005987, 1, 0.75, 1),
    (-0.481395031883, 1, 2.0, 1),
    (0.421150636384, 3, 1.25, 1),
    (-0.0161962230825, 3, 3.5, 1),
    (0.172100994165, 4, 1.0, 1),
    (0.00735448924933, 6, 0.5, 1),
    (0.0168077305479, 6, 3.0, 1),
    (-0.00107626664179, 7, 0.0, 1),
    (-0.0137318088513, 7, 2.75, 1),
    (0.000635466899859, 8, 0.75, 1),
    (0.00304432279419, 8, 2.5, 1),
    (-0.0435762336045, 1, 4.0, 2),
    (-0.0723174889316, 2, 6.0, 2),
    (0.0389644315272, 3, 6.0, 2),
    (-0.021220136391, 4, 3.0, 2),
    (0.00408822981509, 5, 3.0, 2),
    (-5.51990017984e-05, 8, 6.0, 2),
    (-0.0462016716479, 4, 16.0, 3),
    (-0.00300311716011, 5, 11.0, 3),
    (0.0368825891208, 5, 15.0, 3),
    (-0.0025585684622, 8, 12.0, 3),
    (0.00896915264558, 3, 12.0, 4),
    (-0.0044151337035, 5, 7.0, 4),
    (0.00133722924858, 6, 4.0, 4),
    (0.000264832491957, 9, 16.0, 4),
];

/// Gaussian terms: n, d, t, eta, beta, gamma.
const GAUSS: [(f64, i32, f64, f64, f64, f64); 4] = [
    (19.6688194015, 1, 0.0, 20.0, 325.0, 1.16),
    (-20.911560073, 1, 1.0, 20.0, 325.0, 1.16),
    (0.0167788306989, 3, 2.0, 15.0, 300.0, 1.13),
    (2627.67566274, 2, 3.0, 25.0, 275.0, 1.25),
];

/// Ideal part: tau powers n, t.
const IDEAL: [(f64, i32); 3] = [(-0.000_193_481_9, -1), (-0.000_012_477_42, -2), (0.000_000_066_783_26, -3)];
/// Vibration of the molecule: n, and its temperature over the critical one.
const VIBRATION: (f64, f64) = (1.012_941, 3364.011 / T_CRITICAL);

/// The residual Helmholtz energy with its slopes: alpha, delta d/d delta, tau d/d tau.
fn residual(delta: f64, tau: f64) -> (f64, f64, f64) {
    let mut sum = (0.0, 0.0, 0.0);
    for (n, d, t, l) in POWER {
        let decay = if l > 0 { delta.powi(l) } else { 0.0 };
        let term = n * delta.powi(d) * tau.powf(t) * (-decay).exp();
        sum.0 += term;
        sum.1 += term * (f64::from(d) - f64::from(l) * decay);
        sum.2 += term * t;
    }
    for (n, d, t, eta, beta, gamma) in GAUSS {
        let (near, warm) = (delta - 1.0, tau - gamma);
        let term = n * delta.powi(d) * tau.powf(t) * (-eta * near * near - beta * warm * warm).exp();
        sum.0 += term;
        sum.1 += term * (f64::from(d) - 2.0 * eta * delta * near);
        sum.2 += term * (t - 2.0 * beta * tau * warm);
    }
    sum
}

/// Absolute pressure in bar at a density in mol/m3 and a temperature in K.
#[must_use]
pub fn pressure(rho: f64, t: f64) -> f64 {
    let (_, slope, _) = residual(rho / RHO_CRITICAL, T_CRITICAL / t);
    rho * R * t * (1.0 + slope) / 1e5
}

/// Entropy in units of R, up to a constant.
fn entropy(rho: f64, t: f64) -> f64 {
    let (delta, tau) = (rho / RHO_CRITICAL, T_CRITICAL / t);
    let (alpha, _, warm) = residual(delta, tau);
    let (n, theta) = VIBRATION;
    let mut ideal = delta.ln() + 2.5 * tau.ln() + n * (1.0 - (-theta * tau).exp()).ln();
    let mut ideal_warm = 2.5 + n * theta * tau / ((theta * tau).exp() - 1.0);
    for (n, t) in IDEAL {
        ideal += n * tau.powi(t);
        ideal_warm += f64::from(t) * n * tau.powi(t);
    }
    ideal_warm + warm - ideal - alpha
}

/// The place in a bracket where a rising function meets zero.
fn root(mut low: f64, mut high: f64, f: impl Fn(f64) -> f64) -> f64 {
    for _ in 0..200 {
        let middle = f64::midpoint(low, high);
        if f(middle) < 0.0 {
            low = middle;
        } else {
            high = middle;
        }
        if high - low <= 1e-13 * high {
            break;
        }
    }
    f64::midpoint(low, high)
}

/// Density in mol/m3 at an absolute pressure in bar and a temperature in K; `None` out of range.
#[must_use]
pub fn density(bar: f64, t: f64) -> Option<f64> {
    let sound = bar > 0.0 && bar <= MOST_BAR && (RANGE_K.0..=RANGE_K.1).contains(&t);
    sound.then(|| root(0.0, 25_000.0, |rho| pressure(rho, t) - bar))
}

/// Compressibility factor Z = p / (rho R T).
#[must_use]
pub fn compressibility(bar: f64, t: f64) -> Option<f64> {
    density(bar, t).map(|rho| bar * 1e5 / (rho * R * t))
}

/// Fixed volume: absolute pressure in bar at another temperature.
#[must_use]
pub fn heated(bar: f64, t1: f64, t2: f64) -> Option<f64> {
    let rho = density(bar, t1)?;
    (RANGE_K.0..=RANGE_K.1).contains(&t2).then(|| pressure(rho, t2))
}

/// Pressed to 1 / ratio of its volume at one temperature: absolute pressure in bar.
#[must_use]
pub fn isothermal(bar: f64, t: f64, ratio: f64) -> Option<f64> {
    Some(pressure(density(bar, t)? * ratio, t)).filter(|bar| *bar <= 2.0 * MOST_BAR)
}

/// Pressed to 1 / ratio of its volume without heat lost: absolute pressure in bar and temperature in K.
#[must_use]
pub fn adiabatic(bar: f64, t: f64, ratio: f64) -> Option<(f64, f64)> {
    let rho = density(bar, t)?;
    let target = entropy(rho, t);
    let end = root(100.0, 2000.0, |end| entropy(rho * ratio, end) - target);
    Some((pressure(rho * ratio, end), end)).filter(|(bar, _)| *bar <= 2.0 * MOST_BAR)
}

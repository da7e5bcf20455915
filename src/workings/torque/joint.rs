//! A bolted joint: preload and torque by VDI 2230, by the nut factor, and by angle. mm, N, MPa, N.mm.

use std::f64::consts::PI;

use super::super::thread::Thread;

/// A screw's loaded section and its thread.
#[derive(Debug, Clone, PartialEq)]
pub struct Screw {
    /// Its thread.
    pub thread: Thread,
    /// A hole along its axis, 0 for a solid one.
    pub bore: f64,
}

/// Bearing face under a hexagon head of ISO 4014 over a medium hole of ISO 273: nominal diameter, the face's diameter
/// dw (least, grade A) and the hole.
const BEARING: [(f64, f64, f64); 22] = [
    (1.6, 2.27, 1.8),
    (2.0, 3.07, 2.4),
    (2.5, 4.07, 2.9),
    (3.0, 4.57, 3.4),
    (4.0, 5.88, 4.5),
    (5.0, 6.88, 5.5),
    (6.0, 8.88, 6.6),
    (7.0, 9.63, 7.6),
    (8.0, 11.63, 9.0),
    (10.0, 14.63, 11.0),
    (12.0, 16.63, 13.5),
    (14.0, 19.64, 15.5),
    (16.0, 22.49, 17.5),
    (18.0, 25.34, 20.0),
    (20.0, 28.19, 22.0),
    (22.0, 31.71, 24.0),
    (24.0, 33.61, 26.0),
    (27.0, 38.0, 30.0),
    (30.0, 42.75, 33.0),
    (33.0, 46.55, 36.0),
    (36.0, 51.11, 39.0),
    (39.0, 55.86, 42.0),
];

/// Effective friction diameter of the bearing face, D_Km = (dw + dh) / 2 (VDI 2230), for a hexagon head; 1.3 d where the
/// table has no such size.
#[must_use]
pub fn bearing_diameter(d: f64) -> f64 {
    let row = BEARING.iter().find(|row| (row.0 - d).abs() < 1e-6);
    row.map_or(1.3 * d, |row| f64::midpoint(row.1, row.2))
}

/// Below this nominal diameter VDI 2230 has no table; the tables that go on (a fastener catalogue's, edition 2003 of
/// the guideline) count the torsion on the core diameter d3, and the class's nominal yield. Recomputed for M1.6 in all
/// classes and three frictions: within 0.3 %.
pub const SMALL: f64 = 4.0;

/// Torque in the thread for a newton of preload: 0.16 P + 0.58 d2 mu (VDI 2230), mm.
#[must_use]
pub fn thread_arm(thread: &Thread, mu: f64) -> f64 {
    0.16 * thread.pitch + 0.58 * thread.pitch_diameter() * mu
}

/// Tightening torque for a newton of preload: thread and head, mm.
#[must_use]
pub fn arm(thread: &Thread, mu_thread: f64, mu_head: f64, bearing: f64) -> f64 {
    thread_arm(thread, mu_thread) + bearing / 2.0 * mu_head
}

impl Screw {
    /// Loaded area A0: the stress area less the bore, mm2.
    #[must_use]
    pub fn area(&self) -> f64 {
        self.thread.stress_area() - PI / 4.0 * self.bore * self.bore
    }

    /// Torsion over tension in the loaded section for a lever arm in mm, the section fully plastic in torsion as
    /// VDI 2230 counts it: A0 / Wp with Wp = pi (d0^3 - bore^3) / 12.
    fn shear_share(&self, lever: f64) -> f64 {
        if self.thread.d < SMALL && self.bore == 0.0 {
            return 3.0 * lever / self.thread.root_diameter();
        }
        let modulus = PI / 12.0 * (self.thread.stress_diameter().powi(3) - self.bore.powi(3));
        lever * self.area() / modulus
    }

    /// Assembly preload FM at a share of yield (usually 0.9), tension and torsion together, N (VDI 2230):
    /// FM = A0 nu Rp / sqrt(1 + 3 (d2/2 (P / (pi d2) + 1.155 mu) A0 / Wp)^2).
    #[must_use]
    pub fn assembly_preload(&self, mu_thread: f64, yielding: f64, share: f64) -> f64 {
        let d2 = self.thread.pitch_diameter();
        let lever = d2 / 2.0 * (self.thread.pitch / (PI * d2) + 1.155 * mu_thread);
        let shear = self.shear_share(lever);
        self.area() * share * yielding / (1.0 + 3.0 * shear * shear).sqrt()
    }
}

/// A power screw under an axial load.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PowerScrew {
    /// Load, N.
    pub load: f64,
    /// Nominal diameter, mm.
    pub d: f64,
    /// Pitch, mm.
    pub pitch: f64,
    /// Number of starts.
    pub starts: f64,
    /// Friction in the thread.
    pub mu: f64,
    /// Half angle of the thread, deg: 0 square, 15 trapezoidal.
    pub half_angle: f64,
}

impl PowerScrew {
    fn mean(self) -> f64 {
        self.d - self.pitch / 2.0
    }

    fn lead(self) -> f64 {
        self.starts * self.pitch / (PI * self.mean())
    }

    fn friction(self) -> f64 {
        self.mu / self.half_angle.to_radians().cos()
    }

    /// Torque to raise the load, N.mm: W dm/2 (mu sec + tan a) / (1 - mu sec tan a) (Bhandari, ch. 6).
    #[must_use]
    pub fn raising(self) -> f64 {
        let (mu, lead) = (self.friction(), self.lead());
        self.load * self.mean() / 2.0 * (mu + lead) / (1.0 - mu * lead)
    }

    /// Torque to lower it, N.mm; below zero it runs down by itself.
    #[must_use]
    pub fn lowering(self) -> f64 {
        let (mu, lead) = (self.friction(), self.lead());
        self.load * self.mean() / 2.0 * (mu - lead) / (1.0 + mu * lead)
    }

    /// Share of the work that raises the load.
    #[must_use]
    pub fn efficiency(self) -> f64 {
        self.load * self.mean() / 2.0 * self.lead() / self.raising()
    }
}

/// Torque of a collar, N.mm, worn evenly: mu W (Do + Di) / 4.
#[must_use]
pub fn collar_torque(load: f64, mu: f64, outside: f64, inside: f64) -> f64 {
    mu * load * (outside + inside) / 4.0
}

/// Preload gained by turning a nut further by an angle, N: angle / 360 P x stiffness of bolt and joint in series (N/mm).
#[must_use]
pub fn by_angle(angle: f64, pitch: f64, bolt: f64, joint: f64) -> f64 {
    angle / 360.0 * pitch * bolt * joint / (bolt + joint)
}

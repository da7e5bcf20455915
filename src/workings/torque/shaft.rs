//! Stress in a hollow, necked or relieved shaft under tension and torsion together. mm, N, N.mm, MPa.

use std::f64::consts::PI;

use super::super::thread::Thread;
use super::joint;

/// Polar second moment of a hollow circle, mm4.
#[must_use]
pub fn polar_moment(outside: f64, inside: f64) -> f64 {
    PI / 32.0 * (outside.powi(4) - inside.powi(4))
}

/// Elastic torsion modulus of a hollow circle, mm3.
#[must_use]
pub fn torsion_modulus(outside: f64, inside: f64) -> f64 {
    PI / 16.0 * (outside.powi(4) - inside.powi(4)) / outside
}

/// Tension and torsion together by von Mises, MPa.
#[must_use]
pub fn von_mises(tension: f64, torsion: f64) -> f64 {
    (tension * tension + 3.0 * torsion * torsion).sqrt()
}

/// A threaded shaft tightened by a torque, at its weakest section.
#[derive(Debug, Clone, PartialEq)]
pub struct Tightened {
    /// The thread that the nut turns on.
    pub thread: Thread,
    /// Outside diameter of the section: the relief, or the thread's stress diameter.
    pub outside: f64,
    /// Bore at that section.
    pub bore: f64,
    /// Friction in the thread.
    pub mu_thread: f64,
    /// Friction under the nut.
    pub mu_head: f64,
    /// Effective friction diameter under the nut.
    pub bearing: f64,
}

/// What the section carries.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Carried {
    /// Preload, N.
    pub preload: f64,
    /// Tension, MPa.
    pub tension: f64,
    /// Torsion at the outside, MPa, while the torque is on.
    pub torsion: f64,
    /// Both together by von Mises, MPa.
    pub together: f64,
}

impl Tightened {
    /// What the section carries at a tightening torque in N.mm. The part of the torque under the nut does not twist the
    /// shaft.
    #[must_use]
    pub fn at(&self, torque: f64) -> Carried {
        let preload = torque / joint::arm(&self.thread, self.mu_thread, self.mu_head, self.bearing);
        let area = PI / 4.0 * (self.outside * self.outside - self.bore * self.bore);
        let tension = preload / area;
        let twist = preload * joint::thread_arm(&self.thread, self.mu_thread);
        let torsion = twist / torsion_modulus(self.outside, self.bore);
        Carried { preload, tension, torsion, together: von_mises(tension, torsion) }
    }
}

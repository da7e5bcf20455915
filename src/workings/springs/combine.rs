//! Springs together: in series, side by side, one shorter than the other, main and tender. N, mm, N/mm.

/// Rate of two springs in series.
#[must_use]
pub fn series(k1: f64, k2: f64) -> f64 {
    k1 * k2 / (k1 + k2)
}

/// A pair of springs side by side under one force.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Nest {
    /// Deflection of the first (longer) spring.
    pub deflection: f64,
    /// Deflection of the second, zero before it is met.
    pub inner_deflection: f64,
    /// Force in the first.
    pub outer_force: f64,
    /// Force in the second.
    pub inner_force: f64,
}

/// Shares a force between a spring and one that is `gap` shorter beside it.
#[must_use]
pub fn nest(force: f64, outer: f64, inner: f64, gap: f64) -> Nest {
    let deflection =
        if force <= outer * gap { force / outer } else { (force + inner * gap) / (outer + inner) };
    let inner_deflection = (deflection - gap).max(0.0);
    Nest {
        deflection,
        inner_deflection,
        outer_force: outer * deflection,
        inner_force: inner * inner_deflection,
    }
}

/// A main spring with a tender on top of it, which closes after its own travel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tender {
    /// Rate of the main spring.
    pub main: f64,
    /// Rate of the tender.
    pub tender: f64,
    /// Travel of the tender until its coils touch.
    pub travel: f64,
}

impl Tender {
    /// The load at which the tender closes.
    #[must_use]
    pub fn crossover_load(self) -> f64 {
        self.tender * self.travel
    }

    /// The deflection of both at that load.
    #[must_use]
    pub fn crossover_deflection(self) -> f64 {
        self.travel + self.crossover_load() / self.main
    }

    /// Deflection of both under a load.
    #[must_use]
    pub fn deflection(self, force: f64) -> f64 {
        force / self.main + (force / self.tender).min(self.travel)
    }

    /// Force at a deflection of both.
    #[must_use]
    pub fn force(self, deflection: f64) -> f64 {
        if deflection <= self.crossover_deflection() {
            deflection * series(self.main, self.tender)
        } else {
            (deflection - self.travel) * self.main
        }
    }
}

//! Chance from a seed: splitmix64 (Steele, Lea and Flood 2014), small and the same everywhere.

/// Chance from a seed.
#[derive(Debug, Clone)]
pub struct Dice {
    state: u64,
}

impl Dice {
    /// Dice of that seed.
    pub fn new(seed: u64) -> Self {
        Self { state: seed.wrapping_mul(0x2545_F491_4F6C_DD1D) }
    }

    /// A whole number below `bound`.
    pub fn below(&mut self, bound: u64) -> u64 {
        self.state = self.state.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.state;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        (z ^ (z >> 31)) % bound.max(1)
    }

    /// Whether it falls within so many of a hundred.
    pub fn of_hundred(&mut self, many: u32) -> bool {
        self.below(100) < u64::from(many)
    }

    /// One of these.
    pub fn one<'a>(&mut self, of: &[&'a str]) -> &'a str {
        of[usize::try_from(self.below(of.len() as u64)).unwrap()]
    }
}

//! A linear model over words, pairs of words and pieces, fitted at load to the pack's own examples.
//!
//! Multinomial logistic regression by stochastic gradient steps in a fixed order: the same pack gives the same model.

use std::collections::HashMap;
use std::hash::{BuildHasherDefault, Hasher};

/// A feature, hashed.
pub type Feature = u64;

/// An example: its features and its class.
#[derive(Debug, Clone)]
pub struct Sample {
    /// What it shows.
    pub features: Vec<Feature>,
    /// Its class.
    pub class: usize,
    /// How much it counts.
    pub weight: f32,
}

/// An example by the rows of its features.
struct Learned {
    rows: Vec<usize>,
    class: usize,
    weight: f32,
}

/// Features are hashes already.
#[derive(Debug, Clone, Copy, Default)]
pub struct Hashed(u64);

impl Hasher for Hashed {
    fn finish(&self) -> u64 {
        self.0
    }

    fn write(&mut self, bytes: &[u8]) {
        for byte in bytes {
            self.0 = (self.0 << 8) | u64::from(*byte);
        }
    }

    fn write_u64(&mut self, value: u64) {
        self.0 = value;
    }
}

type Plain = BuildHasherDefault<Hashed>;

/// The fitted model.
#[derive(Debug, Clone, Default)]
pub struct Model {
    classes: usize,
    rows: HashMap<Feature, usize, Plain>,
    weights: Vec<f32>,
}

const ROUNDS: usize = 8;
/// An example is known well enough once its class has this chance.
const KNOWN: f32 = 0.97;
const RATE: f32 = 1.2;
const SHRINK: f32 = 1e-5;

/// The hash of a feature's parts (FNV-1a, 64 bits).
#[must_use]
pub fn feature(parts: &[&str]) -> Feature {
    let mut hash: u64 = 0xcbf2_9ce4_8422_2325;
    for part in parts {
        for byte in part.bytes().chain([0x1f]) {
            hash = (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
        }
    }
    hash
}

impl Model {
    /// Fits a model to examples.
    #[must_use]
    pub fn fit(samples: &[Sample], classes: usize) -> Self {
        let mut model = Self { classes, ..Self::default() };
        let mut counts: HashMap<Feature, u32, Plain> = HashMap::default();
        for feature in samples.iter().flat_map(|sample| &sample.features) {
            *counts.entry(*feature).or_default() += 1;
        }
        // What one example alone shows is learned by heart and helps nobody.
        for feature in samples.iter().flat_map(|sample| &sample.features) {
            if counts.get(feature).is_some_and(|count| *count > 1) {
                let row = model.rows.len();
                model.rows.entry(*feature).or_insert(row);
            }
        }
        let samples: Vec<Learned> = samples
            .iter()
            .map(|sample| Learned {
                rows: sample.features.iter().filter_map(|feature| model.rows.get(feature).copied()).collect(),
                class: sample.class,
                weight: sample.weight,
            })
            .collect();
        model.weights = vec![0.0; model.rows.len() * classes];
        let mut order: Vec<usize> = (0..samples.len()).collect();
        let mut seed: u64 = 0x9e37_79b9_7f4a_7c15;
        for round in 0..ROUNDS {
            shuffle(&mut order, &mut seed);
            let rate = RATE / (1.0 + round as f32 * 0.5);
            for sample in order.iter().filter_map(|at| samples.get(*at)) {
                model.learn(sample, rate);
            }
        }
        model
    }

    fn learn(&mut self, sample: &Learned, rate: f32) {
        let chances = self.chances_of(&sample.rows);
        if chances.get(sample.class).is_some_and(|chance| *chance > KNOWN) {
            return;
        }
        let size = (sample.rows.len().max(1) as f32).sqrt();
        let step = rate * sample.weight / size;
        for row in &sample.rows {
            let start = row * self.classes;
            let Some(weights) = self.weights.get_mut(start..start + self.classes) else { continue };
            for (class, (weight, chance)) in weights.iter_mut().zip(&chances).enumerate() {
                let wanted = f32::from(u8::from(class == sample.class));
                *weight += step * (wanted - chance) - SHRINK * *weight;
            }
        }
    }

    /// The chance of each class.
    #[must_use]
    pub fn chances(&self, features: &[Feature]) -> Vec<f32> {
        let rows: Vec<usize> =
            features.iter().filter_map(|feature| self.rows.get(feature).copied()).collect();
        self.chances_of(&rows)
    }

    fn chances_of(&self, rows: &[usize]) -> Vec<f32> {
        let mut sums = vec![0.0_f32; self.classes];
        for row in rows {
            let start = row * self.classes;
            let Some(weights) = self.weights.get(start..start + self.classes) else { continue };
            for (sum, weight) in sums.iter_mut().zip(weights) {
                *sum += weight;
            }
        }
        let scale = 4.0 / (rows.len().max(1) as f32).sqrt();
        let most = sums.iter().copied().fold(f32::MIN, f32::max);
        let mut total = 0.0;
        for sum in &mut sums {
            *sum = ((*sum - most) * scale).exp();
            total += *sum;
        }
        sums.iter_mut().for_each(|sum| *sum /= total);
        sums
    }
}

fn shuffle(order: &mut [usize], seed: &mut u64) {
    for at in (1..order.len()).rev() {
        *seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        order.swap(at, (*seed >> 33) as usize % (at + 1));
    }
}

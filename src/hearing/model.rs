//! A linear model over words, pairs of words and pieces, fitted at load to the pack's own examples.
//!
//! Multinomial logistic regression by stochastic gradient steps in a fixed order: the same pack gives the same model.

use std::collections::HashMap;
use std::hash::{BuildHasherDefault, Hasher};

/// A feature, hashed.
pub type Feature = u32;

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

    fn write_u32(&mut self, value: u32) {
        // The table takes its groups from the high bits.
        self.0 = u64::from(value).wrapping_mul(0x9e37_79b9_7f4a_7c15);
    }
}

type Plain = BuildHasherDefault<Hashed>;

/// The fitted model.
#[derive(Debug, Clone, Default)]
pub struct Model {
    classes: usize,
    rows: HashMap<Feature, u32, Plain>,
    weights: Vec<f32>,
}

const ROUNDS: usize = 8;
/// A feature that fewer examples show is passed over.
const FEWEST: u32 = 3;
/// An example is known well enough once its class has this chance.
const KNOWN: f32 = 0.97;
const RATE: f32 = 1.2;
const SHRINK: f32 = 1e-3;

/// The hash of a feature's parts (FNV-1a).
#[must_use]
pub fn feature(parts: &[&str]) -> Feature {
    let mut hash: u64 = 0xcbf2_9ce4_8422_2325;
    for part in parts {
        for byte in part.bytes().chain([0x1f]) {
            hash = (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
        }
    }
    fold(hash)
}

/// Sixty-four bits in thirty-two.
#[must_use]
pub fn fold(hash: u64) -> Feature {
    (hash ^ (hash >> 32)) as u32
}

impl Model {
    /// Fits a model to examples.
    #[must_use]
    pub fn fit(samples: Vec<Sample>, classes: usize) -> Self {
        let mut model = Self { classes, ..Self::default() };
        let mut counts: HashMap<Feature, u32, Plain> = HashMap::default();
        for feature in samples.iter().flat_map(|sample| &sample.features) {
            *counts.entry(*feature).or_default() += 1;
        }
        // What one or two examples alone show is learned by heart and helps nobody.
        for feature in samples.iter().flat_map(|sample| &sample.features) {
            if counts.get(feature).is_some_and(|count| *count >= FEWEST) {
                let row = u32::try_from(model.rows.len()).unwrap_or(u32::MAX);
                model.rows.entry(*feature).or_insert(row);
            }
        }
        // Each feature becomes its row, in the place it has.
        let samples: Vec<Sample> = samples
            .into_iter()
            .map(|mut sample| {
                sample.features.retain(|feature| model.rows.contains_key(feature));
                for feature in &mut sample.features {
                    *feature = model.rows.get(feature).copied().unwrap_or_default();
                }
                sample.features.shrink_to_fit();
                sample
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

    fn learn(&mut self, sample: &Sample, rate: f32) {
        let chances = self.chances_of(&sample.features);
        if chances.get(sample.class).is_some_and(|chance| *chance > KNOWN) {
            return;
        }
        let size = (sample.features.len().max(1) as f32).sqrt();
        let step = rate * sample.weight / size;
        for row in &sample.features {
            let start = *row as usize * self.classes;
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
        let rows: Vec<u32> = features.iter().filter_map(|feature| self.rows.get(feature).copied()).collect();
        self.chances_of(&rows)
    }

    fn chances_of(&self, rows: &[u32]) -> Vec<f32> {
        let mut sums = vec![0.0_f32; self.classes];
        for row in rows {
            let start = *row as usize * self.classes;
            let Some(weights) = self.weights.get(start..start + self.classes) else { continue };
            for (sum, weight) in sums.iter_mut().zip(weights) {
                *sum += weight;
            }
        }
        let scale = 6.0 / (rows.len().max(1) as f32).sqrt();
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

//! A linear model over words, pairs of words and pieces, fitted at load to the pack's own examples.
//!
//! Multinomial logistic regression by stochastic gradient steps in a fixed order: the same pack gives the same model.

use std::collections::HashMap;

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

/// The fitted model.
#[derive(Debug, Clone, Default)]
pub struct Model {
    classes: usize,
    rows: HashMap<Feature, usize>,
    weights: Vec<f32>,
}

const ROUNDS: usize = 8;
const RATE: f32 = 0.35;
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
        for feature in samples.iter().flat_map(|sample| &sample.features) {
            let row = model.rows.len();
            model.rows.entry(*feature).or_insert(row);
        }
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
        let chances = self.chances(&sample.features);
        let size = (sample.features.len().max(1) as f32).sqrt();
        let step = rate * sample.weight / size;
        for feature in &sample.features {
            let Some(row) = self.rows.get(feature) else { continue };
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
        let mut sums = vec![0.0_f32; self.classes];
        for feature in features {
            let Some(row) = self.rows.get(feature) else { continue };
            let start = row * self.classes;
            for (sum, weight) in sums.iter_mut().zip(self.weights.iter().skip(start).take(self.classes)) {
                *sum += weight;
            }
        }
        let scale = 4.0 / (features.len().max(1) as f32).sqrt();
        let most = sums.iter().copied().fold(f32::MIN, f32::max);
        let mut total = 0.0;
        for sum in &mut sums {
            *sum = ((*sum - most) * scale).exp();
            total += *sum;
        }
        sums.iter_mut().for_each(|sum| *sum /= total);
        sums
    }

    /// Whether an example showed the feature.
    #[must_use]
    pub fn knows(&self, feature: Feature) -> bool {
        self.rows.contains_key(&feature)
    }
}

fn shuffle(order: &mut [usize], seed: &mut u64) {
    for at in (1..order.len()).rev() {
        *seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        order.swap(at, (*seed >> 33) as usize % (at + 1));
    }
}

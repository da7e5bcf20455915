//! Shows its hand: what was made of a line, and what decided.

use crate::act::Heard;
use serde::Serialize;

/// How a line was understood.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Why {
    /// The words after rewriting and mending, with those that were mended.
    pub normalised: String,
    /// Words put for others by sound: said, taken for.
    pub mended: Vec<(String, String)>,
    /// What was mentioned: slot and words.
    pub mentions: Vec<(String, String)>,
    /// For each clause: its words, and the rules and chances that spoke for it.
    pub clauses: Vec<ClauseWhy>,
    /// What decided.
    pub decided: String,
    /// The outcome.
    pub heard: Heard,
}

/// What spoke for a clause.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ClauseWhy {
    /// Its words.
    pub words: String,
    /// The best classes with rule, cost, chance and score.
    pub fits: Vec<FitWhy>,
}

/// One class that a clause may be.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FitWhy {
    /// The tag.
    pub class: String,
    /// File, line and name of the rule, where one fits.
    pub rule: Option<String>,
    /// What leaving words out cost.
    pub cost: Option<f32>,
    /// The model's chance.
    pub chance: f32,
    /// Both together.
    pub score: f32,
}

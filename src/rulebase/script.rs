//! stub
use super::UnitCard;
use std::collections::BTreeMap;
use std::sync::Arc;
/// stub
#[derive(Debug, Default, Clone)]
#[allow(missing_docs)]
pub struct View {
    pub unit: String,
    pub corner: String,
    pub card: Option<Arc<UnitCard>>,
    pub readings: BTreeMap<(String, String), f64>,
    pub failed: BTreeMap<String, u32>,
    pub texts: BTreeMap<String, String>,
    pub adjusters: BTreeMap<String, AdjusterView>,
    pub parts: BTreeMap<String, PartView>,
}
/// stub
#[derive(Debug, Default, Clone)]
#[allow(missing_docs)]
pub struct AdjusterView {
    pub found: Option<f64>,
    pub wanted: Option<f64>,
    pub travel: Option<f64>,
    pub left: Option<f64>,
    pub position: Option<f64>,
}
/// stub
#[derive(Debug, Default, Clone)]
#[allow(missing_docs)]
pub struct PartView {
    pub off: bool,
    pub loose: bool,
    pub tight: bool,
    pub locked: bool,
    pub locked_minutes: Option<f64>,
    pub marked: bool,
    pub clean: bool,
    pub new: bool,
    pub safe: bool,
}
/// stub
#[derive(Debug)]
pub struct ScriptFault;
/// stub
pub struct Scripts;
#[allow(missing_docs)]
impl Scripts {
    pub fn guard(&self, _e: &str, _v: &View) -> Result<bool, ScriptFault> {
        Ok(true)
    }
    pub fn accept(&self, _e: &str, _x: f64, _v: &View) -> Result<bool, ScriptFault> {
        Ok(true)
    }
}
impl super::Pack {
    /// stub
    pub fn scripts(&self) -> Scripts {
        Scripts
    }
}

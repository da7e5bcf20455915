//! stub
use crate::act::*;use crate::rulebase::Pack;
/// l
pub struct Line<'a>{/// s
pub said:&'a str,/// u
pub unit:Option<&'a str>,/// w
pub waiting:&'a Waiting}
/// e
pub struct Ear;
impl Ear{/// n
pub fn new(_:&Pack)->Self{Self}
/// h
pub fn hear(&self,l:&Line<'_>)->Heard{ if l.said=="panic" {panic!("x")} Heard::decline(l.unit.map_or(0.0,|_|0.1))}}
